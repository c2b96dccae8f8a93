import { judgeBand, type BandJudgement, type Limit } from './limit.ts';
import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';

const SOURCE = 'TMC RP 618 / 618A, as several bearing and seal sheets reprint it';
const COMMON = { unit: 'in', atLimit: 'passes', source: SOURCE, status: 'second-hand' } as const;
const LEAST: Limit = { ...COMMON, id: 'wheel-bearing-end-play-least', value: 0.001, side: 'at-least' };
const MOST: Limit = { ...COMMON, id: 'wheel-bearing-end-play-most', value: 0.005, side: 'at-most' };

/** A dial indicator with 0.001 in divisions read to half of one: one standard uncertainty (judgement). */
export const DIAL_UNCERTAINTY_IN = 0.0005 / Math.sqrt(3);

/**
 * Wheel-bearing end play by dial indicator, conventional bearings adjusted by hand.
 *
 * Indicator base on hub or drum, plunger on the spindle end, line of action along the spindle; push and pull at 3 and 9
 * o'clock while turning the wheel a little. Total movement is the end play.
 *
 * @param unitised  hub units and self-locking single nuts have their maker's procedure only.
 * @returns `redo` says why the adjustment must be done again, null when it need not: no movement may be heavy preload.
 *   Refused `makers-procedure`, `out-of-range`.
 * @source 0.001 to 0.005 in, TMC RP 618 (second-hand, four reprints).
 */
export function judgeEndPlay(
  endPlayIn: number,
  uncertaintyIn: number = DIAL_UNCERTAINTY_IN,
  unitised = false,
): Outcome<
  BandJudgement & { readonly redo: 'preload-not-known' | 'too-loose' | null },
  OutOfRange | 'makers-procedure'
> {
  if (unitised) {
    return refuse(
      'makers-procedure',
      'Hub units and self-locking nuts are judged by their maker’s procedure only; the common band does not hold for them.',
    );
  }
  const bad = outOfRange(['end play', endPlayIn, 0, 0.5, 'in'], ['uncertainty', uncertaintyIn, 0, 0.05, 'in']);
  if (bad) return bad;
  const band = judgeBand(endPlayIn, uncertaintyIn, LEAST, MOST);
  const redo =
    band.low.comparison === 'beyond' ? 'preload-not-known' : band.high.comparison === 'beyond' ? 'too-loose' : null;
  return { ok: true, ...band, redo };
}
