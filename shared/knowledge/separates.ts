import type { Check } from './tree.ts';

/** Smallest ratio of two likelihoods of one result that counts as telling causes apart. Judgement. */
export const TELLS = 2;

/**
 * Whether a check tells two causes apart: a result that is at all likely is much likelier under one of them.
 *
 * @param i, j  places of the causes in the tree.
 */
export function separates(check: Check, i: number, j: number): boolean {
  return check.results.some((_, r) => {
    const [x, y] = [check.likelihood[i]![r]!, check.likelihood[j]![r]!];
    return Math.max(x, y) >= TELLS * Math.min(x, y) && Math.max(x, y) >= 0.1;
  });
}
