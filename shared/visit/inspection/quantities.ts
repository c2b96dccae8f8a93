/** What is measured at a part, and the limit that it is held against. */
import {
  judge,
  DIAL_UNCERTAINTY_IN,
  judgeDrum,
  judgeEndPlay,
  judgeLining,
  judgeStroke,
  judgeTread,
  STROKE_UNCERTAINTY_IN,
  worstOf,
  type BoltSize,
  type Chamber,
  type Judgement,
  type Limit,
  type StrokeClass,
} from '../../measuring/index.ts';
import { readingIn } from '../reading-in.ts';
import type { InspectionItem } from './state.ts';

/** Something the limit hangs on that is not measured. */
export interface QuantityFact {
  readonly id: string;
  readonly words: string;
  /** Values that can be chosen; empty = a figure is typed. */
  readonly values: readonly (readonly [value: string, words: string])[];
}

export interface Quantity {
  /** Id, used as `what` of a reading. */
  readonly what: string;
  readonly item: string;
  readonly words: string;
  /** Unit id of `shared/units` in which it is judged. */
  readonly unit: string;
  /** One standard uncertainty in that unit. Judgement. */
  readonly uncertainty: number;
  /** Limit id of the vocabulary; absent = only compared with its mate. */
  readonly limit?: string;
  readonly facts: readonly QuantityFact[];
  /** Spread within which the two sides of an axle count as alike, in the unit. Judgement. */
  readonly mateWithin: number;
}

const STRIP: QuantityFact = {
  id: 'lining',
  words: 'Lining',
  values: [
    ['drum', 'drum, not known which'],
    ['drum-one-strip', 'drum, one strip a shoe'],
    ['drum-two-pads', 'drum, two pads a shoe'],
    ['air-disc', 'air disc'],
  ],
};
const CHAMBER: QuantityFact = {
  id: 'chamber',
  words: 'Chamber',
  values: [
    ...[9, 12, 16, 20, 24, 30, 36].map((size) => [`clamp ${size}`, `type ${size}, clamp ring`] as const),
    ...(['A', 'B', 'C', 'D', 'E', 'F', 'G'] as const).map(
      (size) => [`bolt ${size}`, `size ${size}, bolted flange`] as const,
    ),
    ...[9, 12, 16, 20, 24, 30, 36, 50].map(
      (size) => [`rotochamber ${size}`, `type ${size}, rolling diaphragm`] as const,
    ),
    ['double-diaphragm', 'type 30, double diaphragm, roller lock'],
  ],
};
const STROKE_CLASS: QuantityFact = {
  id: 'stroke-class',
  words: 'Its stroke',
  values: [
    ['unknown', 'not known: the shorter limit'],
    ['standard', 'standard'],
    ['long', 'long'],
    ['long-3-in', 'three-inch'],
  ],
};

/** In the order of the picture. */
export const QUANTITIES: readonly Quantity[] = [
  { what: 'hub-heat', item: 'hub', words: 'Hub heat', unit: 'degF', uncertainty: 4, facts: [], mateWithin: 20 },
  {
    what: 'drum-heat',
    item: 'drum',
    words: 'Drum heat',
    unit: 'degF',
    uncertainty: 4,
    limit: 'drum-temperature-stop',
    facts: [],
    mateWithin: 50,
  },
  {
    what: 'stroke',
    item: 'chamber',
    words: 'Pushrod stroke',
    unit: 'in',
    uncertainty: STROKE_UNCERTAINTY_IN,
    limit: 'stroke-limits-by-chamber-type',
    facts: [CHAMBER, STROKE_CLASS, { id: 'tank-psi', words: 'Tanks during it, psi', values: [] }],
    mateWithin: 1 / 4,
  },
  {
    what: 'lining-left',
    item: 'lining',
    words: 'Lining that remains',
    unit: 'in',
    uncertainty: 0.03,
    limit: 'lining-thickness-non-steering-axle-air',
    facts: [STRIP],
    mateWithin: 1 / 8,
  },
  {
    what: 'drum-diameter',
    item: 'drum',
    words: 'Drum diameter',
    unit: 'in',
    uncertainty: 0.003,
    limit: 'drum-diameter',
    facts: [
      { id: 'nominal-in', words: 'Nominal, in', values: [] },
      { id: 'cast-in', words: 'Largest, cast on it, in', values: [] },
    ],
    mateWithin: 0.04,
  },
  {
    what: 'end-play',
    item: 'bearing',
    words: 'Bearing end play',
    unit: 'in',
    uncertainty: DIAL_UNCERTAINTY_IN,
    limit: 'wheel-bearing-end-play-manually-adjusted',
    facts: [],
    mateWithin: 0.004,
  },
  {
    what: 'tread',
    item: 'tyre',
    words: 'Tread',
    unit: 'in',
    uncertainty: 1 / 64,
    limit: 'tread-depth',
    facts: [],
    mateWithin: 2 / 32,
  },
];

