import { entropyOf, indexOfMax, mutualInformation } from '../../inference/index.ts';
import { accessMinutes, move } from '../access.ts';
import type { TableModel, TableProblem } from '../model-problem.ts';
import { checkCost, worthOfCheck } from '../one-step.ts';
import {
  exactPlan,
  expand,
  keyOf,
  repairsOnlyPolicy,
  rolloutPolicy,
  type Action,
  type Policy,
  type TableState,
} from '../policy.ts';
import { bestDecision, curedShare } from '../repair-plan.ts';
import { TELLS, TOLD_ENOUGH } from './told-enough.ts';

/** A line of a flowchart as somebody wrote it. */
export interface FlowStep {
  readonly check?: string;
  /** Outcome → what it leads to, a correction or a decision. */
  readonly if?: Readonly<Record<string, string>>;
  readonly repair?: string;
  readonly decision?: string;
}

/** Rows of every check's table: P(outcome | cause), a row an outcome. */
function tablesOf({ checks, causes }: TableModel): readonly (readonly Float64Array[])[] {
  return checks.map((check) =>
    check.outcomes.map((outcome) => Float64Array.from(causes, ({ id }) => check.likelihood[id]![outcome]!)),
  );
}

/**
 * What the program does: the best plan where few enough states can follow (PLA-45), else its rule. What a model has not is left
 * out: cautions before a danger, and choosing between checks that differ by a minute.
 *
 * @param model  the same as in `problem`; its tables are needed.
 */
export function advicePolicy(problem: TableProblem, model: TableModel): Policy {
  return exactPlan(problem)?.policy ?? rulePolicy(problem, model);
}

/**
 * The rule of this program (PLA-39): the check that is worth most, while one is worth anything; then corrections as they pay.
 *
 * @param model  the same as in `problem`; its tables are needed.
 */
export function rulePolicy(problem: TableProblem, model: TableModel): Policy {
  const tables = tablesOf(model);
  return (state) => {
    const belief = problem.belief(state);
    const actNow = problem.actNow(belief, state);
    const known = belief.reduce((sum, p, c) => {
      const certain = new Float64Array(belief.length);
      certain[c] = 1;
      return p > 0 ? sum + p * problem.actNow(certain, state).cost : sum;
    }, 0);
    let best = -1;
    let most = 1e-12;
    for (const check of problem.openChecks(state)) {
      const { cost, need } = problem.checks[check]!;
      const opening = problem.closeAtEnd
        ? accessMinutes(problem.access, state.access, need)
        : move(problem.access, state.access, need).cost;
      const worth = worthOfCheck(actNow.cost - checkCost(problem, state, state, check), {
        bits: mutualInformation(belief, tables[check]!),
        open: entropyOf(belief),
        knowing: actNow.cost - known,
        cost: cost + opening,
      });
      if (worth <= most + 1e-12) continue;
      best = check;
      most = worth;
    }
    return best < 0 ? actNow.first : { kind: 'check', check: best };
  };
}

/** Looking ahead: what costs least in the end when the rule of this program is followed after it. */
export function aheadPolicy(problem: TableProblem, model: TableModel): Policy {
  return rolloutPolicy(problem, rulePolicy(problem, model));
}

/**
 * The most information for its cost until one cause stands out, then corrections as they pay.
 *
 * @param model  the same as in `problem`; its tables are needed.
 */
export function informationPolicy(problem: TableProblem, model: TableModel): Policy {
  const act = repairsOnlyPolicy(problem);
  const tables = tablesOf(model);
  return (state) => {
    const belief = problem.belief(state);
    if (belief[indexOfMax(belief)]! >= TOLD_ENOUGH) return act(state);
    let best = -1;
    let most = 0;
    for (const check of problem.openChecks(state)) {
      const bits = mutualInformation(belief, tables[check]!);
      const { cost, need } = problem.checks[check]!;
      const rate = bits / Math.max(1e-9, cost + move(problem.access, state.access, need).cost);
      if (bits <= TELLS || rate <= most + 1e-15) continue;
      best = check;
      most = rate;
    }
    return best < 0 ? act(state) : { kind: 'check', check: best };
  };
}

/** The part of the likeliest cause, then of the next; the cheapest decision when none is left. */
export function swapPolicy(problem: TableProblem): Policy {
  return (state) => {
    const belief = problem.belief(state);
    let best = -1;
    let most = 1e-12;
    problem.corrections.forEach((each, r) => {
      const cured = curedShare(each, belief);
      if (state.failed & (1 << r) || cured <= most + 1e-15) return;
      best = r;
      most = cured;
    });
    if (best >= 0) return { kind: 'correct', correction: best };
    return { kind: 'decide', decision: bestDecision(problem.decisions, belief, 1).index };
  };
}

/** The model's own flowchart, line by line; what was tried is passed over. */
export function flowchartPolicy(problem: TableProblem, model: TableModel, flow: readonly FlowStep[]): Policy {
  const act = (id: string, state: TableState): Action | null => {
    const correction = problem.corrections.findIndex((each) => each.id === id);
    if (correction >= 0) return state.failed & (1 << correction) ? null : { kind: 'correct', correction };
    return { kind: 'decide', decision: problem.decisions.findIndex((each) => each.id === id) };
  };
  return (state) => {
    for (const step of flow) {
      if (step.check !== undefined) {
        const check = problem.checks.findIndex(({ id }) => id === step.check);
        const answer = state.answers[check]!;
        if (answer < 0) return { kind: 'check', check };
        const leads = step.if?.[model.checks[check]!.outcomes[answer]!];
        const next = leads === undefined ? null : act(leads, state);
        if (next) return next;
      } else {
        const next = act(step.repair ?? step.decision ?? '', state);
        if (next) return next;
      }
    }
    throw new RangeError('The flowchart ends before the matter does; its last line has to be a decision.');
  };
}

/** Expected cost when each step is drawn by lot from what is left; decisions only when no correction is left. */
export function costByLot(problem: TableProblem): number {
  const memo = new Map<string, number>();
  const cost = (state: TableState): number => {
    const key = keyOf(state);
    const known = memo.get(key);
    if (known !== undefined) return known;
    // By lot even what cannot help is tried.
    const corrections = problem.corrections.flatMap((_, correction): Action[] =>
      state.failed & (1 << correction) ? [] : [{ kind: 'correct', correction }],
    );
    const checks = problem.openChecks(state).map((check): Action => ({ kind: 'check', check }));
    const decisions = problem.decisions.map((_, decision): Action => ({ kind: 'decide', decision }));
    const actions =
      corrections.length > 0
        ? [...corrections, ...checks]
        : problem.corrections.length > 0
          ? decisions
          : [...checks, ...decisions];
    // A model without decisions is at an end when nothing is left to correct.
    if (actions.length === 0) return 0;
    const made = actions.reduce((sum, action) => {
      const { cost: now, branches } = expand(problem, state, action);
      return sum + branches.reduce((then, { share, next }) => then + share * cost(next), now) / actions.length;
    }, 0);
    memo.set(key, made);
    return made;
  };
  return cost({ ...problem.start, access: 0 });
}
