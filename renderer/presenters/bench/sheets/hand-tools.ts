import {
  judgeLash,
  judgeSuspensionLeak,
  judgeTread,
  lashDegrees,
  lashOn20In,
  lossOver,
  READING_UNCERTAINTY_PSI,
  oldestTyreAge,
  tyreRefill,
} from '../../../../shared/measuring/index.ts';
import { sentence } from '../../../../shared/visit/index.ts';
import { digits, shown } from '../figure-kinds.ts';
import { refused, type Shown } from '../form.ts';
import { differenceInUnits, heldView } from '../held.ts';
import { Given, rowOf, source, type Answer, type Asked, type Sheet } from '../sheet.ts';

export const HAND_CAUTIONS: readonly string[] = [
  'Parking brake set, wheels chocked; whoever watches a tyre stands beside it, not in the arch.',
  'Nobody between tyre and body while the air springs may let it down.',
  'A tyre below 80 % of its pressure is not filled on the coach: it may burst.',
];

const LOOK_IN = 1 / 16;

const LASH: readonly Asked[] = [
  {
    ask: 'figure',
    name: 'lash.wheel',
    label: 'Diameter of the steering wheel',
    kind: 'length',
    where: 'Tape across the rim, outside to outside.',
    typical: [18, 22],
  },
  {
    ask: 'choice',
    name: 'lash.power',
    label: 'Steering',
    options: [
      ['yes', 'Power, engine running'],
      ['no', 'Without power'],
    ],
    otherwise: 'yes',
    where: 'With power steering the engine idles during the test; otherwise the reading means nothing.',
  },
  ...rowOf('lash', 3, 1, (i) => `Movement at the rim, try ${i}`, {
    kind: 'length',
    where: 'Wheels straight ahead: along the rim from where one front tyre stirs to where it stirs the other way.',
    typical: [0.5, 5],
  }),
];

export const LASH_SHEET: Sheet = {
  id: 'hand-lash',
  heading: 'Steering lash',
  fields: LASH,
  answer(form) {
    const given = new Given(form, LASH);
    if (given.trouble) return given.trouble;
    const wheel = given.figure('lash.wheel');
    const tries = given.row('lash', 3);
    const most = Math.max(...tries);
    const judged = judgeLash(most, LOOK_IN, wheel, given.choice('lash.power') !== 'no');
    if (!judged.ok) return refused(judged);
    const scaled = lashOn20In(tries, wheel, LOOK_IN);
    if (!scaled.ok) return refused(scaled);
    const angle = lashDegrees(most, wheel);
    return {
      kind: 'shown',
      held: [{ of: '', view: heldView(most, LOOK_IN, judged.judgement, form.system) }],
      figures: [
        { words: 'The same on a 20 in wheel', figure: shown(scaled.value, 'length', form.system) },
        ...(angle.ok ? [{ words: 'As an angle of the wheel', figure: `${digits(angle.degrees, 1)}°` }] : []),
      ],
      notes: ['The largest of the tries counts.'],
      sources: [source('tape read to an eighth of an inch')],
      worked: { ...scaled, unit: 'in' },
    };
  },
};

