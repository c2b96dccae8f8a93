import type { Finding, Posterior } from '../../inference/index.ts';
import { clearResult } from '../clear-result.ts';
import { closingCost, type AccessNeed } from '../access.ts';
import type { PlanStep } from '../problem.ts';
import { triedCorrection, type PlanParts } from '../repair-plan.ts';
import type { TreeProblem } from '../tree-problem.ts';

/** Chance below which a correction is taken as certain to end the matter. */
const NOTHING_LEFT = 1e-12;

/** A tree as plain arrays, for looking many steps ahead: thousands of states are visited for one answer. */
export interface FarTables {
  /** P(result | cause): check, result, cause. */
  readonly rows: readonly (readonly Float64Array[])[];
  /** Square roots of the same: what a damped finding counts. */
  readonly roots: readonly (readonly Float64Array[])[];
  readonly group: readonly number[];
  readonly sharpness: readonly number[];
  readonly cost: readonly number[];
  readonly need: readonly AccessNeed[];
  /** Any of these answers opens the check; empty = always open. */
  readonly requires: readonly (readonly { readonly check: number; readonly results: readonly number[] }[])[];
  /** Whether this person could do the check at all, prerequisites aside. */
  readonly usable: readonly boolean[];
}

/** The finding of an evidence group that counts in full. */
interface Leader {
  readonly sharpness: number;
  readonly root: Float64Array;
}

/** What is known, and how far the coach is taken apart and put right. */
export interface FarState {
  readonly belief: Float64Array;
  /** One character a check: 0 = not made, 1 = made without a clear result, r + 2 = result r. */
  readonly answers: string;
  readonly leaders: readonly (Leader | null)[];
  readonly access: number;
  readonly failed: number;
}

/** What can be done in a state. */
export type FarStep = PlanStep | { readonly kind: 'check'; readonly check: number };

/** Tables of a problem. `usable` says which checks this person can do, whether or not their prerequisites are met. */
export function farTables(problem: TreeProblem, usable: readonly boolean[]): FarTables {
  const { checksOf, checks, model } = problem;
  const tables = checksOf.map(({ id }) => model.tables.get(id)!);
  return {
    rows: tables.map(({ likelihood }) => likelihood),
    roots: tables.map(({ likelihood }) => likelihood.map((row) => row.map(Math.sqrt))),
    group: tables.map(({ group }) => group),
    sharpness: tables.map(({ sharpness }) => sharpness),
    cost: checks.map(({ cost }) => cost),
    need: checks.map(({ need }) => need),
    requires: checksOf.map(({ requires }) =>
      requires.map(({ check, results }) => {
        const k = checksOf.findIndex(({ id }) => id === check);
        return { check: k, results: results.map((each) => checksOf[k]!.results.findIndex(({ id }) => id === each)) };
      }),
    ),
    usable,
  };
}

/** The state of knowledge that a situation is in. */
export function farStart(problem: TreeProblem): FarState {
  const { checksOf, model, start, stage } = problem;
  return {
    belief: start.now.probability,
    answers: String.fromCharCode(...checksOf.map((check) => answerOf(check, start.findings))),
    leaders: leadersIn(start.now, model.groupCount),
    access: stage.access,
    failed: stage.failed,
  };
}

function answerOf(check: TreeProblem['checksOf'][number], findings: readonly Finding[]): number {
  const finding = findings.find((each) => each.check === check.id);
  if (!finding) return 0;
  const result = clearResult(check, finding);
  return result === null ? 1 : check.results.findIndex(({ id }) => id === result) + 2;
}

function leadersIn({ evidence }: Posterior, groups: number): (Leader | null)[] {
  const leaders: (Leader | null)[] = Array.from({ length: groups }, () => null);
  for (const { table, exponent, log } of evidence) {
    if (table.group >= 0 && exponent === 1)
      leaders[table.group] = { sharpness: table.sharpness, root: log.map((each) => Math.exp(each / 2)) };
  }
  return leaders;
}