/** How a reading stands against its limit. */
export type QuantityOutcome =
  /** `against` are the limits with their judgements; the worst decides. */
  | {
      readonly kind: 'held';
      readonly against: readonly Judgement[];
      readonly decision: Judgement['decision'];
      readonly value: number;
    }
  /** There is no limit for it, or something that the limit hangs on is not known. */
  | { readonly kind: 'compared-only'; readonly why: string }
  | { readonly kind: 'refused'; readonly message: string };

/** A drum that has been hotter than that is not driven on: judgement, as in the vocabulary. */
const DRUM_STOP: Limit = {
  id: 'drum-temperature-stop',
  value: 600,
  unit: '°F',
  side: 'at-most',
  atLimit: 'fails',
  source: 'no source',
  status: 'judgement',
};

/** A quantity by its id. */
export function quantityOf(what: string): Quantity | undefined {
  return QUANTITIES.find((each) => each.what === what);
}

/**
 * A reading of an item held against the limit of `shared/measuring`, which names its source and how it was read.
 *
 * @returns `compared-only` for hub heat (its two thresholds are for a pair: `judgeHubPair`), and where a fact is missing.
 */
export function heldAgainst(item: InspectionItem, quantity: Quantity): QuantityOutcome | null {
  const found = item.readings.find(({ what }) => what === quantity.what);
  if (!found) return null;
  const value = readingIn(found.reading, quantity.unit);
  if (value === null) {
    return {
      kind: 'refused',
      message: `"${found.reading.unit}" is no unit for this figure. Enter it in ${quantity.unit}.`,
    };
  }
  const steering = item.site.endsWith(' front');
  const fact = (id: string): string => item.facts[id] ?? '';
  const figure = (id: string): number | null => (fact(id) === '' ? null : Number(fact(id)));
  switch (quantity.what) {
    case 'drum-heat':
      return held(value, [judge(value, quantity.uncertainty, DRUM_STOP)]);
    case 'stroke': {
      const chamber = chamberOf(fact('chamber'), fact('stroke-class'));
      const psi = figure('tank-psi');
      if (!chamber || psi === null) return open('Name the chamber and the tank pressure: the limit hangs on both.');
      const outcome = judgeStroke({ chamber, strokeIn: value, reservoirPsi: psi });
      return outcome.ok ? held(value, [outcome.judgement]) : refused(outcome.message);
    }
    case 'lining-left': {
      const kind = STRIP.values.map(([id]) => id).find((id) => id === fact('lining')) ?? 'drum';
      const outcome = judgeLining({
        axle: steering ? 'steering' : 'other',
        // The list of values is the list of kinds.
        kind: kind as 'drum',
        thicknessIn: value,
        uncertaintyIn: quantity.uncertainty,
        oily: fact('oily') === 'yes',
      });
      if (!outcome.ok) return refused(outcome.message);
      return held(value, outcome.advice ? [outcome.rule, outcome.advice] : [outcome.rule]);
    }
    case 'drum-diameter': {
      const nominalIn = figure('nominal-in');
      if (nominalIn === null) return open('Name the nominal diameter: the limit hangs on it.');
      const outcome = judgeDrum({
        nominalIn,
        diameterIn: value,
        uncertaintyIn: quantity.uncertainty,
        castMaximumIn: figure('cast-in'),
        justTurned: false,
      });
      return outcome.ok ? held(value, [outcome.judgement]) : refused(outcome.message);
    }
    case 'end-play': {
      const outcome = judgeEndPlay(value);
      return outcome.ok ? held(value, [outcome.low, outcome.high]) : refused(outcome.message);
    }
    case 'tread': {
      const outcome = judgeTread({
        front: steering,
        depth32nds: 32 * value,
        uncertainty32nds: 32 * quantity.uncertainty,
        retreaded: false,
      });
      if (!outcome.ok) return refused(outcome.message);
      const { judgement } = outcome;
      const limit = { ...judgement.limit, value: judgement.limit.value / 32, unit: 'in' };
      return held(value, [{ ...judgement, limit, margin: judgement.margin / 32 }]);
    }
    default:
      return open('One end alone has no limit: the two sides of its axle are compared.');
  }
}

function held(value: number, against: readonly Judgement[]): QuantityOutcome {
  return { kind: 'held', against, value, decision: worstOf(against.map(({ decision }) => decision)) };
}
function open(why: string): QuantityOutcome {
  return { kind: 'compared-only', why };
}
function refused(message: string): QuantityOutcome {
  return { kind: 'refused', message };
}

function chamberOf(chamber: string, strokeClass: string): Chamber | null {
  const [kind, size = ''] = chamber.split(' ');
  switch (kind) {
    case 'clamp': {
      const known = (['standard', 'long', 'long-3-in'] as const).find((each) => each === strokeClass);
      return { kind, size: Number(size), strokeClass: known ?? ('unknown' satisfies StrokeClass) };
    }
    case 'bolt': {
      const bolt = (['A', 'B', 'C', 'D', 'E', 'F', 'G'] satisfies BoltSize[]).find((each) => each === size);
      return bolt ? { kind, size: bolt } : null;
    }
    case 'rotochamber':
      return { kind, size: Number(size) };
    case 'double-diaphragm':
      return { kind };
    default:
      return null;
  }
}
