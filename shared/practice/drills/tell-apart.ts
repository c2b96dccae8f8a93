import type { CheckTable } from '../../inference/index.ts';
import { seededRandom } from '../../planning/evaluation/random.ts';
import { UNLISTED, type Tree } from '../../knowledge/index.ts';
import { askable, canMeet, type Askable } from './askable.ts';
import type { ApartCard, ApartOption, CardOptions, Outcome } from './card.ts';
import { cardId, seedOf, shuffled } from './card-id.ts';
import { confusionBound, expectedDecibans } from './evidence-between.ts';
import { decidable, seenUnder } from './seen.ts';

/** Pairs of a tree that are asked, and how often one cause may be among them. Judgement. */
const PAIRS = 12;
const EACH = 3;
/** Checks offered. */
const OFFERED = 5;
const FEWEST = 4;
/** As good as the best: one deciban is about the smallest change a person can feel. */
export const TIE = 1;
/** What is offered as wrong brings less than the best by more than this, decibans. Judgement. */
const CLEARLY_LESS = 3;
/** What separates less than this separates nothing that a person would notice, decibans. Judgement. */
const SEPARATES = 3;

/** The cards of a tree: its causes that are most easily taken for each other by the checks of this person. */
export function apartCards(tree: Tree, { who }: CardOptions): ApartCard[] {
  const all = askable(tree, who);
  const asked = new Map<string, number>();
  const cards: ApartCard[] = [];
  for (const [a, b] of pairs(all)) {
    if (cards.length >= PAIRS) break;
    const ids = [all.model.causeIds[a]!, all.model.causeIds[b]!];
    if (ids.some((id) => (asked.get(id) ?? 0) >= EACH)) continue;
    const card = apartCard(all, a, b);
    if (!card) continue;
    cards.push(card);
    for (const id of ids) asked.set(id, (asked.get(id) ?? 0) + 1);
  }
  return cards;
}

/** Columns of causes that one coach can have, the most easily confused first; ties by the order of the tree. */
function pairs({ tree, model, tables }: Askable): [number, number][] {
  const found: { readonly pair: [number, number]; readonly bound: number }[] = [];
  for (let a = 0; a < model.causeIds.length; a++)
    for (let b = a + 1; b < model.causeIds.length; b++) {
      if (model.causeIds[b] === UNLISTED || !canMeet(tree.causes[a]!.when, tree.causes[b]!.when)) continue;
      found.push({ pair: [a, b], bound: confusionBound(model, tables, a, b) });
    }
  return found.sort((x, y) => y.bound - x.bound).map(({ pair }) => pair);
}

function apartCard({ tree, tables }: Askable, a: number, b: number): ApartCard | null {
  const [one, other] = [tree.causes[a]!, tree.causes[b]!];
  // Which of the two is supposed to be true is settled by their ids, not by their place in the file.
  const turned = seedOf(`${one.id} ${other.id}`) % 2 === 1;
  const [first, second] = turned ? [other, one] : [one, other];
  const column = turned ? b : a;
  const weighed = tables
    .filter(({ check }) => canMeet(check.when, one.when, other.when))
    .map((table) => ({ table, decibans: expectedDecibans(table, a, b), results: seenUnder(table, column) }))
    .sort((x, y) => y.decibans - x.decibans);
  const best = weighed[0];
  if (!best || best.decibans < SEPARATES) return null;
  const right = weighed.filter(({ decibans }) => best.decibans - decibans < TIE);
  const wrong = weighed.filter(({ decibans }) => best.decibans - decibans > CLEARLY_LESS);
  // Whatever is chosen, what it would show has to have an answer.
  if (!right.every(({ results }) => decidable(results))) return null;
  const random = seededRandom(seedOf(`${tree.id} ${one.id} ${other.id}`));
  const shown = right.slice(0, OFFERED - 2);
  const spread = tempting(
    wrong.filter(({ results }) => decidable(results)),
    OFFERED - shown.length,
  );
  if (shown.length + spread.length < FEWEST) return null;
  const options = shuffled([...shown, ...spread], random).map(
    ({ table: { check }, decibans, results }): ApartOption => ({
      check: check.id,
      name: check.name,
      decibans,
      accepted: best.decibans - decibans < TIE,
      results,
    }),
  );
  const content = { tree: tree.id, causes: [first.name, second.name], options };
  return {
    id: cardId('apart', content),
    drill: 'apart',
    tree: tree.id,
    causes: [first.id, second.id],
    checks: options.filter(({ accepted }) => accepted).map(({ check }) => check),
    subject: `${first.name} or ${second.name}`,
    first: { id: first.id, name: first.name },
    second: { id: second.id, name: second.name },
    options,
  };
}

/** Wrong choices that tempt: they tell much about this complaint, though not between these two. */
function tempting<T extends { readonly table: CheckTable }>(wrong: readonly T[], count: number): T[] {
  return [...wrong].sort((x, y) => y.table.sharpness - x.table.sharpness).slice(0, count);
}

/** Right = a check that separates best and what it would show; nearly = the check alone. */
export function judgeApart(card: ApartCard, check: string, result: string): Outcome {
  const option = card.options.find((each) => each.check === check);
  if (!option?.accepted) return 'wrong';
  return option.results.find((each) => each.result === result)?.accepted ? 'right' : 'nearly';
}
