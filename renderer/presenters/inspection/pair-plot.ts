/** The pair plot: two half wheels on one line for each axle; even makes a full wheel, uneven comes apart. */
import type { Limit } from '../../../shared/measuring/index.ts';
import type { UnitSystem } from '../../../shared/units/index.ts';
import { AXLE_WORDS, pairsOf, type InspectionState, type Quantity } from '../../../shared/visit/index.ts';
import { shown } from '../bench/figure-kinds.ts';
import { differenceInUnits, limitView, type LimitView } from '../bench/held.ts';
import { kindOf } from './wheel-ends-view.ts';

/** Places in units of a drawing 328 wide. */
export interface PairPlotView {
  readonly what: string;
  readonly words: string;
  readonly height: number;
  readonly rows: readonly {
    readonly axle: string;
    readonly y: number;
    readonly left: number | null;
    readonly right: number | null;
    /** Dashed: as far as the mate may be (judgement); null where a published limit stands. */
    readonly reach: readonly [number, number] | null;
    readonly limits: readonly { readonly x: number; readonly bad: 1 | -1; readonly judged: boolean }[];
    /** Spread of a reading that is too close to call. */
    readonly straddles: readonly (readonly [number, number])[];
  }[];
  readonly ticks: readonly { readonly x: number; readonly words: string }[];
  readonly foot: number;
  /** The limits with their sources, each once. */
  readonly limits: readonly LimitView[];
  readonly mateWithin: string;
  readonly spoken: string;
}

const LEFT = 64;
const RIGHT = 312;
const STEP = 36;

/** The plot of one quantity; null when nothing was measured. */
export function pairPlot(state: InspectionState, quantity: Quantity, system: UnitSystem): PairPlotView | null {
  const pairs = pairsOf(state, quantity);
  if (pairs.length === 0) return null;
  const ends = pairs.flatMap(({ left, right }) => [left, right].flatMap((end) => end ?? []));
  const limitsOf = (end: (typeof ends)[number] | null): readonly Limit[] =>
    end?.outcome?.kind === 'held' ? end.outcome.against.map(({ limit }) => limit) : [];
  const all = ends.flatMap((end) => [end.value, ...limitsOf(end).map(({ value }) => value)]);
  const least = Math.min(...all);
  const most = Math.max(...all);
  const room = Math.max(0.15 * (most - least), 0.6 * quantity.mateWithin);
  const from = Math.max(least >= 0 ? 0 : -Infinity, least - room);
  const to = most + room;
  const x = (value: number): number => Math.round(10 * (LEFT + ((RIGHT - LEFT) * (value - from)) / (to - from))) / 10;
  const foot = 16 + STEP * pairs.length;
  const words = (value: number): string => shown(value, kindOf(quantity), system);
  const rows = pairs.map(({ axle, left, right }, i) => {
    const limits = [...limitsOf(left), ...limitsOf(right)].filter(
      (limit, k, list) => list.findIndex((each) => each.id === limit.id) === k,
    );
    const low = Math.min(...[left, right].flatMap((end) => (end ? [end.value] : [])));
    return {
      axle: AXLE_WORDS[axle],
      y: 28 + STEP * i,
      left: left ? x(left.value) : null,
      right: right ? x(right.value) : null,
      reach: limits.length > 0 ? null : ([x(low), Math.min(RIGHT, x(low + quantity.mateWithin))] as const),
      limits: limits.map((limit) => ({
        x: x(limit.value),
        bad: limit.side === 'at-most' ? (1 as const) : (-1 as const),
        judged: limit.status === 'judgement',
      })),
      straddles: [left, right].flatMap((end) =>
        end?.outcome?.kind === 'held' && end.outcome.decision === 'too-close'
          ? [[x(end.value - 2 * quantity.uncertainty), x(end.value + 2 * quantity.uncertainty)] as const]
          : [],
      ),
    };
  });
  const limits = ends
    .flatMap(limitsOf)
    .filter((limit, k, list) => list.findIndex((each) => each.id === limit.id) === k);
  return {
    what: quantity.what,
    words: quantity.words,
    height: foot + 34,
    rows,
    ticks: [from + 0.08 * (to - from), (from + to) / 2, to - 0.08 * (to - from)].map((value) => ({
      x: x(value),
      words: words(value),
    })),
    foot,
    limits: limits.map((limit) => limitView(limit, system)),
    mateWithin: differenceInUnits(
      quantity.mateWithin,
      kindOf(quantity) === 'temperature' ? 'degF-diff' : quantity.unit,
      system,
    ),
    spoken: `${quantity.words} by axle, left against right. ${pairs
      .map(
        ({ axle, left, right, uneven }) =>
          `${AXLE_WORDS[axle]}: left ${left ? words(left.value) : 'not measured'}, right ${right ? words(right.value) : 'not measured'}${uneven ? ', uneven' : ''}`,
      )
      .join('; ')}.`,
  };
}
