import { resultWeights } from './evidence.ts';
import type { Finding } from './finding.ts';
import type { BeliefModel } from './model.ts';
import { leastExpected, middleOf, oddOf } from './odd-one.ts';

/** What stands out among the findings of one check at several places. */
export interface StandingOut {
  /** The finding that counts for the belief. */
  readonly counts: Finding;
  /** Findings that stand out beside the others, the one that counts among them; empty when all are alike. */
  readonly odd: readonly Finding[];
  /**
   * `least-expected`: its result was least to be expected; `farthest`: all fall into one result, and it lies farthest from
   * the middle; `alike`: nothing tells the places apart.
   */
  readonly why: 'least-expected' | 'farthest' | 'alike';
  /** Share of coaches with this complaint on which a look at one place shows that, before anything is known; 0 to 1. */
  readonly share: number;
  /** Median of the readings in the unit of the check; null without readings. */
  readonly middle: number | null;
}

/**
 * Which place of a check stands out, by the very rule that the belief follows.
 *
 * @param findings  of one check, one a place.
 * @returns null when none of them carries weight.
 * @throws {ReadingError} for a reading that no band of the check expects.
 */
export function standingOut(model: BeliefModel, check: string, findings: readonly Finding[]): StandingOut | null {
  const table = model.tables.get(check);
  if (!table) return null;
  const found = findings.flatMap((finding) => {
    const weights = finding.check === check ? resultWeights(table, finding) : null;
    return weights
      ? [{ finding, expected: weights.reduce((sum, weight, r) => sum + weight * table.expected[r]!, 0) }]
      : [];
  });
  if (found.length === 0) return null;
  const { finding: counts, expected: share } = found[oddOf(found)]!;
  const least = leastExpected(found).map((i) => found[i]!.finding);
  const middle = middleOf(found);
  const all = { counts, share, middle };
  if (least.length < found.length) return { ...all, odd: least, why: 'least-expected' };
  const apart = counts.value.kind === 'reading' && counts.value.value !== middle;
  return found.length > 1 && apart ? { ...all, odd: [], why: 'farthest' } : { ...all, odd: [], why: 'alike' };
}
