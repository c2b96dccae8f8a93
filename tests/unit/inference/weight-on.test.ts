import { describe, expect, it } from 'vitest';
import { beliefModel, firmnessOf, learnedOdds, withOdds } from '../../../shared/inference/index.ts';
import { weightOn } from '../../../shared/knowledge/index.ts';
import { cause, check, tree } from '../planning/small-tree.ts';

/** Wedges are rare over all coaches: 1 in 10. Where there are wedges, the cam cannot be it. */
const brakes = tree(
  [
    { ...cause('line', 6) },
    { ...cause('cam', 3), when: { brake: ['cam'] } },
    { ...cause('wedge', 1), when: { brake: ['wedge'] }, weightIf: [{ when: { brake: ['wedge'] }, weight: 18 }] },
  ],
  [
    check(
      'look',
      ['bad', 'good'],
      [
        [0.5, 0.5],
        [0.5, 0.5],
        [0.9, 0.1],
      ],
    ),
  ],
  { unlistedShare: 0.04 },
);
const shareOf = (id: string, layout: Readonly<Record<string, string>>): number => {
  const { causeIds, prior } = beliefModel(brakes, layout);
  return prior[causeIds.indexOf(id)]!;
};

describe('[INF-18] a weight that hangs on a feature', () => {
  it('does not count while the feature is unknown', () => {
    expect(weightOn(brakes.causes[2]!, {})).toBe(1);
    expect(shareOf('wedge', {})).toBeCloseTo(0.096, 12);
  });
  it('holds once the feature fits, in place of the other', () => {
    // .96 · 18/24, by hand.
    expect(shareOf('wedge', { brake: 'wedge' })).toBeCloseTo(0.72, 12);
    expect(shareOf('line', { brake: 'wedge' })).toBeCloseTo(0.24, 12);
  });
  it('is the number that a firmness names', () => {
    const model = beliefModel(brakes, { brake: 'wedge' });
    const { nearest } = firmnessOf(brakes, model, []);
    const moved = nearest.find(({ number }) => number.kind === 'weight' && number.cause === 'wedge');
    // Level with the line at a third of 18.
    expect(moved?.needed).toBeCloseTo(6, 9);
  });
  it('is replaced by learned odds', () => {
    const layout = { brake: 'wedge' };
    const cases = Array.from({ length: 20 }, (_, i) => ({
      id: `case-${i}`,
      complaint: brakes.id,
      layout,
      corrections: [{ cause: 'line', partSeen: 'bad' as const, proof: 'gone' as const }],
    }));
    const learned = withOdds(brakes, learnedOdds(brakes, layout, cases, { on: true }));
    const { causeIds, prior } = beliefModel(learned, layout);
    // 20 of opinion at .24 and 20 cases: (20 · .24 + 20) / 40.
    expect(prior[causeIds.indexOf('line')]).toBeCloseTo(0.62, 12);
  });
});
