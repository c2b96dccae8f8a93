import { separatingManoeuvres, type Manoeuvre } from './manoeuvres.ts';
import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';
import type { RotatingGroup, RotatingLine } from './rotating-orders.ts';

export interface MeasuredBeat {
  readonly frequencyHz: number;
  /** Width of a bin of the spectrum; for a beat counted by ear, one over the seconds counted. */
  readonly binHz: number;
  /** Refined between bins. */
  readonly interpolated: boolean;
  /** By how much the speed drifted during the record, as a share; above 0.02 nothing is matched. */
  readonly speedDrift: number;
}

export interface LineMatch {
  readonly line: RotatingLine;
  /** Distance in standard uncertainties of both together. */
  readonly z: number;
  /** Up to 2, up to 3, beyond. */
  readonly fit: 'fits' | 'doubtful' | 'does-not-fit';
  readonly posterior: number;
}

export interface BeatMatch {
  readonly lines: readonly LineMatch[];
  /** Summed over the lines of a group. */
  readonly groups: ReadonlyMap<RotatingGroup, number>;
  /** That the beat is none of these. */
  readonly none: number;
  readonly verdict: 'one-group' | 'cannot-be-separated' | 'doubtful' | 'none-fits';
  /** Groups that fit, in the order of the lines. */
  readonly fitting: readonly RotatingGroup[];
  /** What would tell the first two fitting groups apart, safest first; the caution of each stands in `cautionFor`. */
  readonly separateBy: readonly Manoeuvre[];
}

export interface SearchSpan {
  readonly lowHz: number;
  readonly highHz: number;
}

/** Share given to "none of these" before looking (judgement). */
const NONE = 0.1;

export type MatchRefusal = OutOfRange | 'no-lines' | 'outside-search' | 'speed-not-steady';

/**
 * Which rotating group a measured beat fits, within what speed, tyre and bin width leave open.
 *
 * @param lines   from `rotatingLines`.
 * @param search  span in which a beat would have been seen, within 2…20 000 Hz.
 * @returns refused `no-lines`, `outside-search` (also below 3 Hz), `speed-not-steady`, `out-of-range`. Where two groups
 *   fit, the answer is that this speed and gear cannot separate them, never a cause.
 * @source Normal densities about each line with σ² = u_line² + u_beat²; "none" spread evenly over the search. Bin
 *   uncertainty Δf/√12, with interpolation about 0.1·Δf.
 */
export function matchBeat(
  beat: MeasuredBeat,
  lines: readonly RotatingLine[],
  search: SearchSpan,
): Outcome<BeatMatch, MatchRefusal> {
  const bad = outOfRange(
    ['beat', beat.frequencyHz, 0, 20_000, 'Hz'],
    ['bin width', beat.binHz, 0.001, 50, 'Hz'],
    ['drift of the speed', beat.speedDrift, 0, 1, ''],
    ['low end of the search', search.lowHz, 0.5, 10_000, 'Hz'],
    ['high end of the search', search.highHz, search.lowHz + 1, 20_000, 'Hz'],
  );
  if (bad) return bad;
  if (lines.length === 0) return refuse('no-lines', 'There is nothing to match with: give speed and tyre first.');
  if (beat.frequencyHz < Math.max(3, search.lowHz) || beat.frequencyHz > search.highHz) {
    return refuse(
      'outside-search',
      `A beat of ${beat.frequencyHz} Hz lies outside ${Math.max(3, search.lowHz)} to ${search.highHz} Hz, where this record can be trusted.`,
    );
  }
  if (beat.speedDrift > 0.02) {
    return refuse(
      'speed-not-steady',
      `The speed changed by ${(100 * beat.speedDrift).toFixed(1)} % during the record; 2 % is the most. Hold it and record again.`,
    );
  }
  const own = beatUncertaintyHz(beat);
  const likelihoods = lines.map((each) => {
    const sigma = Math.hypot(each.uncertaintyHz, own);
    const z = Math.abs(beat.frequencyHz - each.frequencyHz) / sigma;
    return { z, density: Math.exp((-z * z) / 2) / (sigma * Math.sqrt(2 * Math.PI)) };
  });
  const share = (1 - NONE) / lines.length;
  const noneWeight = NONE / (search.highHz - search.lowHz);
  const total = likelihoods.reduce((sum, each) => sum + share * each.density, noneWeight);
  const matches = lines.map((line, i): LineMatch => ({
    line,
    z: likelihoods[i]!.z,
    fit: likelihoods[i]!.z <= 2 ? 'fits' : likelihoods[i]!.z <= 3 ? 'doubtful' : 'does-not-fit',
    posterior: (share * likelihoods[i]!.density) / total,
  }));
  return { ok: true, ...verdictOf(matches), lines: matches, groups: groupShares(matches), none: noneWeight / total };
}

/** One standard uncertainty of a beat read off a spectrum, Hz. */
function beatUncertaintyHz(beat: MeasuredBeat): number {
  const reading = beat.interpolated ? 0.1 * beat.binHz : beat.binHz / Math.sqrt(12);
  return Math.hypot(reading, (beat.frequencyHz * beat.speedDrift) / Math.sqrt(12));
}

function groupShares(matches: readonly LineMatch[]): ReadonlyMap<RotatingGroup, number> {
  const shares = new Map<RotatingGroup, number>();
  for (const { line, posterior } of matches) shares.set(line.group, (shares.get(line.group) ?? 0) + posterior);
  return shares;
}

function verdictOf(matches: readonly LineMatch[]): Pick<BeatMatch, 'verdict' | 'fitting' | 'separateBy'> {
  const groupsOf = (fit: LineMatch['fit']): readonly RotatingGroup[] => [
    ...new Set(matches.filter((match) => match.fit === fit).map((match) => match.line.group)),
  ];
  const fitting = groupsOf('fits');
  if (fitting.length > 1) {
    return { verdict: 'cannot-be-separated', fitting, separateBy: separatingManoeuvres(fitting[0]!, fitting[1]!) };
  }
  if (fitting.length === 1) return { verdict: 'one-group', fitting, separateBy: [] };
  return { verdict: groupsOf('doubtful').length > 0 ? 'doubtful' : 'none-fits', fitting, separateBy: [] };
}
