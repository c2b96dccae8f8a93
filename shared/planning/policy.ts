import { closingCost, move } from './access.ts';
import { solveExactly, type ExactPlan } from './ahead/exact.ts';
import type { FarStep as Action } from './ahead/far-tables.ts';
import { farState, type TableKnowledge, type TableProblem } from './model-problem.ts';
import { oneStep } from './one-step.ts';
import { curedShare, triedCorrection } from './repair-plan.ts';

export type { FarStep as Action } from './ahead/far-tables.ts';

/** Answers, failed corrections and open access. */
export interface TableState extends TableKnowledge {
  readonly access: number;
}

export type Policy = (state: TableState) => Action;

/** A branch after an action: probability and next state. */
export interface Branch {
  readonly share: number;
  readonly next: TableState;
}

/** Expected immediate cost of an action and what may come of it. */
export function expand(
  problem: TableProblem,
  state: TableState,
  action: Action,
): { cost: number; branches: readonly Branch[] } {
  const { access } = problem;
  const close = (open: number): number => (problem.closeAtEnd ? closingCost(access, open) : 0);
  const belief = problem.belief(state);
  if (action.kind === 'decide') {
    const { loss } = problem.decisions[action.decision]!;
    return { cost: belief.reduce((sum, p, c) => sum + p * loss[c]!, 0) + close(state.access), branches: [] };
  }
  if (action.kind === 'check') {
    const { cost, need } = problem.checks[action.check]!;
    const there = move(access, state.access, need);
    const { share } = problem.outlook(state, action.check);
    const branches = Array.from(share, (p, r) => ({
      share: p,
      next: { ...problem.learn(state, action.check, r), access: there.state },
    }));
    return { cost: cost + there.cost, branches: branches.filter((branch) => branch.share > 1e-15) };
  }
  const correction = problem.corrections[action.correction]!;
  const cured = curedShare(correction, belief);
  const { cost, open } = triedCorrection(problem, correction, state.access, cured);
  if (1 - cured <= 1e-12) return { cost, branches: [] };
  return {
    cost,
    branches: [
      {
        share: 1 - cured,
        next: { answers: state.answers, failed: state.failed | (1 << action.correction), access: open },
      },
    ],
  };
}

/** Every action that is allowed: decisions, then corrections not tried, then checks not made; each in file order. */
export function actionsIn(problem: TableProblem, state: TableState): Action[] {
  const belief = problem.belief(state);
  return [
    ...problem.decisions.map((_, decision): Action => ({ kind: 'decide', decision })),
    ...problem.corrections.flatMap((each, correction): Action[] =>
      state.failed & (1 << correction) || curedShare(each, belief) <= 0 ? [] : [{ kind: 'correct', correction }],
    ),
    ...problem.openChecks(state).map((check): Action => ({ kind: 'check', check })),
  ];
}

/** Key of a state; states with the same key have the same future. */
export function keyOf(state: TableState): string {
  return `${state.answers.join(',')}|${state.failed}|${state.access}`;
}

export interface PolicyValue {
  readonly cost: number;
  readonly checks: number;
  readonly corrections: number;
  /** P(ended by a decision). */
  readonly decided: number;
}

/** Exact expected cost of following a policy, by one pass over the states that it reaches; no random numbers. */
export function evaluatePolicy(
  problem: TableProblem,
  policy: Policy,
  from: TableState = { ...problem.start, access: 0 },
): PolicyValue {
  const memo = new Map<string, PolicyValue>();
  const value = (state: TableState): PolicyValue => {
    const key = keyOf(state);
    const known = memo.get(key);
    if (known) return known;
    const action = policy(state);
    const { cost, branches } = expand(problem, state, action);
    let sum = {
      cost,
      checks: Number(action.kind === 'check'),
      corrections: Number(action.kind === 'correct'),
      decided: Number(action.kind === 'decide'),
    };
    for (const { share, next } of branches) {
      const then = value(next);
      sum = {
        cost: sum.cost + share * then.cost,
        checks: sum.checks + share * then.checks,
        corrections: sum.corrections + share * then.corrections,
        decided: sum.decided + share * then.decided,
      };
    }
    memo.set(key, sum);
    return sum;
  };
  return value(from);
}

/** The best plan of a model; null where more states could follow than are solved. */
export function exactPlan(problem: TableProblem): ExactModelPlan | null {
  const start: TableState = { ...problem.start, access: 0 };
  const plan = solveExactly(problem.tables, problem, farState(problem, start));
  return (
    plan && {
      cost: plan.costFrom(farState(problem, start)),
      first: plan.steps(farState(problem, start)),
      policy: (state) => plan.stepIn(farState(problem, state)),
    }
  );
}

/** The best plan of a model, with what each first step costs when the best follows it. */
export interface ExactModelPlan {
  readonly cost: number;
  readonly first: ReturnType<ExactPlan['steps']>;
  readonly policy: Policy;
}

/** The one-step rule as a policy. */
export function oneStepPolicy(problem: TableProblem): Policy {
  return (state) => {
    const { actNow, checks, best } = oneStep(problem, state, state);
    return best < 0 ? actNow.first : { kind: 'check', check: checks[best]!.check };
  };
}

/** Corrections and decisions alone. */
export function repairsOnlyPolicy(problem: TableProblem): Policy {
  return (state) => problem.actNow(problem.belief(state), state).first;
}

/**
 * One improvement step on a base policy: take the action whose expected cost is least when the base policy is followed
 * after it. Never worse than the base (policy improvement, Howard 1960; from memory).
 */
export function rolloutPolicy(problem: TableProblem, base: Policy): Policy {
  const memo = new Map<string, number>();
  const baseValue = (state: TableState): number => {
    const key = keyOf(state);
    const known = memo.get(key);
    if (known !== undefined) return known;
    const { cost, branches } = expand(problem, state, base(state));
    const value = branches.reduce((sum, { share, next }) => sum + share * baseValue(next), cost);
    memo.set(key, value);
    return value;
  };
  return (state) => {
    let best: Action | null = null;
    let least = Infinity;
    for (const action of actionsIn(problem, state)) {
      const { cost, branches } = expand(problem, state, action);
      const value = branches.reduce((sum, { share, next }) => sum + share * baseValue(next), cost);
      if (value < least - 1e-12) {
        least = value;
        best = action;
      }
    }
    return best!;
  };
}
