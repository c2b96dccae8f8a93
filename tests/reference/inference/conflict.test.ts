import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beliefModel, conflictIn, pairBelief } from '../../../shared/inference/index.ts';
import { treeWithFindings } from '../../property/inference/trees.ts';
import { found, referenceTree } from './slow-air.ts';

/** Values by enumeration on the slow-air model, worked out apart from this program (conflict measure of Jensen et al. 1991). */
const { model, table } = referenceTree('m5-slow-air-imperfect.json');
const outcome = (check: string, word: string): string =>
  table.checks.find(({ id }) => id === check)!.outcomes.find((each) => each.includes(word))!;
const hiss = found('listen_purge', outcome('listen_purge', 'hiss'));
const gauge = found('second_gauge', outcome('second_gauge', 'differ'));

it('[INF-17] a hiss and a second gauge that differs disagree by 1.7797 bits, and are named', () => {
  const conflict = conflictIn(model, [hiss, gauge])!;
  expect(conflict.bits).toBeCloseTo(1.7797, 3);
  expect([...conflict.findings].sort()).toEqual(['listen_purge', 'second_gauge']);
});

it('[INF-17] a hiss and a fast leak-down fit together', () => {
  expect(conflictIn(model, [hiss, found('leak_down', outcome('leak_down', 'fast'))])).toBeNull();
  expect(conflictIn(model, [hiss])).toBeNull();
});

describe('[INF-19] up to two things wrong at once', () => {
  it('is the enumeration of 6 single causes and 15 pairs, written out apart from this program', () => {
    const { single, pairs, twoShare } = pairBelief(model, [hiss, gauge]);
    expect(single[model.causeIds.indexOf('purge_valve')]).toBeCloseTo(0.441677248341, 9);
    expect(single[model.causeIds.indexOf('gauge')]).toBeCloseTo(0.211559690382, 9);
    expect(pairs).toHaveLength(15);
    expect(pairs[0]!.causes).toEqual(['purge_valve', 'gauge']);
    expect(pairs[0]!.share).toBeCloseTo(0.12500921694, 9);
    expect(twoShare).toBeCloseTo(0.217909600732, 9);
  });

  it('names the two causes, and which of the findings each explains', () => {
    const conflict = conflictIn(model, [hiss, gauge])!;
    expect(conflict.pair?.causes).toEqual(['purge_valve', 'gauge']);
    const by = new Map(conflict.findings.map((finding, i) => [finding, conflict.explained[i]]));
    expect(by.get('listen_purge')).toBe('purge_valve');
    expect(by.get('second_gauge')).toBe('gauge');
  });

  it('leaves out a cause that was corrected in vain, alone and in pairs', () => {
    const { single, pairs, twoShare } = pairBelief(model, [hiss, gauge], new Set(['purge_valve']));
    expect(single[model.causeIds.indexOf('purge_valve')]).toBe(0);
    expect(pairs).toHaveLength(10);
    expect(pairs[0]!.causes).toEqual(['chamber_leak', 'gauge']);
    expect(pairs[0]!.share).toBeCloseTo(0.062937115716, 9);
    expect(twoShare).toBeCloseTo(0.17478659334, 9);
  });

  it('sums to 1 within 1e-12 without NaN, whatever was found', () => {
    fc.assert(
      fc.property(treeWithFindings, ({ tree, findings }) => {
        const { single, pairs, twoShare } = pairBelief(beliefModel(tree, {}), findings);
        const all = [...single, ...pairs.map(({ share }) => share)];
        expect(all.every((share) => share >= 0 && share <= 1)).toBe(true);
        expect(Math.abs(all.reduce((sum, share) => sum + share, 0) - 1)).toBeLessThan(1e-12);
        expect(twoShare).toBeCloseTo(1 - single.reduce((sum, share) => sum + share, 0), 12);
        expect(pairs.every(({ share }, i) => i === 0 || share <= pairs[i - 1]!.share)).toBe(true);
      }),
      { seed: 20261128, numRuns: 60 },
    );
  });
});
