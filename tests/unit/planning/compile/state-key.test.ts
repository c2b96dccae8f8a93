import { beforeAll, describe, expect, it } from 'vitest';
import { beliefModel, type Finding } from '../../../../shared/inference/index.ts';
import type { Vocabulary } from '../../../../shared/knowledge/index.ts';
import { resultClasses, stateKey } from '../../../../shared/planning/compile/state-key.ts';
import { dangerOpen } from '../../../../shared/planning/verdict.ts';
import { cause, check, tree } from '../small-tree.ts';
import { blank } from './walked.ts';
import { shippedTrees } from '../../../shipped-trees.ts';

let vocabulary: Vocabulary;
beforeAll(async () => {
  const loaded = await shippedTrees();
  if (!loaded.vocabulary) throw new Error('The shipped vocabulary cannot be read.');
  vocabulary = loaded.vocabulary;
});

/** A danger of 2 in 100: `calm` halves its odds, `alarm` nearly doubles them; the limit is 3, let go of below 1.5. */
const risky = tree(
  [cause('danger', 2, { hazard: 'danger' }), cause('harmless', 98)],
  [
    check(
      'calm',
      ['yes', 'no'],
      [
        [0.45, 0.55],
        [0.9, 0.1],
      ],
    ),
    check(
      'alarm',
      ['yes', 'no'],
      [
        [0.9, 0.1],
        [0.5, 0.5],
      ],
    ),
  ],
);
const saw = (id: string, result = 'yes'): Finding => ({ id, check: id, value: { kind: 'result', result } });
const situation = (findings: readonly Finding[]) => blank(risky, vocabulary, 'mechanic', { findings });
const open = (findings: readonly Finding[]) => dangerOpen(situation(findings), beliefModel(risky, {}));
const key = (findings: readonly Finding[], danger = false, skipped: readonly string[] = []) =>
  stateKey(situation(findings), resultClasses(risky), skipped, danger);

describe('[PLA-24] when two states of belief are the same', () => {
  it('the order of the findings does not matter to the key', () => {
    expect(key([saw('calm'), saw('alarm')])).toBe(key([saw('alarm'), saw('calm')]));
  });
  it('it does to whether danger has been let go of, which is a part of the key', () => {
    expect(open([])).toBe(true);
    expect(open([saw('calm'), saw('alarm')])).toBe(false);
    expect(open([saw('alarm'), saw('calm')])).toBe(true);
    expect(key([saw('calm')], true)).not.toBe(key([saw('calm')], false));
  });
  it('another result, a check that could not be done, and a skipped question are other states', () => {
    const cannot: Finding = { id: 'calm', check: 'calm', value: { kind: 'cant-do' } };
    const keys = [key([saw('calm')]), key([saw('calm', 'no')]), key([cannot]), key([saw('calm')], false, ['brake'])];
    expect(new Set(keys).size).toBe(4);
  });
});
