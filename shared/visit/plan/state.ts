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

/** Figures of one calculation, as typed. */
export type Figures = Readonly<Partial<Record<FigureId, number | undefined>>>;

/** What was said about a line. */
export interface SaidOfLine {
  readonly decision?:
    | {
        readonly decision: Decision;
        readonly who: string;
        readonly words: string;
        readonly at: string;
        readonly by: string;
      }
    | undefined;
  readonly urgency?:
    { readonly urgency: Urgency; readonly words: string; readonly at: string; readonly by: string } | undefined;
  readonly place?: string;
  /** Pictures added to the line, each once. */
  readonly photos?: readonly { readonly photo: string; readonly at: string; readonly by: string }[];
  readonly done?: { readonly words: string; readonly minutes?: number; readonly at: string; readonly by: string };
  readonly proven?:
    | {
        readonly outcome: 'held' | 'did-not-hold';
        readonly words: string;
        readonly at: string;
        readonly by: string;
      }
    | undefined;
  /** Figures by the proposal they are about. */
  readonly figures: ReadonlyMap<string, Figures>;
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
  readonly said: ReadonlyMap<string, SaidOfLine>;
  /** By what `plan.basis-set` names. */
  readonly bases: ReadonlyMap<string, number>;
  /** The latest of a part, identity and place. */
  readonly measured: readonly MeasuredPart[];
  readonly marks: ReadonlyMap<string, PartMark>;
  readonly reminders: readonly Reminder[];
  readonly closedOut?: ClosedOut | undefined;
}

/** The plan before anything was said about it. */
export function emptyPlan(): PlanState {
  return { added: [], said: new Map(), bases: new Map(), measured: [], marks: new Map(), reminders: [] };
}
