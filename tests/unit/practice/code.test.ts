import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shippedIds } from '../../../electron/cli/load-trees.ts';
import {
  codeOf,
  complaintKey,
  complaintOfCode,
  drawExercise,
  layoutCount,
  layoutOfNumber,
  LEVELS,
  numberOfLayout,
  SEEDS,
  settingOfCode,
  usualLayout,
  type Setting,
} from '../../../shared/practice/index.ts';
import { practiceTree } from './exercises.ts';

const pinned = await practiceTree('air-leaks-when-brake-held');
const { tree, vocabulary } = pinned;
const known = [{ id: tree.id, hash: pinned.hash }];
const layouts = layoutCount(tree, vocabulary);

const anySetting: fc.Arbitrary<Setting> = fc
  .record({
    level: fc.constantFrom(...LEVELS),
    seed: fc.integer({ min: 0, max: SEEDS - 1 }),
    number: fc.integer({ min: 0, max: layouts - 1 }),
  })
  .map(({ level, seed, number }) => ({ level, seed, layout: layoutOfNumber(tree, vocabulary, number)! }));

describe('codes', () => {
  it('[PRA-2] a setting goes into a code and comes back', () => {
    fc.assert(
      fc.property(anySetting, (setting) => {
        const code = codeOf(pinned, setting);
        expect(settingOfCode(code.toLowerCase().replaceAll('-', ' '), pinned)).toEqual({ setting });
        expect(complaintOfCode(code, known)).toEqual({ complaint: known[0] });
      }),
    );
  });

  it('[PRA-2] one wrong character, or two changed about, are noticed', () => {
    fc.assert(
      fc.property(
        anySetting,
        fc.nat(),
        fc.nat(),
        fc.constantFrom(...Array.from('0123456789ABCDEFGHJKMNPQRTVWXYZ')),
        (setting, a, b, other) => {
          const letters = Array.from(codeOf(pinned, setting).replaceAll('-', ''));
          const i = a % letters.length;
          const j = b % letters.length;
          const wrong = letters.with(i, other);
          if (other !== letters[i]) expect(settingOfCode(wrong.join(''), pinned)).toHaveProperty('problem');
          const swapped = letters.with(i, letters[j]!).with(j, letters[i]!);
          if (letters[i] !== letters[j]) expect(settingOfCode(swapped.join(''), pinned)).toHaveProperty('problem');
        },
      ),
    );
  });

  it('[PRA-2] letters that look like others are read as those', () => {
    const setting = { level: 'any', seed: 1, layout: usualLayout(tree, vocabulary) } as const;
    const code = codeOf(pinned, setting);
    expect(code).toContain('0');
    expect(settingOfCode(code.replaceAll('0', 'O').replaceAll('1', 'l'), pinned)).toEqual({ setting });
  });

  it('[PRA-2] a code of another version, another program or nobody is refused with a sentence', () => {
    const code = codeOf(pinned, { level: 'any', seed: 5, layout: usualLayout(tree, vocabulary) });
    const problem = (typed: string, list = known): string => {
      const answer = complaintOfCode(typed, list);
      return 'problem' in answer ? answer.problem : '';
    };
    expect(problem(code, [{ id: tree.id, hash: 'd1'.repeat(32) }])).toContain('another version of the tree');
    expect(problem(code, [])).toContain('does not know');
    expect(problem('')).toContain('letters and digits');
    expect(problem('a?b')).toContain('“?”');
    expect(problem('0'.repeat(40))).toContain('too long');
    expect(problem('0000')).toContain('too short');
  });

  it('no two complaints that come with the program share their characters', async () => {
    const keys = (await shippedIds()).map(complaintKey);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('the usual coach is number 0, and every number is its own layout', () => {
    expect(numberOfLayout(tree, vocabulary, usualLayout(tree, vocabulary))).toBe(0);
    expect(numberOfLayout(tree, vocabulary, {})).toBe(0);
    for (let n = 0; n < layouts; n++)
      expect(numberOfLayout(tree, vocabulary, layoutOfNumber(tree, vocabulary, n)!)).toBe(n);
    expect(layoutOfNumber(tree, vocabulary, layouts)).toBeNull();
  });

  it('[PRA-1] the same code gives the same exercise; these were drawn once and must not change', () => {
    const drawn = [1, 2, 3, 4].map((seed) => {
      const setting = { level: 'any', seed, layout: usualLayout(tree, vocabulary) } as const;
      const [a, b] = [drawExercise(pinned, setting), drawExercise(pinned, setting)];
      const seen = (each: typeof a): unknown => [
        each.words,
        each.cause,
        tree.checks.map(({ id }) => each.look(id, 0)),
        tree.stopRules.map(({ id }) => each.answer(id)),
      ];
      expect(seen(b)).toEqual(seen(a));
      return `${a.name} ${a.cause}`;
    });
    expect(drawn).toMatchInlineSnapshot(`
      [
        "PVKF-7200-010 service-hose",
        "PVKF-7200-02G fitting-tube",
        "PVKF-7200-031 fitting-tube",
        "PVKF-7200-04H service-hose",
      ]
    `);
  });
});
