import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';

export interface StraightLine {
  readonly slope: number;
  readonly intercept: number;
  /** Standard deviations from the scatter about the line, n − 2 degrees of freedom; null for two points, which have none. */
  readonly scatter: { readonly slope: number; readonly intercept: number; readonly residual: number } | null;
  /** Σ(x − mean)²; a known uncertainty u of every y gives the slope the uncertainty u/√sumOfSquares. */
  readonly sumOfSquares: number;
  readonly points: number;
}

export type LineRefusal = OutOfRange | 'too-few-points' | 'all-at-one-place';

/**
 * Ordinary least-squares line y = intercept + slope·x; errors in y only.
 *
 * @param x, y  two or more pairs, any order, finite, magnitudes up to 1e9.
 * @returns refused `too-few-points`, `all-at-one-place` (every x equal) or `out-of-range`.
 * @source Textbook linear regression; checked against NIST StRD "Norris" in the tests. Means are taken off first so that
 *   large offsets do not eat the digits.
 */
export function straightLine(x: readonly number[], y: readonly number[]): Outcome<StraightLine, LineRefusal> {
  const n = Math.min(x.length, y.length);
  if (n < 2 || x.length !== y.length) {
    return refuse('too-few-points', `A line needs two or more pairs; found ${x.length} and ${y.length} figures.`);
  }
  const bad = outOfRange(...[...x, ...y].map((value) => ['figure', value, -1e9, 1e9, ''] as const));
  if (bad) return bad;
  const meanX = mean(x);
  const meanY = mean(y);
  const sumOfSquares = x.reduce((sum, each) => sum + (each - meanX) ** 2, 0);
  if (!(sumOfSquares > 0)) {
    return refuse('all-at-one-place', 'Every reading has the same time or place; a rate needs two different ones.');
  }
  const slope = x.reduce((sum, each, i) => sum + (each - meanX) * (y[i]! - meanY), 0) / sumOfSquares;
  const intercept = meanY - slope * meanX;
  const residuals = x.reduce((sum, each, i) => sum + (y[i]! - meanY - slope * (each - meanX)) ** 2, 0);
  const residual = n > 2 ? Math.sqrt(residuals / (n - 2)) : 0;
  return {
    ok: true,
    slope,
    intercept,
    scatter:
      n > 2
        ? {
            slope: residual / Math.sqrt(sumOfSquares),
            intercept: residual * Math.sqrt(1 / n + meanX ** 2 / sumOfSquares),
            residual,
          }
        : null,
    sumOfSquares,
    points: n,
  };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, each) => sum + each, 0) / values.length;
}
