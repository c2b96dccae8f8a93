/** What the events of the plan come to, before it is joined with complaints and inspection. */
import type { Decision, FigureId, PartMark, Urgency } from './events.ts';
import type { ClosedOut, Reminder } from './plan.ts';

export interface AddedLine {
  readonly line: string;
  readonly title: string;
  readonly why: string;
  readonly danger: boolean;
  readonly urgency: Urgency;
  readonly of?: string;
  readonly place?: string;
  readonly access?: string;
  readonly parts: readonly string[];
  readonly minutes: readonly [number, number];
  readonly photos: readonly string[];
  readonly at: string;
  readonly by: string;
}

/** What was said about a line. */
export interface SaidOfLine {
  readonly decision?: {
    readonly decision: Decision;
    readonly who: string;
    readonly words: string;
    readonly at: string;
    readonly by: string;
  };
  readonly urgency?: { readonly urgency: Urgency; readonly words: string; readonly at: string; readonly by: string };
  readonly place?: string;
  readonly done?: { readonly words: string; readonly minutes?: number; readonly at: string; readonly by: string };
  readonly proven?: {
    readonly outcome: 'held' | 'did-not-hold';
    readonly words: string;
    readonly at: string;
    readonly by: string;
  };
  /** Figures by the proposal they are about. */
  readonly figures: Readonly<Record<string, Partial<Record<FigureId, number>>>>;
}

export interface MeasuredPart {
  readonly part: string;
  readonly what: string;
  readonly place: string;
  readonly found: { readonly value: number; readonly unit: string } | string;
  readonly at: string;
  readonly by: string;
}

export interface PlanState {
  readonly added: readonly AddedLine[];
  readonly said: Readonly<Record<string, SaidOfLine>>;
  readonly prices: Readonly<Record<string, number>>;
  /** The latest of a part, identity and place. */
  readonly measured: readonly MeasuredPart[];
  readonly marks: Readonly<Record<string, PartMark>>;
  readonly reminders: readonly Reminder[];
  readonly closedOut?: ClosedOut;
}

/** The plan before anything was said about it. */
export function emptyPlan(): PlanState {
  return { added: [], said: {}, prices: {}, measured: [], marks: {}, reminders: [] };
}
