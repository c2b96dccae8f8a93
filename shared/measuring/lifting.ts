import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';

/** For the jerk of a lift and for weights that are not known to the pound: judgement, not from a standard. */
export const LIFT_FACTOR = 1.25;
const LB_PER_US_TON = 2000;

export type LiftRefusal = OutOfRange | 'tips' | 'past-the-limit';

interface Lift {
  readonly loadLb: number;
  /** Rating that the jack must have at least. */
  readonly ratingLb: number;
  readonly ratingUsTons: number;
}

function lift(loadLb: number): Lift {
  const ratingLb = LIFT_FACTOR * loadLb;
  return { loadLb, ratingLb, ratingUsTons: ratingLb / LB_PER_US_TON };
}

/**
 * Weight on one wheel end of an axle.
 *
 * @param sideBias  how much heavier the heavy side is, 0…0.3; 0.05 unless weighed (judgement).
 */
export function cornerLoadLb(axleLb: number, sideBias = 0.05): Outcome<{ readonly loadLb: number }, OutOfRange> {
  const bad = outOfRange(['axle weight', axleLb, 500, 40_000, 'lb'], ['side bias', sideBias, 0, 0.3, '']);
  return bad ?? { ok: true, loadLb: (axleLb / 2) * (1 + sideBias) };
}

/**
 * Load on a jack under one side of a beam axle.
 *
 * @param trackIn   between the outer contact centres.
 * @param jackIn    from the centre line towards the side that is lifted. Inboard of the wheel it carries more than half.
 * @returns refused `tips` at or beyond the centre line: the axle weight would be exceeded. `out-of-range`.
 * @source Moments about the wheel that stays down.
 */
export function axleSideLift(axleLb: number, trackIn: number, jackIn: number): Outcome<Lift, LiftRefusal> {
  const bad = outOfRange(
    ['axle weight', axleLb, 500, 40_000, 'lb'],
    ['track', trackIn, 40, 110, 'in'],
    ['place of the jack', jackIn, -trackIn / 2, trackIn / 2, 'in'],
  );
  if (bad) return bad;
  if (jackIn <= 0) {
    return refuse(
      'tips',
      'The jack stands at or beyond the middle of the axle. Set it under the side that is to rise.',
    );
  }
  return { ok: true, ...lift((axleLb * (trackIn / 2)) / (trackIn / 2 + jackIn)) };
}

/**
 * Load on one point that lifts an end of the body, the other axle as pivot.
 *
 * @param behindIn  from the axle line towards the middle, below 0 outside; a fifth of the wheelbase is the most without a
 *   lifting point of the maker.
 * @returns refused `past-the-limit`, `out-of-range`.
 * @source Moments about the other axle.
 */
export function endLift(endAxleLb: number, wheelbaseIn: number, behindIn: number): Outcome<Lift, LiftRefusal> {
  const bad = outOfRange(
    ['axle weight', endAxleLb, 500, 40_000, 'lb'],
    ['wheelbase', wheelbaseIn, 120, 400, 'in'],
    ['place of the jack', behindIn, -wheelbaseIn / 2, wheelbaseIn / 2, 'in'],
  );
  if (bad) return bad;
  if (behindIn > 0.2 * wheelbaseIn + 1e-9) {
    return refuse(
      'past-the-limit',
      `The point lies ${behindIn} in inside the axle; ${(0.2 * wheelbaseIn).toFixed(0)} in is the most without the maker's lifting point.`,
    );
  }
  return { ok: true, ...lift((endAxleLb * wheelbaseIn) / (wheelbaseIn - behindIn)) };
}

export interface StandCheck {
  /** Rating of all stands over the load; 1.25 is needed. */
  readonly ratio: number;
  /** `not-enough`, or enough by the numbers alone: never a permission to go under. */
  readonly verdict: 'not-enough' | 'enough-by-the-numbers';
}

/**
 * Stands under a load.
 *
 * @param ratingLb   of one stand; `forPair` where the figure on it holds for two, and where it is not clear.
 * @param stands     1…4 that carry the load together.
 * @source A pair's rating counts half a stand; factor 1.25 judgement (employer-made stands are tested to 125 %, seen).
 *   Marked rating never exceeded: 29 CFR 1926.305 (seen).
 */
export function standCheck(
  loadLb: number,
  ratingLb: number,
  stands: number,
  forPair: boolean,
): Outcome<StandCheck, OutOfRange> {
  const bad = outOfRange(
    ['load', loadLb, 100, 60_000, 'lb'],
    ['rating of a stand', ratingLb, 500, 100_000, 'lb'],
    ['number of stands', stands, 1, 4, ''],
  );
  if (bad) return bad;
  const ratio = (stands * ratingLb * (forPair ? 0.5 : 1)) / loadLb;
  return { ok: true, ratio, verdict: ratio >= LIFT_FACTOR ? 'enough-by-the-numbers' : 'not-enough' };
}

/**
 * Pressure of a jack or stand on the ground, and the side force of a slope.
 *
 * @returns `needsPlate` above about 50 psi, on asphalt in summer (judgement). Refused `tips` on a slope above 2 %, `out-of-range`.
 */
export function groundLoad(
  loadLb: number,
  baseWidthIn: number,
  baseLengthIn: number,
  slope: number,
): Outcome<{ readonly pressurePsi: number; readonly needsPlate: boolean; readonly sideForceLb: number }, LiftRefusal> {
  const bad = outOfRange(
    ['load', loadLb, 100, 60_000, 'lb'],
    ['width of the base', baseWidthIn, 1, 60, 'in'],
    ['length of the base', baseLengthIn, 1, 60, 'in'],
    ['slope', slope, 0, 1, ''],
  );
  if (bad) return bad;
  if (slope > 0.02 + 1e-12) {
    return refuse(
      'tips',
      `The ground slopes ${(100 * slope).toFixed(1)} %; 2 % is the most. Move to level, hard ground.`,
    );
  }
  const pressurePsi = loadLb / (baseWidthIn * baseLengthIn);
  return { ok: true, pressurePsi, needsPlate: pressurePsi > 50, sideForceLb: loadLb * Math.sin(Math.atan(slope)) };
}
