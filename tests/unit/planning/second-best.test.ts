import { beforeAll, describe, expect, it } from 'vitest';
import type { Vocabulary } from '../../../shared/knowledge/index.ts';
import { rankChecks, secondBest } from '../../../shared/planning/index.ts';
import { checkCost } from '../../../shared/planning/one-step.ts';
import { blank } from './compile/walked.ts';
import { cause, check, silentChecks, tree } from './small-tree.ts';
import { shippedTrees } from '../../shipped-trees.ts';

let vocabulary: Vocabulary;
beforeAll(async () => {
  const loaded = await shippedTrees();
  if (!loaded.vocabulary) throw new Error('The shipped vocabulary cannot be read.');
  vocabulary = loaded.vocabulary;
});

const TELLS = [
  [0.95, 0.05],
  [0.05, 0.95],
];
const hoses = (minutes: readonly number[]) =>
  tree(
    [cause('a', 50), cause('b', 50)],
    [...minutes.map((each, i) => check(`look-${i}`, ['x', 'y'], TELLS, { minutes: each })), ...silentChecks(2)],
  );
const ranked = (minutes: readonly number[]) => rankChecks(blank(hoses(minutes), vocabulary, 'mechanic'), null);

describe('[PLA-31] how much worse the second best check is', () => {
  it('two checks that tell the same: the difference is their minutes', () => {
    expect(secondBest(ranked([5, 12]))).toEqual({
      check: 'look-1',
      worseBy: expect.closeTo(7, 9) as number,
      equal: false,
    });
    expect(secondBest(ranked([30, 5, 12]))).toMatchObject({ check: 'look-2', worseBy: expect.closeTo(7, 9) as number });
  });
  it('is the difference of the expected costs', () => {
    const ranking = ranked([5, 12]);
    const { problem } = ranking;
    const [least, next] = [0, 1].map((k) => checkCost(problem, problem.start, problem.stage, k));
    expect(secondBest(ranking)!.worseBy).toBeCloseTo(next! - least!, 9);
  });
  it('is the difference of the costs in the end once they are known', () => {
    const ranking = ranked([5, 12]);
    const cost = (check: string) => ({ 'look-0': 100, 'look-1': 103 })[check] ?? 200;
    const checks = ranking.options.map(({ check }) => ({ check, cost: cost(check) }));
    const ahead = { checks, act: 300, best: 0, bound: 50, exact: false };
    expect(secondBest(ranking, ahead)).toMatchObject({ check: 'look-1', worseBy: 3, equal: false });
    // By cost alone the other may come out cheaper; what is advised does not change by that.
    const turned = {
      ...ahead,
      checks: checks.map((each) => (each.check === 'look-0' ? { ...each, cost: 110 } : each)),
    };
    expect(secondBest(ranking, turned)).toMatchObject({ check: 'look-1', worseBy: -7, equal: false });
  });
  it('less than a minute apart is equal', () => {
    expect(secondBest(ranked([5, 5.5]))).toMatchObject({ equal: true });
  });
  it('says nothing when there is one check, or none is advised', () => {
    const alone = tree([cause('a', 50), cause('b', 50)], [check('look', ['x', 'y'], TELLS)]);
    expect(secondBest(rankChecks(blank(alone, vocabulary, 'mechanic'), null))).toBeNull();
    expect(secondBest(ranked([5000, 6000]))).toBeNull();
  });
});
