import { beforeAll, describe, expect, it } from 'vitest';
import { basisOf, readTree, verbalWord, weakSpots, type Tree, type Vocabulary } from '../../shared/knowledge/index.ts';
import { toldToDrive } from '../../shared/planning/evaluation/drive.ts';
import { adviceWay, scoreWay } from '../../shared/planning/evaluation/index.ts';
import { tryTree } from '../../shared/planning/evaluation/trial.ts';
import { SMALLEST_TREE } from '../packs.ts';
import { shippedTrees } from '../shipped-trees.ts';

let vocabulary: Vocabulary;
let shipped: Tree;
beforeAll(async () => {
  const loaded = await shippedTrees('coach-wont-roll-free');
  vocabulary = loaded.vocabulary!;
  shipped = loaded.trees.get('coach-wont-roll-free')!.value!;
});
const tree = (change: (text: string) => string = (text) => text): Tree => {
  const read = readTree({ treeYaml: change(SMALLEST_TREE), file: 'tree.yaml', vocabulary });
  if (!read.value) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read.value;
};

describe('weak spots', () => {
  it('names two causes that one check alone tells apart, with who can do it, and what nothing settles', () => {
    const spots = weakSpots(tree((text) => text.replace('who: owner-no-tools', 'who: mechanic')));
    expect(spots).toMatchObject([
      {
        kind: 'one-check-apart',
        causes: [{ id: 'cock-shut' }, { id: 'diaphragm-cracked' }],
        check: { who: 'mechanic' },
      },
      { kind: 'nothing-settles', cause: { id: 'diaphragm-cracked' } },
    ]);
  });

  it('names a danger that an owner without tools cannot tell from what hurts nobody', () => {
    const danger = (text: string): string => text.replace('hazard: nuisance', 'hazard: danger');
    expect(weakSpots(tree(danger)).map(({ kind }) => kind)).not.toContain('danger-hidden-from-owner');
    const hidden = weakSpots(tree((text) => danger(text).replace('who: owner-no-tools', 'who: apprentice')));
    expect(hidden[0]).toMatchObject({
      kind: 'danger-hidden-from-owner',
      cause: { id: 'cock-shut' },
      from: [{ id: 'diaphragm-cracked' }],
    });
  });
});

it('lists every limit that a check names, once, and counts what is judged', () => {
  const { limits, instruments, judged } = basisOf(shipped, vocabulary);
  const named = new Set(shipped.checks.flatMap((check) => check.limits));
  expect(new Set(limits.map(({ limit }) => limit.id))).toEqual(named);
  expect(limits).toHaveLength(named.size);
  expect(limits.every(({ limit }) => limit.source !== '')).toBe(true);
  expect(instruments.length).toBeGreaterThan(0);
  const cells = shipped.checks.flatMap(({ likelihood }) => likelihood.flat()).length;
  expect(judged).toMatchObject({ likelihoods: cells, weights: shipped.causes.length + 1 });
});

it.each([
  [0.01, 'almost impossible'],
  [0.15, 'improbable'],
  [0.5, 'fifty fifty'],
  [0.86, 'probable'],
  [1, 'certain'],
])('puts %f in the nearest word of the scale', (likelihood, word) => {
  expect(verbalWord(likelihood)).toBe(word);
});

it('tries a tree as the evaluation does, tells how far it is, and counts every coach once', () => {
  const told: number[] = [];
  const options = { coaches: 40, seed: 7 };
  const trial = tryTree(shipped, vocabulary, { ...options, tell: (done) => told.push(done) });
  const score = scoreWay(adviceWay(), shipped, vocabulary, options);
  expect(trial.right).toBe(score.right);
  expect(told).toEqual(Array.from({ length: 80 }, (_, i) => i + 1));
  expect(trial.rows.reduce((sum, { coaches }) => sum + coaches, 0)).toBe(40);
  for (const { truth, coaches, taken } of trial.rows) {
    expect(taken.reduce((sum, each) => sum + each.coaches, 0)).toBe(coaches);
    expect(taken.find(({ cause }) => cause === truth)?.coaches).toBe(score.confusion.get(truth)!.get(truth));
  }
  const drive = toldToDrive(shipped, vocabulary, options);
  expect(trial.owner.danger).toBe(drive.dangerCoaches);
  expect(trial.owner.missed).toBe(Math.round(drive.toldToDrive * drive.dangerCoaches));
  const unlisted = trial.rows.find(({ truth }) => truth === 'unlisted')?.coaches ?? 0;
  expect(trial.owner.harmless + trial.owner.danger + unlisted).toBe(40);
  expect(trial.owner.ruledOut).toBeLessThanOrEqual(trial.owner.harmless);
}, 120_000);
