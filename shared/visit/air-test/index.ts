export * from './events.ts';
export { cutOutRead, judgeAirStep, type AirJudged, type AirOutcome } from './judge-step.ts';
export { emptyAirTest, foldAirTest, type AirRecord, type AirTestState, type WalkRecord } from './state.ts';
export { AIR_STEPS, airStep, type AirFigure, type AirStep } from './steps.ts';
export { airTestComplete, airTestHolds, airTestStandings, airTestVerdict, type AirStepStanding } from './verdict.ts';
export { WALK_ROUND, type WalkItem } from './walk-round.ts';
