/** One quantity at the wheel ends: fields, drawing, and why an end is marked. */
import { parseNumber, unitOf, type UnitSystem } from '../../../shared/units/index.ts';
import {
  AXLE_WORDS,
  entryId,
  heldAgainst,
  hubPairVerdict,
  oddEnds,
  pairsOf,
  SIDES,
  WHEEL_AXLES,
  wheelSite,
  type AxlePairOf,
  type InspectionState,
  type OddEnd,
  type OddEnds,
  type Quantity,
  type QuantityOutcome,
  type VisitEventBody,
  type WheelAxle,
} from '../../../shared/visit/index.ts';
import { preferredOfKind, shown, type FigureKind } from '../bench/figure-kinds.ts';
import type { BenchForm } from '../bench/form.ts';
import { differenceInUnits, heldView, statusWords, type HeldView } from '../bench/held.ts';
import { coachView, type CoachView, type DrawnEnd } from '../bench/wheel-ends.ts';

/** What a quantity is, for its fields. */
export function kindOf(quantity: Quantity): FigureKind {
  return unitOf(quantity.unit).quantity === 'temperature' ? 'temperature' : 'length';
}

export function endField(quantity: Quantity, site: string): string {
  return `inspect.${quantity.what}.${site}`;
}
export function factField(quantity: Quantity, axle: WheelAxle, fact: string): string {
  return `inspect.${quantity.what}.${axle}.${fact}`;
}

/** One end with its reading, as it is written beside the coach. */
export interface EndView {
  readonly site: string;
  readonly name: string;
  readonly figure: string;
  /** Against each limit; empty where there is none. */
  readonly held: readonly HeldView[];
  /** What has to be said where there is no judgement. */
  readonly why: string;
}

export interface WheelEndsView {
  readonly heading: string;
  readonly coach: CoachView;
  readonly ends: readonly EndView[];
  readonly odd: OddEnds | null;
  /** Each pair of hubs by its own heat; empty for other quantities. */
  readonly hubs: readonly {
    readonly axle: string;
    readonly words: string;
    readonly why: string;
    readonly status: string;
  }[];
  /** For each marked end: three figures with the threshold of each. */
  readonly marked: readonly { readonly name: string; readonly rows: readonly (readonly [string, string, string])[] }[];
}

const SIGNS = { meets: 'tick', 'too-close': 'straddle', fails: 'cross' } as const;

export function wheelEndsView(state: InspectionState, quantity: Quantity, system: UnitSystem): WheelEndsView {
  const pairs = pairsOf(state, quantity);
  const hot = kindOf(quantity) === 'temperature';
  const odd = hot ? oddEnds(state, quantity) : null;
  const marks = odd?.kind === 'compared' ? odd.odd : [];
  const words = (value: number): string => shown(value, kindOf(quantity), system);
  const ends = pairs.flatMap(({ axle, left, right }) => [left, right].flatMap((end) => (end ? [{ axle, end }] : [])));
  const drawn = WHEEL_AXLES.flatMap((axle, i) =>
    SIDES.map((side): DrawnEnd => {
      const end = ends.find(({ end: { item } }) => item.site === wheelSite(side, axle))?.end;
      const outcome = end?.outcome;
      return {
        axle: i + 1,
        side,
        words: end ? words(end.value) : '–',
        mark: outcome?.kind === 'held' ? SIGNS[outcome.decision] : null,
        lit: marks.some(({ site }) => site === wheelSite(side, axle)),
      };
    }),
  );
  return {
    heading: headingOf(ends.length, odd, pairs),
    coach: coachView(WHEEL_AXLES.length, drawn),
    ends: ends.map(({ axle, end }) => endView(axle, end.item.site, end.value, end.outcome, quantity, system)),
    odd,
    hubs: quantity.what === 'hub-heat' ? pairs.flatMap(hubWords) : [],
    marked: marks.map((mark) => ({ name: mark.site, rows: markRows(mark, system) })),
  };
}

const HUB_WORDS = {
  usual: 'usual',
  caution: 'caution',
  'inspect-before-driving': 'look at it before driving',
  'do-not-drive': 'stay put',
} as const;

function hubWords(pair: AxlePairOf): WheelEndsView['hubs'] {
  const found = hubPairVerdict(pair);
  if (!found) return [];
  return [
    { axle: AXLE_WORDS[pair.axle], words: HUB_WORDS[found.verdict], why: found.why, status: statusWords(found.status) },
  ];
}

function endView(
  axle: WheelAxle,
  site: string,
  value: number,
  outcome: QuantityOutcome | null,
  quantity: Quantity,
  system: UnitSystem,
): EndView {
  return {
    site,
    name: `${AXLE_WORDS[axle]}, ${site.split(' ')[0] ?? ''}`,
    figure: shown(value, kindOf(quantity), system),
    held:
      outcome?.kind === 'held'
        ? outcome.against.map((judgement) => heldView(value, quantity.uncertainty, judgement, system))
        : [],
    why: outcome?.kind === 'compared-only' ? outcome.why : outcome?.kind === 'refused' ? outcome.message : '',
  };
}

