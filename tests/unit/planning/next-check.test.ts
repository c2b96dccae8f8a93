import { describe, expect, it } from 'vitest';
import { rankChecks } from '../../../shared/planning/index.ts';
import { blank } from './compile/walked.ts';
import { cause, check, silentChecks, tree } from './small-tree.ts';
import { shippedTrees } from '../../shipped-trees.ts';

const { trees, vocabulary } = await shippedTrees('air-leaks-when-brake-held');

describe('[PLA-39] what a check is worth', () => {
  /** Either result of one of these leaves the first cause in front: alone it changes nothing, several together do. */
  const weak = [
    [0.6, 0.4],
    [0.4, 0.6],
  ];
  const ranked = (minutes: number) =>
    rankChecks(
      blank(
        tree(
          [cause('a', 60), cause('b', 40)],
          [...[1, 2, 3].map((n) => check(`look-${n}`, ['x', 'y'], weak, { minutes })), ...silentChecks(2)],
        ),
        vocabulary!,
        'mechanic',
      ),
      null,
    );

  it('twice its share of the open question times what knowing is worth, at a third, when it changes nothing alone', () => {
    const { stop, options, actNow, bound, exact } = ranked(2);
    const [first] = options;
    expect(exact).toBe(false);
    expect(first!.savesAlone).toBeCloseTo(-2, 9);
    // By hand: of b's 40 in 100 the wrong part, its hour and its proof are saved; entropies in bits.
    const h = (p: number): number => -p * Math.log2(p) - (1 - p) * Math.log2(1 - p);
    // Floored by 2 in 100: .6 is .598.
    const told = h(0.6 * 0.598 + 0.4 * 0.402) - h(0.598);
    expect(actNow.cost - bound).toBeCloseTo(0.4 * (240 + 60 + 10), 9);
    expect(first!.saves).toBeCloseTo(((2 * told * 124) / h(0.6) - 2) / 3, 6);
    expect(stop).toMatchObject({ kind: 'check', why: 'saves', option: { check: 'look-1' } });
  });

  it('is not made when twice that share costs more than it is worth', () => {
    expect(ranked(6).stop.kind).toBe('check');
    const { stop, options } = ranked(7);
    expect(options.every(({ saves }) => saves <= 0)).toBe(true);
    expect(stop).toEqual({ kind: 'act', proven: false });
  });

  it('is more than 0 when it saves alone, and never more than knowing everything would save', () => {
    const leak = trees.get('air-leaks-when-brake-held')!.value!;
    let alone = 0;
    for (const who of ['mechanic', 'owner-no-tools'] as const) {
      const { options, actNow, bound } = rankChecks(blank(leak, vocabulary!, who), null);
      for (const { saves, savesAlone, minutes } of options) {
        if (savesAlone > 0) expect(saves).toBeGreaterThan(0);
        alone += Number(savesAlone > 0);
        expect(saves).toBeLessThanOrEqual(Math.max(0, actNow.cost - bound - minutes) + 1e-6);
      }
    }
    expect(alone).toBeGreaterThan(0);
  });
});
