import { expect, it } from 'vitest';
import { proofRisk } from '../../../shared/planning/proof.ts';
import { defaultCosts, rankChecks, type Situation } from '../../../shared/planning/index.ts';
import { loadTrees } from '../../../electron/cli/load-trees.ts';
import { cause, check, tree } from './small-tree.ts';

const { vocabulary } = await loadTrees({ only: ['air-leaks-when-brake-held'] });
const proof = { minutes: 10, access: 'parked' };

/** Expected cost of acting at once on a with .7 against b, when proofs are trusted so far. */
function actNow(sensitivity: number, specificity: number, comeBack = 100): number {
  const small = tree(
    [cause('a', 7), cause('b', 3)],
    [
      check(
        'look',
        ['x', 'y'],
        [
          [0.5, 0.5],
          [0.5, 0.5],
        ],
      ),
    ],
    { proofs: [{ after: '*', steps: [], wait: '', ...proof, sensitivity, specificity }] },
  );
  const situation: Situation = {
    tree: small,
    vocabulary: vocabulary!,
    who: 'mechanic',
    layout: {},
    findings: [],
    stopAnswers: {},
    corrections: [],
    access: [],
    costs: { ...defaultCosts('mechanic'), comeBack },
  };
  return rankChecks(situation, null).actNow.cost;
}

it('[PLA-41] what a proof costs that can be wrong: worked out by hand', () => {
  const costs = { ...defaultCosts('mechanic'), comeBack: 100 };
  const risk = proofRisk({ ...proof, sensitivity: 0.8, specificity: 0.95 }, costs);
  expect(risk.missed).toBeCloseTo(20, 12);
  expect(risk.again).toBeCloseTo(0.5, 12);
  // The wrong correction comes first on .3 of the coaches; one of the two is right in the end on all of them.
  const trusted = actNow(1, 1);
  expect(actNow(0.8, 1) - trusted).toBeCloseTo(0.3 * 20, 9);
  expect(actNow(1, 0.95) - trusted).toBeCloseTo(0.5, 9);
  expect(actNow(0.8, 1, 0)).toBeCloseTo(trusted, 9);
});
