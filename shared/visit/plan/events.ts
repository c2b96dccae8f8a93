/** What can happen to the plan of a visit: lines, decisions, figures, parts, proofs, reminders, and the closing. */
import * as v from 'valibot';

export const URGENCIES = ['now', 'soon', 'watch'] as const;
export type Urgency = (typeof URGENCIES)[number];
export const DECISIONS = ['agreed', 'declined', 'deferred'] as const;
export type Decision = (typeof DECISIONS)[number];
/** Figures of the two calculations; miles in thousands where the life is in miles. */
export const FIGURES = [
  'age',
  'horizon',
  'part-cost',
  'open-hours',
  'access-hours',
  'life',
  'rebuild-cost',
  'rebuild-comeback',
  'replace-cost',
  'replace-comeback',
  'again-cost',
] as const;
export type FigureId = (typeof FIGURES)[number];
/** What `plan.basis-set` may name; beside these `part:<key>` for the price of a part. */
export const BASES = ['labour-rate', 'roadside', 'horizon-miles', 'horizon-years'] as const;
export type Basis = (typeof BASES)[number];
export const PART_MARKS = ['ordered', 'here', 'not-needed', 'none'] as const;
export type PartMark = (typeof PART_MARKS)[number];

/** Kinds of the plan's events. */
const KINDS: ReadonlySet<string> = new Set<PlanEventBody['kind']>([
  'plan.line-added',
  'plan.line-removed',
  'plan.decided',
  'plan.urgency-set',
  'plan.place-set',
  'plan.photo-added',
  'plan.figure-set',
  'plan.basis-set',
  'plan.done',
  'plan.proven',
  'part.measured',
  'part.marked',
  'reminder.set',
  'reminder.done',
  'visit.closed-out',
]);

/** Whether an event belongs to the plan. */
export function isPlanEvent<E extends { readonly kind: string }>(event: E): event is Extract<E, PlanEventBody> {
  return KINDS.has(event.kind);
}

export type PlanEventBody =
  /** A line by hand, or a proposal taken into the plan (`of` and the words of the proposal as title). */
  | {
      readonly kind: 'plan.line-added';
      readonly line: string;
      readonly title: string;
      readonly why: string;
      readonly danger: boolean;
      readonly urgency: Urgency;
      readonly of?: string;
      readonly place?: string;
      readonly access?: string;
      readonly parts?: readonly string[];
      /** Own work without access, minutes. */
      readonly minutes?: readonly [number, number];
      readonly photos?: readonly string[];
    }
  | { readonly kind: 'plan.line-removed'; readonly line: string }
  /** What the customer said to a line; null = asked again. */
  | {
      readonly kind: 'plan.decided';
      readonly line: string;
      readonly decision: Decision | null;
      /** Who decided. The head's `by` is who wrote it down. */
      readonly who: string;
      readonly words: string;
    }
  | {
      readonly kind: 'plan.urgency-set';
      readonly line: string;
      readonly urgency: Urgency | null;
      readonly words: string;
    }
  | { readonly kind: 'plan.place-set'; readonly line: string; readonly place: string }
  /** A picture of what the line is about, for the customer. */
  | { readonly kind: 'plan.photo-added'; readonly line: string; readonly photo: string }
  /** A figure of a calculation: `about` is the proposal's words, or "rebuild". */
  | {
      readonly kind: 'plan.figure-set';
      readonly line: string;
      readonly about: string;
      readonly figure: FigureId;
      readonly value: number | null;
    }
  /** What all sums rest on: a price, or how long the coach is still to be used. One unit of money, which nobody has to name. */
  | { readonly kind: 'plan.basis-set'; readonly basis: string; readonly value: number | null }
  /** A line that belongs to no complaint was done; a complaint has its own events for this. */
  | { readonly kind: 'plan.done'; readonly line: string; readonly words: string; readonly minutes?: number }
  | {
      readonly kind: 'plan.proven';
      readonly line: string;
      readonly outcome: 'held' | 'did-not-hold';
      readonly words: string;
    }
  | {
      readonly kind: 'part.measured';
      readonly part: string;
      /** Identity asked for, as "shaft-diameter". */
      readonly what: string;
      readonly place: string;
      readonly found: { readonly value: number; readonly unit: string } | string;
    }
  | { readonly kind: 'part.marked'; readonly part: string; readonly mark: PartMark }
  | {
      readonly kind: 'reminder.set';
      readonly reminder: string;
      readonly what: string;
      /** ISO date without time. */
      readonly dueDate?: string;
      readonly dueMiles?: number;
      readonly line?: string;
    }
  | { readonly kind: 'reminder.done'; readonly reminder: string; readonly words: string }
  /** The visit is over. Every correction that is not proven is named with the reason. */
  | {
      readonly kind: 'visit.closed-out';
      readonly unproven: readonly { readonly line: string; readonly because: string }[];
      readonly words: string;
    };

