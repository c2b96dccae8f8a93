import type { Tree, Vocabulary } from '../../knowledge/index.ts';
import { seededRandom } from '../../planning/evaluation/random.ts';
import { DRILLS, type Card, type CardOptions, type Drill } from './card.ts';
import { seedOf, shuffled } from './card-id.ts';
import type { LearnerState } from './learner-state.ts';
import { limitCards } from './know-limit.ts';
import { pictureCards } from './read-picture.ts';
import { apartCards } from './tell-apart.ts';
import { outcomeCards } from './what-you-see.ts';

/**
 * All cards of one complaint, each id once, in an order that depends on the tree alone: the drills take turns, so that
 * no kind comes in a row while others are left.
 */
export function deckOf(tree: Tree, vocabulary: Vocabulary, options: CardOptions): readonly Card[] {
  const limits = new Set(tree.checks.flatMap((check) => check.limits));
  const all: readonly Card[] = [
    ...apartCards(tree, options),
    ...outcomeCards(tree, options),
    ...pictureCards(tree, options),
    ...limitCards(vocabulary, limits),
  ];
  const once = [...new Map(all.map((card) => [card.id, card])).values()];
  const random = seededRandom(seedOf(tree.id));
  const piles = DRILLS.map((drill) =>
    shuffled(
      once.filter((card) => card.drill === drill),
      random,
    ),
  );
  const deck: Card[] = [];
  for (let i = 0; deck.length < once.length; i++) for (const pile of piles) if (pile[i]) deck.push(pile[i]!);
  return deck;
}

export type Next =
  | { readonly kind: 'card'; readonly card: Card; readonly again: boolean }
  /** Everything has been asked; the first comes back then, milliseconds since 1970. */
  | { readonly kind: 'later'; readonly due: number }
  | { readonly kind: 'none' };

/**
 * What to ask now: what is due, the longest due first; else the next that was never asked; else when the first is due.
 *
 * @param drill  only this kind; null = all.
 * @param at     milliseconds since 1970.
 */
export function nextCard(deck: readonly Card[], state: LearnerState, drill: Drill | null, at: number): Next {
  const open = deck.filter((card) => drill === null || card.drill === drill);
  const dueOf = (card: Card): number | undefined => state.cards.get(card.id)?.memory.due;
  const known = open
    .flatMap((card) => {
      const due = dueOf(card);
      return due === undefined ? [] : [{ card, due }];
    })
    .sort((a, b) => a.due - b.due);
  const [first] = known;
  if (first && first.due <= at) return { kind: 'card', card: first.card, again: true };
  const fresh = open.find((card) => dueOf(card) === undefined);
  if (fresh) return { kind: 'card', card: fresh, again: false };
  return first ? { kind: 'later', due: first.due } : { kind: 'none' };
}
