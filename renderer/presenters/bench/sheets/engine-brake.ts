import {
  cylinderShare,
  effectiveMassKg,
  ratioOfTimes,
  retardingPower,
  WATCH_S,
  type CoastDown,
} from '../../../../shared/measuring/index.ts';
import { digits, shown } from '../figure-kinds.ts';
import { refused, type Shown } from '../form.ts';
import { Given, rowOf, source, type Answer, type Asked, type Sheet } from '../sheet.ts';

const ROAD_CAUTIONS: readonly string[] = [
  'Dry road, light traffic, service brakes tested first. On a slippery road the engine brake makes the wheels skid.',
  'The driver drives and nothing else; a passenger holds the watch, or a telephone films the dash.',
  'No downgrade that the service brakes could not hold; nothing loose, belts on.',
];

const KG_PER_LB = 0.45359237;
const M_PER_IN = 0.0254;
/** Engine with flywheel of a large diesel, 2 to 4 kg·m²: judgement. */
const ENGINE_INERTIA = 3;

const RUNS: readonly Asked[] = [
  {
    ask: 'figure',
    name: 'coast.weight',
    label: 'Weight as driven',
    kind: 'weight',
    where: 'A truck scale ticket of this trip; else the axle weights of the profile, added up.',
    typical: [20_000, 54_000],
  },
  {
    ask: 'figure',
    name: 'coast.known',
    label: 'Weight known to within',
    kind: 'percent',
    where: 'Two in a hundred from a scale, ten from the plate. Above fifteen nothing is worked out.',
    typical: [1, 10],
  },
  {
    ask: 'figure',
    name: 'coast.tyres',
    label: 'Tyres on the road',
    kind: 'plain',
    where: 'Count them: six on two axles with duals, eight with a tag axle.',
    typical: [6, 10],
  },
  {
    ask: 'figure',
    name: 'coast.radius',
    label: 'Height of the wheel centre',
    kind: 'length',
    where: 'A tape from the ground to the middle of a drive wheel.',
    typical: [18, 21],
  },
  {
    ask: 'figure',
    name: 'coast.ratio',
    label: 'Axle ratio times gear ratio',
    kind: 'plain',
    where: 'Axle ratio from its plate or the profile, times the gear that is held; 1 is direct.',
    typical: [2.5, 12],
  },
  {
    ask: 'figure',
    name: 'coast.from',
    label: 'Upper speed of the band',
    kind: 'speed',
    where: 'Satellite receiver. A band of 10 mph in one gear, the same in every run.',
    typical: [40, 65],
  },
  {
    ask: 'figure',
    name: 'coast.to',
    label: 'Lower speed of the band',
    kind: 'speed',
    where: 'As above; no shift and no lock-up change between the two.',
    typical: [30, 55],
  },
  ...(['out', 'back'] as const).flatMap((way): Asked[] => [
    {
      ask: 'figure',
      name: `coast.${way}.on`,
      label: way === 'out' ? 'There, engine brake on' : 'Back, engine brake on',
      kind: 'seconds',
      where: 'Seconds from the upper to the lower speed, throttle closed, engine brake on in its highest step.',
      typical: [4, 60],
    },
    {
      ask: 'choice',
      name: `coast.${way}.way`,
      label: way === 'out' ? 'There, without it, the coach' : 'Back, without it, the coach',
      options: [
        ['down', 'slows by itself'],
        ['holds', 'holds its speed'],
        ['up', 'gains speed'],
      ],
      otherwise: 'down',
      where: 'What it does on the same stretch, same gear, throttle closed, engine brake off.',
    },
    {
      ask: 'figure',
      name: `coast.${way}.off`,
      label: way === 'out' ? 'There, without it' : 'Back, without it',
      kind: 'seconds',
      where: 'Seconds for the same band without the engine brake; not needed where it holds its speed.',
      typical: [6, 120],
      optional: true,
    },
  ]),
  {
    ask: 'figure',
    name: 'coast.expected',
    label: 'Retarding power by the maker’s table',
    kind: 'power',
    where: 'The engine brake’s own table, at the engine speed of the middle of the band. There is no common figure.',
    typical: [80, 300],
    optional: true,
  },
  {
    ask: 'choice',
    name: 'coast.counts',
    label: 'Housings',
    options: [
      ['6 2', 'Six cylinders, three housings of two'],
      ['6 3', 'Six cylinders, two housings of three'],
      ['8 4', 'Eight cylinders, two housings of four'],
    ],
    otherwise: '6 2',
    where: 'Under the rocker covers: how many cylinders each housing has.',
  },
];

function runOf(given: Given, way: 'out' | 'back', massKg: number): CoastDown | string {
  const how = given.choice(`coast.${way}.way`);
  const off = given.maybe(`coast.${way}.off`);
  if (how !== 'holds' && off === null)
    return `The time without the engine brake is still needed (${way === 'out' ? 'there' : 'back'}).`;
  return {
    effectiveMassKg: massKg,
    massUncertaintyKg: ((given.figure('coast.known') / 100) * massKg) / Math.sqrt(3),
    fromMph: given.figure('coast.from'),
    toMph: given.figure('coast.to'),
    speedUncertaintyMph: 0.5 / Math.sqrt(3),
    brakeOnS: given.figure(`coast.${way}.on`),
    brakeOff: how === 'holds' ? { way: 'holds' } : { way: how === 'up' ? 'up' : 'down', seconds: off ?? 0 },
    timeUncertaintyS: WATCH_S,
  };
}

/** How far the two directions may lie apart before grade or wind is in them: two standard uncertainties of both. */
function together(out: { powerKw: number; uncertaintyKw: number }, back: typeof out): boolean {
  return Math.abs(out.powerKw - back.powerKw) <= 2 * Math.hypot(out.uncertaintyKw, back.uncertaintyKw);
}

