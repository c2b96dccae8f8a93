import { outOfRange, type Outcome, type OutOfRange, type Span } from './outcome.ts';

/** Life of a kind of part. Shape: 1 fails by chance, 1.5 rolling fatigue, 2.5–3.5 wear (judgement). Scale: 63 % have failed. */
export interface LifeModel {
  readonly shape: number;
  /** In the unit of the ages. */
  readonly scale: number;
}

function spans({ shape, scale }: LifeModel): readonly Span[] {
  return [
    ['shape', shape, 0.2, 30, ''],
    ['scale', scale, 1e-6, 1e9, ''],
  ];
}

/**
 * Share of parts that have failed by an age.
 *
 * @source Weibull: F = 1 − exp(−(t/η)^β); published values in the tests.
 */
export function failedShare(life: LifeModel, age: number): Outcome<{ readonly probability: number }, OutOfRange> {
  const bad = outOfRange(...spans(life), ['age', age, 0, 1e9, '']);
  return bad ?? { ok: true, probability: -Math.expm1(-((age / life.scale) ** life.shape)) };
}

/**
 * Probability that a part which still works at an age fails within so much more. For sound parts only: one with symptoms
 * is a matter of diagnosis.
 *
 * @source P = 1 − exp((t/η)^β − ((t + Δ)/η)^β).
 */
export function failsWithin(
  life: LifeModel,
  age: number,
  more: number,
): Outcome<{ readonly probability: number }, OutOfRange> {
  const bad = outOfRange(...spans(life), ['age', age, 0, 1e9, ''], ['time ahead', more, 0, 1e9, '']);
  if (bad) return bad;
  // Two huge powers may both be infinite; the part is then long past any life, and certain to fail.
  const hazard = ((age + more) / life.scale) ** life.shape - (age / life.scale) ** life.shape;
  return { ok: true, probability: Number.isFinite(hazard) ? -Math.expm1(-hazard) : 1 };
}

/** Age by which a share of parts has failed. @param share 1e-6 … 1 − 1e-6. @source η·(−ln(1 − p))^(1/β). */
export function lifeAtShare(life: LifeModel, share: number): Outcome<{ readonly age: number }, OutOfRange> {
  const bad = outOfRange(...spans(life), ['share', share, 1e-6, 1 - 1e-6, '']);
  return bad ?? { ok: true, age: life.scale * (-Math.log1p(-share)) ** (1 / life.shape) };
}

/** Mean life. @source η·Γ(1 + 1/β). */
export function meanLife(life: LifeModel): Outcome<{ readonly age: number }, OutOfRange> {
  const bad = outOfRange(...spans(life));
  return bad ?? { ok: true, age: life.scale * gamma(1 + 1 / life.shape) };
}

/** Γ(x) for x above 0.5. @source Lanczos, g 7 with nine terms (memory); held to 1e-9 by the tests. */
function gamma(x: number): number {
  const terms = [
    0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
    12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
  ];
  const at = x - 1;
  const sum = terms.slice(1).reduce((total, term, i) => total + term / (at + i + 1), terms[0]!);
  const t = at + 7.5;
  return Math.sqrt(2 * Math.PI) * t ** (at + 0.5) * Math.exp(-t) * sum;
}
