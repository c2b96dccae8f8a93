import { beforeAll, expect, it } from 'vitest';
import { shippedTrees } from '../../shipped-trees.ts';
import { COACH_FIELDS } from '../../../shared/coach/index.ts';
import type { Tree, Vocabulary } from '../../../shared/knowledge/index.ts';
import { OFFER_TARGETS } from '../../../shared/visit/index.ts';

/** What profile and arrival name of the trees is held against the trees that come with the program, read once. */
let vocabulary: Vocabulary;
let trees: readonly Tree[];
beforeAll(async () => {
  const loaded = await shippedTrees();
  if (!loaded.vocabulary) throw new Error('The shipped vocabulary cannot be read.');
  vocabulary = loaded.vocabulary;
  trees = [...loaded.trees.values()].flatMap(({ value }) => value ?? []);
});

it('[COA-4] a field names checks that are there', () => {
  const there = new Set(trees.flatMap(({ id, checks }) => checks.map((check) => `${id}/${check.id}`)));
  const named = COACH_FIELDS.flatMap(({ uses }) => uses.flatMap((use) => (use.kind === 'check' ? use.check : [])));
  expect(named.length).toBeGreaterThan(10);
  expect(named.filter((id) => !vocabulary.checks.has(id) && !there.has(id))).toEqual([]);
});

it('[ARR-3] an offer names a check and a result that are there', () => {
  expect(OFFER_TARGETS.length).toBeGreaterThan(20);
  const missing = OFFER_TARGETS.filter(
    ({ tree, check, result }) =>
      !trees.some(
        ({ id, checks }) =>
          (tree === undefined || tree === id) &&
          checks.some(
            (each) =>
              (tree === undefined ? each.sharedAs : each.id) === check && each.results.some((one) => one.id === result),
          ),
      ),
  );
  expect(missing).toEqual([]);
});
