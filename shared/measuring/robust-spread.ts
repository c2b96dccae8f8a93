import { outOfRange, type Outcome, type OutOfRange } from './outcome.ts';

/** 75 % point of the normal distribution: the median deviation of normal data is this share of its standard deviation. */
const NORMAL_MAD = 0.6745;

export interface RobustSpread {
  readonly median: number;
  /** Median absolute deviation from the median, as found. */
  readonly medianDeviation: number;
  /** Modified z-score of each value, in their order. */
  readonly scores: readonly number[];
}

/** The middle value; the mean of the two middle ones. @param values one or more numbers. */
export function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/**
 * Modified z-scores: how far each value lies from the middle, in units that one wild value cannot stretch.
 *
 * @param values  3…1000 of them. The usual z-score cannot exceed (n − 1)/√n and so never finds one of four.
 * @param floor   smallest spread, in the unit of the values, that counts as one standard deviation; 0 = none.
 * @source Iglewicz & Hoaglin, NIST/SEMATECH e-Handbook 1.3.5.17 (seen): 0.6745·(x − median)/MAD. With MAD 0 the mean
 *   absolute deviation × 1.253314 takes its place (common software practice). All values equal: every score 0.
 */
export function modifiedScores(values: readonly number[], floor = 0): Outcome<RobustSpread, OutOfRange> {
  const bad = outOfRange(
    ['number of values', values.length, 3, 1000, ''],
    ['floor', floor, 0, 1e9, ''],
    ...values.map((value, i) => [`value ${i + 1}`, value, -1e9, 1e9, ''] as const),
  );
  if (bad) return bad;
  const median = medianOf(values);
  const away = values.map((value) => Math.abs(value - median));
  const medianDeviation = medianOf(away);
  const meanDeviation = away.reduce((sum, each) => sum + each, 0) / away.length;
  const sigma = Math.max(medianDeviation > 0 ? medianDeviation / NORMAL_MAD : 1.253314 * meanDeviation, floor);
  return {
    ok: true,
    median,
    medianDeviation,
    scores: values.map((value) => (sigma > 0 ? (value - median) / sigma : 0)),
  };
}
