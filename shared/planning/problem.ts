import type { AccessGraph, AccessNeed } from './access.ts';

/**
 * A troubleshooting problem: one fault among some causes, checks that tell them apart, corrections that remove them, a
 * test after each correction, and decisions that end the matter. Costs are in one unit, minutes or their money's worth.
 *
 * `K` is the state of knowledge, whatever the problem makes of it: answers given so far. Beliefs are aligned with the
 * causes and sum to 1.
 */
export interface Problem<K> {
  readonly causes: number;
  readonly access: AccessGraph;
  readonly corrections: readonly CorrectionAction[];
  readonly checks: readonly CheckAction[];
  /** Done after each correction. `again`: what is added on average when the fault is gone and the proof says it is not. */
  readonly verify: { readonly cost: number; readonly need: AccessNeed; readonly again: number };
  readonly decisions: readonly DecisionAction[];
  readonly closeAtEnd: boolean;
  /** Added to a correction that did not end it, with what it costs on average that the proof misses it. */
  readonly wrongPart: number;
  belief(knowledge: K): Float64Array;
  /** Indices of checks not made yet that can be made. */
  openChecks(knowledge: K): readonly number[];
  /** P(result) and belief after each result. */
  outlook(knowledge: K, check: number): { readonly share: ArrayLike<number>; readonly after: readonly Float64Array[] };
  /** Knowledge after a result; only solvers that look further than one step need it. */
  learn(knowledge: K, check: number, result: number): K;
  /** Expected cost and first step of the best plan without further checks. */
  actNow(belief: Float64Array, stage: Stage): ActNow;
}

/** What ends or continues a plan: a correction or a decision, by index. */
export type PlanStep =
  { readonly kind: 'correct'; readonly correction: number } | { readonly kind: 'decide'; readonly decision: number };

export interface ActNow {
  readonly cost: number;
  readonly first: PlanStep;
}

export interface CheckAction {
  readonly id: string;
  readonly cost: number;
  readonly need: AccessNeed;
}

export interface CorrectionAction {
  readonly id: string;
  readonly cost: number;
  readonly need: AccessNeed;
  /** P(the fault is gone | cause), only the causes that it can cure. */
  readonly cures: readonly { readonly cause: number; readonly share: number }[];
}

export interface DecisionAction {
  readonly id: string;
  /** One a cause. */
  readonly loss: Float64Array;
}

/** The part of a situation that is not knowledge: what is open, which corrections failed. */
export interface Stage {
  readonly access: number;
  /** Bit i: correction i was done and did not end it. */
  readonly failed: number;
}
