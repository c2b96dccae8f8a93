import { dropsPerMinute, oilDrip, perThousandMiles } from '../../../../shared/measuring/index.ts';
import { formatQuantity } from '../../../../shared/units/index.ts';
import { digits, grouped, shown } from '../figure-kinds.ts';
import { refused } from '../form.ts';
import { Given, source, type Asked, type Sheet } from '../sheet.ts';

export const DRIP_CAUTIONS: readonly string[] = [
  'Hot oil burns, and a running engine catches sleeves: count from the side, nobody lies beneath.',
  'Oil on a brake lining or a hot exhaust stops the trip at once.',
];

const DROPS: readonly Asked[] = [
  {
    ask: 'figure',
    name: 'drip.count',
    label: 'Drops counted',
    kind: 'plain',
    where:
      'A clean card or tray under the place, laid there before the start; engine hot at fast idle. Count every drop from the side.',
    typical: [1, 150],
  },
  {
    ask: 'figure',
    name: 'drip.time',
    label: 'Counted for',
    kind: 'seconds',
    where: 'A watch. A minute, or five where drops are rare.',
    typical: [60, 600],
  },
  {
    ask: 'figure',
    name: 'drip.marks',
    label: 'From full to add on the dipstick',
    kind: 'fluid',
    where: 'The engine’s handbook; four US quarts on many coach engines (common practice).',
    typical: [2, 8],
    optional: true,
  },
  {
    ask: 'figure',
    name: 'drip.speed',
    label: 'Usual speed on the road',
    kind: 'speed',
    where: 'For miles until the mark; 50 mph where nothing is typed.',
    typical: [40, 65],
    optional: true,
  },
  {
    ask: 'figure',
    name: 'drip.daily',
    label: 'Hours the engine runs a day',
    kind: 'hours',
    where: 'For days until the mark; 8 h where nothing is typed.',
    typical: [2, 12],
    optional: true,
  },
];
const MARKS_QT = 4;

export const DRIP_SHEET: Sheet = {
  id: 'drip-drops',
  heading: 'Drops to days',
  cautions: [
    'Card or tray is placed with the engine stopped, parking brake set and wheels chocked; it is taken away with the engine stopped again.',
    'Place it so that it can be counted from the side: nobody reaches under or leans in while the engine runs.',
  ],
  fields: DROPS,
  answer(form) {
    const given = new Given(form, DROPS);
    if (given.trouble) return given.trouble;
    const rate = dropsPerMinute(given.figure('drip.count'), given.figure('drip.time'));
    if (!rate.ok) return refused(rate);
    const worked = { value: rate.value, uncertainty: rate.uncertainty, unit: 'drops/min' };
    const figures = [
      { words: 'Drops a minute', figure: digits(rate.value, 1) },
      { words: 'Give or take', figure: digits(2 * rate.uncertainty, 1) },
    ];
    const marks = given.maybe('drip.marks') ?? MARKS_QT;
    const loss = rate.value === 0 ? null : oilDrip(rate.value, given.maybe('drip.speed') ?? 50, marks);
    const sources = [
      source('a drop is 0.05 mL, real ones 0.03 to 0.10', 'seen'),
      ...(given.maybe('drip.marks') === null ? [source('four quarts between the marks', 'practice')] : []),
    ];
    if (loss === null || !loss.ok)
      return {
        kind: 'shown',
        figures,
        ...(loss === null ? {} : { stop: loss.message }),
        notes: loss === null ? ['No drop fell in that time. Count longer before it is called dry.'] : [],
        sources,
        worked,
      };
    const quarts = (ml: number): string => formatQuantity(ml / 1000, 'L', form.system);
    const daily = given.maybe('drip.daily') ?? 8;
    return {
      kind: 'shown',
      figures: [
        ...figures,
        {
          words: 'Lost in 10 hours',
          figure: `${quarts(10 * loss.mlPerHour)}, from ${quarts(10 * loss.lowMlPerHour)} to ${quarts(10 * loss.highMlPerHour)}`,
        },
        { words: 'Hours of running until the mark', figure: grouped(loss.hoursToAdd) },
        { words: 'Miles until the mark', figure: shown(loss.milesToAdd, 'distance', form.system) },
        { words: `Days until the mark, ${digits(daily, 1)} h a day`, figure: digits(loss.hoursToAdd / daily, 1) },
      ],
      notes: [
        'On the road, under pressure, it may be several times as much: look at the dipstick at every stop.',
        'Clean it, drive a day, look again: the hand-over plan keeps a reminder for that.',
      ],
      sources,
      worked,
    };
  },
};

const USE: readonly Asked[] = [
  {
    ask: 'figure',
    name: 'use.added',
    label: 'Fluid added in all',
    kind: 'fluid',
    where: 'Every can since the first fill to the mark, and the last fill to the same mark on level ground.',
    typical: [0, 12],
  },
  {
    ask: 'figure',
    name: 'use.distance',
    label: 'Distance between the two fills',
    kind: 'distance',
    where: 'Odometer at the last fill less that at the first.',
    typical: [300, 5000],
  },
  {
    ask: 'figure',
    name: 'use.give',
    label: 'Mark read to within',
    kind: 'fluid',
    where: 'A quarter of a quart on level ground after ten minutes of rest; half a quart otherwise.',
    typical: [0.2, 0.5],
    optional: true,
  },
];

export const USE_SHEET: Sheet = {
  id: 'drip-use',
  heading: 'Fluid used over a distance',
  lead: 'Oil or coolant, from a log of what was added.',
  fields: USE,
  answer(form) {
    const given = new Given(form, USE);
    if (given.trouble) return given.trouble;
    const found = perThousandMiles(
      given.figure('use.added'),
      given.figure('use.distance'),
      (given.maybe('use.give') ?? 0.25) / Math.sqrt(3),
    );
    if (!found.ok) return refused(found);
    return {
      kind: 'shown',
      figures: [
        { words: 'Used', figure: shown(found.value, 'fluid-use', form.system) },
        { words: 'Give or take', figure: shown(2 * found.uncertainty, 'fluid-use', form.system) },
      ],
      sources: [source('marks read to a quarter of a quart')],
      worked: { ...found, unit: 'qt/1000mi' },
    };
  },
};
