import type { UnitSystem } from '../../shared/units/index.ts';
import type { PressureMark } from '../../shared/measuring/index.ts';
import { EMPTY_ENTRY, type BenchForm, type Entry } from '../presenters/bench/form.ts';
import type { BenchTask } from '../presenters/bench/task.ts';
import type { RecordedSpectrum } from '../workers/spectrum-job.ts';

export type BenchPage =
  'leak' | 'build' | 'bands' | 'flow' | 'stroke' | 'lining' | 'heat' | 'endplay' | 'orders' | 'sound';

export interface HandedReading {
  readonly check: string;
  readonly text: string;
  readonly unit: string;
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
  from = $state<'yard' | 'work'>('yard');
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
  task = $state.raw<BenchTask | null>(null);
  handed = $state.raw<HandedReading | null>(null);

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

  /** What the presenters read. */
  form(system: UnitSystem): BenchForm {
    return {
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
