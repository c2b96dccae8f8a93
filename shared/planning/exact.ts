import type { TableProblem } from './model-problem.ts';
import { actionsIn, expand, keyOf, type Action, type Policy, type TableState } from './policy.ts';

/** A model too large to be solved exactly. The message names both numbers. */
export class TooManyStates extends Error {
  constructor(states: number, most: number) {
    super(`The model has up to ${states} states; at most ${most} are solved exactly. Use the rollout and its bound.`);
    this.name = 'TooManyStates';
  }
}

export interface ExactSolution {
  /** Least expected cost from the start. */
  readonly cost: number;
  readonly policy: Policy;
  /** Expected cost of each action at the start, best continuation after it. */
  readonly first: readonly { readonly action: Action; readonly cost: number }[];
  readonly states: number;
}

/**
 * Optimal policy by memoised dynamic programming over (answers, failed corrections, open access).
 *
 * @throws {TooManyStates} when the bound Π(1 + outcomes)·2^corrections·access sets exceeds `mostStates`.
 * @source Bellman's equation; ties go to decisions, then corrections, then checks, each in file order.
 */
export function solveExactly(problem: TableProblem, mostStates = 300_000): ExactSolution {
  const answers = problem.checks.reduce(
    (product, _, k) => product * (1 + problem.outlook(problem.start, k).after.length),
    1,
  );
  const bound = answers * 2 ** problem.corrections.length;
  if (bound > mostStates) throw new TooManyStates(bound, mostStates);
  const memo = new Map<string, { cost: number; action: Action }>();
  const solve = (state: TableState): { cost: number; action: Action } => {
    const key = keyOf(state);
    const known = memo.get(key);
    if (known) return known;
    let best: { cost: number; action: Action } | null = null;
    for (const action of actionsIn(problem, state)) {
      const cost = valueOf(state, action);
      if (!best || cost < best.cost - 1e-12) best = { cost, action };
    }
    memo.set(key, best!);
    return best!;
  };
  const valueOf = (state: TableState, action: Action): number => {
    const { cost, branches } = expand(problem, state, action);
    return branches.reduce((sum, { share, next }) => sum + share * solve(next).cost, cost);
  };
  const start: TableState = { ...problem.start, access: 0 };
  const { cost } = solve(start);
  return {
    cost,
    policy: (state) => solve(state).action,
    first: actionsIn(problem, start).map((action) => ({ action, cost: valueOf(start, action) })),
    states: memo.size,
  };
}