const id = v.pipe(v.string(), v.minLength(1), v.maxLength(240));
const text = v.pipe(v.string(), v.maxLength(10_000));
const said = v.pipe(v.string(), v.trim(), v.minLength(1), v.maxLength(10_000));
const amount = v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(1e9));
const day = v.pipe(v.string(), v.isoDate());
const head = {
  id: v.pipe(v.string(), v.minLength(1), v.maxLength(120)),
  v: v.number(),
  at: v.string(),
  by: v.pipe(v.string(), v.maxLength(80)),
};

/** Variants of the log's schema; `read-event.ts` takes them in. */
export const planEventSchemas = [
  v.strictObject({
    ...head,
    kind: v.literal('plan.line-added'),
    line: id,
    title: said,
    why: text,
    danger: v.boolean(),
    urgency: v.picklist(URGENCIES),
    of: v.optional(id),
    place: v.optional(text),
    access: v.optional(id),
    parts: v.optional(v.array(said)),
    minutes: v.optional(v.tuple([amount, amount])),
    photos: v.optional(v.array(id)),
  }),
  v.strictObject({ ...head, kind: v.literal('plan.line-removed'), line: id }),
  v.strictObject({
    ...head,
    kind: v.literal('plan.decided'),
    line: id,
    decision: v.nullable(v.picklist(DECISIONS)),
    who: v.pipe(v.string(), v.maxLength(80)),
    words: text,
  }),
  v.strictObject({
    ...head,
    kind: v.literal('plan.urgency-set'),
    line: id,
    urgency: v.nullable(v.picklist(URGENCIES)),
    words: text,
  }),
  v.strictObject({ ...head, kind: v.literal('plan.place-set'), line: id, place: text }),
  v.strictObject({ ...head, kind: v.literal('plan.photo-added'), line: id, photo: id }),
  v.strictObject({
    ...head,
    kind: v.literal('plan.figure-set'),
    line: id,
    about: id,
    figure: v.picklist(FIGURES),
    value: v.nullable(amount),
  }),
  v.strictObject({ ...head, kind: v.literal('plan.basis-set'), basis: id, value: v.nullable(amount) }),
  v.strictObject({
    ...head,
    kind: v.literal('plan.done'),
    line: id,
    words: text,
    minutes: v.optional(amount),
  }),
  v.strictObject({
    ...head,
    kind: v.literal('plan.proven'),
    line: id,
    outcome: v.picklist(['held', 'did-not-hold']),
    words: text,
  }),
  v.strictObject({
    ...head,
    kind: v.literal('part.measured'),
    part: id,
    what: id,
    place: text,
    found: v.union([said, v.strictObject({ value: v.pipe(v.number(), v.finite()), unit: id })]),
  }),
  v.strictObject({ ...head, kind: v.literal('part.marked'), part: id, mark: v.picklist(PART_MARKS) }),
  v.strictObject({
    ...head,
    kind: v.literal('reminder.set'),
    reminder: id,
    what: said,
    dueDate: v.optional(day),
    dueMiles: v.optional(amount),
    line: v.optional(id),
  }),
  v.strictObject({ ...head, kind: v.literal('reminder.done'), reminder: id, words: text }),
  v.strictObject({
    ...head,
    kind: v.literal('visit.closed-out'),
    unproven: v.array(v.strictObject({ line: id, because: said })),
    words: text,
  }),
] as const;
