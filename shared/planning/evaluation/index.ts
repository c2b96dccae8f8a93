export { coachWith, drawCoach, drawCoachOn, drawTwoFaults, layoutFor, type SimulatedCoach } from './coach.ts';
export { figuresMark, type KeptEvaluation, type KeptTree } from './kept.ts';
export { disturbedTree } from './disturbed.ts';
export { leastCost, type LeastCost } from './least-cost.ts';
export { excessWhenDisturbed, modelRow, SIGMAS, type ModelRow, type NamedModel } from './model-report.ts';
export { treeRow, type Counts, type TreeRow, type WayScore } from './tree-report.ts';
export { draw, seededRandom } from './random.ts';
export { work, type Move, type Outcome, type WayOfWorking } from './session.ts';
export {
  adviceWay,
  everyCheckWay,
  informationWay,
  oneStepWay,
  plannerWay,
  randomWay,
  swapperWay,
  taughtWay,
} from './ways.ts';
export { scoreWay, type Score } from './score.ts';
