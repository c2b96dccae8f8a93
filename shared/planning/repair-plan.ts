import { closingCost, move } from './access.ts';
import type { ActNow, CorrectionAction, DecisionAction, PlanStep, Problem, Stage } from './problem.ts';

/** What a plan without checks needs of a problem. */
export type PlanParts = Pick<Problem<never>, 'access' | 'corrections' | 'decisions' | 'verify' | 'closeAtEnd'>;

/** Share of the starting belief below which a sequence is not followed further. */
const NEGLIGIBLE = 1e-9;

interface Step {
  /** Probability of getting here. */
  readonly reach: number;
  readonly decided: number;
  readonly decision: number;
  /** −1 when no correction is left that can help. */
  readonly correction: number;
  readonly cost: number;
  readonly cured: number;
  readonly closing: number;
}

/**
 * The best plan without further checks: corrections in order of probability per cost, access charged as it stands then,
 * and the best point at which to stop and decide instead.
 *
 * Exact when corrections cure disjoint causes and share no access (order by p/C: Kadane & Simon 1977; Heckerman, Breese
 * & Rommelse 1995; from memory), a good heuristic else. Every stopping point is evaluated, because the chance of success
 * of what is left can rise later in the sequence.
 *
 * @param belief  sums to 1.
 */
export function repairPlan(parts: PlanParts, belief: Float64Array, stage: Stage): ActNow {
  const steps = sequence(parts, belief, stage);
  let value = Infinity;
  let first: PlanStep = { kind: 'decide', decision: 0 };
  for (let i = steps.length - 1; i >= 0; i--) {
    const step = steps[i]!;
    const left = step.reach - step.cured;
    const after = left <= NEGLIGIBLE ? 0 : (left / step.reach) * value;
    const corrected = step.correction < 0 ? Infinity : step.cost + (step.cured / step.reach) * step.closing + after;
    if (step.decided <= corrected) {
      value = step.decided;
      first = { kind: 'decide', decision: step.decision };
    } else {
      value = corrected;
      first = { kind: 'correct', correction: step.correction };
    }
  }
  return { cost: value, first };
}

function sequence(parts: PlanParts, belief: Float64Array, stage: Stage): Step[] {
  const { access, corrections, decisions, closeAtEnd } = parts;
  const weight = Float64Array.from(belief);
  const steps: Step[] = [];
  let { access: open, failed } = stage;
  let reach = 1;
  for (;;) {
    const decided = bestDecision(decisions, weight, reach);
    const best = bestCorrection(open, failed);
    steps.push({
      reach,
      decided: decided.cost + (closeAtEnd ? closingCost(access, open) : 0),
      decision: decided.index,
      correction: best?.index ?? -1,
      cost: best?.cost ?? 0,
      cured: best?.cured ?? 0,
      closing: best && closeAtEnd ? closingCost(access, best.open) : 0,
    });
    if (!best || reach - best.cured <= NEGLIGIBLE) return steps;
    for (const { cause, share } of corrections[best.index]!.cures) weight[cause]! *= 1 - share;
    reach -= best.cured;
    failed |= 1 << best.index;
    open = best.open;
  }

  function bestCorrection(from: number, tried: number) {
    const way = stepsFrom(parts, from);
    let index = -1;
    let rate = 0;
    let cured = 0;
    for (let r = 0; r < corrections.length; r++) {
      if (tried & (1 << r)) continue;
      const share = curedShare(corrections[r]!, weight);
      if (share <= 0) continue;
      const each = share / way.cost[r]!;
      if (index >= 0 && each <= rate * (1 + 1e-15)) continue;
      index = r;
      rate = each;
      cured = share;
    }
    return index < 0 ? null : { index, cost: way.cost[index]!, cured, open: way.then[index]! };
  }
}

/** Weight of the causes that a correction would remove. */
export function curedShare(correction: CorrectionAction, weight: Float64Array): number {
  const { cures } = correction;
  let cured = 0;
  // Asked for millions of times while a tree is compiled; an iterator would cost more than the sum.
  for (let i = 0; i < cures.length; i++) cured += weight[cures[i]!.cause]! * cures[i]!.share;
  return cured;
}

/** Decision of least expected loss for weights that sum to `reach`; the first of equals. */
export function bestDecision(
  decisions: readonly DecisionAction[],
  weight: Float64Array,
  reach: number,
): { index: number; cost: number } {
  let index = 0;
  let cost = Infinity;
  for (let d = 0; d < decisions.length; d++) {
    const { loss } = decisions[d]!;
    let sum = 0;
    for (let c = 0; c < weight.length; c++) sum += weight[c]! * loss[c]!;
    if (sum / reach < cost) {
      cost = sum / reach;
      index = d;
    }
  }
  return { index, cost };
}

interface StepsFrom {
  /** Cost of each correction with access and proof, and the access open after the proof. */
  readonly cost: Float64Array;
  readonly then: Int32Array;
}

/** Corrections seen from a set of open states; asked for thousands of times in one decision. */
const known = new WeakMap<readonly CorrectionAction[], Map<number, StepsFrom>>();

function stepsFrom({ access, corrections, verify }: PlanParts, open: number): StepsFrom {
  const sets = known.get(corrections) ?? new Map<number, StepsFrom>();
  known.set(corrections, sets);
  const before = sets.get(open);
  if (before) return before;
  const made = { cost: new Float64Array(corrections.length), then: new Int32Array(corrections.length) };
  corrections.forEach(({ cost, need }, r) => {
    const there = move(access, open, need);
    const tested = move(access, there.state, verify.need);
    made.cost[r] = cost + there.cost + verify.cost + tested.cost;
    made.then[r] = tested.state;
  });
  sets.set(open, made);
  return made;
}
