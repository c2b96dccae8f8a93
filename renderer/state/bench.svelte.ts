import type { UnitSystem } from '../../shared/units/index.ts';
import type { BenchStart } from '../../shared/coach/index.ts';
import type { PressureMark } from '../../shared/measuring/index.ts';
import { EMPTY_ENTRY, type BenchForm, type Entry, type ReadWith } from '../presenters/bench/form.ts';
import { BENCH_PAGE_IDS, type BenchPage } from '../presenters/bench/page-ids.ts';
import type { FixedChoice, WorkedReading } from '../presenters/bench/calculation-sheets.ts';
import { keepBench, keptBench } from './kept-bench.ts';
import type { RecordedSpectrum } from '../workers/spectrum-job.ts';

/** A figure of the bench on its way to a check of the open complaint. */
export interface HandedReading {
  readonly check: string;
  readonly worked: WorkedReading;
}

/** Where the analysis of a recording stands. */
export type SoundState =
  | { readonly kind: 'none' }
  | { readonly kind: 'working'; readonly name: string; readonly done: number }
  | { readonly kind: 'refused'; readonly name: string; readonly words: string }
  | { readonly kind: 'done'; readonly name: string; readonly spectrum: RecordedSpectrum };

/** What was typed, marked and tapped at the bench. It outlives the page, so that leaving loses nothing. */
export class Bench {
  page = $state<BenchPage>('leak');
  /** Page of the window to go back to. */
  from = $state<'yard' | 'work' | 'profile'>('yard');
  /** Coach from whose profile fields were filled, and how many. */
  startedFrom = $state.raw<{ readonly coach: string; readonly fields: number } | null>(null);
  /** What the profile put in, by field: taken out again for another coach, unless it was changed. */
  #put: { readonly figures: Readonly<Record<string, Entry>>; readonly choices: Readonly<Record<string, string>> } = {
    figures: {},
    choices: {},
  };
  entries = $state.raw<Readonly<Record<string, Entry>>>({});
  choices = $state.raw<Readonly<Record<string, string>>>({});
  marks = $state.raw<readonly PressureMark[]>([]);
  /** Clock, ms, of the first mark while the hold runs; null when it does not. */
  holdFrom = $state<number | null>(null);
  /** Clock, ms, of each tap of the beat. */
  taps = $state.raw<readonly number[]>([]);
  sound = $state.raw<SoundState>({ kind: 'none' });
  /** Ends the running analysis; null when none runs. */
  stopSound: (() => void) | null = null;
  handed = $state.raw<HandedReading | null>(null);
  /** The check of a complaint whose observations the fields hold; null where they belong to none. */
  measuredFor = $state<string | null>(null);

  constructor() {
    const kept = keptBench();
    if (!kept) return;
    this.page = BENCH_PAGE_IDS.find((each) => each === kept.page) ?? 'leak';
    this.entries = kept.entries;
    this.choices = kept.choices;
    this.marks = kept.marks;
    this.holdFrom = kept.holdFrom;
    this.taps = kept.taps;
    this.measuredFor = kept.measuredFor;
  }

  /** Keeps fields, marks and the running hold over a reload; a recording is not kept. Called inside an effect. */
  keep(): void {
    const { page, entries, choices, marks, holdFrom, taps, measuredFor } = this;
    keepBench({ page, entries, choices, marks, holdFrom, taps, measuredFor });
  }

  entry(name: string): Entry {
    return this.entries[name] ?? EMPTY_ENTRY;
  }

  /** @param unit  what the field shows; kept with the text, so that changing the settings does not change what was typed. */
  type(name: string, text: string, unit: string): void {
    this.entries = { ...this.entries, [name]: { text, unit: text.trim() === '' ? null : unit } };
  }

  chooseUnit(name: string, unit: string): void {
    this.entries = { ...this.entries, [name]: { text: this.entry(name).text, unit } };
  }

  choose(name: string, value: string): void {
    this.choices = { ...this.choices, [name]: value };
  }

  /**
   * Fills what the profile of a coach knows into fields that are still empty; what was typed stays. What came from another
   * coach and was not touched goes first: figures of two coaches must not mix.
   *
   * @param coach  null = no coach: only the first half.
   */
  startFrom(coach: { readonly name: string; readonly start: BenchStart } | null): void {
    const entries = Object.entries(this.entries).filter(([name, { text }]) => this.#put.figures[name]?.text !== text);
    const choices = Object.entries(this.choices).filter(([name, value]) => this.#put.choices[name] !== value);
    const typed = new Set([...entries.filter(([, { text }]) => text.trim() !== ''), ...choices].map(([name]) => name));
    const free = <T>(of: Readonly<Record<string, T>>): [string, T][] =>
      Object.entries(of).filter(([name]) => !typed.has(name));
    const figures = free(coach?.start.figures ?? {}).map(([name, { value, unit }]): [string, Entry] => [
      name,
      { text: String(value), unit },
    ]);
    const chosen = free(coach?.start.choices ?? {});
    this.#put = { figures: Object.fromEntries(figures), choices: Object.fromEntries(chosen) };
    this.entries = { ...Object.fromEntries(entries), ...this.#put.figures };
    this.choices = { ...Object.fromEntries(choices), ...this.#put.choices };
    const fields = figures.length + chosen.length;
    this.startedFrom = coach && fields > 0 ? { coach: coach.name, fields } : null;
  }

  /**
   * Makes room for the observations of a check: what was seen for another one must not become its reading.
   *
   * @param seen   whether a field or choice holds something seen, not something that the coach is.
   * @param fixed  choices as the check asks for them. One that was changed meanwhile is put back; where it says how the
   *   observations were made (brake held or not), they go with it: they are another test's.
   * @returns false where the fields hold this check's observations already.
   */
  beginFor(key: string, seen: (field: string) => boolean, fixed: readonly FixedChoice[]): boolean {
    const off = fixed.filter(({ name, value, otherwise }) => (this.choices[name] || otherwise) !== value);
    const begun = this.measuredFor !== key || off.some(({ name }) => seen(name));
    if (begun) this.#begin(key, seen);
    for (const { name, value } of fixed) this.choose(name, value);
    return begun;
  }

  #begin(key: string, seen: (field: string) => boolean): void {
    this.measuredFor = key;
    const kept = <T>(of: Readonly<Record<string, T>>): Readonly<Record<string, T>> =>
      Object.fromEntries(Object.entries(of).filter(([name]) => !seen(name)));
    this.entries = kept(this.entries);
    this.choices = kept(this.choices);
    this.marks = [];
    this.holdFrom = null;
    this.taps = [];
  }

  /** What the presenters read; with the instrument of a check where it is filled for one. */
  form(system: UnitSystem, instrument?: ReadWith): BenchForm {
    return {
      ...(instrument ? { instrument } : {}),
      entry: (name) => this.entry(name),
      choice: (name) => this.choices[name] ?? '',
      system,
    };
  }

  /** Gives the reading of a check to the sheet that asked for it, once. */
  takeHanded(check: string): HandedReading | null {
    const { handed } = this;
    if (handed?.check !== check) return null;
    this.handed = null;
    return handed;
  }
}
