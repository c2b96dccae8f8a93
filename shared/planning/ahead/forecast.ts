import { entropyOf, mutualInformation } from '../../inference/index.ts';
import { accessMinutes, move } from '../access.ts';
import { worthOfCheck } from '../one-step.ts';
import type { ActNow } from '../problem.ts';
import { repairPlan, type PlanParts } from '../repair-plan.ts';
import {
  beliefAfter,
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

/** How far a forecast looks. */
export interface Depth {
  /** States reached less often than this are valued by the best plan without checks. */
  readonly leastReach: number;
  /** Checks weighed in full by the base rule in a state: those that tell most for their time. */
  readonly width: number;
}

export const USUAL_DEPTH: Depth = { leastReach: 0.0125, width: 12 };

/** What a plan does not follow further; its cost is then low by less than a minute or two. */
const SMALL = 1e-3;

/** Expected cost of following the base rule to the end, from any state; states met before are remembered. */
export interface Forecast {
  readonly base: (state: FarState) => FarStep;
  /** Expected cost of an action with the base rule after it. */
  readonly worth: (state: FarState, step: FarStep) => number;
  /** Base decisions made so far. */
  readonly decisions: () => number;
}

/**
 * @source Rollout: one step of policy improvement on a base rule is never worse than the rule (Howard 1960; from memory).
 *   Here it is cut where a state is reached seldom, so that this holds only up to what is cut.
 */
export function forecast(tables: FarTables, parts: PlanParts, depth: Depth = USUAL_DEPTH): Forecast {
  const steps = new Map<string, { step: FarStep; act: ActNow }>();
  const values = new Map<string, { reach: number; value: number }>();
  const knowing = new Map<number, Float64Array>();
  const { access } = parts;
  const keyOf = (state: FarState): string => `${state.answers}|${state.failed}|${state.access}`;

  const decide = (state: FarState): { step: FarStep; act: ActNow } => {
    const key = keyOf(state);
    const before = steps.get(key);
    if (before) return before;
    const act = repairPlan(parts, state.belief, state, SMALL);
    const made = { step: baseStep(state, act), act };
    steps.set(key, made);
    return made;
  };

  const baseStep = (state: FarState, act: ActNow): FarStep => {
    let best: FarStep = act.first;
    let most = 1e-9;
    const knowing = act.cost - dot(state.belief, certain(state.access, state.failed));
    const open = entropyOf(state.belief);
    // No check that costs more than knowing everything would save can pay.
    for (const { check, bits } of shortlist(tables, parts, state, depth.width, knowing)) {
      const need = tables.need[check]!;
      const there = move(access, state.access, need);
      const then = { access: there.state, failed: state.failed };
      const known = certain(then.access, then.failed);
      const minutes = tables.cost[check]! + (parts.closeAtEnd ? accessMinutes(access, state.access, need) : there.cost);
      const told = { bits, open, knowing, cost: minutes };
      let cost = tables.cost[check]! + there.cost;
      // What is left costs at least what it would if the cause were known; that is linear in the belief.
      let rest = dot(state.belief, known);
      const share = sharesOf(tables, state, check);
      let worth = worthOfCheck(act.cost - cost - rest, told);
      for (let r = 0; r < share.length && worth > most + 1e-9; r++) {
        if (share[r]! <= 1e-9) continue;
        const belief = beliefAfter(tables, state, check, r);
        cost += share[r]! * repairPlan(parts, belief, then, SMALL).cost;
        rest -= share[r]! * dot(belief, known);
        worth = worthOfCheck(act.cost - cost - rest, told);
      }
      if (worth > most + 1e-9) {
        most = worth;
        best = { kind: 'check', check };
      }
    }
    return best;
  };

  /** Cost from a stage when the cause is known, one a cause. */
  const certain = (open: number, failed: number): Float64Array => {
    const key = open * 2 ** 32 + (failed >>> 0);
    const before = knowing.get(key);
    if (before) return before;
    const made = new Float64Array(tables.rows[0]?.[0]?.length ?? 0);
    for (let c = 0; c < made.length; c++) {
      const belief = new Float64Array(made.length);
      belief[c] = 1;
      made[c] = repairPlan(parts, belief, { access: open, failed }, SMALL).cost;
    }
    knowing.set(key, made);
    return made;
  };

  const value = (state: FarState, reach: number): number => {
    if (reach < depth.leastReach) return repairPlan(parts, state.belief, state, SMALL).cost;
    const key = keyOf(state);
    const before = values.get(key);
    if (before && before.reach >= reach) return before.value;
    const made = worthOf(state, decide(state).step, reach);
    values.set(key, { reach, value: made });
    return made;
  };

  const worthOf = (state: FarState, step: FarStep, reach: number): number => {
    if (step.kind === 'decide') return decided(parts, state, step.decision);
    if (step.kind === 'check') {
      const { check } = step;
      const there = move(access, state.access, tables.need[check]!);
      return sharesOf(tables, state, check).reduce(
        (sum, share, r) =>
          share > 1e-9 ? sum + share * value(learned(tables, state, check, r, there.state), reach * share) : sum,
        tables.cost[check]! + there.cost,
      );
    }
    const { cost, left, next } = corrected(parts, state, step.correction);
    return next ? cost + left * value(next, reach * left) : cost;
  };

  return {
    base: (state) => decide(state).step,
    worth: (state, step) => worthOf(state, step, 1),
    decisions: () => steps.size,
  };
}

/** A check that can be made: its cost from here, and what it tells about the cause, bits. */
interface Listed {
  readonly check: number;
  readonly cost: number;
  readonly bits: number;
}

/** The open checks that tell most about the cause for their time, best first, of those that cost less than `most`. */
export function shortlist(
  tables: FarTables,
  parts: PlanParts,
  state: FarState,
  width: number,
  most = Infinity,
): Listed[] {
  const open: Listed[] = [];
  for (let check = 0; check < tables.rows.length; check++) {
    if (!isOpen(tables, state, check)) continue;
    const cost = tables.cost[check]! + move(parts.access, state.access, tables.need[check]!).cost;
    if (cost >= most) continue;
    open.push({ check, cost: Math.max(1, cost), bits: mutualInformation(state.belief, tables.rows[check]!) });
  }
  return open.sort((a, b) => b.bits / b.cost - a.bits / a.cost).slice(0, width);
}
