import { closingCost, move } from './access.ts';
import type { ActNow, CorrectionAction, DecisionAction, PlanStep, Problem, Stage } from './problem.ts';

/** What a plan without checks needs of a problem. */
export type PlanParts = Pick<
  Problem<never>,
  'access' | 'corrections' | 'decisions' | 'verify' | 'closeAtEnd' | 'wrongPart'
>;

/** Share of the starting belief below which a sequence is not followed further. */
const NEGLIGIBLE = 1e-9;

/** What is known at each point of a sequence; one workspace for all plans, since thousands are made for one decision. */
interface Workspace {
  weight: Float64Array;
  /** Causes that are still possible, and corrections that are left to try, in their order. */
  alive: Int32Array;
  left: Int32Array;
  /** Probability per cost of each correction. */
  rate: Float64Array;
  /** Probability of getting to a point, and what deciding or correcting there costs. */
  reach: Float64Array;
  decided: Float64Array;
  cost: Float64Array;
  cured: Float64Array;
  closing: Float64Array;
  decision: Int32Array;
  /** −1 when no correction is left that can help. */
  correction: Int32Array;
}

function workspace(points: number, causes: number): Workspace {
  return {
    weight: new Float64Array(causes),
    alive: new Int32Array(causes),
    left: new Int32Array(points),
    rate: new Float64Array(points),
    reach: new Float64Array(points),
    decided: new Float64Array(points),
    cost: new Float64Array(points),
    cured: new Float64Array(points),
    closing: new Float64Array(points),
    decision: new Int32Array(points),
    correction: new Int32Array(points),
  };
}

let space = workspace(0, 0);

/**
 * The best plan without further checks: corrections in order of probability per cost, access charged as it stands then,
 * and the best point at which to stop and decide instead.
 *
 * Exact when corrections cure disjoint causes and share no access (order by p/C: Kadane & Simon 1977; Heckerman, Breese
 * & Rommelse 1995; from memory), a good heuristic else. Every stopping point is evaluated, because the chance of success
 * of what is left can rise later in the sequence.
 *
 * @param belief      sums to 1.
 * @param negligible  what is left below this share is not followed further, and costs nothing.
 */
export function repairPlan(parts: PlanParts, belief: Float64Array, stage: Stage, negligible = NEGLIGIBLE): ActNow {
  const points = parts.corrections.length + 1;
  if (space.reach.length < points || space.weight.length !== belief.length) space = workspace(points, belief.length);
  const last = sequence(parts, belief, stage, negligible, space);
  let value = Infinity;
  let first: PlanStep = { kind: 'decide', decision: 0 };
  for (let i = last; i >= 0; i--) {
    const reach = space.reach[i]!;
    const cured = space.cured[i]!;
    const left = reach - cured;
    const after = left <= negligible ? 0 : (left / reach) * value;
    const correction = space.correction[i]!;
    const corrected =
      correction < 0
        ? Infinity
        : space.cost[i]! + (cured / reach) * (space.closing[i]! + parts.verify.again - parts.wrongPart) + after;
    if (space.decided[i]! <= corrected) {
      value = space.decided[i]!;
      if (i === 0) first = { kind: 'decide', decision: space.decision[i]! };
    } else {
      value = corrected;
      if (i === 0) first = { kind: 'correct', correction };
    }
  }
  return { cost: value, first };
}

/** Fills the workspace with the points of the sequence; the index of the last one. */
function sequence(parts: PlanParts, belief: Float64Array, stage: Stage, negligible: number, into: Workspace): number {
  const { corrections, decisions, closeAtEnd } = parts;
  const { weight, alive, left } = into;
  weight.set(belief);
  let open = stage.access;
  // What is gone adds nothing to any sum below; passing over it changes no figure.
  let causes = 0;
  for (let c = 0; c < weight.length; c++) if (weight[c] !== 0) alive[causes++] = c;
  let tries = 0;
  for (let r = 0; r < corrections.length; r++) if (!(stage.failed & (1 << r))) left[tries++] = r;
  let here = stepsFrom(parts, open);
  let way: StepsFrom | null = null;
  let reach = 1;
  for (let i = 0; ; i++) {
    const decided = bestDecision(decisions, weight, reach, alive, causes);
    into.reach[i] = reach;
    into.decided[i] = decided.cost + (closeAtEnd ? here.closing : 0);
    into.decision[i] = decided.index;
    // A correction that shares no cause with another keeps its rate until the access changes.
    if (here !== way || here.shared) ratesOf(corrections, weight, here, left, tries, into.rate);
    way = here;
    let best = -1;
    let rate = 0;
    let place = -1;
    for (let k = 0; k < tries; k++) {
      const r = left[k]!;
      const each = into.rate[r]!;
      if (each <= 0 || (best >= 0 && each <= rate * (1 + 1e-15))) continue;
      best = r;
      place = k;
      rate = each;
    }
    into.correction[i] = best;
    const cured = best < 0 ? 0 : curedShare(corrections[best]!, weight);
    into.cured[i] = cured;
    if (best < 0) return i;
    const then = way.then[best]!;
    if (then !== open) here = stepsFrom(parts, then);
    open = then;
    into.cost[i] = way.cost[best]!;
    into.closing[i] = closeAtEnd ? here.closing : 0;
    if (reach - cured <= negligible) return i;
    for (const { cause, share } of corrections[best]!.cures) weight[cause]! *= 1 - share;
    reach -= cured;
    left.copyWithin(place, place + 1, tries--);
    let still = 0;
    for (let k = 0; k < causes; k++) if (weight[alive[k]!] !== 0) alive[still++] = alive[k]!;
    causes = still;
  }
}

