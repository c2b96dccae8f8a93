import type { Drill } from './card.ts';
import type { LearnerEvent } from './events.ts';
import { afterAnswer, gradeOf, type Memory } from './schedule.ts';

/** One card as a learner knows it. */
export interface KnownCard {
  readonly card: string;
  readonly drill: Drill;
  readonly tree: string | null;
  readonly causes: readonly string[];
  readonly checks: readonly string[];
  readonly subject: string;
  readonly asked: number;
  /** Half right counts half. */
  readonly right: number;
  readonly memory: Memory;
}

export interface LearnerState {
  readonly name: string;
  /** By the id of the card, in the order in which they were first answered. */
  readonly cards: ReadonlyMap<string, KnownCard>;
  readonly answers: number;
}

const WORTH = { right: 1, nearly: 0.5, wrong: 0 } as const;

/** What a learner knows: the fold of their log. Nothing else is kept anywhere. */
export function learnerState(events: readonly LearnerEvent[]): LearnerState {
  const cards = new Map<string, KnownCard>();
  let name = '';
  let answers = 0;
  for (const event of events) {
    if (event.kind === 'learner.opened') {
      name = event.name;
      continue;
    }
    answers++;
    const before = cards.get(event.card);
    const { card, drill, tree, causes, checks, subject, outcome, helped, at } = event;
    cards.set(card, {
      card,
      drill,
      tree,
      causes,
      checks,
      subject,
      asked: (before?.asked ?? 0) + 1,
      right: (before?.right ?? 0) + WORTH[outcome],
      memory: afterAnswer(before?.memory ?? null, gradeOf(outcome, helped), Date.parse(at)),
    });
  }
  return { name, cards, answers };
}
