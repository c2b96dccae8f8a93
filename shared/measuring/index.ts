export { ATMOSPHERE_PSI, atmospherePsi } from './atmosphere.ts';
export {
  builtUnderAirBrakeStandard,
  judgeGovernor,
  judgeParkingKnob,
  judgeWarning,
  warningLimit,
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
  judgeBand,
  worstOf,
  type BandJudgement,
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
export { defectiveShare, type DefectiveShare, type ServiceBrake } from './defective-brakes.ts';
export { DRUM_SIGNS, judgeDrum, type DrumReading, type DrumSign, type DrumSignRule } from './drum.ts';
export { judgeLining, type LiningJudgement, type LiningKind, type LiningReading } from './lining.ts';
export {
  axleMatches,
  judgeStroke,
  judgeWedgeMovement,
  STROKE_UNCERTAINTY_IN,
  type AxlePair,
  type StrokeJudgement,
  type StrokeReading,
} from './pushrod-stroke.ts';
export { judgeLash, lashDegrees, lashLimit } from './steering-lash.ts';
export {
  brakeForceShares,
  judgeStop,
  meanDeceleration,
  requiredBrakeForceLbf,
  STOPPING_TABLE,
  stoppingDistanceFt,
  type Stop,
  type StoppingClass,
} from './stopping.ts';
export { strokeLimit, type BoltSize, type Chamber, type StrokeClass } from './stroke-limits.ts';
export { dayAfterMiles, remainingWear, type RemainingWear, type WearReadings, type WearRefusal } from './wear.ts';
export {
  nutProcedure,
  torqueAgainst,
  type NutProcedure,
  type NutRefusal,
  type NutStep,
  type NutSystem,
  type SpindleKind,
} from './bearing-nut.ts';
export { DIAL_UNCERTAINTY_IN, judgeEndPlay } from './end-play.ts';
export { judgeHubPair, type HubVerdict } from './hub-temperature.ts';
export { medianOf, modifiedScores, type RobustSpread } from './robust-spread.ts';
export {
  compareTemperatures,
  type TemperatureComparison,
  type TemperatureRefusal,
  type TemperatureRound,
  type WheelEndReading,
  type WheelEndTemperature,
} from './wheel-end-temperature.ts';
