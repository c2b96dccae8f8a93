import type { Check } from '../knowledge/tree.ts';
import { normalCdf } from '../measuring/normal.ts';

/** A reading that no band of its check expects. The message is for the user. */
export class ReadingError extends Error {
  readonly code = 'reading-outside';
  constructor(message: string) {
    super(message);
    this.name = 'ReadingError';
  }
}

/** How a reading lies among the bands of a check. */
export interface BandReading {
  /** Share of each result of the check; 0 for states without a range; sums to 1. */
  readonly shares: readonly number[];
  /** Weight of each result as evidence: P'(reading | cause) ∝ Σ weight·P(result | cause). Sums to 1. */
  readonly weights: readonly number[];
  /** Most likely band, by share; ties to the earlier. */
  readonly result: string;
  /** No band holds the true value with .95 or more: measure again, longer or with a finer instrument. */
  readonly tooClose: boolean;
}

/** Conformity is called when the probability reaches this. */
const DECIDED = 0.95;
/** Beyond this many standard uncertainties from every edge a reading is as good as certain. */
const FAR = 4;

/**
 * Spreads a reading over the bands of a measuring check by its uncertainty.
 *
 * @param value        in the check's unit.
 * @param uncertainty  one standard uncertainty, same unit, 0 or more.
 * @param range        what the instrument can show; closes open-ended bands where widths matter.
 * @throws {ReadingError} when the reading lies more than four standard uncertainties outside every band.
 * @source Share of a band: normal measurement error with a flat prior, JCGM 106:2012 (from memory), q = Φ((hi − y)/u) −
 *   Φ((lo − y)/u). Evidence: virtual evidence, Pearl 1988; weights q where neighbouring bands are about equally wide,
 *   q/width where the widths of the two bands around the reading differ by more than a factor of 2, which is exact when
 *   the value is spread evenly inside each band.
 */
export function readBands(
  check: Check,
  value: number,
  uncertainty: number,
  range: readonly [number, number],
): BandReading {
  const bands = check.results
    .map((result, index) => ({ index, range: result.range }))
    .filter((band): band is { index: number; range: readonly [number | null, number | null] } => band.range !== null);
  const raw = check.results.map(() => 0);
  for (const {
    index,
    range: [low, high],
  } of bands) {
    raw[index] =
      uncertainty === 0
        ? Number((low === null || value >= low) && (high === null || value < high))
        : cdf(high, value, uncertainty, 1) - cdf(low, value, uncertainty, 0);
  }
  const total = raw.reduce((sum, share) => sum + share, 0);
  const gap = distanceOutside(
    bands.map((band) => band.range),
    value,
  );
  if (total <= 0 || gap > FAR * uncertainty) {
    throw new ReadingError(
      `A reading of ${value} lies outside what this check expects. Look at the unit, or read again.`,
    );
  }
  const shares = raw.map((share) => share / total);
  let best = 0;
  for (let i = 1; i < shares.length; i++) if (shares[i]! > shares[best]!) best = i;
  return {
    shares,
    weights: evidenceWeights(shares, check, range),
    result: check.results[best]!.id,
    tooClose: shares[best]! < DECIDED,
  };
}

function cdf(edge: number | null, value: number, uncertainty: number, open: 0 | 1): number {
  return edge === null ? open : normalCdf((edge - value) / uncertainty);
}

function distanceOutside(ranges: readonly (readonly [number | null, number | null])[], value: number): number {
  return Math.min(
    ...ranges.map(([low, high]) => Math.max(low === null ? 0 : low - value, high === null ? 0 : value - high, 0)),
  );
}

function evidenceWeights(
  shares: readonly number[],
  check: Check,
  [least, most]: readonly [number, number],
): readonly number[] {
  const touched = shares.map((share, i) => ({ share, i })).filter(({ share }) => share > 1e-6);
  if (touched.length < 2) return shares;
  const width = (i: number): number => {
    const [low, high] = check.results[i]!.range!;
    return Math.max((high ?? most) - (low ?? least), Number.MIN_VALUE);
  };
  const [first, second] = [...touched].sort((a, b) => b.share - a.share);
  const ratio = width(first!.i) / width(second!.i);
  if (ratio <= 2 && ratio >= 0.5) return shares;
  const weighted = shares.map((share, i) => (share > 0 ? share / width(i) : 0));
  const total = weighted.reduce((sum, each) => sum + each, 0);
  return weighted.map((each) => each / total);
}