/** Whether a check can be made in a state. */
export function isOpen(tables: FarTables, { answers }: FarState, check: number): boolean {
  if (!tables.usable[check] || answers.charCodeAt(check) !== 0) return false;
  const requires = tables.requires[check]!;
  return requires.length === 0 || requires.some((each) => each.results.includes(answers.charCodeAt(each.check) - 2));
}

/** P(result) of a check in a state. */
export function sharesOf(tables: FarTables, { belief }: FarState, check: number): number[] {
  return tables.rows[check]!.map((row) => {
    let share = 0;
    for (let c = 0; c < row.length; c++) share += belief[c]! * row[c]!;
    return share;
  });
}

/** Belief after a result; damped as `posterior` would. */
export function beliefAfter(tables: FarTables, state: FarState, check: number, result: number): Float64Array {
  const { belief } = state;
  const group = tables.group[check]!;
  const leader = group < 0 ? null : state.leaders[group]!;
  const after = new Float64Array(belief.length);
  let sum = 0;
  if (leader && leader.sharpness >= tables.sharpness[check]!) {
    const root = tables.roots[check]![result]!;
    for (let c = 0; c < after.length; c++) sum += after[c] = belief[c]! * root[c]!;
  } else {
    const row = tables.rows[check]![result]!;
    for (let c = 0; c < after.length; c++)
      sum += after[c] = leader ? (belief[c]! * row[c]!) / leader.root[c]! : belief[c]! * row[c]!;
  }
  for (let c = 0; c < after.length; c++) after[c]! /= sum;
  return after;
}

/** State after a result, with the access that the check left open. */
export function learned(tables: FarTables, state: FarState, check: number, result: number, access: number): FarState {
  const group = tables.group[check]!;
  const sharpness = tables.sharpness[check]!;
  const leads = group >= 0 && (state.leaders[group]?.sharpness ?? -1) < sharpness;
  return {
    belief: beliefAfter(tables, state, check, result),
    answers: state.answers.slice(0, check) + String.fromCharCode(result + 2) + state.answers.slice(check + 1),
    leaders: leads
      ? state.leaders.map((each, g) => (g === group ? { sharpness, root: tables.roots[check]![result]! } : each))
      : state.leaders,
    access,
    failed: state.failed,
  };
}

/** What a decision costs in a state, with closing what is open. */
export function decided(parts: PlanParts, state: FarState, decision: number): number {
  const closing = parts.closeAtEnd ? closingCost(parts.access, state.access) : 0;
  return dot(state.belief, parts.decisions[decision]!.loss) + closing;
}

/** Σ a·b: what something costs on average over the belief. */
export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let c = 0; c < a.length; c++) sum += a[c]! * b[c]!;
  return sum;
}

/**
 * A correction with its proof: what it costs on average until it is proven or not, how likely it does not end the matter, and the
 * state in which it then leaves things; null when nothing is left.
 */
export function corrected(
  parts: PlanParts,
  state: FarState,
  correction: number,
): { readonly cost: number; readonly left: number; readonly next: FarState | null } {
  const tried = parts.corrections[correction]!;
  const belief = Float64Array.from(state.belief);
  let cured = 0;
  for (const { cause, share } of tried.cures) {
    cured += belief[cause]! * share;
    belief[cause]! *= 1 - share;
  }
  const { cost, open } = triedCorrection(parts, tried, state.access, cured);
  // Summed, not 1 − cured: that can leave a rounding error where nothing is left.
  const left = belief.reduce((sum, p) => sum + p, 0);
  if (left < NOTHING_LEFT) return { cost, left: 0, next: null };
  for (let c = 0; c < belief.length; c++) belief[c]! /= left;
  return { cost, left, next: { ...state, belief, access: open, failed: state.failed | (1 << correction) } };
}
