/** Wheel ends side by side: left against right, front against rear, and the one that stands out. */
import {
  compareTemperatures,
  judgeHubPair,
  type HubVerdict,
  type TemperatureComparison,
} from '../../measuring/index.ts';
import { readingIn } from '../reading-in.ts';
import { SIDES, WHEEL_AXLES, wheelSite, type WheelAxle, type WheelSide } from './items.ts';
import { heldAgainst, type Quantity, type QuantityOutcome } from './quantities.ts';
import type { InspectionItem, InspectionState } from './state.ts';

/** One end of an axle; null where it was not measured. */
export interface PairEnd {
  readonly item: InspectionItem;
  /** In the unit of the quantity. */
  readonly value: number;
  readonly outcome: QuantityOutcome | null;
}

export interface AxlePairOf {
  readonly axle: WheelAxle;
  readonly left: PairEnd | null;
  readonly right: PairEnd | null;
  /** Left minus right; null unless both were measured. */
  readonly apart: number | null;
  /** Further apart than mates usually are (judgement: `Quantity.mateWithin`). */
  readonly uneven: boolean;
}

/** The pairs of one quantity, front to rear; axles where nothing was measured are left out. */
export function pairsOf({ items }: InspectionState, quantity: Quantity): AxlePairOf[] {
  const end = (side: WheelSide, axle: WheelAxle): PairEnd | null => {
    const item = items.find((each) => each.item === quantity.item && each.site === wheelSite(side, axle));
    const found = item?.readings.find(({ what }) => what === quantity.what);
    const value = found ? readingIn(found.reading, quantity.unit) : null;
    return item && value !== null ? { item, value, outcome: heldAgainst(item, quantity) } : null;
  };
  return WHEEL_AXLES.flatMap((axle): AxlePairOf[] => {
    const left = end('left', axle);
    const right = end('right', axle);
    if (!left && !right) return [];
    const apart = left && right ? left.value - right.value : null;
    return [{ axle, left, right, apart, uneven: apart !== null && Math.abs(apart) > quantity.mateWithin + 1e-9 }];
  });
}

/** An end that the robust comparison of `shared/measuring` marks. */
export interface OddEnd {
  readonly site: string;
  readonly marked: 'hot' | 'cold';
  readonly fromMiddleF: number;
  readonly fromOtherSideF: number | null;
  readonly score: number | null;
}

export type OddEnds =
  | { readonly kind: 'waiting'; readonly words: string }
  | { readonly kind: 'refused'; readonly message: string }
  | {
      readonly kind: 'compared';
      readonly compared: TemperatureComparison['compared'];
      readonly odd: readonly OddEnd[];
      readonly ends: number;
    };

/**
 * Which wheel end stands out by its temperature. Only temperatures have a comparison over all ends; other quantities have
 * limits and mates.
 */
export function oddEnds(state: InspectionState, quantity: Quantity): OddEnds {
  const readings = pairsOf(state, quantity).flatMap(({ axle, left, right }) =>
    [
      { side: SIDES[0], end: left },
      { side: SIDES[1], end: right },
    ].flatMap(({ side, end }) => (end ? [{ axle: WHEEL_AXLES.indexOf(axle) + 1, side, temperatureF: end.value }] : [])),
  );
  const round = state.rounds[quantity.what];
  if (readings.length === 0) return { kind: 'waiting', words: 'Nothing is measured yet.' };
  if (!round) return { kind: 'waiting', words: 'Say how the round was taken, so that the ends may be compared.' };
  const found = compareTemperatures({ readings, ...round });
  if (!found.ok) return { kind: 'refused', message: found.message };
  return {
    kind: 'compared',
    compared: found.compared,
    ends: found.ends.length,
    odd: found.ends.flatMap(({ axle, side, marked, fromMedianF, fromOtherSideF, score }) =>
      marked
        ? [{ site: wheelSite(side, WHEEL_AXLES[axle - 1]!), marked, fromMiddleF: fromMedianF, fromOtherSideF, score }]
        : [],
    ),
  };
}

/** A pair of hubs by their own heat; null unless both were read. */
export function hubPairVerdict({ left, right }: AxlePairOf, recentHeavyBraking = false): HubVerdict | null {
  if (!left || !right) return null;
  const found = judgeHubPair(Math.max(left.value, right.value), Math.min(left.value, right.value), recentHeavyBraking);
  return found.ok ? found : null;
}
