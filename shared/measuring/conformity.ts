import { normalCdf } from './normal.ts';
import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';

/**
 * Probability that a value measured with a normal error lies between two limits, flat prior.
 *
 * @param uncertainty  one standard uncertainty, above 0.
 * @param least, most  limits in the unit of the value; null = open on that side.
 * @returns refused `out-of-range`; `limits-crossed` when the lower limit is above the upper.
 * @source JCGM 106:2012 (memory), whose worked examples stand in the tests.
 */
export function conformityProbability(
  value: number,
  uncertainty: number,
  least: number | null,
  most: number | null,
): Outcome<{ readonly probability: number }, OutOfRange | 'limits-crossed'> {
  const bad = outOfRange(
    ['value', value, -1e9, 1e9, ''],
    ['uncertainty', uncertainty, 1e-12, 1e9, ''],
    ['lower limit', least ?? 0, -1e9, 1e9, ''],
    ['upper limit', most ?? 0, -1e9, 1e9, ''],
  );
  if (bad) return bad;
  if (least !== null && most !== null && least > most) {
    return refuse('limits-crossed', `The lower limit ${least} is above the upper ${most}. Exchange them.`);
  }
  const below = most === null ? 1 : normalCdf((most - value) / uncertainty);
  const under = least === null ? 0 : normalCdf((least - value) / uncertainty);
  return { ok: true, probability: Math.max(0, below - under) };
}

/**
 * The standard normal quantile: z with Φ(z) = p.
 *
 * @param p  probability, 1e-9 … 1 − 1e-9.
 * @source Bisection on Φ; table 1 of JCGM 106:2012 (memory) in the tests.
 */
export function normalQuantile(p: number): Outcome<{ readonly z: number }, OutOfRange> {
  const bad = outOfRange(['probability', p, 1e-9, 1 - 1e-9, '']);
  if (bad) return bad;
  let low = -7;
  let high = 7;
  for (let step = 0; step < 70; step++) {
    const middle = (low + high) / 2;
    if (normalCdf(middle) < p) low = middle;
    else high = middle;
  }
  return { ok: true, z: (low + high) / 2 };
}

/**
 * The guarded span around an upper limit: accept at or below, reject at or above, in between nothing may be said.
 *
 * @param confidence  one-sided, 0.5 … 0.999999.
 * @source Guard band w = z·u, JCGM 106:2012 (memory).
 */
export function guardBand(
  limit: number,
  uncertainty: number,
  confidence: number,
): Outcome<{ readonly acceptAtMost: number; readonly rejectAtLeast: number }, OutOfRange> {
  const bad = outOfRange(
    ['limit', limit, -1e9, 1e9, ''],
    ['uncertainty', uncertainty, 0, 1e9, ''],
    ['confidence', confidence, 0.5, 0.999999, ''],
  );
  if (bad) return bad;
  const quantile = normalQuantile(confidence);
  if (!quantile.ok) return quantile;
  const width = quantile.z * uncertainty;
  return { ok: true, acceptAtMost: limit - width, rejectAtLeast: limit + width };
}
