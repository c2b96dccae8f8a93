import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';

/** Pharmacists' drop, exactly 1/20 mL; real drops of oil are 0.03 to 0.10 mL (seen in published counts). */
const DROP_ML = 0.05;
const SMALL_DROP_ML = 0.03;
const LARGE_DROP_ML = 0.1;
const ML_PER_US_QT = 946.352946;

export interface Drip {
  readonly mlPerHour: number;
  /** With small and with large drops: the range to show, a drop is no measure. */
  readonly lowMlPerHour: number;
  readonly highMlPerHour: number;
  readonly mlPer100Miles: number;
  /** Until the level falls from full to add. */
  readonly hoursToAdd: number;
  readonly milesToAdd: number;
}

/**
 * Oil lost by drops. Counted standing it may be several times more under way, where there is pressure.
 *
 * @param dropsPerMin  0.1…150; above, it is a stream.
 * @param marksUsQt    between full and add on the dipstick.
 * @returns refused `a-stream`, `out-of-range`.
 * @source Count × drop × 60; drop volumes published (seen).
 */
export function oilDrip(
  dropsPerMin: number,
  speedMph: number,
  marksUsQt: number,
  dropMl: number = DROP_ML,
): Outcome<Drip, OutOfRange | 'a-stream'> {
  if (dropsPerMin > 150) {
    return refuse('a-stream', 'These are no drops any more. Stop the engine and check the level now.');
  }
  const bad = outOfRange(
    ['drops a minute', dropsPerMin, 0.1, 150, ''],
    ['speed', speedMph, 5, 90, 'mph'],
    ['volume between the marks', marksUsQt, 0.5, 20, 'US qt'],
    ['volume of a drop', dropMl, 0.01, 0.2, 'mL'],
  );
  if (bad) return bad;
  const mlPerHour = dropsPerMin * dropMl * 60;
  const hoursToAdd = (marksUsQt * ML_PER_US_QT) / mlPerHour;
  return {
    ok: true,
    mlPerHour,
    lowMlPerHour: dropsPerMin * Math.min(SMALL_DROP_ML, dropMl) * 60,
    highMlPerHour: dropsPerMin * Math.max(LARGE_DROP_ML, dropMl) * 60,
    mlPer100Miles: (mlPerHour * 100) / speedMph,
    hoursToAdd,
    milesToAdd: hoursToAdd * speedMph,
  };
}
