import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { shippedTrees } from '../../shipped-trees.ts';
import { beliefModel } from '../../../shared/inference/index.ts';
import { ROLES, type Role, type Tree, type Vocabulary } from '../../../shared/knowledge/index.ts';
import {
  apartCards,
  AS_GOOD,
  deckOf,
  DRILLS,
  givesAway,
  judgeApart,
  judgeOutcome,
  judgePicture,
  TIE,
  unlabelled,
  type ApartCard,
  type Card,
  type Drill,
  type OutcomeCard,
  type PictureCard,
  type SeenOption,
} from '../../../shared/practice/drills/index.ts';

const PEOPLE: readonly Role[] = ['apprentice', 'mechanic'];
const PICTURES = new URL('../../../trees/pictures', import.meta.url).pathname;

interface Deck {
  readonly tree: Tree;
  readonly who: Role;
  readonly cards: readonly Card[];
}
let trees: readonly Tree[];
let vocabulary: Vocabulary;
let decks: readonly Deck[];
beforeAll(async () => {
  const read = await shippedTrees();
  if (!read.vocabulary) throw new Error('The vocabulary cannot be read.');
  ({ vocabulary } = read);
  trees = [...read.trees.values()].flatMap(({ value }) => value ?? []);
  decks = trees.flatMap((tree) => PEOPLE.map((who) => ({ tree, who, cards: deckOf(tree, vocabulary, { who }) })));
});

/** Every card of a kind over all trees and people, with its tree. */
function each<D extends Drill>(drill: D, run: (card: Extract<Card, { drill: D }>, deck: Deck) => void): void {
  let count = 0;
  for (const deck of decks)
    for (const card of deck.cards)
      if (card.drill === drill) {
        count++;
        // The kind was just held against it.
        run(card as Extract<Card, { drill: D }>, deck);
      }
  expect(count).toBeGreaterThan(30);
}

