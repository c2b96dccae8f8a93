import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { factsIn, recalledChecks, type Tree } from '../../shared/knowledge/index.ts';
import { shippedTrees } from '../shipped-trees.ts';

const { trees } = await shippedTrees();
const shipped = new Map([...trees.values()].flatMap(({ value }) => (value ? [[value.id, value] as const] : [])));
const treeOf = (id: string): Tree => {
  const found = shipped.get(id);
  if (!found) throw new Error(`The sentences name "${id}", which is no complaint.`);
  return found;
};
const linesOf = (name: string): string[][] =>
  readFileSync(new URL(`words/${name}`, import.meta.url), 'utf8')
    .trim()
    .split('\n')
    .map((line) => line.split('|').map((cell) => cell.trim()));
const allLooked = (tree: Tree): string[] => tree.stopRules.map(({ id }) => id);
const foundIn = (complaint: string, words: string): string[] =>
  factsIn(words, treeOf(complaint), allLooked(treeOf(complaint))).map(({ check, result }) => `${check}.${result}`);

/** Complaint, sentence, and what a technician hears in it beyond the complaint; nothing where nothing is said. */
const said = linesOf('facts/said.txt').map(([complaint, words, facts], i) => ({
  complaint: complaint!,
  words: words!,
  expected: facts ? facts.split(', ') : [],
  // Phrases and the matching were tuned on every second sentence; the others were only counted. One author wrote both.
  half: i % 2 === 0 ? 'tuned' : 'held out',
}));

describe('[KNO-20] what a sentence says beyond the complaint', () => {
  it('is tried on at least 60 sentences over all trees, with results that exist', () => {
    expect(said.length).toBeGreaterThanOrEqual(60);
    expect(new Set(said.map(({ complaint }) => complaint))).toEqual(new Set(shipped.keys()));
    expect(said.filter(({ expected }) => expected.length === 0).length).toBeGreaterThanOrEqual(25);
    for (const { complaint, expected } of said)
      for (const fact of expected) {
        const [check, result] = fact.split('.');
        expect(
          treeOf(complaint)
            .checks.find(({ id }) => id === check)
            ?.results.map(({ id }) => id),
          `${complaint}: ${fact}`,
        ).toContain(result);
      }
  });
  it.each(['tuned', 'held out'])('%s half: at least 90 % is heard, and at most 3 % of the offers is wrong', (half) => {
    const heard = said
      .filter((each) => each.half === half)
      .map((each) => ({ ...each, found: foundIn(each.complaint, each.words) }));
    const wanted = heard.flatMap(({ expected }) => expected);
    const missed = heard.flatMap(({ words, expected, found }) =>
      expected.filter((fact) => !found.includes(fact)).map((fact) => `${words}: ${fact}`),
    );
    const offered = heard.flatMap(({ found }) => found);
    const wrong = heard.flatMap(({ words, expected, found }) =>
      found.filter((fact) => !expected.includes(fact)).map((fact) => `${words}: ${fact}`),
    );
    expect(1 - missed.length / wanted.length, missed.join('\n')).toBeGreaterThanOrEqual(0.9);
    expect(wrong.length / offered.length, wrong.join('\n')).toBeLessThanOrEqual(0.03);
  });
  it('in all the sentences that the search is tried on, at most one offer in twenty is not one judged right', () => {
    const right = new Set(linesOf('facts/judged-right.txt').map((cells) => cells.join(' | ')));
    const offers = [...shipped.keys()].flatMap((complaint) =>
      readFileSync(new URL(`words/${complaint}.txt`, import.meta.url), 'utf8')
        .trim()
        .split('\n')
        .flatMap((words) => foundIn(complaint, words).map((fact) => `${complaint} | ${words} | ${fact}`)),
    );
    const unjudged = offers.filter((offer) => !right.has(offer));
    expect(offers.length).toBeGreaterThanOrEqual(50);
    expect(unjudged.length / offers.length, unjudged.join('\n')).toBeLessThanOrEqual(0.05);
  });
  it('the piece that says it stands where it is said to stand', () => {
    const words = 'growl through the floor, swells when I lean right in a long bend';
    const [fact] = factsIn(words, treeOf('growl-through-floor-at-speed'));
    expect(words.slice(...fact!.span)).toBe('swells when I lean right');
    expect(fact!.sure).toBeGreaterThan(0.6);
    expect(fact!.sure).toBeLessThanOrEqual(1);
  });
  it.each([
    ['a denial', 'it does not swell when I lean right'],
    ['a doubt', 'maybe it swells when I lean right'],
    ['a question', 'does it swell when I lean right?'],
    ['a time that is over', 'it used to swell when I lean right'],
    ['two ways at once', 'louder when pulling, louder when coasting'],
    ['nothing', ''],
  ])('%s says nothing', (_, words) => {
    expect(factsIn(words, treeOf('growl-through-floor-at-speed'), [])).toEqual([]);
  });
});

describe.each([...shipped.values()].map((tree) => [tree.id, tree] as const))('%s', (_, tree) => {
  it('[KNO-21] has something that an owner may have noticed, and says how owners put it', () => {
    expect(recalledChecks(tree, allLooked(tree)).length).toBeGreaterThanOrEqual(2);
    const says = tree.checks.flatMap(({ results }) => results.flatMap((result) => result.says ?? []));
    expect(says.length).toBeGreaterThanOrEqual(20);
    // A phrase that nobody can be heard saying is a slip of the author: each finds its own result when said alone.
    for (const check of tree.checks) {
      if (!check.who.startsWith('owner') || check.measure || check.site !== undefined || check.requires.length > 0)
        continue;
      if (check.settles.some((id) => tree.causes.find((cause) => cause.id === id)?.hazard === 'danger')) continue;
      for (const { id, says = [] } of check.results)
        for (const phrase of says)
          expect(foundIn(tree.id, phrase.replaceAll('#', '3')), `${check.id}: "${phrase}"`).toContain(
            `${check.id}.${id}`,
          );
    }
  });
  it('[KNO-22] what is remembered never answers a stop rule with no', () => {
    const guards = tree.stopRules.filter(({ verdict }) => verdict !== 'drive-and-book');
    for (const { check, results } of recalledChecks(tree)) {
      const fires = guards.flatMap(({ firedBy }) =>
        firedBy.filter((entry) => entry.check === check.id).flatMap((entry) => entry.results),
      );
      if (fires.length > 0) for (const { id } of results) expect(fires, `${check.id}.${id}`).toContain(id);
      expect(check).toMatchObject({ who: 'owner-no-tools', tools: [], requires: [] });
      expect(check.site).toBeUndefined();
      expect(check.measure).toBeUndefined();
    }
  });
});
