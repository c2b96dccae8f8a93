import { closingCost, move } from '../access.ts';
import { repairPlan, triedCorrection, type PlanParts } from '../repair-plan.ts';
import {
  corrected,
  decided,
  dot,
  isOpen,
  learned,
  sharesOf,
  type FarState,
  type FarStep,
  type FarTables,
} from './far-tables.ts';

/** States above which nothing is solved exactly: about half a second at most. */
export const MOST_STATES = 50_000;

/** Plans whose costs are closer than this are the same. */
const SAME = 1e-12;

/** The best plan there is, from any state. */
export interface ExactPlan {
  /** Its expected cost from a state. */
  readonly costFrom: (state: FarState) => number;
  /** Expected cost of everything that can be done in a state, the best plan after it. */
  readonly steps: (state: FarState) => readonly { readonly step: FarStep; readonly cost: number }[];
  /** What to do in a state. */
  readonly stepIn: (state: FarState) => FarStep;
}

/**
 * How many states of knowledge can follow at most: Π(1 + results) over the checks that can be made, twice that for each correction.
 * What is open besides is not counted.
 */
export function statesAtMost(results: readonly number[], corrections: number): number {
  return results.reduce((states, each) => states * (1 + each), 2 ** corrections);
}

/**
 * The optimal plan by memoised dynamic programming over results found, corrections that failed and what is open; a state is solved
 * when it is asked for. A step that cannot be cheaper, because every plan ends in a decision or in a correction that cures, is not
 * followed.
 *
 * @source Bellman's equation. Of equals the first counts: decisions, then corrections, then checks, each in file order.
 * @returns null where more than `most` states could follow the start.
 */
export function solveExactly(
  tables: FarTables,
  parts: PlanParts,
  start: FarState,
  most = MOST_STATES,
): ExactPlan | null {
  const results = tables.rows.flatMap((rows, check) =>
    tables.usable[check] && start.answers.charCodeAt(check) === 0 ? [rows.length] : [],
  );
  const left = stepsIn(tables, parts, start).filter(({ kind }) => kind === 'correct').length;
  if (statesAtMost(results, left) > most) return null;
  const known = new Map<string, { cost: number; step: FarStep }>();
  const least = new Map<number, Float64Array>();
  /** What any plan costs at least from a set of open states, one a cause. */
  const leastAt = (access: number): Float64Array => {
    const made = least.get(access) ?? leastFrom(parts, access, start.belief.length);
    least.set(access, made);
    return made;
  };
  const tries = new Map<number, { readonly fails: number; readonly cures: number; readonly open: number }>();
  /** What a correction costs from a set of open states if it fails and if it cures; between them it is linear. */
  const tryFrom = (access: number, correction: number) => {
    const key = access * parts.corrections.length + correction;
    const before = tries.get(key);
    if (before) return before;
    const fails = triedCorrection(parts, parts.corrections[correction]!, access, 0);
    const cures = triedCorrection(parts, parts.corrections[correction]!, access, 1);
    const made = { fails: fails.cost, cures: cures.cost, open: fails.open };
    tries.set(key, made);
    return made;
  };

  const solve = (state: FarState): { cost: number; step: FarStep } => {
    const key = keyOf(state);
    const before = known.get(key);
    if (before) return before;
    // The best plan costs no more than the best one without checks.
    const withoutChecks = repairPlan(parts, state.belief, state).cost;
    const enough = withoutChecks + 1e-9 * (1 + Math.abs(withoutChecks));
    let best: { cost: number; step: FarStep } | null = null;
    for (const step of stepsIn(tables, parts, state)) {
      const cost = costOf(state, step, best ? Math.min(best.cost - SAME, enough) : enough);
      if (!best || cost < best.cost - SAME) best = { cost, step };
    }
    known.set(key, best!);
    return best!;
  };

  /** Expected cost of a step with the best plan after it; Infinity once it cannot be below `limit`. */
  const costOf = (state: FarState, step: FarStep, limit: number): number => {
    if (step.kind === 'decide') return decided(parts, state, step.decision);
    if (step.kind === 'correct') {
      const { fails, cures, open } = tryFrom(state.access, step.correction);
      const least = leastAt(open);
      let cured = 0;
      let rest = dot(state.belief, least);
      for (const { cause, share } of parts.corrections[step.correction]!.cures) {
        cured += state.belief[cause]! * share;
        rest -= state.belief[cause]! * share * least[cause]!;
      }
      const cost = fails + cured * (cures - fails);
      // Known before its state is made: most corrections are passed over here.
      if (cost + rest >= limit) return Infinity;
      const { left, next } = corrected(parts, state, step.correction);
      return next ? cost + left * solve(next).cost : cost;
    }
    const there = move(parts.access, state.access, tables.need[step.check]!);
    let cost = tables.cost[step.check]! + there.cost;
    // What is left after a check is on average what is left before it.
    if (cost + dot(state.belief, leastAt(there.state)) >= limit) return Infinity;
    sharesOf(tables, state, step.check).forEach((share, r) => {
      if (share > 1e-15) cost += share * solve(learned(tables, state, step.check, r, there.state)).cost;
    });
    return cost;
  };

  return {
    costFrom: (state) => solve(state).cost,
    steps: (state) => stepsIn(tables, parts, state).map((step) => ({ step, cost: costOf(state, step, Infinity) })),
    stepIn: (state) => solve(state).step,
  };
}

/** Everything that can be done: decisions, then corrections not tried that can help, then open checks. */
function stepsIn(tables: FarTables, { decisions, corrections }: PlanParts, state: FarState): FarStep[] {
  const steps: FarStep[] = decisions.map((_, decision) => ({ kind: 'decide', decision }));
  corrections.forEach(({ cures }, correction) => {
    if (!(state.failed & (1 << correction)) && cures.some(({ cause }) => state.belief[cause]! > 0))
      steps.push({ kind: 'correct', correction });
  });
  for (let check = 0; check < tables.rows.length; check++)
    if (isOpen(tables, state, check)) steps.push({ kind: 'check', check });
  return steps;
}

/** What any plan costs at least from a set of open states, one a cause: the cheapest thing that can end the matter. */
function leastFrom(parts: PlanParts, open: number, causes: number): Float64Array {
  const least = new Float64Array(causes).fill(Infinity);
  const closing = parts.closeAtEnd ? closingCost(parts.access, open) : 0;
  for (const { loss } of parts.decisions) loss.forEach((each, c) => (least[c] = Math.min(least[c]!, each + closing)));
  for (const correction of parts.corrections) {
    const { cost } = triedCorrection(parts, correction, open, 1);
    for (const { cause } of correction.cures) least[cause] = Math.min(least[cause]!, cost);
  }
  // What nothing ends costs nothing to leave.
  return least.map((each) => (each === Infinity ? 0 : each));
}

/** States with the same key have the same future. Findings of one fact count by which of them is the sharpest. */
function keyOf({ answers, failed, access, leaders }: FarState): string {
  return `${answers}|${failed}|${access}|${leaders.map((each) => each?.sharpness ?? '').join()}`;
}
