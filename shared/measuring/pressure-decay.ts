import { ATMOSPHERE_PSI } from './atmosphere.ts';
import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';

/**
 * A leak rate read at one pressure, carried over to another: a choked hole loses in proportion to absolute pressure.
 *
 * @param atPsi, toPsi  gauge, 13.1…150.
 * @source r·(p_to + p_atm)/(p_at + p_atm), choked flow.
 */
export function rateAtPressure(
  ratePsiPerMin: number,
  atPsi: number,
  toPsi: number,
): Outcome<{ readonly ratePsiPerMin: number }, OutOfRange> {
  const bad = outOfRange(
    ['leak rate', ratePsiPerMin, 0, 200, 'psi/min'],
    ['pressure of the test', atPsi, 13.1, 150, 'psi'],
    ['pressure wanted', toPsi, 13.1, 150, 'psi'],
  );
  return bad ?? { ok: true, ratePsiPerMin: (ratePsiPerMin * (toPsi + ATMOSPHERE_PSI)) / (atPsi + ATMOSPHERE_PSI) };
}

/**
 * Gauge pressure after a while of the same leak, no air coming in and no pedal use.
 *
 * @param ratePsiPerMin  at `ratedAtPsi`.
 * @returns refused `below-choking` when it would end below 13.1 psi, where the law no longer holds; `out-of-range`.
 * @source Closed form of dp/dt = −k·p with absolute pressure.
 */
export function pressureAfter(
  startPsi: number,
  seconds: number,
  ratePsiPerMin: number,
  ratedAtPsi: number,
): Outcome<{ readonly pressurePsi: number }, OutOfRange | 'below-choking'> {
  const bad = outOfRange(
    ['start pressure', startPsi, 13.1, 150, 'psi'],
    ['time', seconds, 0, 1e6, 's'],
    ['leak rate', ratePsiPerMin, 0, 200, 'psi/min'],
    ['pressure of the rate', ratedAtPsi, 13.1, 150, 'psi'],
  );
  if (bad) return bad;
  const perSecond = ratePsiPerMin / 60 / (ratedAtPsi + ATMOSPHERE_PSI);
  const pressurePsi = (startPsi + ATMOSPHERE_PSI) * Math.exp(-perSecond * seconds) - ATMOSPHERE_PSI;
  return pressurePsi < 13.1
    ? refuse('below-choking', 'The pressure would fall below 13 psi, where a leak slows down in another way.')
    : { ok: true, pressurePsi };
}

/**
 * How long a standing coach keeps its air until the low-pressure warning sounds. Pedal use shortens it; it is no
 * permission to drive.
 *
 * @param warningPsi  gauge pressure at which the warning comes on, 13.1 psi … below the start.
 * @returns seconds; refused `already-below` when the start is at or below the warning, `out-of-range`.
 * @source `pressureAfter`, solved for the time.
 */
export function timeToWarningS(
  startPsi: number,
  warningPsi: number,
  ratePsiPerMin: number,
  ratedAtPsi: number,
): Outcome<{ readonly seconds: number }, OutOfRange | 'already-below'> {
  const bad = outOfRange(
    ['start pressure', startPsi, 13.1, 150, 'psi'],
    ['warning pressure', warningPsi, 13.1, 150, 'psi'],
    ['leak rate', ratePsiPerMin, 0.01, 200, 'psi/min'],
    ['pressure of the rate', ratedAtPsi, 13.1, 150, 'psi'],
  );
  if (bad) return bad;
  if (startPsi <= warningPsi) {
    return refuse(
      'already-below',
      `The pressure is ${startPsi} psi and the warning comes at ${warningPsi} psi: it should be on now. Do not drive.`,
    );
  }
  const perSecond = ratePsiPerMin / 60 / (ratedAtPsi + ATMOSPHERE_PSI);
  return { ok: true, seconds: Math.log((startPsi + ATMOSPHERE_PSI) / (warningPsi + ATMOSPHERE_PSI)) / perSecond };
}
