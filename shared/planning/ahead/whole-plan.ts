import type { ActNow, CorrectionAction } from '../problem.ts';
import type { TreeProblem } from '../tree-problem.ts';
import { MOST_STATES, solveExactly, statesAtMost, type ExactPlan } from './exact.ts';
import { farStart, farTables, type FarState } from './far-tables.ts';

/** A complaint that is small enough, worked out to the proven cure in every order. */
export interface WholePlan {
  /** Expected cost of each check that can be made now, the best plan after it. */
  readonly costs: ReadonlyMap<string, number>;
  /** The best of what can be done instead, the best plan after it. */
  readonly act: ActNow;
}

/**
 * The last plan made for the corrections of a model: one screen asks several times for the same. A plan that was made for an
 * earlier situation is not used further, for the same situation has to give the same figures to the last digit.
 */
const made = new WeakMap<readonly CorrectionAction[], { readonly key: string; readonly plan: ExactPlan }>();

/**
 * The best plan from a situation, where few enough states can follow.
 *
 * @param usable  checks that this person can do, whether or not their prerequisites are met; same order as `checksOf`.
 */
export function wholePlan(problem: TreeProblem, usable: readonly boolean[]): WholePlan | null {
  const { checksOf, corrections, start, stage } = problem;
  // Asked before the tables are made: nearly every tree ends here.
  const done = new Set(start.findings.map(({ check }) => check));
  const results = checksOf.flatMap((check, k) => (usable[k] && !done.has(check.id) ? [check.results.length] : []));
  if (statesAtMost(results, corrections.filter((_, r) => !(stage.failed & (1 << r))).length) > MOST_STATES) return null;

  const from = farStart(problem);
  const plan = remembered(problem, usable, from);
  if (!plan) return null;
  const steps = plan.steps(from);
  const act = steps.reduce<ActNow | null>(
    (best, { step, cost }) => (step.kind === 'check' || (best && best.cost <= cost) ? best : { cost, first: step }),
    null,
  );
  if (!act) return null;
  return {
    costs: new Map(
      steps.flatMap(({ step, cost }) => (step.kind === 'check' ? [[checksOf[step.check]!.id, cost]] : [])),
    ),
    act,
  };
}

function remembered(problem: TreeProblem, usable: readonly boolean[], from: FarState): ExactPlan | null {
  const { corrections, start } = problem;
  // A reading between two results counts by itself, which the states do not hold.
  const key = JSON.stringify([
    usable,
    from.answers,
    from.failed,
    from.access,
    start.findings.map(({ value }) => value),
  ]);
  const before = made.get(corrections);
  if (before?.key === key) return before.plan;
  const plan = solveExactly(farTables(problem, usable), problem, from);
  if (plan) made.set(corrections, { key, plan });
  return plan;
}
