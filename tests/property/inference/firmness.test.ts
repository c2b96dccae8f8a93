import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  beliefModel,
  factorWords,
  firmnessOf,
  NO_NUMBER,
  posterior,
  WEIGHT_RANGE,
  type Finding,
  type JudgedNumber,
} from '../../../shared/inference/index.ts';
import type { Tree } from '../../../shared/knowledge/index.ts';
import { cause, check, tree } from '../../unit/planning/small-tree.ts';
import { treeWithFindings } from './trees.ts';

const SEED = { seed: 20251127, numRuns: 200 };

/** The tree with one number set, the rest of a likelihood row in proportion: what an author would do by hand. */
function withNumber(authored: Tree, number: JudgedNumber, value: number): Tree {
  if (number.kind === 'unlisted-share') return { ...authored, unlistedShare: value };
  if (number.kind === 'weight')
    return {
      ...authored,
      causes: authored.causes.map((each) => (each.id === number.cause ? { ...each, weight: value } : each)),
    };
  const row = authored.causes.findIndex(({ id }) => id === number.cause);
  return {
    ...authored,
    checks: authored.checks.map((each) => {
      if (each.id !== number.check) return each;
      const r = each.results.findIndex(({ id }) => id === number.result);
      return {
        ...each,
        likelihood: each.likelihood.map((old, i) =>
          i === row ? old.map((p, j) => (j === r ? value : (p * (1 - value)) / (1 - old[r]!))) : old,
        ),
      };
    }),
  };
}

function leaderOf(made: Tree, findings: readonly Finding[]): string {
  const { causeIds } = beliefModel(made, {});
  const { probability } = posterior(beliefModel(made, {}), findings);
  return causeIds[probability.indexOf(Math.max(...probability))]!;
}

describe('[INF-13] how firm a conclusion is, for any tree and findings', () => {
  it('the leader holds just short of the number named, and the rival named leads just past it', () => {
    fc.assert(
      fc.property(treeWithFindings, ({ tree: sample, findings }) => {
        const { cause: lead, nearest } = firmnessOf(sample, beliefModel(sample, {}), findings);
        for (const { number, value, needed, factor, leader } of nearest) {
          expect(factor).toBeCloseTo(needed / value, 9);
          const at = (step: number) => leaderOf(withNumber(sample, number, value + (needed - value) * step), findings);
          // Nearer than this the two weights differ in their last digits only.
          if (Math.abs(needed - value) < 1e-6) continue;
          expect(at(1 - 1e-5)).toBe(lead);
          expect(at(1 + 1e-5)).toBe(leader);
        }
      }),
      SEED,
    );
  });
  it('with no number named, none changes the leader: likelihoods at both ends, weights tenfold either way', () => {
    let firm = 0;
    fc.assert(
      fc.property(treeWithFindings, ({ tree: sample, findings }) => {
        const { cause: lead, nearest } = firmnessOf(sample, beliefModel(sample, {}), findings);
        if (nearest.length > 0) return;
        firm += 1;
        for (const { id, weight } of sample.causes) {
          for (const factor of [1 / WEIGHT_RANGE, WEIGHT_RANGE])
            expect(leaderOf(withNumber(sample, { kind: 'weight', cause: id }, weight * factor), findings)).toBe(lead);
          for (const each of sample.checks)
            for (const result of each.results)
              for (const value of [1e-9, 1 - 1e-9]) {
                const number: JudgedNumber = { kind: 'likelihood', check: each.id, result: result.id, cause: id };
                expect(leaderOf(withNumber(sample, number, value), findings)).toBe(lead);
              }
        }
      }),
      { ...SEED, numRuns: 1000 },
    );
    expect(firm).toBeGreaterThan(0);
  });
});

describe('[INF-13] how firm a conclusion is, worked by hand', () => {
  const two = tree(
    [cause('a', 1), cause('b', 1)],
    [
      check(
        'sharp',
        ['x', 'y'],
        [
          [0.8, 0.2],
          [0.2, 0.8],
        ],
        { group: 'g' },
      ),
      check(
        'blunt',
        ['x', 'y'],
        [
          [0.6, 0.4],
          [0.3, 0.7],
        ],
        { group: 'g' },
      ),
    ],
  );
  const model = beliefModel(two, {}, { floor: 0 });
  const saw = (id: string): Finding => ({ id, check: id, value: { kind: 'result', result: 'x' } });

  it('odds of 4 for a: its weight, or the likelihood, at a quarter; b’s at four times', () => {
    const { nearest, hangsOn } = firmnessOf(two, model, [saw('sharp')], undefined, { floor: 0 });
    expect(nearest.map(({ factor }) => factor)).toEqual([
      expect.closeTo(0.25, 9),
      expect.closeTo(4, 9),
      expect.closeTo(0.25, 9),
    ]);
    expect(nearest.every(({ leader }) => leader === 'b')).toBe(true);
    expect(hangsOn).toMatchObject({ finding: 'sharp', without: expect.closeTo(0.5, 9) as number });
  });
  it('a damped finding needs the square of the factor', () => {
    // Odds 4 · √2: the weight of a at 1 / 5.66 of its value; P(x | a) of the damped check at 1 / 32 of .6.
    const { nearest } = firmnessOf(two, model, [saw('blunt'), saw('sharp')], undefined, { floor: 0 });
    const weight = nearest.find(({ number }) => number.kind === 'weight')!;
    expect(Math.abs(Math.log(weight.factor))).toBeCloseTo(Math.log(4 * Math.SQRT2), 9);
    expect(nearest.every(({ number }) => number.kind !== 'likelihood' || number.check === 'sharp')).toBe(true);
  });
  it('no finding that speaks for the leader: nothing that it hangs on', () => {
    expect(firmnessOf(two, model, [], undefined, { floor: 0 }).hangsOn).toBeNull();
  });
  it('says a factor as people do', () => {
    expect(factorWords(0.5)).toBe('would need half of its present value');
    expect(factorWords(1.99)).toBe('would need twice its present value');
    expect(factorWords(0.413)).toBe('would need 0.41 times its present value');
    expect(NO_NUMBER).toMatch(/^No single number in this tree changes it/);
  });
});
