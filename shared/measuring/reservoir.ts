import { judge, type Judgement, type Limit } from './limit.ts';
import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';

/**
 * Rated volume at full travel of a service chamber by its type number, in³.
 *
 * @source 49 CFR 571.121 table V (memory; the maker's figure on the plate comes first).
 */
export const CHAMBER_VOLUME_IN3: Readonly<Record<number, number>> = {
  9: 25,
  12: 30,
  14: 40,
  16: 46,
  18: 50,
  20: 54,
  24: 67,
  30: 89,
  36: 135,
};

/**
 * Tank volume that a truck or bus under FMVSS 121 must have: twelve times the service chambers.
 *
 * @param chamberTypes  type number of every service chamber, one entry each, 1…16 of them.
 * @returns refused `unknown-chamber` for a type without a rated volume, `out-of-range`.
 * @source 49 CFR 571.121 S5.1.2.1 (seen in agency letters).
 */
export function requiredReservoir(
  chamberTypes: readonly number[],
): Outcome<{ readonly chambersIn3: number; readonly requiredIn3: number }, OutOfRange | 'unknown-chamber'> {
  const bad = outOfRange(['number of chambers', chamberTypes.length, 1, 16, '']);
  if (bad) return bad;
  const unknown = chamberTypes.find((type) => CHAMBER_VOLUME_IN3[type] === undefined);
  if (unknown !== undefined) {
    return refuse(
      'unknown-chamber',
      `Chamber type ${unknown} has no rated volume here; known are ${Object.keys(CHAMBER_VOLUME_IN3).join(', ')}. Take the maker's volume.`,
    );
  }
  const chambersIn3 = chamberTypes.reduce((sum, type) => sum + CHAMBER_VOLUME_IN3[type]!, 0);
  return { ok: true, chambersIn3, requiredIn3: 12 * chambersIn3 };
}

const LEFT_AFTER_FULL: Limit = {
  id: 'reserve-after-full-application',
  value: 70,
  unit: '%',
  side: 'at-least',
  atLimit: 'passes',
  source: '49 CFR 393.50(a)',
  status: 'seen',
};

/**
 * Pressure left after one full application with the engine stopped, as a share of the pressure before.
 *
 * @param readingUncertaintyPsi  one standard uncertainty of each reading.
 * @returns the share in % and its judgement against 70 %; `adviceMet` is the stricter 80 % of 49 CFR 570.57 (memory) and
 *   the Texas Transportation Code 547.406 (seen). Refused `pressure-rose`, `out-of-range`.
 */
export function reserveAfterApplication(
  beforePsi: number,
  afterPsi: number,
  readingUncertaintyPsi: number,
): Outcome<
  {
    readonly leftPercent: number;
    /** One standard uncertainty, %. */
    readonly uncertainty: number;
    readonly judgement: Judgement;
    readonly adviceMet: boolean;
  },
  OutOfRange | 'pressure-rose'
> {
  const bad = outOfRange(
    ['pressure before', beforePsi, 60, 150, 'psi'],
    ['pressure after', afterPsi, 0, 150, 'psi'],
    ['reading uncertainty', readingUncertaintyPsi, 0, 20, 'psi'],
  );
  if (bad) return bad;
  if (afterPsi > beforePsi) {
    return refuse(
      'pressure-rose',
      `The pressure rose from ${beforePsi} to ${afterPsi} psi; stop the engine and press the pedal once.`,
    );
  }
  const leftPercent = (100 * afterPsi) / beforePsi;
  // Of a quotient, written so that nothing left in the tank divides nothing by nothing.
  const uncertainty = (100 * readingUncertaintyPsi * Math.hypot(1, afterPsi / beforePsi)) / beforePsi;
  return {
    ok: true,
    leftPercent,
    uncertainty,
    judgement: judge(leftPercent, uncertainty, LEFT_AFTER_FULL),
    adviceMet: leftPercent >= 80,
  };
}
