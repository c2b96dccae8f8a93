import { normalCdf } from './normal.ts';
import { studentCdf } from './student.ts';

/** How the figure of a limit was read; the same words as in the vocabulary of limits. */
export type LimitStatus = 'seen' | 'second-hand' | 'memory' | 'practice' | 'judgement';

export interface Limit {
  /** Never reused; the same figure from another source is another limit. */
  readonly id: string;
  readonly value: number;
  readonly unit: string;
  readonly side: 'at-most' | 'at-least';
  /** A reading exactly at the figure: it passes, it does not, or two sources say different things. */
  readonly atLimit: 'passes' | 'fails' | 'sources-differ';
  readonly source: string;
  readonly status: LimitStatus;
}

/** A bare comparison of two figures, as the rule does it: no uncertainty. */
export type Comparison = 'within' | 'at-limit' | 'beyond';

/** What may be said about the true value. */
export type Decision = 'meets' | 'too-close' | 'fails';

export interface Judgement {
  readonly limit: Limit;
  readonly comparison: Comparison;
  /** How far inside the limit, in its unit; negative beyond. */
  readonly margin: number;
  /** Probability that the true value meets the limit. */
  readonly probabilityMeets: number;
  readonly decision: Decision;
  /** For brakes, air, steering and wheel ends "too close" counts against driving, though it stays open for the diagnosis. */
  readonly againstDriving: boolean;
}

/** A decision is called when the probability reaches this on either side: judgement. */
export const DECIDED = 0.95;

/**
 * A reading held against a limit: the bare comparison, and what the reading's uncertainty allows to be said.
 *
 * @param uncertainty  one standard uncertainty in the limit's unit, 0 or more; 0 takes the reading as exact.
 * @param dof          degrees of freedom behind the uncertainty; left out = well known (normal distribution).
 * @source Conformity probability with a flat prior, JCGM 106:2012 (memory, its worked examples recomputed in the tests).
 */
export function judge(value: number, uncertainty: number, limit: Limit, dof?: number): Judgement {
  const margin = limit.side === 'at-most' ? limit.value - value : value - limit.value;
  const at = Math.abs(margin) <= 1e-9 * Math.max(1, Math.abs(limit.value));
  const comparison: Comparison = at ? 'at-limit' : margin > 0 ? 'within' : 'beyond';
  const probabilityMeets = uncertainty > 0 ? share(margin / uncertainty, dof) : bare(comparison, limit.atLimit);
  const decision: Decision =
    probabilityMeets >= DECIDED ? 'meets' : probabilityMeets <= 1 - DECIDED ? 'fails' : 'too-close';
  return { limit, comparison, margin, probabilityMeets, decision, againstDriving: decision !== 'meets' };
}

function share(z: number, dof: number | undefined): number {
  return dof === undefined ? normalCdf(z) : studentCdf(z, dof);
}

function bare(comparison: Comparison, atLimit: Limit['atLimit']): number {
  if (comparison === 'within') return 1;
  if (comparison === 'beyond') return 0;
  return atLimit === 'passes' ? 1 : atLimit === 'fails' ? 0 : 0.5;
}

/** The strictest verdict of several: one that fails fails them all, one too close leaves them open. */
export function worstOf(decisions: readonly Decision[]): Decision {
  if (decisions.includes('fails')) return 'fails';
  return decisions.includes('too-close') ? 'too-close' : 'meets';
}

/** A value held against both ends of a band. */
export interface BandJudgement {
  readonly low: Judgement;
  readonly high: Judgement;
  readonly decision: Decision;
}

/** A reading held against a lower and an upper limit; decided by the worse of the two. */
export function judgeBand(value: number, uncertainty: number, low: Limit, high: Limit): BandJudgement {
  const below = judge(value, uncertainty, low);
  const above = judge(value, uncertainty, high);
  return { low: below, high: above, decision: worstOf([below.decision, above.decision]) };
}
