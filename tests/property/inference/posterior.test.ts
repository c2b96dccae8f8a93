import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  beliefModel,
  decibansOf,
  evidenceLedger,
  outlook,
  posterior,
  type Finding,
} from '../../../shared/inference/index.ts';
import { cause, check, tree } from '../../unit/planning/small-tree.ts';

const SEED = { seed: 20251125, numRuns: 150 };
const row = (n: number) =>
  fc.array(fc.integer({ min: 1, max: 50 }), { minLength: n, maxLength: n }).map((parts) => {
    const total = parts.reduce((sum, each) => sum + each, 0);
    return parts.map((each) => each / total);
  });
const anyTree = fc.integer({ min: 2, max: 6 }).chain((causes) =>
  fc
    .record({
      weights: fc.array(fc.integer({ min: 1, max: 60 }), { minLength: causes, maxLength: causes }),
      tables: fc.array(fc.tuple(fc.array(row(3), { minLength: causes, maxLength: causes }), fc.boolean()), {
        minLength: 2,
        maxLength: 6,
      }),
    })
    .map(({ weights, tables }) =>
      tree(
        weights.map((weight, c) => cause(`c${c}`, weight)),
        tables.map(([likelihood, grouped], k) =>
          check(`k${k}`, ['x', 'y', 'z'], likelihood, grouped ? { group: 'same' } : {}),
        ),
        { unlistedShare: 0.03 },
      ),
    ),
);
const findingsOf = (checks: number): fc.Arbitrary<Finding[]> =>
  fc
    .array(fc.record({ k: fc.integer({ min: 0, max: checks - 1 }), r: fc.constantFrom('x', 'y', 'z') }), {
      maxLength: checks,
    })
    .map((list) => {
      const seen = new Set<number>();
      return list
        .filter(({ k }) => !seen.has(k) && !!seen.add(k))
        .map(({ k, r }) => ({ id: `f${k}`, check: `k${k}`, value: { kind: 'result', result: r } }));
    });
const anyCase = anyTree.chain((each) =>
  findingsOf(each.checks.length).map((findings) => ({ model: beliefModel(each, {}), findings, checks: each.checks })),
);

describe('posterior, for any tree and findings', () => {
  it('[INF-5] sums to 1 within 1e-12 and is nowhere 0 or NaN', () => {
    fc.assert(
      fc.property(anyCase, ({ model, findings }) => {
        const { probability } = posterior(model, findings);
        expect(Math.abs(probability.reduce((sum, p) => sum + p, 0) - 1)).toBeLessThan(1e-12);
        expect(probability.every((p) => p > 0)).toBe(true);
      }),
      SEED,
    );
  });
  it('[INF-6] does not depend on the order of the findings', () => {
    fc.assert(
      fc.property(anyCase, ({ model, findings }) => {
        const [a, b] = [posterior(model, findings), posterior(model, [...findings].reverse())];
        a.probability.forEach((p, c) => expect(b.probability[c]).toBeCloseTo(p, 12));
      }),
      SEED,
    );
  });
  it('[INF-7] the look ahead is what the finding would give, evidence groups included', () => {
    fc.assert(
      fc.property(anyCase, ({ model, findings, checks }) => {
        const open = checks.find((each) => !findings.some((finding) => finding.check === each.id));
        if (!open) return;
        const ahead = outlook(model, posterior(model, findings), open.id);
        expect(ahead.share.reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 12);
        ['x', 'y', 'z'].forEach((result, r) => {
          const then = posterior(model, [
            ...findings,
            { id: 'new', check: open.id, value: { kind: 'result', result } },
          ]);
          then.probability.forEach((p, c) => expect(ahead.after[r]![c]).toBeCloseTo(p, 9));
        });
      }),
      SEED,
    );
  });
  it('[INF-8] the decibans of all findings add up to the change of the odds', () => {
    fc.assert(
      fc.property(anyCase, ({ model, findings }) => {
        const { lines, before, after } = evidenceLedger(model, findings, 'c0');
        expect(before + lines.reduce((sum, { decibans }) => sum + decibans, 0)).toBeCloseTo(after, 9);
        expect(after).toBeCloseTo(decibansOf(posterior(model, findings).probability[0]!), 9);
      }),
      SEED,
    );
  });
});

describe('evidence that counts less', () => {
  const two = tree(
    [cause('a', 1), cause('b', 1)],
    [
      check(
        'sharp',
        ['x', 'y'],
        [
          [0.95, 0.05],
          [0.05, 0.95],
        ],
        { group: 'g' },
      ),
      check(
        'blunt',
        ['x', 'y'],
        [
          [0.8, 0.2],
          [0.2, 0.8],
        ],
        { group: 'g' },
      ),
    ],
  );
  const model = beliefModel(two, {}, { floor: 0 });
  const see = (id: string, value: Finding['value']): Finding => ({ id, check: id, value });
  it('[INF-9] of a group the sharpest counts in full and the others with the root of their likelihoods', () => {
    const { probability } = posterior(model, [
      see('blunt', { kind: 'result', result: 'x' }),
      see('sharp', { kind: 'result', result: 'x' }),
    ]);
    const odds = 19 * Math.sqrt(4);
    expect(probability[0]! / probability[1]!).toBeCloseTo(odds, 6);
  });
  it('[INF-10] "not sure" without a leaning and "can’t do" carry nothing; a leaning counts less than a clear result', () => {
    expect(
      posterior(model, [see('sharp', { kind: 'not-sure' }), see('blunt', { kind: 'cant-do' })]).probability[0],
    ).toBeCloseTo(0.5, 9);
    const leaning = posterior(model, [see('sharp', { kind: 'not-sure', leaning: 'x' })]).probability[0]!;
    expect(leaning).toBeGreaterThan(0.5);
    expect(leaning).toBeLessThan(0.95);
  });
});
