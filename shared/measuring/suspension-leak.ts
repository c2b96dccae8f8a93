import { judge, type Judgement } from './limit.ts';
import { outOfRange, type Outcome, type OutOfRange } from './outcome.ts';

/**
 * Leak of the air suspension at its normal working pressure.
 *
 * @param minutes  5…60; the drop is brought to five minutes.
 * @param readingUncertaintyPsi  one standard uncertainty of each of the two readings.
 * @returns the drop with one standard uncertainty, and its judgement.
 * @source 3 psi in 5 min, 49 CFR 393.207(f) (memory; a State inspection question repeats it, second-hand).
 */
export function judgeSuspensionLeak(
  beforePsi: number,
  afterPsi: number,
  minutes: number,
  readingUncertaintyPsi: number,
): Outcome<
  { readonly dropPsiIn5Min: number; readonly uncertainty: number; readonly judgement: Judgement },
  OutOfRange
> {
  const bad = outOfRange(
    ['pressure before', beforePsi, 40, 150, 'psi'],
    ['pressure after', afterPsi, 0, beforePsi, 'psi'],
    ['time', minutes, 5, 60, 'min'],
    ['reading uncertainty', readingUncertaintyPsi, 0, 20, 'psi'],
  );
  if (bad) return bad;
  const dropPsiIn5Min = ((beforePsi - afterPsi) * 5) / minutes;
  const uncertainty = (Math.SQRT2 * readingUncertaintyPsi * 5) / minutes;
  return {
    ok: true,
    dropPsiIn5Min,
    uncertainty,
    judgement: judge(dropPsiIn5Min, uncertainty, {
      id: 'air-suspension-leak',
      value: 3,
      unit: 'psi in 5 min',
      side: 'at-most',
      atLimit: 'passes',
      source: '49 CFR 393.207(f)',
      status: 'memory',
    }),
  };
}
