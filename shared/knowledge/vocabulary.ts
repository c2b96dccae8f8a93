/** What several trees share, each id declared once in `trees/vocabulary/`. */
import type { InchParts } from '../units/index.ts';
import type { Check, LayoutValue } from './tree.ts';

/**
 * How a number or statement came to be: read in the source named; read in a text that quotes it; from memory, to be
 * verified; common practice without a source; judgement.
 */
export const STATUSES = ['seen', 'second-hand', 'memory', 'practice', 'judgement'] as const;
export type Status = (typeof STATUSES)[number];

/** A figure or statement, where it is from and how it was read. */
export interface Said {
  /** As printed, with its unit. */
  readonly value: string;
  /** "common practice, no source" where there is none. */
  readonly source: string;
  readonly status: Status;
}

export interface Limit extends Said {
  readonly id: string;
  readonly quantity: string;
  /** Where the value holds several: each figure as it stands in it, and what it is the figure of. */
  readonly figures?: readonly { readonly of: string; readonly value: string }[];
  /** Present where sources disagree about the same thing: the value above is one of them. */
  readonly disagreement?: {
    readonly others: readonly Said[];
    /** Which figure the bands of the checks follow, and why. */
    readonly taken: string;
  };
}

export interface Instrument {
  readonly id: string;
  readonly name: string;
  /** Unit id in which the fields below are given. */
  readonly unit: string;
  /** Standard uncertainty of one reading (one sigma). */
  readonly uncertainty: number;
  /** Lowest and highest reading that the instrument can show for this use. */
  readonly range: readonly [number, number];
  /** Marks to the inch, where the scale is divided in fractions of an inch: readings are shown as a fraction as well. */
  readonly inchParts?: InchParts;
  readonly source: string;
  readonly status: Status;
}

/** How far the coach is taken apart or set up. A tree: each state may have a parent that must be open first. */
export interface AccessState {
  readonly id: string;
  readonly name: string;
  readonly means: string;
  readonly parent?: string;
  /** Minutes to get there from the parent, and back. Judgement. */
  readonly openMinutes: number;
  readonly closeMinutes: number;
  /** States that must be closed (with all below them) while this one is open. */
  readonly forbids: readonly string[];
  /** The coach moves under its own power on a road. */
  readonly moves: boolean;
}

export interface LayoutFeature {
  readonly id: string;
  readonly ask: string;
  readonly values: readonly { readonly value: LayoutValue; readonly label: string }[];
  /** What an older coach of this kind most likely has; may be preselected, never taken silently. */
  readonly usual?: LayoutValue;
  /** Values that one coach may have at once: two kinds of wheel brake on two axles. */
  readonly together?: readonly LayoutValue[];
}

/** Everything of a check but what belongs to one tree. */
export type SharedCheck = Omit<
  Check,
  'sharedAs' | 'likelihood' | 'group' | 'requires' | 'settles' | 'when' | 'appliesTo' | 'pictures'
>;

/** What notes of a road test say: results of checks, to be confirmed by the person. */
export interface RoadSaying {
  readonly id: string;
  /** All of these must have been noted, each with one of its choices; empty where a gauge says it. */
  readonly noted: readonly { readonly row: string; readonly choices: readonly string[] }[];
  /** A figure of one gauge is the reading of a measuring check. */
  readonly gauge?: {
    readonly of: string;
    readonly take: 'highest' | 'lowest' | 'last';
    /** Only figures noted so many minutes after the start count. */
    readonly afterMin?: number;
  };
  readonly says: readonly {
    /** The tree whose check it is; absent for a shared one. */
    readonly tree?: string;
    readonly shared?: string;
    /** Check of that tree, or the shared check. */
    readonly check: string;
    /** Absent = the figure of the gauge is its reading. */
    readonly result?: string;
  }[];
}

export interface Vocabulary {
  readonly limits: ReadonlyMap<string, Limit>;
  readonly instruments: ReadonlyMap<string, Instrument>;
  /** In the order of the file: parents before children. */
  readonly access: readonly AccessState[];
  readonly layout: readonly LayoutFeature[];
  readonly checks: ReadonlyMap<string, SharedCheck>;
  /** What a road test says about the complaints; empty where a visit was begun before there was one. */
  readonly road: readonly RoadSaying[];
  /** What the program asks the user to have at hand: tool id → words of `Check.tools` it provides. */
  readonly tools: readonly ToolKind[];
}

/** One entry of the "what is at hand" list. */
export interface ToolKind {
  readonly id: string;
  readonly name: string;
  /** Words in `Check.tools` that this kind provides, exactly as written there. */
  readonly covers: readonly string[];
  /** Roles that have it unless they say otherwise. */
  readonly usualFor: readonly string[];
}
