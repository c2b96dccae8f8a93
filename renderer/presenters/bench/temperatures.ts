import {
  compareTemperatures,
  INFRARED_GIVE_F,
  judgeHubPair,
  type WheelEndReading,
  type WorkedFigure,
} from '../../../shared/measuring/index.ts';
import type { Observation } from '../../../shared/visit/index.ts';
import { convertDifference } from '../../../shared/units/index.ts';
import { digits, shown } from './figure-kinds.ts';
import { FormReader, refused, type BenchForm, type Shown } from './form.ts';
import { differenceInUnits, statusWords } from './held.ts';
import { axlesOf, siteOf } from './strokes.ts';
import { axleName, SIDES, type DrawnEnd, type Side } from './wheel-ends.ts';

export const HEAT_CAUTIONS: readonly string[] = [
  'Stop off the road, parking brake set, wheels chocked, before anyone walks round the coach.',
  'Do not touch: a dragging brake or a failing bearing burns. Stand to the side of a hot tyre, never in front of the wheel; it can burst.',
  'Smoke, a glow or a smell of burning: stay put, keep away, call the fire service.',
];

export const HEAT_STEPS: readonly string[] = [
  'Drive 20 minutes or more with little braking, roll to a stop with as little brake as is safe.',
  'Read every wheel end at the same spot, hub face with hub face, within ten minutes.',
  'Aim at matt paint or a strip of tape. Bright metal reads far too cold.',
];

export const SURFACES: readonly (readonly [string, string, number])[] = [
  ['matt', 'Matt paint, rust or tape', 0.95],
  ['gloss', 'Glossy paint', 0.85],
  ['bright', 'Bright or polished metal', 0.1],
];

export interface HeatEnd {
  readonly axle: number;
  readonly side: Side;
  readonly name: string;
  readonly temperature: string;
  readonly fromMiddle: string;
  readonly fromOther: string;
  readonly score: string;
  /** Over the other end of its axle, °F; null where that was not read. */
  readonly apartF: number | null;
  readonly marked: 'hot' | 'cold' | null;
}

export interface HeatView {
  readonly ends: readonly HeatEnd[];
  readonly heading: string;
  readonly how: string;
  readonly pairs: readonly {
    readonly axle: string;
    readonly words: string;
    readonly why: string;
    readonly status: string;
    readonly stop: boolean;
  }[];
}

/** Every end that was typed, with what is said at its wheel before anything is compared. */
export function heatDrawn(form: BenchForm): readonly DrawnEnd[] {
  const axles = axlesOf(form, 'heat.axles');
  const view = heatView(form);
  return Array.from({ length: axles }, (_, i) => i + 1).flatMap((axle) =>
    SIDES.map((side): DrawnEnd => {
      const value = new FormReader(form).optional(`heat.${axle}.${side}`, 'temperature', 'temperature');
      const marked =
        view.kind === 'shown' ? view.ends.find((end) => end.axle === axle && end.side === side)?.marked : undefined;
      const words = value === null || Number.isNaN(value) ? '–' : shown(value, 'temperature', form.system);
      return { axle, side, words: marked ? `${words} ${marked}` : words, mark: null, lit: Boolean(marked) };
    }),
  );
}

/** The largest difference between the two ends of an axle, with the hotter end as the place, and what was read. */
export function widestPair(
  form: BenchForm,
): Shown<
  WorkedFigure & { readonly unit: string; readonly site: string; readonly observations: readonly Observation[] }
