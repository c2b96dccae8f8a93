import type { KnownCard, LearnerState } from './learner-state.ts';
import { recallAt } from './schedule.ts';

/** How well something is known. `new`: asked too seldom to say. */
export const STANDINGS = ['shaky', 'coming', 'solid', 'new'] as const;
export type Standing = (typeof STANDINGS)[number];

/** Fewer answers than this say nothing. Judgement, as the bounds below are. */
const ENOUGH = 3;
const SOLID = { right: 0.8, recall: 0.85, days: 4 } as const;
const DAY_MS = 86_400_000;
const SHAKY = { right: 0.6, recall: 0.7 } as const;

/** What a learner knows of one complaint, cause, check or limit. */
export interface Progress {
  readonly subject: 'complaint' | 'cause' | 'check' | 'limit';
  /** Complaint it belongs to; null for limits. */
  readonly tree: string | null;
  /** Id of the complaint, cause or check; the card of a limit. */
  readonly id: string;
  /** Words of the last card asked, for what has no name in the list of complaints any more. */
  readonly words: string;
  readonly cards: number;
  readonly asked: number;
  /** Share of answers that were right, half right as half. */
  readonly rightShare: number;
  /** Mean share of times that its cards would be known a day from now, by the model of memory: on the day of an answer it says 1. */
  readonly recall: number;
  /** How long its weakest card holds, days (nine in ten would still know it then). */
  readonly holdsDays: number;
  readonly due: number;
  readonly standing: Standing;
}

/**
 * How everything that was asked stands now: the shakiest first, what was asked too seldom last, each kind by itself.
 *
 * @param at  milliseconds since 1970.
 */
export function progressOf({ cards }: LearnerState, at: number): readonly Progress[] {
  const groups = new Map<
    string,
    { readonly of: Pick<Progress, 'subject' | 'tree' | 'id'>; readonly known: KnownCard[] }
  >();
  const put = (subject: Progress['subject'], tree: string | null, id: string, card: KnownCard): void => {
    const key = `${subject} ${tree ?? ''} ${id}`;
    const group = groups.get(key) ?? { of: { subject, tree, id }, known: [] };
    groups.set(key, group);
    group.known.push(card);
  };
  for (const card of cards.values()) {
    if (card.drill === 'limit') put('limit', null, card.card, card);
    if (card.tree !== null) put('complaint', card.tree, card.tree, card);
    for (const cause of card.causes) put('cause', card.tree, cause, card);
    for (const check of card.checks) put('check', card.tree, check, card);
  }
  return [...groups.values()]
    .map(({ of, known }) => ({ ...of, ...summed(known, at) }))
    .sort(
      (a, b) =>
        STANDINGS.indexOf(a.standing) - STANDINGS.indexOf(b.standing) || a.recall - b.recall || (a.id < b.id ? -1 : 1),
    );
}

function summed(known: readonly KnownCard[], at: number): Omit<Progress, 'subject' | 'tree' | 'id'> {
  const asked = known.reduce((sum, card) => sum + card.asked, 0);
  const rightShare = known.reduce((sum, card) => sum + card.right, 0) / asked;
  const recall = known.reduce((sum, { memory }) => sum + recallAt(memory, at + DAY_MS), 0) / known.length;
  const holdsDays = Math.min(...known.map(({ memory }) => memory.stabilityDays));
  const due = known.filter(({ memory }) => memory.due <= at).length;
  const standing = standingOf(asked, rightShare, recall, holdsDays);
  return { words: known.at(-1)!.subject, cards: known.length, asked, rightShare, recall, holdsDays, due, standing };
}

/** Solid needs all of it; shaky needs one. */
function standingOf(asked: number, right: number, recall: number, days: number): Standing {
  if (asked < ENOUGH) return 'new';
  if (right < SHAKY.right || recall < SHAKY.recall) return 'shaky';
  return right >= SOLID.right && recall >= SOLID.recall && days >= SOLID.days ? 'solid' : 'coming';
}
