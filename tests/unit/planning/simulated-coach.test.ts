import { expect, it } from 'vitest';
import { drawCoach, drawTwoFaults, seededRandom } from '../../../shared/planning/evaluation/index.ts';
import { shippedTrees } from '../../shipped-trees.ts';

const TREE = 'air-leaks-when-brake-held';
const { trees, vocabulary } = await shippedTrees(TREE);
const tree = trees.get(TREE)!.value!;
const checks = tree.checks.map(({ id }) => id);

it.each([
  ['one fault', drawCoach],
  ['two faults', drawTwoFaults],
] as const)('[EVA-7] a coach with %s shows the same in whatever order it is looked at', (_, drawn) => {
  let looked = 0;
  for (let seed = 1; seed <= 12; seed++) {
    const [one, other] = [1, 2].map(() => drawn(tree, vocabulary!, seededRandom(seed)));
    if (!one || !other) continue;
    const forwards = checks.map((id) => one.look(id));
    const backwards = [...checks].reverse().map((id) => other.look(id));
    expect(backwards.reverse()).toEqual(forwards);
    looked++;
  }
  expect(looked).toBeGreaterThan(3);
});
