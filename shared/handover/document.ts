/**
 * The hand-over as a document: sections, rows, figures, cautions. No HTML, no layout. Every line says where it comes
 * from, so that nothing can stand in it that was not found, measured, decided or written in a tree.
 */
import type { Verdict } from '../knowledge/tree.ts';

/** What the program worked out from events and tree, as opposed to what somebody recorded. */
export type Reckoned = 'belief' | 'weight' | 'verdict' | 'band' | 'units' | 'count' | 'proof' | 'plan';

/** Where a statement comes from. */
export type Origin =
  /** An event of the visit's log. */
  | { readonly kind: 'event'; readonly event: string }
  /** A field of the tree or vocabulary as pinned, in the form that `textAt` takes: "causes.front-bearing.name". */
  | { readonly kind: 'tree'; readonly hash: string; readonly field: string }
  /** `of` is the complaint or line of the plan that it was worked out for. */
  | { readonly kind: 'reckoned'; readonly what: Reckoned; readonly of: string }
  /** Wording of every report; says nothing about this coach and holds no figure. */
  | { readonly kind: 'wording' };

/** A statement with its origins. Plain text: whatever shows it has to escape it. */
export interface Line {
  readonly text: string;
  /** Never empty; the mere wording is named only when there is nothing else. */
  readonly from: readonly Origin[];
}

/** A finding as evidence for the cause named. */
export interface WeightRow {
  readonly finding: Line;
  /** For an owner: "strongly for". For a mechanic with decibans and the belief without it. */
  readonly words: Line;
  /** Positive = for; the length of the bar. */
  readonly decibans: number;
}

/** A quantity that was read more than once at one place, oldest first: before and after. */
export interface Reread {
  readonly name: Line;
  readonly points: readonly { readonly label: Line; readonly value: number; readonly figure: Line }[];
  /** Where a result of the check begins, in the unit: the bands that the readings stand in. */
  readonly edges: readonly { readonly value: number; readonly words: Line }[];
  /** Unit of `value` and of the axis. */
  readonly unit: string;
}

export type Block =
  | { readonly kind: 'words'; readonly look: 'plain' | 'said' | 'big' | 'fine'; readonly line: Line }
  | { readonly kind: 'list'; readonly items: readonly Line[] }
  /** Stations of a proof; those not passed yet have a box and a blank for the pencil. */
  | { readonly kind: 'stations'; readonly items: readonly { readonly line: Line; readonly passed: boolean }[] }
  | { readonly kind: 'caution'; readonly items: readonly Line[] }
  | {
      readonly kind: 'table';
      readonly caption: string;
      readonly head: readonly string[];
      /** Each as long as `head`; the first cell names the row. */
      readonly rows: readonly (readonly Line[])[];
    }
  | { readonly kind: 'weights'; readonly caption: Line; readonly rows: readonly WeightRow[] }
  | { readonly kind: 'rereads'; readonly figures: readonly Reread[] }
  | { readonly kind: 'photos'; readonly photos: readonly ReportPhoto[] };

export interface ReportPhoto {
  /** Name of the stored file. */
  readonly photo: string;
  readonly caption: Line;
}

export interface Section {
  /** Unique in its part. */
  readonly id: string;
  readonly heading: string;
  /** At least one. */
  readonly blocks: readonly Block[];
}

/** A complaint, or what belongs to the coach as a whole. */
export interface Part {
  /** Unique in the report. */
  readonly id: string;
  readonly title: Line;
  readonly sections: readonly Section[];
}

export interface VerdictBox {
  readonly verdict: Verdict;
  readonly word: Line;
  readonly lines: readonly Line[];
}

export type Reader = 'owner' | 'mechanic';

export interface Report {
  readonly reader: Reader;
  readonly coach: Line;
  /** First to last day. */
  readonly days: Line;
  /** Present when the visit was invented for show. */
  readonly invented: Line | null;
  readonly verdict: VerdictBox | null;
  /** Licensed help and local law: in every report. */
  readonly lastWord: Line;
  readonly cautions: readonly Line[];
  readonly parts: readonly Part[];
  /** Who signs: done by, received by; empty names are filled in with the pen. */
  readonly signatures: readonly Line[];
  readonly foot: Line;
  /** The same for a telephone: a few lines, no tables. */
  readonly short: readonly Line[];
}