function ratesOf(
  corrections: readonly CorrectionAction[],
  weight: Float64Array,
  { cost }: StepsFrom,
  left: Int32Array,
  tries: number,
  into: Float64Array,
): void {
  for (let k = 0; k < tries; k++) {
    const r = left[k]!;
    into[r] = curedShare(corrections[r]!, weight) / cost[r]!;
  }
}

/**
 * A correction with the proof after it, from a set of open states: the expected cost of this one try, and what is open then.
 * What follows when it did not end the matter is not in it.
 *
 * @param cured  P(it ends the matter).
 */
export function triedCorrection(
  { access, verify, closeAtEnd, wrongPart }: Omit<PlanParts, 'corrections' | 'decisions'>,
  { cost, need }: CorrectionAction,
  open: number,
  cured: number,
): { readonly cost: number; readonly open: number } {
  const there = move(access, open, need);
  const tested = move(access, there.state, verify.need);
  const closing = closeAtEnd ? closingCost(access, tested.state) : 0;
  return {
    cost: cost + there.cost + verify.cost + tested.cost + cured * (closing + verify.again) + (1 - cured) * wrongPart,
    open: tested.state,
  };
}

/** Weight of the causes that a correction would remove. */
export function curedShare(correction: CorrectionAction, weight: Float64Array): number {
  const { cures } = correction;
  let cured = 0;
  // Asked for millions of times while a tree is compiled; an iterator would cost more than the sum.
  for (let i = 0; i < cures.length; i++) cured += weight[cures[i]!.cause]! * cures[i]!.share;
  return cured;
}

/**
 * Decision of least expected loss for weights that sum to `reach`; the first of equals.
 *
 * @param alive  the first `causes` of these are the causes whose weight is not 0; left out = all are looked at.
 */
export function bestDecision(
  decisions: readonly DecisionAction[],
  weight: Float64Array,
  reach: number,
  alive?: Int32Array,
  causes = weight.length,
): { index: number; cost: number } {
  let index = 0;
  let cost = Infinity;
  for (let d = 0; d < decisions.length; d++) {
    const { loss } = decisions[d]!;
    let sum = 0;
    for (let k = 0; k < causes; k++) {
      const c = alive ? alive[k]! : k;
      sum += weight[c]! * loss[c]!;
    }
    if (sum / reach < cost) {
      cost = sum / reach;
      index = d;
    }
  }
  return { index, cost };
}

interface StepsFrom {
  /** Cost of each correction that turns out wrong, with access and proof, and the access open after the proof. */
  readonly cost: Float64Array;
  readonly then: Int32Array;
  /** Cost of closing what is open here. */
  readonly closing: number;
  /** Some cause is cured by two corrections. */
  readonly shared: boolean;
}

/** Corrections seen from a set of open states; asked for thousands of times in one decision. */
const known = new WeakMap<readonly CorrectionAction[], Map<number, StepsFrom>>();

function stepsFrom({ access, corrections, verify, wrongPart }: PlanParts, open: number): StepsFrom {
  const sets = known.get(corrections) ?? new Map<number, StepsFrom>();
  known.set(corrections, sets);
  const before = sets.get(open);
  if (before) return before;
  const cured = corrections.flatMap(({ cures }) => cures.map(({ cause }) => cause));
  const made = {
    cost: new Float64Array(corrections.length),
    then: new Int32Array(corrections.length),
    closing: closingCost(access, open),
    shared: new Set(cured).size < cured.length,
  };
  corrections.forEach(({ cost, need }, r) => {
    const there = move(access, open, need);
    const tested = move(access, there.state, verify.need);
    made.cost[r] = cost + there.cost + verify.cost + tested.cost + wrongPart;
    made.then[r] = tested.state;
  });
  sets.set(open, made);
  return made;
}
