import { convert } from '../units/index.ts';
import { outOfRange, type Outcome, type OutOfRange } from './outcome.ts';

/** Standard atmosphere at sea level, 101.325 kPa by definition. */
export const ATMOSPHERE_PSI = convert(101.325, 'kPa', 'psi');

/**
 * Pressure of the standard atmosphere at a height.
 *
 * @param altitudeM  −500…5000 m above the sea.
 * @source p = 101325·(1 − 2.25577e-5·h)^5.25588, standard atmosphere (memory).
 */
export function atmospherePsi(altitudeM: number): Outcome<{ readonly pressurePsi: number }, OutOfRange> {
  const bad = outOfRange(['altitude', altitudeM, -500, 5000, 'm']);
  return bad ?? { ok: true, pressurePsi: ATMOSPHERE_PSI * (1 - 2.25577e-5 * altitudeM) ** 5.25588 };
}
