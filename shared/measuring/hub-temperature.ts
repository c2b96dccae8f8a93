import type { LimitStatus } from './limit.ts';
import { outOfRange, type Outcome, type OutOfRange } from './outcome.ts';

export interface HubVerdict {
  readonly verdict: 'usual' | 'caution' | 'inspect-before-driving' | 'do-not-drive';
  readonly why: string;
  readonly status: LimitStatus;
}

/**
 * A pair of hub faces by their temperature, after at least 20 min of steady running with little braking.
 *
 * @param recentHeavyBraking  heat that came through the drum; then a hot hub alone is no verdict on its bearing.
 * @source 225 °F as the usual upper end and 250 °F for a detailed inspection: trade press on heat-sensing labels
 *   (second-hand). Spreads of 30 and 60 °F, 200 °F, and stopping at 250 °F: judgement.
 */
export function judgeHubPair(
  hotterF: number,
  coolerF: number,
  recentHeavyBraking: boolean,
): Outcome<HubVerdict, OutOfRange> {
  const bad = outOfRange(
    ['temperature of the hotter hub', hotterF, coolerF, 1500, '°F'],
    ['temperature of the cooler hub', coolerF, -60, 1500, '°F'],
  );
  if (bad) return bad;
  const spread = hotterF - coolerF;
  const at = (verdict: HubVerdict['verdict'], why: string, status: LimitStatus = 'judgement') =>
    ({ ok: true, verdict, why, status }) as const;
  if (hotterF >= 250 && !recentHeavyBraking) return at('do-not-drive', '250 °F or more without braking');
  if (hotterF >= 250) return at('inspect-before-driving', '250 °F or more', 'second-hand');
  if (spread >= 60) return at('inspect-before-driving', '60 °F or more between the sides');
  if (hotterF >= 200 && !recentHeavyBraking) return at('inspect-before-driving', '200 °F or more without braking');
  if (spread >= 30) return at('caution', '30 °F or more between the sides');
  if (hotterF >= 225) return at('caution', '225 °F is the upper end of usual', 'second-hand');
  return at('usual', 'below every threshold; this does not say that the wheel end is sound');
}
