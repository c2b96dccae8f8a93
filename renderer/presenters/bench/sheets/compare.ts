import {
  againstBook,
  differenceOfPairs,
  INFRARED_GIVE_F,
  sideToSide,
  widestSpread,
  type BookForm,
} from '../../../../shared/measuring/index.ts';
import { convertDifference } from '../../../../shared/units/index.ts';
import { digits, shown } from '../figure-kinds.ts';
import { refused, type BenchForm, type Shown } from '../form.ts';
import { differenceInUnits } from '../held.ts';
import { Given, rowOf, source, type Answer, type Asked, type Sheet } from '../sheet.ts';

const PRESSURES: readonly Asked[] = [
  {
    ask: 'choice',
    name: 'pair.as',
    label: 'What counts',
    options: [
      ['first-over-second', 'How far the first is above the second'],
      ['either-way', 'How far they are apart, either way'],
    ],
    otherwise: 'first-over-second',
    where: 'A check of a visit sets it by itself.',
  },
  ...rowOf('pair.pressure.first', 3, 1, (i) => `First gauge, reading ${i}`, {
    kind: 'pressure',
    where: 'The gauge that should be higher, or the one that is trusted: test gauge, compressor side.',
    typical: [5, 130],
  }),
  ...rowOf('pair.pressure.second', 3, 1, (i) => `Second gauge, reading ${i}`, {
    kind: 'pressure',
    where: 'The other one at the same moment: dash gauge, tank side.',
    typical: [5, 130],
  }),
  {
    ask: 'figure',
    name: 'pair.pressure.give',
    label: 'Each gives or takes',
    kind: 'pressure',
    where: 'Half of the smallest division of the coarser gauge. A check has a figure of its own; 1.75 psi otherwise.',
    typical: [0.2, 5],
    optional: true,
  },
];

/** What each of the two gives or takes where nothing is typed and no check says what it reads with; judgement. */
const GAUGE_GIVE_PSI = 1.75;

/** One standard uncertainty of one of two looks: as typed, else of the check's own instrument, else as given. */
function lookOf(form: BenchForm, typed: number | null, unit: string, otherwise: number): number {
  if (typed !== null) return typed / Math.sqrt(3);
  const { instrument } = form;
  return instrument
    ? convertDifference(instrument.uncertainty, instrument.unit, unit) / Math.SQRT2
    : otherwise / Math.sqrt(3);
}

export const GAUGES_SHEET: Sheet = {
  id: 'compare-gauges',
  heading: 'One gauge against another',
  fields: PRESSURES,
  answer(form) {
    const given = new Given(form, PRESSURES);
    if (given.trouble) return given.trouble;
    const typed = given.pairs('pair.pressure.first', 'pair.pressure.second', 3);
    if (typed.kind !== 'shown') return typed;
    const found = differenceOfPairs(
      typed.pairs,
      lookOf(form, given.maybe('pair.pressure.give'), 'psi', GAUGE_GIVE_PSI),
    );
    if (!found.ok) return refused(found);
    const either = given.choice('pair.as') === 'either-way';
    return {
      kind: 'shown',
      figures: [
        { words: 'First above second by', figure: differenceInUnits(found.value, 'psi', form.system) },
        { words: 'Give or take', figure: differenceInUnits(2 * found.uncertainty, 'psi', form.system) },
      ],
      notes: ['Read at two or three pressures: a gauge may be right at one and wrong at another.'],
      sources: [source('give or take as typed, as the check’s instrument has it, or 1.75 psi each')],
      worked: { value: either ? Math.abs(found.value) : found.value, uncertainty: found.uncertainty, unit: 'psi' },
    };
  },
};

const TEMPERATURES: readonly Asked[] = [
  ...rowOf('pair.heat.first', 3, 1, (i) => `Hotter place, reading ${i}`, {
    kind: 'temperature',
    where: 'Where it should be hotter: radiator inlet, oil, dash gauge. Tape or matt paint under the beam.',
    typical: [120, 240],
  }),
  ...rowOf('pair.heat.second', 3, 1, (i) => `Cooler place, reading ${i}`, {
    kind: 'temperature',
    where: 'The other place within the same minute: radiator outlet, coolant, thermometer.',
    typical: [60, 220],
  }),
  {
    ask: 'figure',
    name: 'pair.heat.give',
    label: 'Each gives or takes',
    kind: 'temperature-difference',
    where: 'The data sheet of the thermometer. A check has a figure of its own; 7 °F (4 °C) otherwise.',
    typical: [1, 10],
    optional: true,
  },
];

export const HEATS_SHEET: Sheet = {
  id: 'compare-temperatures',
  heading: 'One temperature against another',
  fields: TEMPERATURES,
  answer(form) {
    const given = new Given(form, TEMPERATURES);
    if (given.trouble) return given.trouble;
    const typed = given.pairs('pair.heat.first', 'pair.heat.second', 3);
    if (typed.kind !== 'shown') return typed;
    const found = differenceOfPairs(
      typed.pairs,
      lookOf(form, given.maybe('pair.heat.give'), 'degF-diff', INFRARED_GIVE_F),
    );
    if (!found.ok) return refused(found);
    return {
      kind: 'shown',
      figures: [
        { words: 'Difference', figure: differenceInUnits(found.value, 'degF-diff', form.system) },
        { words: 'Give or take', figure: differenceInUnits(2 * found.uncertainty, 'degF-diff', form.system) },
      ],
      notes: ['Both with the same thermometer: its own error goes out.'],
      sources: [source('give or take as typed, as the check’s instrument has it, or 7 °F each')],
      worked: { value: found.value, uncertainty: found.uncertainty, unit: 'degF-diff' },
    };
  },
};

