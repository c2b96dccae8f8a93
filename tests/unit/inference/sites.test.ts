import { describe, expect, it } from 'vitest';
import {
  beliefModel,
  evidenceLedger,
  evidenceOf,
  LEANING,
  posterior,
  standingOut,
  type Finding,
} from '../../../shared/inference/index.ts';
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

const measured = beliefModel(
  tree(
    [cause('bearing', 1), cause('tyre', 9)],
    [
      check(
        'heat',
        ['usual', 'high'],
        [
          [0.3, 0.7],
          [0.95, 0.05],
        ],
        {
          site: 'wheel-end',
          measure: { unit: 'degF', of: 'hub', instrument: 'gun' },
          results: [
            { id: 'usual', label: 'usual', range: [null, 180] },
            { id: 'high', label: 'high', range: [180, null] },
          ],
        },
      ),
    ],
  ),
  {},
  { floor: 0 },
);
const read = (site: string, value: number): Finding => ({
  id: site,
  check: 'heat',
  site,
  value: { kind: 'reading', value, uncertainty: 2, range: [0, 600] },
});

describe('[INF-20] the place that stands out is the one that counts', () => {
  it('by the result that was least to be expected', () => {
    expect(standingOut(model, 'hub-heat', [...COOL, HOT])).toMatchObject({
      counts: HOT,
      odd: [HOT],
      why: 'least-expected',
      middle: null,
    });
    // 1 of 10 starts with a bearing: .1 · .6 + .9 · .05.
    expect(standingOut(model, 'hub-heat', [...COOL, HOT])?.share).toBeCloseTo(0.105, 12);
    const other = felt('right tag', 'hot');
    expect(standingOut(model, 'hub-heat', [HOT, ...COOL, other])?.odd).toEqual([HOT, other]);
  });
  it('none where all are alike, and none without weight', () => {
    expect(standingOut(model, 'hub-heat', COOL)).toMatchObject({ odd: [], why: 'alike' });
    expect(standingOut(model, 'hub-heat', [{ ...HOT, value: { kind: 'not-sure' } }])).toBeNull();
    expect(standingOut(model, 'no-such-check', COOL)).toBeNull();
  });
  it('of readings in one band by the distance from the middle, in any order', () => {
    const ends = [read('left front', 120), read('right front', 124), read('left drive', 150), read('right drive', 118)];
    for (const findings of [ends, [...ends].reverse()])
      expect(standingOut(measured, 'heat', findings)).toMatchObject({
        counts: { site: 'left drive' },
        odd: [],
        why: 'farthest',
        middle: 122,
      });
  });
  it('of readings in two bands by the band, not by the distance', () => {
    const ends = [read('left front', 40), read('right front', 170), read('left drive', 172), read('right drive', 190)];
    expect(standingOut(measured, 'heat', ends)).toMatchObject({
      counts: { site: 'right drive' },
      why: 'least-expected',
    });
  });
  it('is the finding that the belief takes, and the ledger has one line for the check', () => {
    for (const [of, check, findings] of [
      [model, 'hub-heat', [...COOL, HOT]],
      [measured, 'heat', [read('a', 100), read('b', 190), read('c', 120)]],
    ] as const) {
      const counted = evidenceOf(of, findings).filter(({ exponent }) => exponent > 0);
      expect(counted.map(({ finding }) => finding)).toEqual([standingOut(of, check, findings)?.counts]);
      const { lines, before, after } = evidenceLedger(of, findings, 'bearing');
      expect(lines).toHaveLength(1);
      expect(lines[0]).toMatchObject({ finding: counted[0]!.finding.id, overlaps: false });
      expect(before + lines[0]!.decibans).toBeCloseTo(after, 10);
      // Without the round nothing is left but the starting odds.
      expect(lines[0]!.without).toBeCloseTo(0.1, 10);
    }
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
