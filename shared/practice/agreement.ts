import { plannerWay, scoreWay, work } from '../planning/evaluation/index.ts';
import { coachOf, drawExercise } from './exercise.ts';
import { usualLayout } from './layouts.ts';
import { workThrough } from './orders.ts';
import { PRACTICE_ROLE } from './session.ts';
import { SEEDS, type PracticeTree } from './setting.ts';
import { defaultCosts } from '../planning/costs.ts';

/** The planner playing exercises against the planner in the evaluation, costs alone. */
export interface Agreement {
  readonly exercises: number;
  /** Mean bill of the planner in practice, with its standard error, minutes. */
  readonly practice: number;
  readonly practiceError: number;
  /** Mean cost in the evaluation, over coaches drawn independently. */
  readonly evaluation: number;
  readonly evaluationError: number;
  /** Largest difference between bill and evaluated cost on the very same coach, minutes. */
  readonly largestGap: number;
  /** Difference of the means over its standard error. */
  readonly z: number;
}

/**
 * Plays exercises of the widest level on the usual coach. The evaluation knows neither safety questions nor rules, so the tree is
 * played without them.
 */
export function agreementOf(
  pinned: PracticeTree,
  options: { readonly exercises: number; readonly seed: number },
): Agreement {
  const { vocabulary } = pinned;
  const tree = { ...pinned.tree, stopRules: [] };
  const layout = usualLayout(tree, vocabulary);
  const way = plannerWay();
  const costs = defaultCosts(PRACTICE_ROLE);
  const bills: number[] = [];
  let largestGap = 0;
  for (let i = 0; i < options.exercises; i++) {
    const exercise = drawExercise(
      { ...pinned, tree },
      { level: 'any', seed: (options.seed * 10_007 + i) % SEEDS, layout },
    );
    const { bill } = workThrough(exercise, way);
    const outcome = work(coachOf(exercise), way, tree, vocabulary, PRACTICE_ROLE, costs);
    largestGap = Math.max(largestGap, Math.abs(bill - outcome.cost));
    bills.push(bill);
  }
  const practice = bills.reduce((sum, bill) => sum + bill, 0) / bills.length;
  const variance = bills.reduce((sum, bill) => sum + (bill - practice) ** 2, 0) / bills.length;
  const practiceError = Math.sqrt(variance / bills.length);
  const { cost, costError } = scoreWay(way, tree, vocabulary, {
    coaches: options.exercises,
    seed: options.seed,
    who: PRACTICE_ROLE,
    layout,
  });
  return {
    exercises: options.exercises,
    practice,
    practiceError,
    evaluation: cost,
    evaluationError: costError,
    largestGap,
    z: (practice - cost) / Math.hypot(practiceError, costError),
  };
}
