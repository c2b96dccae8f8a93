import { preferredOfKind, unitsOfKind, type FigureKind } from './figure-kinds.ts';
import { FormReader, type BenchForm, type NoFigure, type Shown } from './form.ts';
import { statusWords, type HeldView } from './held.ts';
import type { BandPlotView } from './band-plot.ts';
import type { LimitStatus, WorkedFigure } from '../../../shared/measuring/index.ts';
import type { Observation } from '../../../shared/visit/index.ts';

/** Where a figure is found, and the span in which it usually lies, in the unit that the calculations take. */
export interface FieldHelp {
  readonly where: string;
  readonly typical?: readonly [least: number, most: number];
}

export interface AskedFigure extends FieldHelp {
  readonly ask: 'figure';
  readonly name: string;
  readonly label: string;
  readonly kind: FigureKind;
  /** May be left out. */
  readonly optional?: true;
}

export interface AskedChoice {
  readonly ask: 'choice';
  readonly name: string;
  readonly label: string;
  readonly options: readonly (readonly [string, string, ...unknown[]])[];
  /** What counts while nothing was chosen. */
  readonly otherwise: string;
  readonly where: string;
}

export type Asked = AskedFigure | AskedChoice;

export interface Source {
  readonly words: string;
  readonly status: string;
  readonly judged: boolean;
}

/** What a calculation says, in the order in which it is shown. */
export interface Answer {
  /** A sentence that decides by itself: stay put. */
  readonly stop?: string;
  /** What it comes to, in a sentence. */
  readonly verdict?: string;
  readonly held?: readonly { readonly of: string; readonly view: HeldView }[];
  readonly figures?: readonly { readonly words: string; readonly figure: string }[];
  readonly table?: { readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] };
  readonly plot?: BandPlotView;
  readonly notes?: readonly string[];
  readonly sources: readonly Source[];
  /** What a check that names this calculation can take as its reading. */
  readonly worked?: WorkedFigure & { readonly unit: string; readonly site?: string };
  /** In place of `worked`: what a check still needs before it can take the figure. */
  readonly wanting?: string;
}

/** One calculation as it is asked and answered: on a page of the bench, or inside a check. */
export interface Sheet {
  readonly id: string;
  readonly heading: string;
  readonly lead?: string;
  /** What is to be safe before anything is done for this one; shown before its fields. */
  readonly cautions?: readonly string[];
  readonly fields: readonly Asked[];
  answer(form: BenchForm): Shown<Answer>;
}

/** The common form of a source; without a status it is judgement. */
export function source(words: string, status: LimitStatus = 'judgement'): Source {
  return { words, status: statusWords(status), judged: status === 'judgement' };
}

/** Two figures that belong together, and which of the row they are, from 1. */
export interface Pair {
  readonly place: number;
  readonly first: number;
  readonly second: number;
}

/** What was typed for the fields of a sheet, in the units that the calculations take. */
export class Given {
  readonly trouble: NoFigure | null;
  readonly #figures: ReadonlyMap<string, number | null>;
  readonly #form: BenchForm;
  readonly #fields: readonly Asked[];

  constructor(form: BenchForm, fields: readonly Asked[]) {
    this.#form = form;
    this.#fields = fields;
    const read = new FormReader(form);
    this.#figures = new Map(
      fields
        .filter((each): each is AskedFigure => each.ask === 'figure')
        .map(({ name, label, kind, optional }) => [
          name,
          optional ? read.optional(name, label, kind) : read.figure(name, label, kind),
        ]),
    );
    this.trouble = read.trouble();
  }

  /** A figure that must be there: NaN where it is not, and then there is trouble. */
  figure(name: string): number {
    return this.#figures.get(name) ?? NaN;
  }

  /** A figure that may be left out. */
  maybe(name: string): number | null {
    return this.#figures.get(name) ?? null;
  }

  /** Every figure of a row of fields that was typed: `row('drip', 3)` reads drip.1 … drip.3. */
  row(name: string, most: number): readonly number[] {
    return Array.from({ length: most }, (_, i) => this.maybe(`${name}.${i + 1}`)).filter((each) => each !== null);
  }

  /**
   * Every pair of two rows of fields: `pairs('sides.left', 'sides.right', 3)` reads sides.left.1 with sides.right.1 and so
   * on. Waits for the other half of a pair that was half typed: it must not be left out without a word.
   */
  pairs(first: string, second: string, most: number): Shown<{ readonly pairs: readonly Pair[] }> {
    const rows = Array.from({ length: most }, (_, i) => ({
      place: i + 1,
      first: this.maybe(`${first}.${i + 1}`),
      second: this.maybe(`${second}.${i + 1}`),
    }));
    const half = rows.find((row) => (row.first === null) !== (row.second === null));
    if (half) {
      const missing = `${half.first === null ? first : second}.${half.place}`;
      const label = this.#fields.find(({ name }) => name === missing)?.label ?? missing;
      return { kind: 'waiting', words: `Still needed: ${label}. Its other half was typed.` };
    }
    const pairs = rows.flatMap((row): Pair[] =>
      row.first === null || row.second === null ? [] : [{ place: row.place, first: row.first, second: row.second }],
    );
    return { kind: 'shown', pairs };
  }

  choice(name: string): string {
    const asked = this.#fields.find((each) => each.name === name);
    return asked?.ask === 'choice' ? madeChoice(this.#form, asked) : this.#form.choice(name);
  }
}

/** The choice that counts: the one made, or the one that stands while none was. */
export function madeChoice(form: BenchForm, asked: AskedChoice): string {
  return form.choice(asked.name) || asked.otherwise;
}

/** The words of a choice, as its list shows them. */
export function choiceWords(asked: AskedChoice, value: string): string | undefined {
  return asked.options.find(([each]) => each === value)?.[1];
}

/** What was seen and typed, in the words of the fields: kept beside a finding that was worked out of it. */
export function observationsOf(form: BenchForm, fields: readonly Asked[]): readonly Observation[] {
  return fields.flatMap((asked): Observation[] => {
    if (asked.ask === 'choice') {
      const made = madeChoice(form, asked);
      const words = choiceWords(asked, made);
      return words === undefined || made === '' ? [] : [{ what: asked.label, said: words }];
    }
    const { text, unit } = form.entry(asked.name);
    if (text.trim() === '') return [];
    const id = unit ?? preferredOfKind(asked.kind, form.system);
    const label = unitsOfKind(asked.kind).find((each) => each.id === id)?.label ?? id;
    return [{ what: asked.label, said: `${text.trim()} ${label}`.trim() }];
  });
}

/** A row of like fields, all but the first `must` of which may be left out. */
export function rowOf(
  name: string,
  most: number,
  must: number,
  label: (i: number) => string,
  rest: Pick<AskedFigure, 'kind' | 'where' | 'typical'>,
): readonly AskedFigure[] {
  return Array.from({ length: most }, (_, i) => ({
    ask: 'figure',
    name: `${name}.${i + 1}`,
    label: label(i + 1),
    ...rest,
    ...(i < must ? {} : { optional: true as const }),
  }));
}
