import type { Limit, Role } from '../../knowledge/index.ts';
import type { LimitFigure } from './limit-figure.ts';

/** The four drills: tell two causes apart, what would you see, read the picture, know the limit. */
export const DRILLS = ['apart', 'outcome', 'picture', 'limit'] as const;
export type Drill = (typeof DRILLS)[number];

/** What is kept of every card, whatever it asks. */
interface CardHead {
  /** Made from the content of the card: what changes the question or its answer changes the id. */
  readonly id: string;
  /** Complaint; null for a limit, which belongs to all of them. */
  readonly tree: string | null;
  readonly causes: readonly string[];
  readonly checks: readonly string[];
  /** A few words for lists; it may give the answer away, so it is not shown while the card is asked. */
  readonly subject: string;
}

export interface Named {
  readonly id: string;
  readonly name: string;
}

/** One result of a check as somebody may expect it. */
export interface SeenOption {
  readonly result: string;
  readonly label: string;
  /** How often it is seen under the cause asked about: judged, not counted. */
  readonly share: number;
  readonly accepted: boolean;
}

export interface ApartOption {
  readonly check: string;
  readonly name: string;
  /** Expected weight of evidence between the two causes, decibans. */
  readonly decibans: number;
  readonly accepted: boolean;
  /** What it would show under the first of the two, in the order of the tree. */
  readonly results: readonly SeenOption[];
}

/** Two causes that are often taken for each other: which check separates them best, and what would it show? */
export interface ApartCard extends CardHead {
  readonly drill: 'apart';
  readonly first: Named;
  readonly second: Named;
  readonly options: readonly ApartOption[];
}

/** A cause is named: what does the check show? */
export interface OutcomeCard extends CardHead {
  readonly drill: 'outcome';
  readonly cause: Named;
  readonly check: Named;
  readonly options: readonly SeenOption[];
}

export interface PictureOption {
  readonly id: string;
  readonly label: string;
  readonly accepted: boolean;
}

/** A drawing without its labels: which result of a check does it explain, or which check? */
export interface PictureCard extends CardHead {
  readonly drill: 'picture';
  readonly asks: 'result' | 'check';
  readonly file: string;
  /** Shown with the answer; they would give it away before. */
  readonly title: string;
  readonly alt: string;
  /** Whether `alt` may stand in for the drawing while the card is asked: none of the right answers is written in it. */
  readonly inWords: boolean;
  /** The check whose results are offered; null when checks are. */
  readonly check: Named | null;
  readonly options: readonly PictureOption[];
}

/** A published figure, to be given with its unit. */
export interface LimitCard extends CardHead {
  readonly drill: 'limit';
  readonly limit: Limit;
  readonly figure: LimitFigure;
}

export type Card = ApartCard | OutcomeCard | PictureCard | LimitCard;

/** Who the cards are made for: checks that this person may do alone. */
export interface CardOptions {
  readonly who: Role;
}

/** How an answer came out. `nearly`: half of it was right, or right by another source. */
export const OUTCOMES = ['right', 'nearly', 'wrong'] as const;
export type Outcome = (typeof OUTCOMES)[number];
