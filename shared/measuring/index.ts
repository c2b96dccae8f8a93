export { ATMOSPHERE_PSI, atmospherePsi } from './atmosphere.ts';
export {
  builtUnderAirBrakeStandard,
  judgeGovernor,
  judgeParkingKnob,
  judgeWarning,
  warningLimit,
  type BandJudgement,
  type BuildDate,
} from './air-warnings.ts';
export {
  allowedBuildUpS,
  fillTimeS,
  judgeBuildUp,
  scaledBuildUpS,
  type BuildUp,
  type BuildUpTest,
  type FillRun,
} from './build-up.ts';
export { conformityProbability, guardBand, normalQuantile } from './conformity.ts';
export {
  coolingDropPsi,
  holdTimeMin,
  judgeLeakDown,
  leakRate,
  READING_UNCERTAINTY_PSI,
  type LeakDown,
  type LeakRate,
  type LeakRefusal,
  type PressureMark,
} from './leak-down.ts';
export { equivalentHole, freeAirFlow, holeFlow, type FreeAirFlow } from './leak-flow.ts';
export { leakLimit, type BrakeState } from './leak-limits.ts';
export {
  DECIDED,
  judge,
  worstOf,
  type Comparison,
  type Decision,
  type Judgement,
  type Limit,
  type LimitStatus,
} from './limit.ts';
export { normalCdf } from './normal.ts';
export { outOfRange, type Outcome, type OutOfRange, type Refusal } from './outcome.ts';
export { pressureAfter, rateAtPressure, timeToWarningS } from './pressure-decay.ts';
export { CHAMBER_VOLUME_IN3, requiredReservoir, reserveAfterApplication } from './reservoir.ts';
export { straightLine, type StraightLine } from './straight-line.ts';
export { studentCdf } from './student.ts';