const BOOK: readonly Asked[] = [
  {
    ask: 'choice',
    name: 'book.as',
    label: 'Told as',
    options: [
      ['share', 'Per cent of the book'],
      ['off', 'Per cent above or below it'],
      ['below', 'Per cent below it'],
    ],
    otherwise: 'share',
    where: 'A check of a visit sets it by itself.',
  },
  {
    ask: 'figure',
    name: 'book.figure',
    label: 'Figure of the book',
    kind: 'plain',
    where: 'The workshop book of this unit, or the plate; same unit as the readings.',
  },
  ...rowOf('book.reading', 4, 1, (i) => `Reading ${i}`, {
    kind: 'plain',
    where: 'As the gauge shows it, same unit as the book. The worst place counts: type that one, repeated.',
  }),
  {
    ask: 'figure',
    name: 'book.give',
    label: 'Gauge gives or takes',
    kind: 'plain',
    where: 'Half of its smallest division, or the “±” of its data sheet.',
  },
];

const FORMS: readonly BookForm[] = ['share', 'off', 'below'];

export const BOOK_SHEET: Sheet = {
  id: 'compare-book',
  heading: 'Against the book',
  fields: BOOK,
  answer(form) {
    const given = new Given(form, BOOK);
    if (given.trouble) return given.trouble;
    const as = FORMS.find((each) => each === given.choice('book.as')) ?? 'share';
    const found = againstBook(
      given.row('book.reading', 4),
      given.figure('book.figure'),
      given.figure('book.give') / Math.sqrt(3),
      as,
    );
    if (!found.ok) return refused(found);
    const words = { share: 'Of the book', off: 'Off the book', below: 'Below the book' }[as];
    return {
      kind: 'shown',
      figures: [
        { words, figure: `${as === 'off' && found.value > 0 ? '+' : ''}${digits(found.value, 1)} %` },
        { words: 'Give or take', figure: `${digits(2 * found.uncertainty, 1)} %` },
      ],
      notes: ['What the book itself leaves open is not counted.'],
      sources: [source('the book, as typed', 'practice')],
      worked: { ...found, unit: 'percent' },
    };
  },
};

const ROUND: readonly Asked[] = [
  ...rowOf('round.place', 6, 3, (i) => `Place ${i}`, {
    kind: 'length',
    where: 'Dial, pointer or tread gauge at six places round it, a sixth of a turn apart, one direction only.',
    typical: [0, 1.5],
  }),
  {
    ask: 'figure',
    name: 'round.give',
    label: 'Gauge read to within',
    kind: 'length',
    where: 'A thousandth for a dial, a thirty-second for a rule or a tread gauge.',
    typical: [0.001, 0.04],
  },
];

export const ROUND_SHEET: Sheet = {
  id: 'compare-round',
  heading: 'Run-out and uneven tread',
  lead: 'Largest minus smallest round a wheel, rim or shaft.',
  fields: ROUND,
  answer(form) {
    const given = new Given(form, ROUND);
    if (given.trouble) return given.trouble;
    const places = given.row('round.place', 6);
    const found = widestSpread(places, given.figure('round.give') / Math.sqrt(3));
    if (!found.ok) return refused(found);
    return {
      kind: 'shown',
      figures: [
        { words: 'Largest minus smallest', figure: shown(found.value, 'length', form.system) },
        { words: 'Give or take', figure: shown(2 * found.uncertainty, 'length', form.system) },
      ],
      notes: places.length < 6 ? [`From ${places.length} places; between them it may be more.`] : [],
      sources: [source('two looks', 'practice')],
      worked: { ...found, unit: 'in' },
    };
  },
};

const SIDES: readonly Asked[] = [
  ...rowOf('sides.left', 3, 1, (i) => `Axle ${i}, left`, {
    kind: 'weight',
    where: 'Ticket of a platform or portable scale under that wheel end.',
    typical: [3000, 12_000],
  }),
  ...rowOf('sides.right', 3, 1, (i) => `Axle ${i}, right`, {
    kind: 'weight',
    where: 'The same, other side, level ground, same tank levels.',
    typical: [3000, 12_000],
  }),
  {
    ask: 'figure',
    name: 'sides.give',
    label: 'Scale gives or takes',
    kind: 'weight',
    where: 'Its ticket or plate; 20 lb for a truck scale, 100 for a portable one.',
    typical: [20, 100],
  },
];

export const SIDES_SHEET: Sheet = {
  id: 'compare-sides',
  heading: 'Left against right, weighed',
  fields: SIDES,
  answer(form): Shown<Answer> {
    const given = new Given(form, SIDES);
    if (given.trouble) return given.trouble;
    const u = given.figure('sides.give') / Math.sqrt(3);
    const typed = given.pairs('sides.left', 'sides.right', 3);
    if (typed.kind !== 'shown') return typed;
    const axles = typed.pairs.map(({ place, first, second }) => ({ axle: place, found: sideToSide(first, second, u) }));
    const no = axles.find(({ found }) => !found.ok);
    if (no && !no.found.ok) return refused(no.found);
    const good = axles.flatMap(({ axle, found }) => (found.ok ? [{ axle, ...found }] : []));
    const worst = good.reduce((a, b) => (b.value > a.value ? b : a));
    return {
      kind: 'shown',
      figures: good.map(({ axle, value, uncertainty }) => ({
        words: `Axle ${axle}, sides apart`,
        figure: `${digits(value, 1)} %, give or take ${digits(2 * uncertainty, 1)} %`,
      })),
      sources: [source('difference over both together', 'practice')],
      worked: { value: worst.value, uncertainty: worst.uncertainty, unit: 'percent' },
    };
  },
};
