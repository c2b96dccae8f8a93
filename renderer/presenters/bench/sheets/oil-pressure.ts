import { judge, type Limit } from '../../../../shared/measuring/index.ts';
import { convert } from '../../../../shared/units/index.ts';
import { shown } from '../figure-kinds.ts';
import { bandPlot } from '../band-plot.ts';
import type { BenchForm } from '../form.ts';
import { heldView } from '../held.ts';
import { Given, source, type Asked, type Sheet } from '../sheet.ts';

export const OIL_PRESSURE_CAUTIONS: readonly string[] = [
  'Low, dropping or swinging oil pressure under way: stop the engine at once, then look.',
  'Hot oil under pressure: the test gauge goes in with the engine stopped, its hose away from exhaust, belts and fan.',
];

const POINTS = ['idle', 'fast', 'governed'] as const;
const POINT_WORDS = { idle: 'Idle', fast: 'About 1,200 rpm', governed: 'Governed speed' } as const;
const RPM: Readonly<Record<(typeof POINTS)[number], readonly [number, number]>> = {
  idle: [450, 700],
  fast: [1000, 1400],
  governed: [1800, 2300],
};
const USUAL: Readonly<Record<(typeof POINTS)[number], readonly [number, number]>> = {
  idle: [5, 30],
  fast: [15, 60],
  governed: [35, 75],
};
/** A look at a test gauge, and at the dash: one standard uncertainty, psi (judgement). */
const MASTER_U = 1;
const DASH_U = 3;
/** Oil below this is not hot: pressure is higher than it will be. Judgement, from the working span of 190 to 230 °F. */
const HOT_F = 180;
/** Oil above this has run: it is thinner than after a night. Judgement, from the hottest nights with some to spare. */
const COLD_F = 120;

const FIELDS: readonly Asked[] = [
  {
    ask: 'figure',
    name: 'oilp.temperature',
    label: 'Oil temperature',
    kind: 'temperature',
    where: 'The oil gauge, or an infrared thermometer at the sump, out of the air stream, after half an hour of work.',
    typical: [190, 230],
  },
  {
    ask: 'choice',
    name: 'oilp.at',
    label: 'What is asked for',
    options: [
      ['', 'The whole picture'],
      ['hot-idle', 'Hot, at idle'],
      ['hot-governed', 'Hot, at governed speed'],
      ['cold', 'Cold, at about 1,000 to 1,200 rpm'],
    ],
    otherwise: '',
    where: 'A check of a visit sets it by itself.',
  },
  ...POINTS.flatMap((point): Asked[] => [
    {
      ask: 'figure',
      name: `oilp.${point}.rpm`,
      label: `${POINT_WORDS[point]}: engine speed`,
      kind: 'rotation',
      where: 'The tachometer, at the moment when the pressure is read.',
      typical: RPM[point],
      optional: true,
    },
    {
      ask: 'figure',
      name: `oilp.${point}.master`,
      label: `${POINT_WORDS[point]}: test gauge`,
      kind: 'pressure',
      where: 'A direct-reading gauge on a hose at the gallery, beside the sender.',
      typical: USUAL[point],
      optional: true,
    },
    {
      ask: 'figure',
      name: `oilp.${point}.dash`,
      label: `${POINT_WORDS[point]}: dash gauge`,
      kind: 'pressure',
      where: 'The needle of the dash at the same moment. It alone never condemns an engine.',
      typical: USUAL[point],
      optional: true,
    },
  ]),
];

const MANUAL = 'model commercial driver’s licence manual, figure 2.5';
const common = { unit: 'psi', atLimit: 'passes', source: MANUAL, status: 'seen' } as const;
/** Hot oil. Only the lower edge is a limit: above the upper one a pressure is unusual, not too little. */
const BANDS: Readonly<Record<'idle' | 'governed', { readonly least: Limit; readonly usualUpToPsi: number }>> = {
  idle: { least: { ...common, id: 'oil-idle-least', value: 5, side: 'at-least' }, usualUpToPsi: 20 },
  governed: { least: { ...common, id: 'oil-working-least', value: 35, side: 'at-least' }, usualUpToPsi: 75 },
};
const ABOVE = {
  // 20 psi at hot idle: US Army TM 55-1905-223-10, engine test standard of a four-stroke (seen).
  idle: 'That is no fault by itself: a four-stroke is asked for 20 psi at hot idle by its test standard.',
  governed: 'That is not too little, but look at the grade of the oil, the regulator and the gauge.',
} as const;

interface Point {
  readonly id: (typeof POINTS)[number];
  readonly rpm: number;
  readonly master: number | null;
  readonly dash: number | null;
}

function pointsOf(given: Given): readonly Point[] {
  return POINTS.flatMap((id) => {
    const rpm = given.maybe(`oilp.${id}.rpm`);
    const master = given.maybe(`oilp.${id}.master`);
    const dash = given.maybe(`oilp.${id}.dash`);
    return rpm === null || (master === null && dash === null) ? [] : [{ id, rpm, master, dash }];
  });
}

