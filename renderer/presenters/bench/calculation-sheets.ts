import type { CalculationId, PressureMark, WorkedFigure } from '../../../shared/measuring/index.ts';
import { beatAtSpeed } from '../../../shared/measuring/index.ts';
import { convert, convertDifference, formatQuantity, preferredUnit } from '../../../shared/units/index.ts';
import type { CheckCalculation } from '../../../shared/knowledge/index.ts';
import type { Observation, Reading } from '../../../shared/visit/index.ts';
import { minutesAndSeconds, shown } from './figure-kinds.ts';
import { refused, type BenchForm, type NoFigure, type Shown } from './form.ts';
import { BRAKE, leakView, markWords } from './leak-down.ts';
import { beatOf, matchView, ordersView, speedUncertainty } from './orders.ts';
import type { BenchPage } from './page-ids.ts';
import { choiceWords, madeChoice, observationsOf, type AskedChoice, type Sheet } from './sheet.ts';
import { BUILD_UP_SHEET, OVERNIGHT_SHEET } from './sheets/air.ts';
import { BOOK_SHEET, GAUGES_SHEET, HEATS_SHEET, ROUND_SHEET, SIDES_SHEET } from './sheets/compare.ts';
import { DRIP_SHEET, USE_SHEET } from './sheets/drips.ts';
import { END_PLAY_SHEET } from './sheets/end-play.ts';
import { RUN_DOWN_SHEET } from './sheets/engine-brake.ts';
import { HEIGHT_SHEET, LASH_SHEET } from './sheets/hand-tools.ts';
import { OIL_PRESSURE_SHEET } from './sheets/oil-pressure.ts';
import { worstStroke } from './strokes.ts';
import { widestPair } from './temperatures.ts';
import { read } from './read-field.ts';

/** What the bench holds when a figure is taken from it. */
export interface BenchState {
  readonly form: BenchForm;
  readonly marks: readonly PressureMark[];
  readonly taps: readonly number[];
}

/** A figure ready to be the reading of a check. */
export interface WorkedReading {
  readonly reading: Reading;
  /** "1.5 psi/min, give or take 0.4". */
  readonly words: string;
  /** Place that it was found at, in the words of the sites; undefined where it has none. */
  readonly site: string | undefined;
}

/** A choice of the bench as a check asks for it. */
export interface FixedChoice extends AskedChoice {
  readonly value: string;
}

interface Taken extends WorkedFigure {
  readonly unit: string;
  readonly observations: readonly Observation[];
  readonly site?: string | undefined;
}

interface Home {
  readonly page: BenchPage;
  /** Null: the page itself is the sheet. */
  readonly sheet: Sheet | null;
  /** Setting of the calculation → choice of the bench. */
  readonly settings: Readonly<Record<string, AskedChoice>>;
  /** Fields and choices that hold what was seen this time, not what the coach is like. */
  readonly seen: (field: string) => boolean;
  readonly taken: (state: BenchState) => Shown<Taken>;
}

/** @param settings  setting → name of the sheet's choice. */
function sheetHome(page: BenchPage, sheet: Sheet, settings: Readonly<Record<string, string>> = {}): Home {
  const choices = sheet.fields.filter((asked) => asked.ask === 'choice');
  return {
    page,
    sheet,
    settings: Object.fromEntries(
      Object.entries(settings).flatMap(([setting, name]) =>
        choices.filter((asked) => asked.name === name).map((asked) => [setting, asked]),
      ),
    ),
    seen: (field) => sheet.fields.some((asked) => asked.ask === 'figure' && asked.name === field),
    taken: ({ form }) => {
      const answer = sheet.answer(form);
      if (answer.kind !== 'shown') return answer;
      const { worked } = answer;
      if (!worked)
        return { kind: 'waiting', words: answer.wanting ?? 'The figure that the check asks for is not there yet.' };
      return { kind: 'shown', ...worked, observations: observationsOf(form, sheet.fields) };
    },
  };
}

function leakTaken({ form, marks }: BenchState): Shown<Taken> {
  const view = leakView(form, marks);
  if (view.kind !== 'shown') return view;
  return {
    kind: 'shown',
    value: view.rate.ratePsiPerMin,
    uncertainty: view.rate.uncertaintyPsiPerMin,
    unit: 'psi/min',
    observations: [
      ...observationsOf(form, [BRAKE]),
      ...marks.map((mark) => ({ what: `After ${minutesAndSeconds(mark.timeS)}`, said: markWords(mark, form) })),
    ],
  };
}

/** The speed at which the check wants the beat told. */
const WANTED_MPH = 60;

