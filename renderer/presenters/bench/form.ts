import { parseNumber, type UnitSystem } from '../../../shared/units/index.ts';
import type { Refusal } from '../../../shared/measuring/index.ts';
import { preferredOfKind, toBase, type FigureKind } from './figure-kinds.ts';

/** A field as it was typed. `unit` is null until something was typed or a unit chosen: then it follows the settings. */
export interface Entry {
  readonly text: string;
  readonly unit: string | null;
}

export const EMPTY_ENTRY: Entry = { text: '', unit: null };

/** What a sub-page of the bench holds, by the name of the field. */
export interface BenchForm {
  entry(name: string): Entry;
  /** A choice that was made, or the empty text. */
  choice(name: string): string;
  readonly system: UnitSystem;
  /** What the check reads with that the form is filled for; left out on the bench. */
  readonly instrument?: ReadWith;
}

/** An instrument of the vocabulary: one standard uncertainty of a figure read with it, in its unit. */
export interface ReadWith {
  readonly uncertainty: number;
  readonly unit: string;
}

/** Why there is no figure: something is still missing, or it was refused. Both in words for the person. */
export type NoFigure =
  | { readonly kind: 'waiting'; readonly words: string }
  | { readonly kind: 'refused'; readonly reason: string; readonly words: string };

/** A result to draw, or why there is none. */
export type Shown<T> = NoFigure | ({ readonly kind: 'shown' } & T);

/** A refusal of a calculation, as it is shown. */
export function refused(refusal: Refusal<string>): NoFigure {
  return { kind: 'refused', reason: refusal.reason, words: refusal.message };
}

/** Reads the fields that one calculation needs and keeps what is missing or cannot be read. */
export class FormReader {
  readonly #form: BenchForm;
  readonly #missing: string[] = [];
  readonly #faults: string[] = [];

  constructor(form: BenchForm) {
    this.#form = form;
  }

  /** A figure in the unit of the calculation; NaN when it is missing, and then `trouble` is not null. */
  figure(name: string, label: string, kind: FigureKind): number {
    const value = this.optional(name, label, kind);
    if (value !== null) return value;
    this.#missing.push(label);
    return NaN;
  }

  /** A figure that may be left out; null then. */
  optional(name: string, label: string, kind: FigureKind): number | null {
    const { text, unit } = this.#form.entry(name);
    if (text.trim() === '') return null;
    const value = parseNumber(text);
    if (value === null) {
      this.#faults.push(`“${text}” for ${label} is not a number. Type it like 3.4 or 2 1/4.`);
      return NaN;
    }
    return toBase(value, unit ?? preferredOfKind(kind, this.#form.system), kind);
  }

  /** Null when every figure asked for is there. */
  trouble(): NoFigure | null {
    if (this.#faults.length > 0) return { kind: 'refused', reason: 'not-a-number', words: this.#faults.join(' ') };
    if (this.#missing.length > 0) return { kind: 'waiting', words: `Still needed: ${this.#missing.join(', ')}.` };
    return null;
  }
}