function expectOneAnswerSet(options: readonly SeenOption[]): void {
  const right = options.filter(({ accepted }) => accepted).map(({ share }) => share);
  const wrong = options.filter(({ accepted }) => !accepted).map(({ share }) => share);
  expect(right.length).toBeGreaterThan(0);
  expect(wrong.length).toBeGreaterThan(0);
  const best = Math.max(...options.map(({ share }) => share));
  for (const share of right) expect(share).toBeGreaterThanOrEqual(best - AS_GOOD);
  for (const share of wrong) expect(share).toBeLessThan(best - AS_GOOD);
  expect(Math.min(...right) - Math.max(...wrong)).toBeGreaterThanOrEqual(0.05);
  expect(options.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
}

describe('the cards of all shipped trees', () => {
  it('every one of the sixteen has cards of three drills, and limits are asked in most', () => {
    expect(trees).toHaveLength(16);
    for (const { tree, cards } of decks) {
      const kinds = new Set(cards.map(({ drill }) => drill));
      expect([...kinds], tree.id).toEqual(expect.arrayContaining(DRILLS.filter((drill) => drill !== 'limit')));
      expect(cards.length, tree.id).toBeGreaterThan(40);
    }
    expect(decks.filter(({ cards }) => cards.some(({ drill }) => drill === 'limit')).length).toBeGreaterThan(20);
  });

  it('[DRI-1] the same cards in the same order again, no id twice in a deck', () => {
    for (const { tree, who, cards } of decks) {
      // A copy: nothing that was kept for the tree itself may matter.
      const again = deckOf(structuredClone(tree), vocabulary, { who });
      expect(again).toEqual(cards);
      expect(new Set(cards.map(({ id }) => id)).size).toBe(cards.length);
      for (const { id, drill } of cards) expect(id).toMatch(new RegExp(`^${drill}-[0-9a-f]{16}$`));
    }
  });

  it('[DRI-1] a likelihood that changes re-makes the cards that rest on it, and no others', () => {
    const { tree, who, cards } = decks[0]!;
    const touched = cards.find((card): card is OutcomeCard => card.drill === 'outcome')!;
    const changed: Tree = {
      ...tree,
      checks: tree.checks.map((check) =>
        check.id === touched.check.id
          ? {
              ...check,
              likelihood: check.likelihood.map((row, i) =>
                tree.causes[i]!.id === touched.cause.id
                  ? [row[0]! * 0.99, ...row.slice(1, -1), row.at(-1)! + row[0]! * 0.01]
                  : row,
              ),
            }
          : check,
      ),
    };
    const ids = new Set(deckOf(changed, vocabulary, { who }).map(({ id }) => id));
    expect(ids.has(touched.id)).toBe(false);
    for (const card of cards)
      if (card.drill === 'picture' || card.drill === 'limit') expect(ids.has(card.id)).toBe(true);
  });
});

describe('tell these two apart', () => {
  it('[DRI-4] four or five checks that this person may do alone; the best and its ties are right, the rest clearly less', () => {
    each('apart', (card: ApartCard, { tree, who }) => {
      expect(card.first.id).not.toBe(card.second.id);
      expect(card.options.length).toBeGreaterThanOrEqual(4);
      expect(card.options.length).toBeLessThanOrEqual(5);
      const model = beliefModel(tree, {});
      const [a, b] = [card.first, card.second].map(({ id }) => model.causeIds.indexOf(id));
      const allowed = tree.checks.filter((check) => ROLES.indexOf(check.who) <= ROLES.indexOf(who));
      for (const option of card.options) {
        expect(allowed.map(({ id }) => id)).toContain(option.check);
        // The definition once more, straight from the floored table: the mean of both Kullback–Leibler divergences.
        const rows = model.tables.get(option.check)!.likelihood;
        const towards = (x: number, y: number): number =>
          rows.reduce((sum, row) => sum + row[x]! * 10 * Math.log10(row[x]! / row[y]!), 0);
        expect(option.decibans).toBeCloseTo((towards(a!, b!) + towards(b!, a!)) / 2, 9);
      }
      const best = Math.max(...card.options.map(({ decibans }) => decibans));
      const right = card.options.filter(({ accepted }) => accepted);
      expect(right.length).toBeGreaterThan(0);
      expect(right.length).toBeLessThan(card.options.length);
      for (const { decibans, accepted } of card.options)
        if (accepted) expect(best - decibans).toBeLessThan(TIE);
        else expect(best - decibans).toBeGreaterThan(3);
    });
  });

  it('[DRI-4] no check that this person may do separates the two clearly better than the one called best', () => {
    each('apart', (card: ApartCard, { tree, who }) => {
      const model = beliefModel(tree, {});
      const [a, b] = [card.first, card.second].map(({ id }) => model.causeIds.indexOf(id));
      const best = Math.max(...card.options.map(({ decibans }) => decibans));
      for (const check of tree.checks) {
        if (ROLES.indexOf(check.who) > ROLES.indexOf(who) || check.requires.length > 0) continue;
        // On a coach that has both causes.
        if (
          Object.entries(check.when).some(([feature, values]) =>
            [card.first, card.second].some(({ id }) => {
              const wanted = tree.causes.find((cause) => cause.id === id)!.when[feature];
              return wanted !== undefined && !wanted.some((value) => values.includes(value));
            }),
          )
        )
          continue;
        const rows = model.tables.get(check.id)!.likelihood;
        const decibans = rows.reduce(
          (sum, row) => sum + 5 * (row[a!]! - row[b!]!) * Math.log10(row[a!]! / row[b!]!),
          0,
        );
        expect(decibans, `${card.subject}: ${check.id}`).toBeLessThanOrEqual(best + 1e-9);
      }
    });
  });

  it('[DRI-2] [DRI-5] whatever is chosen rightly, one set of results is right for it; half right is the check alone', () => {
    each('apart', (card: ApartCard) => {
      for (const option of card.options) {
        if (option.accepted) expectOneAnswerSet(option.results);
        for (const { result, accepted } of option.results)
          expect(judgeApart(card, option.check, result)).toBe(
            !option.accepted ? 'wrong' : accepted ? 'right' : 'nearly',
          );
      }
      expect(judgeApart(card, 'no-such-check', '')).toBe('wrong');
    });
  });

  it('[DRI-4] no pair that cannot be on one coach', () => {
    for (const tree of trees)
      for (const { causes } of apartCards(tree, { who: 'mechanic' })) {
        const [one, other] = causes.map((id) => tree.causes.find((cause) => cause.id === id)!.when);
        for (const [feature, values] of Object.entries(one!))
          expect(other![feature] === undefined || values.some((value) => other![feature]!.includes(value))).toBe(true);
      }
  });
});

describe('what would you see', () => {
  it('[DRI-2] [DRI-3] [DRI-5] one set of results is right, and none of them is written in the question', () => {
    each('outcome', (card: OutcomeCard, { tree }) => {
      expectOneAnswerSet(card.options);
      expect(card.options.map(({ result }) => result)).toEqual(
        tree.checks.find(({ id }) => id === card.check.id)!.results.map(({ id }) => id),
      );
      for (const { label, accepted, result } of card.options) {
        if (accepted) expect(givesAway(`${card.cause.name} ${card.check.name}`, label), card.subject).toBe(false);
        expect(judgeOutcome(card, result)).toBe(accepted ? 'right' : 'wrong');
      }
    });
  });
});

describe('read the picture', () => {
  it('[DRI-6] right is exactly what the index of the tree says', () => {
    each('picture', (card: PictureCard, { tree }) => {
      const right = card.options.filter(({ accepted }) => accepted).map(({ id }) => id);
      expect(right.length).toBeGreaterThan(0);
      expect(right.length).toBeLessThan(card.options.length);
      if (card.asks === 'check') {
        expect(right).toHaveLength(1);
        const named = tree.checks
          .filter((check) => check.pictures.some(({ file }) => file === card.file))
          .map(({ id }) => id);
        expect(card.options.filter(({ id }) => named.includes(id)).map(({ id }) => id)).toEqual(right);
      } else {
        const check = tree.checks.find(({ id }) => id === card.check?.id)!;
        const explained = check.pictures.filter(({ file }) => file === card.file).flatMap(({ results }) => results);
        expect(new Set(right)).toEqual(new Set(explained));
        expect(card.options).toHaveLength(check.results.length);
      }
      for (const { id, accepted } of card.options) expect(judgePicture(card, id)).toBe(accepted ? 'right' : 'wrong');
    });
  });

  it('[DRI-3] the drawing has not a word left, and its description none of the right answers where it stands in', () => {
    const seen = new Map<string, string>();
    let inWords = 0;
    each('picture', (card: PictureCard) => {
      const svg = seen.get(card.file) ?? unlabelled(readFileSync(join(PICTURES, card.file), 'utf8'));
      seen.set(card.file, svg);
      if (!card.inWords) return;
      inWords++;
      for (const { label, accepted } of card.options) if (accepted) expect(givesAway(card.alt, label)).toBe(false);
    });
    expect(inWords).toBeGreaterThan(200);
    expect(seen.size).toBeGreaterThan(80);
    for (const [file, svg] of seen) {
      const words = svg
        .replace(/<style\b[\s\S]*?<\/style>/g, '')
        .replace(/<[^>]*>/g, '')
        .trim();
      expect(words, file).toBe('');
      expect(svg, file).toMatch(/<(path|circle|line|rect|polyline|polygon|ellipse)\b/);
      expect(svg.trimEnd().endsWith('</svg>'), file).toBe(true);
    }
  });
});