function beatTaken({ form, taps }: BenchState): Shown<Taken> {
  const beat = beatOf(form, taps);
  if (beat.kind !== 'shown') return beat;
  const speed = read(form, 'orders.speed', 'road speed', 'speed');
  if (speed.kind !== 'shown') return speed;
  const orders = ordersView(form);
  const match = orders.kind === 'shown' ? matchView(beat.beat, orders.lines) : null;
  const found = beatAtSpeed(
    { value: beat.beat.frequencyHz, uncertainty: beat.beat.binHz / Math.sqrt(12) },
    speed.value,
    speedUncertainty(form, speed.value),
    WANTED_MPH,
  );
  if (!found.ok) return refused(found);
  return {
    kind: 'shown',
    value: found.value,
    uncertainty: found.uncertainty,
    unit: 'Hz',
    observations: [
      { what: 'Beat', said: beat.from },
      { what: 'Road speed', said: shown(speed.value, 'speed', form.system) },
      ...(match?.kind === 'shown' ? [{ what: 'Held against what turns', said: match.heading }] : []),
    ],
  };
}

/** Where each calculation that a check may name is asked, and how its figure is taken. */
export const CALCULATION_HOMES: Readonly<Record<CalculationId, Home>> = {
  'leak-down': {
    page: 'leak',
    sheet: null,
    settings: { brake: BRAKE },
    seen: (field) => /^leak\.(now|hand|brake)/.test(field),
    taken: leakTaken,
  },
  'build-up': sheetHome('build', BUILD_UP_SHEET),
  'pressure-overnight': sheetHome('build', OVERNIGHT_SHEET),
  'gauge-against-gauge': sheetHome('compare', GAUGES_SHEET, { as: 'pair.as' }),
  'pushrod-stroke': {
    page: 'stroke',
    sheet: null,
    settings: {},
    seen: (field) => /^stroke\.(pressure|\d+\.(left|right))/.test(field),
    taken: ({ form }) => worstStroke(form),
  },
  'end-play': sheetHome('endplay', END_PLAY_SHEET),
  'wheel-ends-compared': {
    page: 'heat',
    sheet: null,
    settings: {},
    seen: (field) => /^heat\.(minutes|braked|spot|\d+\.)/.test(field),
    taken: ({ form }) => widestPair(form),
  },
  'steering-lash': sheetHome('hand', LASH_SHEET),
  'height-overnight': sheetHome('hand', HEIGHT_SHEET),
  'run-out': sheetHome('compare', ROUND_SHEET),
  beat: {
    page: 'orders',
    sheet: null,
    settings: {},
    seen: (field) => /^orders\.(speed|steady|rpm|beat|width)$/.test(field),
    taken: beatTaken,
  },
  'drip-count': sheetHome('drip', DRIP_SHEET),
  'fluid-use': sheetHome('drip', USE_SHEET),
  'run-down': sheetHome('retard', RUN_DOWN_SHEET),
  'oil-pressure': sheetHome('oil', OIL_PRESSURE_SHEET, { at: 'oilp.at' }),
  'temperature-difference': sheetHome('compare', HEATS_SHEET),
  'against-book': sheetHome('compare', BOOK_SHEET, { as: 'book.as' }),
  'side-to-side': sheetHome('compare', SIDES_SHEET),
};

/** What a check asks of the choices of the bench: what it fixes, and the usual one where it fixes nothing. */
export function fixedChoices({ use, set }: CheckCalculation): readonly FixedChoice[] {
  return Object.entries(CALCULATION_HOMES[use].settings).map(([setting, asked]) => ({
    ...asked,
    value: set[setting] ?? asked.otherwise,
  }));
}

/** Null where every choice of the bench stands as the check asks; else what stands otherwise. */
function misfit(calculation: CheckCalculation, form: BenchForm): NoFigure | null {
  const off = fixedChoices(calculation).filter((asked) => madeChoice(form, asked) !== asked.value);
  if (off.length === 0) return null;
  const words = off.map((asked) => {
    const made = madeChoice(form, asked);
    return `This check asks for “${choiceWords(asked, asked.value) ?? asked.value}”; “${asked.label}” stands at “${choiceWords(asked, made) ?? made}”.`;
  });
  return { kind: 'waiting', words: `${words.join(' ')} What was seen that way is not its reading.` };
}

/** The figure of a calculation as the reading of a check, in the unit that the person reads; or why there is none. */
export function workedReading(calculation: CheckCalculation, state: BenchState): Shown<WorkedReading> {
  const { use } = calculation;
  const taken = misfit(calculation, state.form) ?? CALCULATION_HOMES[use].taken(state);
  if (taken.kind !== 'shown') return taken;
  const unit = preferredUnit(taken.unit, state.form.system);
  const value = rounded(convert(taken.value, taken.unit, unit));
  const uncertainty = rounded(convertDifference(taken.uncertainty, taken.unit, unit));
  return {
    kind: 'shown',
    reading: { value, unit, worked: { calculation: use, observations: taken.observations, uncertainty } },
    words: `${formatQuantity(value, unit)}, give or take ${formatQuantity(2 * uncertainty, unit)}`,
    site: taken.site,
  };
}

/** Six figures are more than any of these is known to; noise of the arithmetic behind them is not kept. */
function rounded(value: number): number {
  return Number(value.toPrecision(6));
}
