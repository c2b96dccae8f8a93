import {
  dayAfterMiles,
  DRUM_SIGNS,
  judgeDrum,
  judgeLining,
  remainingWear,
  type DrumSign,
  type LiningKind,
} from '../../../shared/measuring/index.ts';
import { parseNumber } from '../../../shared/units/index.ts';
import { sentence } from '../presenters.ts';
import { shown } from './figure-kinds.ts';
import { FormReader, refused, type BenchForm, type Shown } from './form.ts';
import { heldView, statusWords, type HeldView } from './held.ts';

export const LINING_CAUTIONS: readonly string[] = [
  'Wheel off the ground only on stands rated for the axle, the other wheels chocked. Never under a jack alone.',
  'Brake dust may hold asbestos on older coaches: wet it or use a vacuum made for it, never blow it out.',
  'A spring brake must be caged by its maker’s procedure before its brake is taken apart.',
];

export const LINING_KINDS: readonly (readonly [LiningKind, string])[] = [
  ['drum', 'Drum, not known how the lining is made'],
  ['drum-one-strip', 'Drum, one strip a shoe'],
  ['drum-two-pads', 'Drum, two pads a shoe'],
  ['air-disc', 'Air disc'],
];

/** How the thickness was read: one standard uncertainty, in (judgement). */
export const LINING_WAYS: readonly (readonly [string, string, number])[] = [
  ['rule', 'By rule through the opening', 0.03],
  ['out', 'With the shoe or pad out', 0.01],
];

const DRUM_GAUGE_IN = 0.003;

export interface LiningView {
  readonly rule: HeldView;
  readonly advice: HeldView | null;
}

function liningUncertainty(form: BenchForm): number {
  return (LINING_WAYS.find(([id]) => id === form.choice('lining.way')) ?? LINING_WAYS[0]!)[2];
}

export function liningView(form: BenchForm): Shown<LiningView> {
  const oily = form.choice('lining.oily') === 'yes';
  const read = new FormReader(form);
  const thicknessIn = read.figure('lining.thickness', 'thickness at the thinnest place', 'length');
  const trouble = oily ? null : read.trouble();
  if (trouble) return trouble;
  const uncertaintyIn = liningUncertainty(form);
  const found = judgeLining({
    axle: form.choice('lining.axle') === 'other' ? 'other' : 'steering',
    kind: LINING_KINDS.find(([id]) => id === form.choice('lining.kind'))?.[0] ?? 'drum',
    thicknessIn,
    uncertaintyIn,
    oily,
  });
  if (!found.ok) return refused(found);
  return {
    kind: 'shown',
    rule: heldView(thicknessIn, uncertaintyIn, found.rule, form.system),
    advice: found.advice ? heldView(thicknessIn, uncertaintyIn, found.advice, form.system) : null,
  };
}

export interface DrumView {
  readonly held: HeldView;
  readonly note: string | null;
}

export function drumView(form: BenchForm): Shown<DrumView> {
  const read = new FormReader(form);
  const nominalIn = read.figure('drum.nominal', 'nominal diameter', 'length');
  const diameterIn = read.figure('drum.diameter', 'largest diameter', 'length');
  const castMaximumIn = read.optional('drum.cast', 'maximum cast on the drum', 'length');
  const trouble = read.trouble();
  if (trouble) return trouble;
  const found = judgeDrum({
    nominalIn,
    diameterIn,
    uncertaintyIn: DRUM_GAUGE_IN,
    castMaximumIn,
    justTurned: form.choice('drum.turned') === 'yes',
  });
  if (!found.ok) return refused(found);
  return {
    kind: 'shown',
    held: heldView(diameterIn, DRUM_GAUGE_IN, found.judgement, form.system),
    note: found.byCastFigure
      ? null
      : 'This is the usual figure, not the one cast on the drum. Ask the maker before the drum is used.',
  };
}

export const DRUM_SIGN_WORDS: readonly (readonly [DrumSign, string])[] = [
  ['fine-checks-all-over', 'Fine hairlines all over the face'],
  ['fine-checks-in-patches', 'Fine hairlines in one place only'],
  ['long-or-deep-crack', 'A long or deep crack across the face'],
  ['crack-to-open-edge', 'A crack that reaches the open edge'],
  ['crack-from-outside', 'A crack seen from outside'],
  ['crack-opens-when-applied', 'A crack that opens when the brake is applied'],
  ['blue-band', 'A blue band'],
  ['hard-spots', 'Shiny hard spots'],
  ['piece-missing', 'A piece is missing'],
];

const SIGN_VERDICTS = {
  'may-stay': 'May stay',
  'look-further': 'Look further',
  replace: 'Replace the drum',
  'do-not-drive': 'Stay put',
} as const;

export interface SignView {
  readonly verdict: string;
  readonly stop: boolean;
  readonly why: string;
  readonly source: string;
  readonly status: string;
}

/** What a sign on the drum means; null when none was chosen. */
export function drumSignView(form: BenchForm): SignView | null {
  const sign = DRUM_SIGN_WORDS.find(([id]) => id === form.choice('drum.sign'))?.[0];
  if (!sign) return null;
  const rule = DRUM_SIGNS[sign];
  return {
    verdict: SIGN_VERDICTS[rule.verdict],
    stop: rule.verdict === 'do-not-drive',
    why: `${sentence(rule.why)}.`,
    source: rule.source,
    status: statusWords(rule.status),
  };
}

export interface WearView {
  readonly again: string;
  readonly againDay: string | null;
  readonly remaining: string;
  readonly interval: string;
  readonly refusedDay: string | null;
}

/** Two readings of one lining or drum carried on, as an interval and a day to measure again by. */
export function wearView(form: BenchForm): Shown<WearView> {
  const read = new FormReader(form);
  const firstAt = read.figure('wear.firstAt', 'first mileage', 'distance');
  const first = read.figure('wear.first', 'first size', 'length');
  const secondAt = read.figure('wear.secondAt', 'second mileage', 'distance');
  const second = read.figure('wear.second', 'second size', 'length');
  const limit = read.figure('wear.limit', 'limit', 'length');
  const give = read.figure('wear.give', 'give or take of a reading', 'length');
  const yearly = read.optional('wear.yearly', 'distance a year', 'distance');
  const trouble = read.trouble();
  if (trouble) return trouble;
  const found = remainingWear({
    first: { at: firstAt, size: first },
    second: { at: secondAt, size: second },
    limit,
    direction: form.choice('wear.direction') === 'grows' ? 'grows' : 'thins',
    uncertainty: give / 2,
  });
  if (!found.ok) return refused(found);
  const day = yearly === null ? null : dayOf(form, found.measureAgainWithin, yearly);
  const far = (miles: number): string => shown(miles, 'distance', form.system);
  return {
    kind: 'shown',
    again: far(found.measureAgainWithin),
    againDay: day?.ok ? day.day : null,
    remaining: `${far(found.remaining)}, give or take ${far(2 * found.uncertaintyWithRoute)} with 20 % for the route`,
    interval: `${far(found.low)} to ${far(found.high)} from the readings alone; one in twenty ends before that`,
    refusedDay: day && !day.ok ? day.message : null,
  };
}

function dayOf(form: BenchForm, miles: number, yearly: number): ReturnType<typeof dayAfterMiles> {
  const [year, month, day] = form
    .entry('wear.day')
    .text.trim()
    .split('-')
    .map((part) => parseNumber(part) ?? NaN);
  return dayAfterMiles({ year: year ?? NaN, month: month ?? NaN, day: day ?? NaN }, miles, yearly);
}
