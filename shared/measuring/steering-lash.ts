import { judge, type Judgement, type Limit } from './limit.ts';
import { outOfRange, type Outcome, type OutOfRange } from './outcome.ts';

const TABLE: readonly (readonly [wheelIn: number, manualIn: number, powerIn: number])[] = [
  [16, 2, 4.25],
  [18, 2.25, 4.75],
  [19, 2.375, 5],
  [20, 2.5, 5.25],
  [21, 2.625, 5.5],
  [22, 2.75, 5.75],
];

/**
 * The most lash that a steering wheel of this size may have at its rim.
 *
 * @param wheelIn  outer diameter, 12…30 in.
 * @source 49 CFR 393.209(b)(1), table, 16 in and smaller as 16; (b)(2), other diameters: 14° manual, 30° power (seen).
 */
export function lashLimit(wheelIn: number, powerSteering: boolean): Outcome<{ readonly limit: Limit }, OutOfRange> {
  const bad = outOfRange(['steering wheel diameter', wheelIn, 12, 30, 'in']);
  if (bad) return bad;
  const row = TABLE.find(([size]) => size === (wheelIn <= 16 ? 16 : wheelIn));
  const degrees = powerSteering ? 30 : 14;
  const value = row ? (powerSteering ? row[2] : row[1]) : (Math.PI * wheelIn * degrees) / 360;
  return {
    ok: true,
    limit: {
      id: powerSteering ? 'steering-lash-power' : 'steering-lash-manual',
      value,
      unit: 'in',
      side: 'at-most',
      atLimit: 'passes',
      source: row ? '49 CFR 393.209(b)(1), table' : `49 CFR 393.209(b)(2), ${degrees}° of rotation`,
      status: 'seen',
    },
  };
}

/** Lash at the rim as an angle of the wheel. @source angle = 360·s/(π·D). */
export function lashDegrees(lashIn: number, wheelIn: number): Outcome<{ readonly degrees: number }, OutOfRange> {
  const bad = outOfRange(['lash', lashIn, 0, 20, 'in'], ['steering wheel diameter', wheelIn, 12, 30, 'in']);
  return bad ?? { ok: true, degrees: (360 * lashIn) / (Math.PI * wheelIn) };
}

/**
 * Lash held against its limit: wheels straight ahead, engine running with power steering.
 *
 * @param uncertaintyIn  one standard uncertainty of the lash, in.
 */
export function judgeLash(
  lashIn: number,
  uncertaintyIn: number,
  wheelIn: number,
  powerSteering: boolean,
): Outcome<{ readonly judgement: Judgement }, OutOfRange> {
  const bad = outOfRange(['lash', lashIn, 0, 20, 'in'], ['uncertainty', uncertaintyIn, 0, 5, 'in']);
  if (bad) return bad;
  const found = lashLimit(wheelIn, powerSteering);
  return found.ok ? { ok: true, judgement: judge(lashIn, uncertaintyIn, found.limit) } : found;
}
