import * as v from 'valibot';
import { DRILLS, OUTCOMES, type Card, type Drill, type Outcome } from './card.ts';

/** Version of the lines of a learner's log. */
export const LEARNER_EVENT_VERSION = 1;

export interface LearnerHead {
  readonly id: string;
  readonly v: number;
  /** ISO 8601. */
  readonly at: string;
  readonly by: string;
}

export type LearnerEventBody =
  | { readonly kind: 'learner.opened'; readonly name: string }
  | {
      readonly kind: 'drill.answered';
      readonly card: string;
      readonly drill: Drill;
      readonly tree: string | null;
      readonly causes: readonly string[];
      readonly checks: readonly string[];
      /** Words of the card for lists, as it stood then. */
      readonly subject: string;
      readonly outcome: Outcome;
      /** A drawing was put into words. */
      readonly helped: boolean;
    };

/** One line of a learner's log. None of its kinds is a kind of a visit, so neither can be taken for the other. */
export type LearnerEvent = LearnerHead & LearnerEventBody;

const id = v.pipe(v.string(), v.minLength(1), v.maxLength(120));
const head = { id, v: v.number(), at: v.pipe(v.string(), v.isoTimestamp()), by: v.pipe(v.string(), v.maxLength(80)) };
const event = v.variant('kind', [
  v.strictObject({
    ...head,
    kind: v.literal('learner.opened'),
    name: v.pipe(v.string(), v.minLength(1), v.maxLength(80)),
  }),
  v.strictObject({
    ...head,
    kind: v.literal('drill.answered'),
    card: id,
    drill: v.picklist(DRILLS),
    tree: v.nullable(id),
    causes: v.array(id),
    checks: v.array(id),
    subject: v.pipe(v.string(), v.maxLength(1000)),
    outcome: v.picklist(OUTCOMES),
    helped: v.boolean(),
  }),
]);

/**
 * Lines of a learner's log that this program understands, in the order in which they were written, each id once.
 * The rest (another exercise's lines, a newer program's) is left out; it stays in the file.
 */
export function readLearnerEvents(records: readonly unknown[]): LearnerEvent[] {
  const known = new Map<string, LearnerEvent>();
  for (const record of records) {
    const parsed = v.safeParse(event, record);
    if (parsed.success && parsed.output.v <= LEARNER_EVENT_VERSION) known.set(parsed.output.id, parsed.output);
  }
  return [...known.values()].sort((a, b) => (a.at === b.at ? (a.id < b.id ? -1 : 1) : a.at < b.at ? -1 : 1));
}

/** What an answer to a card is written as. */
export function answered(card: Card, outcome: Outcome, helped: boolean): LearnerEventBody {
  const { id: name, drill, tree, causes, checks, subject } = card;
  return { kind: 'drill.answered', card: name, drill, tree, causes, checks, subject, outcome, helped };
}
