import { outOfRange, type Outcome, type OutOfRange } from './outcome.ts';

/**
 * Whether a tyre that lost air may be filled on the vehicle.
 *
 * @returns the share of the recommended pressure; above 80 % with remote gear and nobody in the way of the blast. At or
 *   below 80 % the core comes out and the tyre comes off to be looked at from inside.
 * @source 29 CFR 1910.177(f): "more than 80 %" seen, the other side from memory.
 */
export function tyreRefill(
  pressurePsi: number,
  recommendedPsi: number,
): Outcome<{ readonly sharePercent: number; readonly onVehicle: boolean }, OutOfRange> {
  const bad = outOfRange(
    ['tyre pressure', pressurePsi, 0, 150, 'psi'],
    ['recommended pressure', recommendedPsi, 40, 150, 'psi'],
  );
  const sharePercent = (100 * pressurePsi) / recommendedPsi;
  return bad ?? { ok: true, sharePercent, onVehicle: sharePercent > 80 };
}