export const OIL_PRESSURE_SHEET: Sheet = {
  id: 'oil-pressure',
  heading: 'Oil pressure by speed and temperature',
  fields: FIELDS,
  answer(form) {
    const given = new Given(form, FIELDS);
    if (given.trouble) return given.trouble;
    const temperatureF = given.figure('oilp.temperature');
    const at = given.choice('oilp.at');
    const points = pointsOf(given);
    const wanted = at === 'hot-idle' ? 'idle' : at === 'hot-governed' ? 'governed' : at === 'cold' ? 'fast' : null;
    if (points.length === 0 || (wanted !== null && !points.some(({ id }) => id === wanted)))
      return {
        kind: 'waiting',
        words: `Still needed: engine speed and pressure at ${wanted === null ? 'one speed or more' : POINT_WORDS[wanted].toLowerCase()}.`,
      };
    if (at.startsWith('hot') && temperatureF < HOT_F)
      return {
        kind: 'refused',
        reason: 'not-hot',
        words: `The oil is at ${shown(temperatureF, 'temperature', form.system)}: not hot, so the pressure is higher than it will be. Read again above ${shown(HOT_F, 'temperature', form.system)}.`,
      };
    if (at === 'cold' && temperatureF > COLD_F)
      return {
        kind: 'refused',
        reason: 'not-cold',
        words: `The oil is at ${shown(temperatureF, 'temperature', form.system)}: it has run, so the pressure is lower than after a cold start. Read it after a night, below ${shown(COLD_F, 'temperature', form.system)}.`,
      };
    const off = points.find(({ id, rpm }) => rpm < 0.7 * RPM[id][0] || rpm > 1.3 * RPM[id][1]);
    if (off)
      return {
        kind: 'refused',
        reason: 'another-speed',
        words: `${shown(off.rpm, 'rotation', form.system)} is not ${POINT_WORDS[off.id].toLowerCase()}; usual is ${RPM[off.id].join(' to ')} rpm.`,
      };
    const pressure = (psi: number): string => shown(psi, 'pressure', form.system);
    const taken = points.find(({ id }) => id === wanted);
    const cold = temperatureF < HOT_F;
    return {
      kind: 'shown',
      held: points.flatMap((point) => {
        if (cold || point.id === 'fast') return [];
        const value = point.master ?? point.dash ?? 0;
        const u = point.master === null ? DASH_U : MASTER_U;
        const judgement = judge(value, u, BANDS[point.id].least);
        return [{ of: POINT_WORDS[point.id], view: heldView(value, u, judgement, form.system) }];
      }),
      figures: points.flatMap(({ id, master, dash }) =>
        master === null || dash === null
          ? []
          : [{ words: `${POINT_WORDS[id]}: dash below the test gauge by`, figure: pressure(master - dash) }],
      ),
      plot: plotOf(points, cold, form),
      notes: [
        ...(cold ? ['Cold oil: the bands are for hot oil and are not held against it.'] : []),
        ...(points.some(({ master }) => master === null)
          ? ['Where only the dash was read, the sender may be wrong: a test gauge comes before any work.']
          : []),
        ...points.flatMap(({ id, master, dash }) =>
          !cold && id !== 'fast' && (master ?? dash ?? 0) > BANDS[id].usualUpToPsi
            ? [`${POINT_WORDS[id]}: above the ${pressure(BANDS[id].usualUpToPsi)} up to which is usual. ${ABOVE[id]}`]
            : [],
        ),
        ...(points.some(({ id, master, dash }) => id === 'governed' && (master ?? dash ?? 99) < 35)
          ? [
              'Below 35 psi at governed speed do not go on: here 35 counts for every engine. Older two-strokes are said to be content with 28 to 30 psi (from memory); only that engine’s own book may put a lower figure in its place.',
            ]
          : []),
        'By rule of thumb 10 psi for each 1,000 rpm, hot (common practice); the engine’s own book comes first.',
      ],
      sources: [source(MANUAL, 'seen'), source('give or take 2 psi for a test gauge, 6 for the dash')],
      // The checks that take it ask for a test gauge: the dash is what they doubt.
      ...(taken && taken.master !== null
        ? { worked: { value: taken.master, uncertainty: MASTER_U, unit: 'psi' } }
        : taken
          ? {
              wanting: `Still needed: the test gauge at ${POINT_WORDS[taken.id].toLowerCase()}. The dash alone is no reading of a check.`,
            }
          : {}),
    };
  },
};

function plotOf(points: readonly Point[], cold: boolean, form: BenchForm) {
  const marks = points.flatMap(({ rpm, master, dash }) => [
    ...(master === null ? [] : [{ x: rpm, y: master, give: 2 * MASTER_U, open: false, words: '' }]),
    ...(dash === null ? [] : [{ x: rpm, y: dash, give: 2 * DASH_U, open: true, words: '' }]),
  ]);
  const scale = form.system === 'us' ? 1 : convert(1, 'psi', 'kPa');
  return bandPlot({
    x: { from: 0, to: 2500, unit: 'rpm' },
    y: { from: 0, to: 100 * scale, unit: form.system === 'us' ? 'psi' : 'kPa' },
    bands: cold
      ? []
      : [
          { from: 400, to: 800, low: 5 * scale, high: 20 * scale, words: 'idle' },
          { from: 1200, to: 2300, low: 35 * scale, high: 75 * scale, words: 'working' },
        ],
    marks: marks.map((mark) => ({ ...mark, y: mark.y * scale, give: mark.give * scale })),
    curve: points.flatMap(({ rpm, master }): [number, number][] => (master === null ? [] : [[rpm, master * scale]])),
    spoken: `Oil pressure over engine speed: ${marks.map(({ x, y, open }) => `${shown(y, 'pressure', form.system)} at ${Math.round(x)} rpm${open ? ' by the dash' : ''}`).join('; ')}${cold ? '' : '; the usual bands are 5 to 20 psi at idle and 35 to 75 psi working'}.`,
    caption: 'Blue: test gauge. Open dots: dash. Pale: what is usual, hot.',
  });
}
