import { outOfRange, type Outcome, type OutOfRange } from './outcome.ts';

const INCH_PER_MILE = 63_360;

/** Turns over a mile of a wheel with this effective rolling radius. @source 1 mile/(2π·R). */
export function tyreRevsPerMile(rollingRadiusIn: number): Outcome<{ readonly revsPerMile: number }, OutOfRange> {
  const bad = outOfRange(['rolling radius', rollingRadiusIn, 10, 30, 'in']);
  return bad ?? { ok: true, revsPerMile: INCH_PER_MILE / (2 * Math.PI * rollingRadiusIn) };
}

/**
 * Effective rolling radius from the two that catalogues print. The static loaded radius alone gives 4 % too many turns.
 *
 * @source Tyre mechanics rule R_free − (R_free − R_static)/3 (memory); within 1 % of catalogue turns in the tests.
 */
export function rollingRadiusIn(
  freeDiameterIn: number,
  staticRadiusIn: number,
): Outcome<{ readonly radiusIn: number }, OutOfRange> {
  const bad = outOfRange(
    ['free diameter', freeDiameterIn, 20, 60, 'in'],
    ['static loaded radius', staticRadiusIn, 0.4 * freeDiameterIn, 0.5 * freeDiameterIn, 'in'],
  );
  const free = freeDiameterIn / 2;
  return bad ?? { ok: true, radiusIn: free - (free - staticRadiusIn) / 3 };
}
