export * from './arrival/index.ts';
export { caseId, closedCases } from './closed-cases.ts';
export { complaintMachine, heard, stopIndexOf, type ComplaintMachineEvent } from './complaint-machine.ts';
export { canTakeBack, effectiveEvents, inOrder, newEventId, redoTarget, undoTarget } from './effective-events.ts';
export {
  EVENT_VERSION,
  type EventHead,
  type EventOf,
  type Observation,
  type Reading,
  type RecordedValue,
  type VisitEvent,
  type VisitEventBody,
} from './events.ts';
export { migrate, MIGRATIONS, type Migration } from './migrations/index.ts';
export { EventError, readEvent } from './read-event.ts';
export * from './plan/index.ts';
export { convertedReading, findingValue } from './recorded-value.ts';
export type { PinnedTree } from './pinned-tree.ts';
export { putBackWith, recordingOf, roundEvents, roundOf, takenWith, type RoundEntry } from './rounds.ts';
export { placesBy, trailLines, type PlacesGroup, type TrailLine } from './trail-lines.ts';
export { replay } from './replay.ts';
export { situationOf } from './situation-of.ts';
export {
  PHASES,
  type ComplaintPhase,
  type ComplaintState,
  type IgnoredEvent,
  type TrailFinding,
  type VisitState,
} from './state.ts';
export { visitMachine } from './visit-machine.ts';
export {
  causeName,
  CLOSED_WORDS,
  fullStop,
  minutesWords,
  readingWords,
  ROLE_WORDS,
  sentence,
  valueWords,
} from './words.ts';
export * from './air-test/index.ts';
export { holdOf } from './hold.ts';
export * from './inspection/index.ts';
export * from './road/index.ts';
