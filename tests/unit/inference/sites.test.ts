import { describe, expect, it } from 'vitest';
import { beliefModel, evidenceOf, LEANING, posterior, type Finding } from '../../../shared/inference/index.ts';
import { cause, check, tree } from '../planning/small-tree.ts';

const model = beliefModel(
  tree(
    [cause('bearing', 1), cause('tyre', 9)],
    [
      check(
        'hub-heat',
        ['cool', 'warm', 'hot'],
        [
          [0.2, 0.2, 0.6],
          [0.8, 0.15, 0.05],
        ],
        { site: 'wheel-end' },
      ),
    ],
  ),
  {},
  { floor: 0 },
);
const felt = (site: string, result: string): Finding => ({
  id: site,
  check: 'hub-heat',
  site,
  value: { kind: 'result', result },
});
const HOT = felt('left front', 'hot');
const COOL = ['right front', 'left rear', 'right rear'].map((site) => felt(site, 'cool'));

describe('several sites of one check', () => {
  it('[INF-11] only the odd one out counts, wherever it stands in the list', () => {
    const alone = posterior(model, [HOT]).probability;
    for (const findings of [
      [HOT, ...COOL],
      [...COOL, HOT],
      [COOL[0]!, HOT, COOL[1]!, COOL[2]!],
    ]) {
      const { probability } = posterior(model, findings);
      probability.forEach((each, c) => expect(each).toBeCloseTo(alone[c]!, 12));
      expect(
        evidenceOf(model, findings)
          .filter(({ exponent }) => exponent > 0)
          .map(({ finding }) => finding.site),
      ).toEqual(['left front']);
    }
  });
  it('[INF-11] four cool hubs count once, not four times', () => {
    const once = posterior(model, [COOL[0]!]).probability;
    posterior(model, COOL).probability.forEach((each, c) => expect(each).toBeCloseTo(once[c]!, 12));
  });
});

describe('[INF-10] not sure', () => {
  it('a leaning is virtual evidence: its weight on the result, the rest shared', () => {
    const { probability } = posterior(model, [
      { id: 'f', check: 'hub-heat', value: { kind: 'not-sure', leaning: 'hot' } },
    ]);
    const other = (1 - LEANING) / 2;
    const bearing = LEANING * 0.6 + other * (0.2 + 0.2);
    const tyre = LEANING * 0.05 + other * (0.8 + 0.15);
    expect(probability[0]! / probability[1]!).toBeCloseTo(bearing / (9 * tyre), 12);
  });
  it('without a leaning it leaves no evidence at all', () => {
    expect(evidenceOf(model, [{ id: 'f', check: 'hub-heat', value: { kind: 'not-sure' } }])).toEqual([]);
    expect(evidenceOf(model, [{ id: 'f', check: 'hub-heat', value: { kind: 'cant-do' } }])).toEqual([]);
  });
});
