import type { CheckTable } from '../../inference/index.ts';
import type { SeenOption } from './card.ts';

/** A result counts as expected when it is at most this much less likely than the likeliest. Judgement. */
export const AS_GOOD = 0.1;
/** Between the last result that counts and the first that does not: less cannot be defended. Judgement. */
const CLEAR = 0.05;

/** What a check shows under a cause, each result with its judged share, in the order of the tree. */
export function seenUnder({ check, likelihood }: CheckTable, cause: number): SeenOption[] {
  const shares = likelihood.map((row) => row[cause]!);
  const best = Math.max(...shares);
  return check.results.map(({ id, label }, r) => ({
    result: id,
    label,
    share: shares[r]!,
    accepted: shares[r]! >= best - AS_GOOD,
  }));
}

/**
 * Whether there is something to choose, and one set of answers to defend: not everything counts, and what counts stands
 * clear of what does not.
 */
export function decidable(options: readonly SeenOption[]): boolean {
  const right = options.filter(({ accepted }) => accepted).map(({ share }) => share);
  const wrong = options.filter(({ accepted }) => !accepted).map(({ share }) => share);
  return wrong.length > 0 && Math.min(...right) - Math.max(...wrong) >= CLEAR;
}
