import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';

/** Two known points of an oil. */
export interface OilPoints {
  readonly at40: number;
  readonly at100: number;
}

const KELVIN = 273.15;

/**
 * Kinematic viscosity at another temperature, from those at 40 and 100 °C.
 *
 * @param points   mm²/s, at40 above at100, 0.5…10 000.
 * @param temperatureC  −40…150 °C.
 * @returns mm²/s; `estimate` below 0 °C, where it may be off by a factor of 1.5 (judgement): wax and thickeners, which the
 *   formula does not know, make the oil thicker. Refused `points-crossed`, `out-of-range`.
 * @source ASTM D341 (Walther), constants from memory: log log Z = A − B·log T, Z = ν + 0.7 + small terms below 2 mm²/s.
 *   Above 5 mm²/s only ν + 0.7 matters.
 */
export function viscosityAt(
  points: OilPoints,
  temperatureC: number,
): Outcome<{ readonly viscosity: number; readonly estimate: boolean }, OutOfRange | 'points-crossed' | 'too-thick'> {
  const bad = outOfRange(
    ['viscosity at 40 °C', points.at40, 0.5, 10_000, 'mm²/s'],
    ['viscosity at 100 °C', points.at100, 0.5, 10_000, 'mm²/s'],
    ['temperature', temperatureC, -40, 150, '°C'],
  );
  if (bad) return bad;
  if (points.at40 <= points.at100) {
    return refuse(
      'points-crossed',
      `An oil is thicker at 40 °C (${points.at40}) than at 100 °C (${points.at100} mm²/s). Exchange the two.`,
    );
  }
  const warm = Math.log10(Math.log10(zOf(points.at40)));
  const hot = Math.log10(Math.log10(zOf(points.at100)));
  const slope = (warm - hot) / Math.log10((100 + KELVIN) / (40 + KELVIN));
  const level = warm + slope * Math.log10((40 + KELVIN) / (temperatureC + KELVIN));
  const z = 10 ** (10 ** level);
  const viscosity = viscosityOf(z);
  return Number.isFinite(viscosity) && viscosity < 1e7
    ? { ok: true, viscosity, estimate: temperatureC < 0 }
    : refuse('too-thick', `At ${temperatureC} °C this oil is solid for every purpose. Warm it before the start.`);
}

/** Walther's Z of a viscosity, mm²/s. */
export function zOf(v: number): number {
  return (
    v +
    0.7 +
    Math.exp(-1.14883 - 2.65868 * v) -
    Math.exp(-0.0038138 - 12.5645 * v) +
    Math.exp(5.46491 - 37.6289 * v) -
    Math.exp(13.0458 - 74.6851 * v) +
    Math.exp(37.4619 - 192.643 * v) -
    Math.exp(80.4945 - 400.468 * v)
  );
}

/** Viscosity of a Z, by the published inverse; within 0.1 % from 1 mm²/s up. */
export function viscosityOf(z: number): number {
  const x = z - 0.7;
  return x > 20 ? x : x - Math.exp(-0.7487 - 3.295 * x + 0.6119 * x ** 2 - 0.3193 * x ** 3);
}

export type ColdStart = 'usual' | 'slow' | 'the-oil-alone-can-explain-it';

/**
 * What a viscosity means for cranking.
 *
 * @source Judgement, anchored to about 7,000 mPa·s of the W-grade cranking limits (SAE J300, seen in reproductions).
 */
export function coldStart(viscosity: number): Outcome<{ readonly meaning: ColdStart }, OutOfRange> {
  const bad = outOfRange(['viscosity', viscosity, 0.1, 1e7, 'mm²/s']);
  if (bad) return bad;
  return {
    ok: true,
    meaning: viscosity < 3000 ? 'usual' : viscosity <= 7000 ? 'slow' : 'the-oil-alone-can-explain-it',
  };
}

const SAE: readonly (readonly [grade: string, least: number, below: number])[] = [
  ['20', 6.9, 9.3],
  ['30', 9.3, 12.5],
  ['40', 12.5, 16.3],
  ['50', 16.3, 21.9],
  ['60', 21.9, 26.1],
];
const ISO_VG = [22, 32, 46, 68, 100, 150, 220] as const;

/**
 * SAE grade of an engine oil by its viscosity at 100 °C; null between or outside the grades.
 *
 * @source SAE J300, 2015, several reproductions (seen). Grade 20 began at 5.6 in 1999.
 */
export function saeGrade(at100: number): string | null {
  return SAE.find(([, least, below]) => at100 >= least && at100 < below)?.[0] ?? null;
}

/**
 * ISO viscosity grade of a hydraulic oil by its viscosity at 40 °C, number ± 10 %; null between the grades.
 *
 * @source ISO 3448, reproductions (seen).
 */
export function isoGrade(at40: number): number | null {
  // A hundredth of a unit is the last digit of the standard's own table.
  return ISO_VG.find((grade) => at40 >= 0.9 * grade - 5e-3 && at40 <= 1.1 * grade + 5e-3) ?? null;
}
