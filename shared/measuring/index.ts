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
export { decimate, lowPass, type Decimated } from './decimate.ts';
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
  INFRARED_GIVE_F,
  type TemperatureComparison,
  type TemperatureRefusal,
  type TemperatureRound,
  type WheelEndReading,
  type WheelEndTemperature,
} from './wheel-end-temperature.ts';
export {
  matchBeat,
  type BeatMatch,
  type LineMatch,
  type MatchRefusal,
  type MeasuredBeat,
  type SearchSpan,
} from './beat-match.ts';
export { cardanJoint } from './cardan-joint.ts';
export {
  afterGearChangeHz,
  BEHAVIOUR,
  cautionFor,
  MANOEUVRES,
  separatingManoeuvres,
  type Behaviour,
  type Manoeuvre,
} from './manoeuvres.ts';
export {
  rotatingLines,
  type Engine,
  type RoadState,
  type RotatingGroup,
  type RotatingLine,
  type RotatingLines,
} from './rotating-orders.ts';
export { rollingRadiusIn, tyreRevsPerMile } from './tyre-turns.ts';
export { bearingRates, taperedRates, type BearingGeometry, type BearingRates } from './bearing-frequencies.ts';
export {
  bandEnvelope,
  envelopeSpectrum,
  kurtosisOf,
  type EnvelopeRefusal,
  type EnvelopeSettings,
  type EnvelopeSpectrum,
} from './envelope.ts';
export { orderProminence, pickPeaks, refinedHz, type SpectrumPeak } from './spectrum-peaks.ts';
export { hannWindow, type HalfSpectrum, type RealTransform } from './transform.ts';
export { readWav, readWavHeader, type WavHeader, type WavRefusal, type WavSound } from './wav.ts';
export {
  amplitudeSpectrum,
  recordLengthS,
  welchDensity,
  type PowerDensity,
  type SpectrumRefusal,
  type WelchSettings,
} from './welch.ts';
export {
  cylinderShare,
  effectiveMassKg,
  retardingPower,
  roadLoad,
  type CoastDown,
  type CoastDownRefusal,
  type CylinderShare,
  type RetardingPower,
  type RoadLoad,
  type TurningMass,
} from './coast-down.ts';
export {
  axleSideLift,
  cornerLoadLb,
  endLift,
  groundLoad,
  LIFT_FACTOR,
  standCheck,
  type LiftRefusal,
  type StandCheck,
} from './lifting.ts';
export { oilDrip, type Drip } from './oil-drip.ts';
export {
  notByCost,
  rebuildOrReplace,
  replaceOrWait,
  type NeighbourPart,
  type Repair,
  type ReplaceOrWait,
} from './replace-or-wait.ts';
export { judgeSuspensionLeak } from './suspension-leak.ts';
export {
  coldStart,
  isoGrade,
  saeGrade,
  viscosityAt,
  viscosityOf,
  zOf,
  type ColdStart,
  type OilPoints,
} from './viscosity.ts';
export { viscosityIndex } from './viscosity-index.ts';
export { failedShare, failsWithin, lifeAtShare, meanLife, type LifeModel } from './weibull.ts';
export { tyreRefill } from './tyre-refill.ts';
export { recordingFits, type Recording, type RecordingRefusal } from './recording-fitness.ts';
export { bestReplacementAge } from './replacement-age.ts';
export { judgeTread, type TreadReading } from './tyre-tread.ts';
export {
  beatAtSpeed,
  buildUpFromMarks,
  dropsPerMinute,
  lashOn20In,
  perThousandMiles,
  ratioOfTimes,
  WATCH_S,
  type FillMarks,
} from './by-hand.ts';
export { CALCULATION_IDS, CALCULATIONS, type CalculationFacts, type CalculationId } from './calculations.ts';
export { meanOfRepeats, widestSpread, type WorkedFigure } from './repeats.ts';
export { againstBook, differenceOfPairs, lossOver, sideToSide, type BookForm } from './two-readings.ts';
export { oldestTyreAge } from './tyre-age.ts';
