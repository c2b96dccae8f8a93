import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';

/** A figure worked out from observations, with one standard uncertainty in its unit. */
export interface WorkedFigure {
  readonly value: number;
  readonly uncertainty: number;
}

export type RepeatRefusal = OutOfRange | 'too-few';

/** Five repeats are more than anybody does in a yard; above that a list has slipped. */
const MOST = 60;

/**
 * The mean of repeated readings. What the instrument gets wrong every time stays; only the scatter falls with repeats.
 *
 * @param lookUncertainty  one standard uncertainty of a single look, unit of the readings, 0 or more.
 * @param systematic       what all of them share (a gauge's own error), same unit.
 * @returns refused `too-few` without a reading; `out-of-range`.
 * @source Type A of the scatter, or the look over √n where that is larger; added in squares to the shared part: GUM,
 *   JCGM 100:2008, 4.2 and 5.1 (memory).
 */
export function meanOfRepeats(
  readings: readonly number[],
  lookUncertainty: number,
  systematic = 0,
): Outcome<WorkedFigure & { readonly scatter: number | null }, RepeatRefusal> {
  const bad = spansOf(readings, lookUncertainty) ?? outOfRange(['shared uncertainty', systematic, 0, 1e6, '']);
  if (bad) return bad;
  if (readings.length === 0) return refuse('too-few', 'There is no reading yet. Take one, better three.');
  const n = readings.length;
  const value = readings.reduce((sum, each) => sum + each, 0) / n;
  const scatter = n < 2 ? null : Math.sqrt(readings.reduce((sum, each) => sum + (each - value) ** 2, 0) / (n - 1));
  const random = Math.max(lookUncertainty, scatter ?? 0) / Math.sqrt(n);
  return { ok: true, value, uncertainty: Math.hypot(random, systematic), scatter };
}

/**
 * The largest reading minus the smallest: run-out, uneven tread.
 *
 * @returns refused `too-few` with fewer than three places; `out-of-range`.
 * @source Difference of two looks, √2·u (GUM). With few places the true range is larger, never smaller.
 */
export function widestSpread(
  readings: readonly number[],
  lookUncertainty: number,
): Outcome<WorkedFigure, RepeatRefusal> {
  const bad = spansOf(readings, lookUncertainty);
  if (bad) return bad;
  if (readings.length < 3)
    return refuse('too-few', `Found ${readings.length}; three places round it are the least, six are better.`);
  return {
    ok: true,
    value: Math.max(...readings) - Math.min(...readings),
    uncertainty: Math.SQRT2 * lookUncertainty,
  };
}

function spansOf(readings: readonly number[], lookUncertainty: number) {
  return outOfRange(
    ['number of readings', readings.length, 0, MOST, ''],
    ['uncertainty of a look', lookUncertainty, 0, 1e6, ''],
    ...readings.map((each, i) => [`reading ${i + 1}`, each, -1e6, 1e6, ''] as const),
  );
}