function headingOf(ends: number, odd: OddEnds | null, pairs: readonly AxlePairOf[]): string {
  if (ends === 0) return 'Wheel ends, left against right';
  const count = `${ends} wheel end${ends === 1 ? '' : 's'}`;
  if (odd) {
    if (odd.kind !== 'compared') return `${count}, not compared yet`;
    const marks = odd.odd.length;
    return `${count}, ${marks === 0 ? 'none stands out' : marks === 1 ? 'one stands out' : `${marks} stand out`}`;
  }
  const uneven = pairs.filter((pair) => pair.uneven).map(({ axle }) => AXLE_WORDS[axle].toLowerCase());
  if (uneven.length > 0) return `${count}, uneven at the ${uneven.join(' and ')} axle`;
  return pairs.some(({ apart }) => apart !== null) ? `${count}, mates alike` : count;
}

/** Thresholds as `compareTemperatures` has them. */
function markRows(mark: OddEnd, system: UnitSystem): (readonly [string, string, string])[] {
  const apart = (value: number): string => differenceInUnits(Math.abs(value), 'degF-diff', system);
  return [
    ...(mark.fromOtherSideF === null
      ? []
      : [[apart(mark.fromOtherSideF), 'from its mate', `marked from ${apart(20)}`] as const]),
    [apart(mark.fromMiddleF), 'from the middle of all', `marked from ${apart(30)}`],
    ...(mark.score === null ? [] : [[mark.score.toFixed(1), 'times their scatter', 'clear for so many ends'] as const]),
  ];
}

/**
 * Everything typed for a quantity, as events: one for each end that has a figure. What the limits hang on goes to both ends
 * of the axle.
 *
 * @returns the events, or what cannot be read.
 */
export function measuredBodies(
  state: InspectionState,
  quantity: Quantity,
  form: BenchForm,
): { readonly bodies: VisitEventBody[] } | { readonly trouble: string } {
  const bodies: VisitEventBody[] = [];
  for (const axle of WHEEL_AXLES) {
    const facts: Record<string, string> = {};
    for (const fact of quantity.facts) {
      const value =
        fact.values.length > 0
          ? form.choice(factField(quantity, axle, fact.id))
          : form.entry(factField(quantity, axle, fact.id)).text.trim();
      if (value === '') continue;
      if (fact.values.length === 0 && parseNumber(value) === null)
        return { trouble: `“${value}” for “${fact.words}” is not a number. Type it like 16.5 or 85.` };
      facts[fact.id] = fact.values.length > 0 ? value : String(parseNumber(value));
    }
    for (const side of SIDES) {
      const site = wheelSite(side, axle);
      const { text, unit } = form.entry(endField(quantity, site));
      const before = state.items.find(({ id }) => id === entryId(quantity.item, site));
      const had = before?.readings.find(({ what }) => what === quantity.what)?.reading;
      if (text.trim() === '' && (Object.keys(facts).length === 0 || !had)) continue;
      const value = text.trim() === '' ? null : parseNumber(text);
      if (text.trim() !== '' && value === null)
        return {
          trouble: `“${text}” for ${AXLE_WORDS[axle].toLowerCase()}, ${side} is not a number. Type it like 3.4 or 2 1/4.`,
        };
      const typed = value === null ? null : { value, unit: unit ?? preferredOfKind(kindOf(quantity), form.system) };
      const limit = quantity.limit === undefined ? {} : { limit: quantity.limit };
      bodies.push({
        kind: 'inspection.recorded',
        entry: entryId(quantity.item, site),
        item: quantity.item,
        site,
        state: stateAfter(before?.state, quantity, typed ?? had ?? null, site, { ...before?.facts, ...facts }),
        ...(typed ? { readings: [{ what: quantity.what, reading: typed, ...limit }] } : {}),
        ...(Object.keys(facts).length > 0 ? { facts } : {}),
      });
    }
  }
  return { bodies };
}

/** INS-7: beyond its limit is bad, too close to call is one to watch; nothing makes a part better by itself. */
function stateAfter(
  before: 'not-opened' | 'good' | 'watch' | 'bad' | undefined,
  quantity: Quantity,
  reading: { readonly value: number; readonly unit: string } | null,
  site: string,
  facts: Readonly<Record<string, string>>,
): 'good' | 'watch' | 'bad' {
  const now = before === undefined || before === 'not-opened' ? 'good' : before;
  if (facts['oily'] === 'yes') return 'bad';
  if (reading === null || now === 'bad') return now;
  const outcome = heldAgainst(
    {
      id: '',
      item: quantity.item,
      site,
      state: now,
      readings: [{ what: quantity.what, reading }],
      facts,
      note: '',
      photos: [],
      foundAt: '',
      at: '',
      by: '',
    },
    quantity,
  );
  if (outcome?.kind !== 'held' || outcome.decision === 'meets') return now;
  return outcome.decision === 'fails' ? 'bad' : 'watch';
}
