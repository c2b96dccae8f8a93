export { CLOSED, type Choice, type Way } from './choices.ts';
export { DANGERS, DANGER_IDS, type Danger, type DangerId } from './dangers.ts';
export { coachOf, drawExercise, exerciseWith, type Exercise } from './exercise.ts';
export {
  complaintOfFile,
  EXERCISE_FORMAT,
  exerciseOfFile,
  readExerciseFile,
  type ExerciseFile,
  type PassRule,
} from './exercise-file.ts';
export { featuresOf, layoutCount, layoutOfNumber, numberOfLayout, usualLayout } from './layouts.ts';
export { hiddenOdds, LEVELS, type Level } from './levels.ts';
export * from './log.ts';
export { LOG_FORMAT, logFile, openLogFile, type OpenedLog } from './log-file.ts';
export { choiceOf, moveOf, rankingIn, safePlanner, safeTaught, workThrough } from './orders.ts';
export { hasPassed, passLines, type PassLine } from './passed.ts';
export { forecastsOf, reckon, type ReckonedStep, type Reckoning, type Remark } from './reckoning.ts';
export { scoreOf, scoreOfCost } from './score.ts';
export * from './session.ts';
export {
  codeOf,
  complaintKey,
  complaintOfCode,
  SEEDS,
  settingOfCode,
  type PracticeTree,
  type Setting,
} from './setting.ts';
export { summaryOf } from './summary.ts';
export { brierOverTime, brierScore, brierWords, calibration, type Calibration, type Forecast } from './suspicion.ts';
export { workedStandings, type WorkedStanding } from './standing.ts';