export const COAST_SHEET: Sheet = {
  id: 'retard-road',
  heading: 'Retarding power on the road',
  lead: 'The same band of speed with and without the engine brake, on one stretch, in both directions.',
  cautions: ROAD_CAUTIONS,
  fields: RUNS,
  answer(form): Shown<Answer> {
    const given = new Given(form, RUNS);
    if (given.trouble) return given.trouble;
    const mass = effectiveMassKg({
      massKg: given.figure('coast.weight') * KG_PER_LB,
      tyresOnRoad: given.figure('coast.tyres'),
      engineInertiaKgM2: ENGINE_INERTIA,
      overallRatio: given.figure('coast.ratio'),
      rollingRadiusM: given.figure('coast.radius') * M_PER_IN,
    });
    if (!mass.ok) return refused(mass);
    const runOut = runOf(given, 'out', mass.massKg);
    if (typeof runOut === 'string') return { kind: 'waiting', words: runOut };
    const runBack = runOf(given, 'back', mass.massKg);
    if (typeof runBack === 'string') return { kind: 'waiting', words: runBack };
    const out = retardingPower(runOut);
    const back = retardingPower(runBack);
    if (!out.ok) return refused(out);
    if (!back.ok) return refused(back);
    const power = (kw: number): string => shown(kw, 'power', form.system);
    if (!together(out, back))
      return {
        kind: 'refused',
        reason: 'grade-or-wind',
        words: `There ${power(out.powerKw)}, back ${power(back.powerKw)}: further apart than the readings explain. Grade, wind or a shift is in it. Take another stretch, both ways, on a calm day.`,
      };
    const mean = {
      powerKw: (out.powerKw + back.powerKw) / 2,
      // The weight is the same in both runs: its part does not fall by going twice. The larger is kept.
      uncertaintyKw: Math.max(out.uncertaintyKw, back.uncertaintyKw),
    };
    const sources = [
      source('half m·(v1² − v2²)·(1/t on − 1/t off), weight of turning parts by 40 CFR 1066.310', 'memory'),
      source('engine 3 kg·m², best count from 80 in 100'),
    ];
    const figures = [
      { words: 'Retarding power at the wheels', figure: power(mean.powerKw) },
      { words: 'Give or take', figure: power(2 * mean.uncertaintyKw) },
      { words: 'There', figure: power(out.powerKw) },
      { words: 'Back', figure: power(back.powerKw) },
    ];
    const expected = given.maybe('coast.expected');
    if (expected === null)
      return {
        kind: 'shown',
        figures,
        notes: [
          'Without the maker’s table no share of the cylinders is told: a guess would be too wide to count with.',
        ],
        sources,
      };
    const [cylinders = 6, each = 2] = given.choice('coast.counts').split(' ').map(Number);
    const counts = Array.from({ length: cylinders / each + 1 }, (_, i) => i * each);
    const share = cylinderShare(mean, expected, 0.1 * expected, cylinders, counts);
    if (!share.ok) return refused(share);
    return {
      kind: 'shown',
      figures: [{ words: 'By the table, all cylinders', figure: power(expected) }, ...figures],
      table: {
        head: ['Cylinders that act', 'In 100'],
        rows: share.shares.map(({ acting, probability }) => [
          `${acting} of ${cylinders}`,
          digits(100 * probability, 0),
        ]),
      },
      verdict: share.decided
        ? share.best === cylinders
          ? 'All cylinders seem to act.'
          : `${share.best} of ${cylinders} cylinders act: ${digits((100 * (cylinders - share.best)) / cylinders, 0)} % of it is missing.`
        : 'Too close to call: no count reaches 80 in 100. A wider band or a known weight tells more.',
      sources,
    };
  },
};

const DOWN: readonly Asked[] = [
  ...rowOf('rundown.off', 3, 1, (i) => `Engine brake off, run ${i}`, {
    kind: 'seconds',
    where: 'Standing, neutral, chocked: seconds from a steady fast speed down to 1,000 rpm after lifting sharply.',
    typical: [3, 12],
  }),
  ...rowOf('rundown.on', 3, 1, (i) => `Engine brake on, run ${i}`, {
    kind: 'seconds',
    where: 'The same with the engine brake on, from the same engine speed.',
    typical: [1.5, 10],
  }),
];

export const RUN_DOWN_SHEET: Sheet = {
  id: 'retard-standing',
  heading: 'Run-down times, standing',
  lead: 'Only where the engine brake works in neutral.',
  cautions: [
    'Parking brake set, wheels chocked at the front and at the back, gearbox in neutral: it can roll.',
    'Outdoors, or with the exhaust led outside. Exhaust gas kills without a warning.',
    'Nobody at belts, fan, shafts or the rear of the coach while it revs.',
    'Never above governed speed; oil hot and its pressure right before the first run. A knock or a falling needle ends it.',
  ],
  fields: DOWN,
  answer(form) {
    const given = new Given(form, DOWN);
    if (given.trouble) return given.trouble;
    const found = ratioOfTimes(given.row('rundown.on', 3), given.row('rundown.off', 3));
    if (!found.ok) return refused(found);
    return {
      kind: 'shown',
      figures: [
        { words: 'On divided by off', figure: digits(found.value, 2) },
        { words: 'Give or take', figure: digits(2 * found.uncertainty, 2) },
      ],
      notes: ['Three runs of each tell whether the thumb or the engine decides.'],
      sources: [source('watch by thumb, 0.2 s')],
      worked: { ...found, unit: 'ratio' },
    };
  },
};