> {
  const view = heatView(form);
  if (view.kind !== 'shown') return view;
  const apart = view.ends.flatMap((end) => (end.apartF === null ? [] : [{ ...end, apartF: end.apartF }]));
  if (apart.length === 0) return { kind: 'waiting', words: 'Both ends of one axle are needed.' };
  const worst = apart.reduce((a, b) => (b.apartF > a.apartF ? b : a));
  return {
    kind: 'shown',
    value: Math.max(0, worst.apartF),
    uncertainty: form.instrument
      ? convertDifference(form.instrument.uncertainty, form.instrument.unit, 'degF-diff')
      : (Math.SQRT2 * INFRARED_GIVE_F) / Math.sqrt(3),
    unit: 'degF-diff',
    site: siteOf(worst.axle, worst.side),
    observations: [
      ...view.ends.map(({ name, temperature }) => ({ what: name, said: temperature })),
      { what: 'Against their fellows', said: view.heading },
    ],
  };
}

/** Wheel ends against their fellows, and each pair by its own heat. */
export function heatView(form: BenchForm): Shown<HeatView> {
  const axles = axlesOf(form, 'heat.axles');
  const read = new FormReader(form);
  const readings: WheelEndReading[] = [];
  for (let axle = 1; axle <= axles; axle++) {
    for (const side of SIDES) {
      const temperatureF = read.optional(`heat.${axle}.${side}`, `${axleName(axle)} ${side}`, 'temperature');
      if (temperatureF !== null) readings.push({ axle, side, temperatureF });
    }
  }
  const minutes = read.figure('heat.minutes', 'minutes from the first to the last reading', 'minutes');
  if (readings.length === 0) return { kind: 'waiting', words: 'Type the temperature of each wheel end.' };
  const trouble = read.trouble();
  if (trouble) return trouble;
  const found = compareTemperatures({
    readings,
    minutes,
    sameSpot: form.choice('heat.spot') !== 'no',
    emissivity: (SURFACES.find(([id]) => id === form.choice('heat.surface')) ?? SURFACES[0]!)[2],
  });
  if (!found.ok) return refused(found);
  const apart = (value: number | null): string =>
    value === null ? 'not read' : `${value > 0 ? '+' : ''}${differenceInUnits(value, 'degF-diff', form.system)}`;
  const off = found.ends.filter(({ marked }) => marked !== null);
  return {
    kind: 'shown',
    ends: found.ends.map((end) => ({
      axle: end.axle,
      side: end.side,
      name: `${axleName(end.axle)}, ${end.side}`,
      temperature: shown(end.temperatureF, 'temperature', form.system),
      fromMiddle: apart(end.fromMedianF),
      fromOther: apart(end.fromOtherSideF),
      score: end.score === null ? 'not worked out' : digits(end.score, 1),
      apartF: end.fromOtherSideF,
      marked: end.marked,
    })),
    heading:
      off.length === 0
        ? 'No end stands out'
        : off.map((end) => `${axleName(end.axle)} ${end.side} is ${end.marked === 'hot' ? 'hot' : 'cold'}`).join('; '),
    how:
      found.compared === 'all'
        ? 'Every end against all: its score is clear, it lies 30 °F (17 °C) or more from the middle and 20 °F (11 °C) or more from the other side. The spans are judgement.'
        : 'Fewer than four ends: only the two sides of an axle are compared, at 30 °F (17 °C), and the hotter is named. No outlier test is possible.',
    pairs: pairsOf(form, readings),
  };
}

function pairsOf(form: BenchForm, readings: readonly WheelEndReading[]): HeatView['pairs'] {
  const braked = form.choice('heat.braked') === 'yes';
  const words = {
    usual: 'usual',
    caution: 'caution',
    'inspect-before-driving': 'look at it before driving',
    'do-not-drive': 'stay put',
  } as const;
  return [...new Set(readings.map(({ axle }) => axle))].flatMap((axle) => {
    const pair = readings.filter((each) => each.axle === axle).map(({ temperatureF }) => temperatureF);
    if (pair.length < 2) return [];
    const found = judgeHubPair(Math.max(...pair), Math.min(...pair), braked);
    return found.ok
      ? [
          {
            axle: axleName(axle),
            words: words[found.verdict],
            why: found.why,
            status: statusWords(found.status),
            stop: found.verdict === 'do-not-drive',
          },
        ]
      : [];
  });
}
