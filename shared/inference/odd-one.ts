import type { Finding } from './finding.ts';

/** A finding with the probability of what was found, before anything is known of this coach. */
export interface Expected {
  readonly finding: Finding;
  readonly expected: number;
}

/** Two results that are equally to be expected; readings well inside one band differ by no more than the second figure. */
const ALIKE = 1e-12;
const ONE_BAND = 1e-3;

/** Those of the findings of one check that were least to be expected, by their place in the list. */
export function leastExpected(found: readonly Expected[]): number[] {
  const least = found.reduce((a, b) => (b.expected < a.expected ? b : a));
  const read = least.finding.value.kind === 'reading';
  return found.flatMap(({ finding, expected }, i) =>
    expected - least.expected <= (read && finding.value.kind === 'reading' ? ONE_BAND : ALIKE) ? [i] : [],
  );
}

/**
 * Of the findings of one check at several places the odd one out: the result that was least to be expected beforehand;
 * of readings equally to be expected the one farthest from the middle of all; else the first.
 *
 * @param found  at least one.
 * @returns its place in the list.
 */
export function oddOf(found: readonly Expected[]): number {
  const middle = middleOf(found);
  const away = (i: number): number => {
    const { value } = found[i]!.finding;
    return middle === null || value.kind !== 'reading' ? 0 : Math.abs(value.value - middle);
  };
  return leastExpected(found).reduce((best, i) => {
    const [a, b] = [away(i), away(best)];
    return a > b || (a === b && found[i]!.expected < found[best]!.expected) ? i : best;
  });
}

/** Median of the readings, in the unit of the check; null when there is none. */
export function middleOf(found: readonly { readonly finding: Finding }[]): number | null {
  const values = found
    .flatMap(({ finding: { value } }) => (value.kind === 'reading' ? [value.value] : []))
    .sort((a, b) => a - b);
  if (values.length === 0) return null;
  const half = Math.floor(values.length / 2);
  return values.length % 2 === 1 ? values[half]! : (values[half - 1]! + values[half]!) / 2;
}
