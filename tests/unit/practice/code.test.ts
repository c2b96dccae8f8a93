import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shippedIds } from '../../../electron/cli/load-trees.ts';
import {
  codeOf,
  complaintKey,
  complaintOfCode,
  drawExercise,
  featuresOf,
  layoutCount,
  layoutOfNumber,
  LEVELS,
  numberOfLayout,
  SEEDS,
  settingOfCode,
  usualLayout,
  type Setting,
} from '../../../shared/practice/index.ts';
import {
  answerOf,
  isAnswerTo,
  type Layout,
  type LayoutFeature,
  type Vocabulary,
} from '../../../shared/knowledge/index.ts';
import { cause, check, tree as smallTree } from '../planning/small-tree.ts';
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

  describe('[PRA-2] [KNO-20] a coach that has several kinds of a feature', async () => {
    const ids = ['brake-pulls-or-one-drum-hot', 'weak-engine-brake'] as const;
    const trees = await Promise.all(ids.map((id) => practiceTree(id)));
    /** Any answer to every question that something of the tree hangs on. */
    const anyLayout = ({ tree, vocabulary }: (typeof trees)[number]): fc.Arbitrary<Layout> =>
      fc.record(
        Object.fromEntries(
          featuresOf(tree, vocabulary).map((feature) => [
            feature.id,
            fc
              .subarray(
                feature.values.map(({ value }) => value),
                { minLength: 1 },
              )
              .filter((named) => isAnswerTo(feature, answerOf(feature, named)!))
              .map((named) => answerOf(feature, named)!),
          ]),
        ),
      );

    it.each(ids.map((id, i) => [id, trees[i]!] as const))(
      '%s: all of them go into the code and come back',
      (_, own) => {
        let several = 0;
        fc.assert(
          fc.property(anyLayout(own), fc.constantFrom(...LEVELS), fc.nat(SEEDS - 1), (layout, level, seed) => {
            const setting = { level, seed, layout };
            several += Number(Object.values(layout).some((answer) => typeof answer === 'object'));
            const code = codeOf(own, setting);
            expect(settingOfCode(code, own)).toEqual({ setting });
            expect(drawExercise(own, setting).layout).toEqual(layout);
          }),
          { seed: 20261128, numRuns: 200 },
        );
        expect(several).toBeGreaterThan(20);
      },
    );

    it('every number is one layout, and none has two', () => {
      const { tree, vocabulary } = trees[0]!;
      const single = layoutCount(tree, vocabulary);
      const all = featuresOf(tree, vocabulary).reduce(
        (count, { values, together = [] }) => count * (values.length + 2 ** together.length - together.length - 1),
        1,
      );
      const numbers = Array.from({ length: single + all }, (_, n) => n);
      const layouts = numbers.flatMap((n) => {
        const layout = layoutOfNumber(tree, vocabulary, n);
        if (layout !== null) expect(numberOfLayout(tree, vocabulary, layout)).toBe(n);
        return layout === null ? [] : [JSON.stringify(layout)];
      });
      expect(layouts).toHaveLength(all);
      expect(new Set(layouts).size).toBe(all);
      expect(layoutOfNumber(tree, vocabulary, single + all)).toBeNull();
    });

    it('one value a feature is numbered as it was before codes kept several, those with several behind', () => {
      const small = smallTree(
        [cause('a', 1, { when: { kind: ['x'] } }), cause('b', 1, { when: { two: [true] } })],
        [
          check(
            'c',
            ['yes', 'no'],
            [
              [0.5, 0.5],
              [0.5, 0.5],
            ],
          ),
        ],
      );
      const named = (value: string | boolean): LayoutFeature['values'][number] => ({ value, label: String(value) });
      const vocabulary: Vocabulary = {
        ...trees[0]!.vocabulary,
        layout: [
          { id: 'kind', ask: 'Which?', values: ['x', 'y', 'z'].map(named), usual: 'y', together: ['x', 'y'] },
          { id: 'two', ask: 'Is it?', values: [true, false].map(named) },
        ],
      };
      const all = Array.from({ length: 14 }, (_, n) => layoutOfNumber(small, vocabulary, n));
      // The first six by hand: the last feature turns fastest, each from what is usual onwards.
      expect(all.slice(0, 6)).toEqual([
        { kind: 'y', two: true },
        { kind: 'y', two: false },
        { kind: 'z', two: true },
        { kind: 'z', two: false },
        { kind: 'x', two: true },
        { kind: 'x', two: false },
      ]);
      expect(all.slice(6).filter((layout) => layout !== null)).toEqual([
        { kind: ['x', 'y'], two: true },
        { kind: ['x', 'y'], two: false },
      ]);
      expect(layoutOfNumber(small, vocabulary, 14)).toBeNull();
      // What no coach has together counts as usual.
      expect(numberOfLayout(small, vocabulary, { kind: ['x', 'z'], two: false })).toBe(1);
    });
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