const TREAD: readonly Asked[] = [
  {
    ask: 'choice',
    name: 'tread.axle',
    label: 'Axle of the tyre',
    options: [
      ['front', 'Front axle'],
      ['other', 'Another axle'],
    ],
    otherwise: 'front',
    where: 'The front wheels of a bus have their own limit.',
  },
  {
    ask: 'choice',
    name: 'tread.retread',
    label: 'Regrooved, recapped or retreaded',
    options: [
      ['no', 'No'],
      ['yes', 'Yes'],
    ],
    otherwise: 'no',
    where: 'The sidewall says so, in letters that were pressed on later.',
  },
  {
    ask: 'figure',
    name: 'tread.depth',
    label: 'Depth in 32nds, shallowest place',
    kind: 'plain',
    where: 'A tread gauge in a main groove, not on a wear bar; three places round the tyre.',
    typical: [2, 20],
  },
  {
    ask: 'figure',
    name: 'tread.week',
    label: 'Week of the DOT code',
    kind: 'plain',
    where: 'Last four figures of the DOT code on the sidewall: week, then year. 2318 is week 23 of 2018.',
    typical: [1, 53],
    optional: true,
  },
  {
    ask: 'figure',
    name: 'tread.year',
    label: 'Year of the DOT code',
    kind: 'plain',
    where: 'The last two figures with 20 before them: 2018. A code of three figures is from before 2000.',
    typical: [2000, 2035],
    optional: true,
  },
  {
    ask: 'figure',
    name: 'tread.now',
    label: 'Year now',
    kind: 'plain',
    where: 'The calendar.',
    typical: [2024, 2040],
    optional: true,
  },
  {
    ask: 'figure',
    name: 'tread.pressure',
    label: 'Pressure, cold',
    kind: 'pressure',
    where: 'A stick or dial gauge before the first mile of the day.',
    typical: [80, 120],
    optional: true,
  },
  {
    ask: 'figure',
    name: 'tread.wanted',
    label: 'Pressure for its load',
    kind: 'pressure',
    where: 'The load table of the tyre for the weighed axle; never above the figure on the sidewall.',
    typical: [85, 120],
    optional: true,
  },
];

export const TREAD_SHEET: Sheet = {
  id: 'hand-tread',
  heading: 'Tyre: tread, age, pressure',
  fields: TREAD,
  answer(form): Shown<Answer> {
    const given = new Given(form, TREAD);
    if (given.trouble) return given.trouble;
    const depth = given.figure('tread.depth');
    const found = judgeTread({
      front: given.choice('tread.axle') !== 'other',
      depth32nds: depth,
      uncertainty32nds: 0.5,
      retreaded: given.choice('tread.retread') === 'yes',
    });
    if (!found.ok) return refused(found);
    const year = given.maybe('tread.year');
    const now = given.maybe('tread.now');
    const oldest = year === null || now === null ? null : oldestTyreAge(given.maybe('tread.week'), year, now);
    if (oldest && !oldest.ok) return refused(oldest);
    const age = oldest?.years ?? null;
    const pressure = given.maybe('tread.pressure');
    const wanted = given.maybe('tread.wanted');
    const refill = pressure === null || wanted === null ? null : tyreRefill(pressure, wanted);
    if (refill && !refill.ok) return refused(refill);
    return {
      kind: 'shown',
      held: [{ of: 'Tread', view: heldView(depth, 0.5, found.judgement, form.system) }],
      ...(refill && !refill.onVehicle
        ? { stop: 'Below 80 % of its pressure: do not fill it on the coach. Off, opened and looked at inside first.' }
        : {}),
      figures: [
        ...(age === null ? [] : [{ words: 'Age, at most', figure: `${digits(age, 1)} years` }]),
        ...(refill ? [{ words: 'Share of the pressure it needs', figure: `${digits(refill.sharePercent, 0)} %` }] : []),
      ],
      notes: [
        ...(age !== null && age >= 7
          ? [
              'Seven years and more: looked at every year inside and out; at ten renewed, whatever the tread (common practice).',
            ]
          : []),
      ],
      sources: [
        source('49 CFR 393.75', 'second-hand'),
        ...(refill ? [source('80 %: 29 CFR 1910.177(f)', 'memory')] : []),
        ...(age === null ? [] : [source('seven and ten years', 'practice')]),
      ],
    };
  },
};

const SUSPENSION: readonly Asked[] = [
  {
    ask: 'figure',
    name: 'susp.before',
    label: 'Suspension air at the start',
    kind: 'pressure',
    where: 'The gauge of the suspension tank, engine stopped, coach level and settled.',
    typical: [80, 125],
  },
  {
    ask: 'figure',
    name: 'susp.after',
    label: 'Suspension air at the end',
    kind: 'pressure',
    where: 'The same gauge; nobody gets on or off meanwhile.',
    typical: [70, 125],
  },
  {
    ask: 'figure',
    name: 'susp.minutes',
    label: 'Minutes between',
    kind: 'minutes',
    where: 'A watch: five or more.',
    typical: [5, 30],
  },
];

