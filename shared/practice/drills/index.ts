export { AS_GOOD } from './seen.ts';
export * from './card.ts';
export { deckOf, nextCard, type Next } from './deck.ts';
export {
  answered,
  LEARNER_EVENT_VERSION,
  readLearnerEvents,
  type LearnerEvent,
  type LearnerEventBody,
} from './events.ts';
export { givesAway } from './gives-away.ts';
export { judgeLimit, limitCards, type LimitJudgement, type TypedFigure } from './know-limit.ts';
export { learnerState, type KnownCard, type LearnerState } from './learner-state.ts';
export { limitFigure, type LimitFigure } from './limit-figure.ts';
export { judgePicture } from './read-picture.ts';
export { afterAnswer, recallAt, type DrillGrade, type Memory } from './schedule.ts';
export { progressOf, type Progress, type Standing } from './standing.ts';
export { apartCards, judgeApart, TIE } from './tell-apart.ts';
export { unlabelled } from './unlabelled.ts';
export { judgeOutcome } from './what-you-see.ts';
