import { outOfRange, type Outcome, type OutOfRange } from './outcome.ts';

/**
 * What a universal joint at an angle does to the shaft behind it, input at constant speed.
 *
 * @param angleDeg  0…45°.
 * @returns peak-to-peak speed ripple as a share of the speed, and peak angular acceleration. A much-quoted comfort limit is
 *   300–400 rad/s² (memory).
 * @source ω_out/ω = cos β/(1 − sin²β·cos²θ), machine dynamics; ripple tan β·sin β; the peak where B·c² + A·c − 2B = 0 with
 *   c = cos 2θ, A = 1 − sin²β/2, B = sin²β/2.
 */
export function cardanJoint(
  angleDeg: number,
  shaftRpm: number,
): Outcome<{ readonly ripple: number; readonly peakRadPerS2: number }, OutOfRange> {
  const bad = outOfRange(['joint angle', angleDeg, 0, 45, '°'], ['shaft speed', shaftRpm, 0, 6000, 'rpm']);
  if (bad) return bad;
  const beta = (angleDeg * Math.PI) / 180;
  const b = Math.sin(beta) ** 2 / 2;
  const a = 1 - b;
  if (b === 0) return { ok: true, ripple: 0, peakRadPerS2: 0 };
  const c = (-a + Math.sqrt(a ** 2 + 8 * b ** 2)) / (2 * b);
  const omega = (shaftRpm * Math.PI) / 30;
  const slope = (Math.cos(beta) * 2 * b * Math.sqrt(1 - c ** 2)) / (a - b * c) ** 2;
  return { ok: true, ripple: Math.tan(beta) * Math.sin(beta), peakRadPerS2: omega ** 2 * slope };
}