export const SUSPENSION_SHEET: Sheet = {
  id: 'hand-suspension',
  heading: 'Leak of the air suspension',
  fields: SUSPENSION,
  answer(form) {
    const given = new Given(form, SUSPENSION);
    if (given.trouble) return given.trouble;
    const minutes = given.figure('susp.minutes');
    const found = judgeSuspensionLeak(
      given.figure('susp.before'),
      given.figure('susp.after'),
      minutes,
      READING_UNCERTAINTY_PSI,
    );
    if (!found.ok) return refused(found);
    return {
      kind: 'shown',
      held: [{ of: '', view: heldView(found.dropPsiIn5Min, found.uncertainty, found.judgement, form.system) }],
      notes: ['Half an hour tells more than five minutes with the same gauge.'],
      sources: [source('49 CFR 393.207(f)', 'memory')],
    };
  },
};

const CORNERS = ['left front', 'right front', 'left rear', 'right rear'] as const;

const HEIGHT: readonly Asked[] = [
  ...CORNERS.flatMap((corner, i): Asked[] => [
    {
      ask: 'figure',
      name: `height.before.${i + 1}`,
      label: `${sentence(corner)}, evening`,
      kind: 'length',
      where: 'Tape from the ground to a marked point of the body above the wheel, air full, coach level.',
      typical: [10, 60],
      ...(i === 0 ? {} : { optional: true as const }),
    },
    {
      ask: 'figure',
      name: `height.after.${i + 1}`,
      label: `${sentence(corner)}, morning`,
      kind: 'length',
      where: 'The same two marks, before anything is started or anybody gets on.',
      typical: [8, 60],
      ...(i === 0 ? {} : { optional: true as const }),
    },
  ]),
  {
    ask: 'figure',
    name: 'height.hours',
    label: 'Hours between the two',
    kind: 'hours',
    where: 'The clock.',
    typical: [6, 16],
  },
];

export const HEIGHT_SHEET: Sheet = {
  id: 'hand-height',
  heading: 'Drop overnight, corner by corner',
  fields: HEIGHT,
  answer(form): Shown<Answer> {
    const given = new Given(form, HEIGHT);
    if (given.trouble) return given.trouble;
    const hours = given.figure('height.hours');
    const typed = given.pairs('height.before', 'height.after', CORNERS.length);
    if (typed.kind !== 'shown') return typed;
    const drops = typed.pairs.map(({ place, first, second }) => ({
      corner: CORNERS[place - 1]!,
      found: lossOver(first, second, hours, 12, LOOK_IN, 'in'),
    }));
    const good = drops.flatMap(({ corner, found }) => (found.ok ? [{ corner, ...found }] : []));
    const no = drops.flatMap(({ corner, found }) => (found.ok ? [] : [{ corner, ...found }]));
    // A corner that rose says nothing against the others: one side goes up where the other goes down.
    const wrong = no.find(({ reason }) => reason !== 'rose') ?? (good.length === 0 ? no[0] : undefined);
    if (wrong) return refused(wrong);
    const worst = good.reduce((a, b) => (b.value > a.value ? b : a));
    return {
      kind: 'shown',
      figures: good.map(({ corner, value, uncertainty }) => ({
        words: `${sentence(corner)}, in 12 hours`,
        figure: `${differenceInUnits(value, 'in', form.system)}, give or take ${differenceInUnits(2 * uncertainty, 'in', form.system)}`,
      })),
      notes: [
        `Worst: ${worst.corner}.`,
        ...(worst.atMost ? [`Read after ${digits(hours, 1)} h: in 12 hours it is that at the most.`] : []),
        ...no.map(({ corner, message }) => `${sentence(corner)}: ${message}`),
        ...(drops.length < 4 ? [`${4 - drops.length} corners were not read; the worst may be one of them.`] : []),
      ],
      sources: [source('straight in time, never scaled down; tape read to an eighth of an inch')],
      worked: { value: worst.value, uncertainty: worst.uncertainty, unit: 'in', site: worst.corner },
    };
  },
};
