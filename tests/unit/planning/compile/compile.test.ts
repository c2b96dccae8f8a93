import { beforeAll, describe, expect, it } from 'vitest';
import { beliefModel, posterior } from '../../../../shared/inference/index.ts';
import type { Vocabulary } from '../../../../shared/knowledge/index.ts';
import {
  assess,
  compileTree,
  type CompiledNode,
  type CompiledTree,
  type Leaf,
  type Step,
} from '../../../../shared/planning/index.ts';
import { cause, check, silentChecks, stopRule, tree } from '../small-tree.ts';
import { blank } from './walked.ts';
import { shippedTrees } from '../../../shipped-trees.ts';

let vocabulary: Vocabulary;
beforeAll(async () => {
  const loaded = await shippedTrees();
  if (!loaded.vocabulary) throw new Error('The shipped vocabulary cannot be read.');
  vocabulary = loaded.vocabulary;
});

/** Two looks that tell three causes apart, in either order. */
const small = tree(
  [cause('left', 40), cause('right', 40), cause('middle', 20, { hazard: 'danger' })],
  [
    check(
      'listen',
      ['loud', 'quiet'],
      [
        [0.9, 0.1],
        [0.1, 0.9],
        [0.5, 0.5],
      ],
    ),
    check(
      'feel',
      ['warm', 'cold', 'cool'],
      [
        [0.2, 0.4, 0.4],
        [0.2, 0.4, 0.4],
        [0.96, 0.02, 0.02],
      ],
      { settles: ['middle'] },
    ),
  ],
  {
    unlistedShare: 0.02,
    stopRules: [
      stopRule('smoke', 'stay-put', { covers: ['middle'], firedBy: [{ check: 'feel', results: ['warm'] }] }),
      stopRule('pulls', 'creep-to-safe-place', { covers: ['middle'] }),
    ],
  },
);
const steps = ({ nodes }: CompiledTree): Step[] => nodes.filter((node): node is Step => node.kind === 'step');
const leaves = ({ nodes }: CompiledTree): Leaf[] => nodes.filter((node): node is Leaf => node.kind === 'leaf');
const all = (who: 'mechanic' | 'owner-no-tools' = 'mechanic') =>
  compileTree(blank(small, vocabulary, who), { threshold: 0, cannotShare: 0.02 });
const at = (compiled: CompiledTree, to: number): CompiledNode => compiled.nodes[to - 1]!;

describe('a complaint tree on paper', () => {
  it('[PLA-21] every declared result of a check has a branch, and "cannot be done, or not sure" too', () => {
    const checks = steps(all()).filter(({ ask }) => ask.kind === 'check');
    expect(checks.length).toBeGreaterThan(1);
    for (const { ask, branches } of checks) {
      if (ask.kind !== 'check') continue;
      const declared = small.checks.find(({ id }) => id === ask.check)!.results.map(({ id }) => id);
      expect(branches.map(({ answer }) => (answer.kind === 'result' ? answer.result : answer.kind))).toEqual([
        ...declared,
        'cannot',
      ]);
      expect(branches.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
      expect(branches.at(-1)!.share).toBe(0.02);
    }
  });
  it('[PLA-21] the share of a result is what the belief at that step expects, less what cannot be done', () => {
    const first = steps(all()).find(({ ask }) => ask.kind === 'check')!;
    const model = beliefModel(small, {});
    const { probability } = posterior(model, []);
    const table = model.tables.get(first.ask.kind === 'check' ? first.ask.check : '')!;
    table.likelihood.forEach((row, r) =>
      expect(first.branches[r]!.share).toBeCloseTo(0.98 * row.reduce((sum, p, c) => sum + p * probability[c]!, 0), 12),
    );
  });
  it('[PLA-22] the leaves together are 1; a branch below the threshold continues in the program and is counted', () => {
    for (const threshold of [0, 0.05, 0.3, 1]) {
      const compiled = compileTree(blank(small, vocabulary, 'mechanic'), { threshold });
      expect(Math.abs(leaves(compiled).reduce((sum, { reach }) => sum + reach, 0) - 1)).toBeLessThan(1e-12);
      const cut = leaves(compiled).filter(({ end }) => end === 'continue');
      expect(compiled.cutOff).toBeCloseTo(
        cut.reduce((sum, { reach }) => sum + reach, 0),
        12,
      );
      for (const { reach } of cut) expect(reach).toBeLessThan(threshold);
      for (const { reach, ask } of steps(compiled))
        if (ask.kind === 'check') expect(reach).toBeGreaterThanOrEqual(threshold);
      expect(cut.length > 0).toBe(threshold > 0);
    }
  });
  it('[PLA-23] every leaf says probable cause, next test, caution and verdict', () => {
    for (const who of ['mechanic', 'owner-no-tools'] as const)
      for (const { cause: probable, nextTest, caution, drive } of leaves(all(who))) {
        expect(['left', 'right', 'middle', 'something that this tree does not list']).toContain(probable.name);
        expect(probable.probability).toBeGreaterThan(0.2);
        expect(nextTest.kind === 'proof' ? nextTest : nextTest.text).toBeTruthy();
        expect(caution).toMatch(/last word|local rules|local law/);
        expect(drive.doNow).not.toBe('');
      }
  });
  it('[PLA-24] two ways to the same findings meet in one node, whose reach is the sum', () => {
    const compiled = all();
    const parents = new Map<number, number[]>();
    for (const step of steps(compiled))
      step.branches.forEach(({ to, share }) => parents.set(to, [...(parents.get(to) ?? []), step.reach * share]));
    const merged = [...parents].filter(([, ways]) => ways.length > 1);
    expect(merged.length).toBeGreaterThan(0);
    for (const [to, ways] of parents)
      expect(at(compiled, to).reach).toBeCloseTo(
        ways.reduce((sum, each) => sum + each, 0),
        12,
      );
    expect(parents.size).toBe(compiled.nodes.length - 1);
  });
  it('[PLA-24] results that say the same about every cause and rule are one state; one that fires a rule is not', () => {
    const feel = steps(all()).find(({ ask }) => ask.kind === 'check' && ask.check === 'feel')!;
    const [warm, cold, cool] = feel.branches;
    expect(cold!.to).toBe(cool!.to);
    expect(warm!.to).not.toBe(cold!.to);
  });
  it('[PLA-24] two results that say the same about the causes stay apart when one of them fires a rule', () => {
    const alike = tree(
      small.causes,
      small.checks.filter(({ id }) => id === 'feel'),
      {
        unlistedShare: 0.02,
        stopRules: [stopRule('cool', 'stay-put', { firedBy: [{ check: 'feel', results: ['cool'] }] })],
      },
    );
    const start = blank(alike, vocabulary, 'mechanic', { stopAnswers: { cool: 'no' } });
    const compiled = compileTree(start, { threshold: 0 });
    const [, cold, cool] = steps(compiled)[0]!.branches;
    expect(at(compiled, cold!.to).drive.halts).toBe(false);
    expect(at(compiled, cool!.to).drive).toMatchObject({ verdict: 'stay-put', halts: true });
  });
  it('[PLA-27] a check that was done leaves its access open, one that could not be done does not', () => {
    const dear = { correction: { ...small.causes[0]!.correction, hours: [8, 8] as const } };
    const raised = tree(
      [cause('hub', 50, dear), cause('tyre', 50, dear)],
      [
        check(
          'spin',
          ['rough', 'smooth'],
          [
            [0.75, 0.25],
            [0.25, 0.75],
          ],
          { access: 'chocked-raised', minutes: 2 },
        ),
        check(
          'rock',
          ['play', 'tight'],
          [
            [0.75, 0.25],
            [0.25, 0.75],
          ],
          { access: 'chocked-raised', minutes: 4 },
        ),
        ...silentChecks(2),
      ],
      { unlistedShare: 0.02 },
    );
    const compiled = compileTree(blank(raised, vocabulary, 'mechanic'), { threshold: 0 });
    const [first] = steps(compiled);
    const after = (i: number) => {
      const node = at(compiled, first!.branches[i]!.to);
      return node.kind === 'step' && node.ask.kind === 'check' ? node.ask : null;
    };
    expect(first!.ask).toMatchObject({ check: 'spin' });
    const [done, undone] = [after(0), after(2)];
    expect(done).toMatchObject({ check: 'rock', accessMinutes: 0 });
    expect(undone!.check).toBe('rock');
    expect(undone!.accessMinutes).toBeGreaterThan(30);
  });
  it('[PLA-25] open safety questions come first; yes and not sure stop, and have no share', () => {
    const [first, second] = steps(all());
    expect([first!.ask, second!.ask]).toEqual([
      { kind: 'triage', rule: 'smoke', text: 'smoke?' },
      { kind: 'triage', rule: 'pulls', text: 'pulls?' },
    ]);
    for (const { branches } of [first!, second!]) {
      expect(branches.map(({ label, share }) => [label, share])).toEqual([
        ['yes', 0],
        ['not sure', 0],
        ['no', 1],
      ]);
      for (const { to } of branches.slice(0, 2)) expect(at(all(), to)).toMatchObject({ end: 'stop', reach: 0 });
    }
    expect(at(all(), first!.branches[0]!.to).drive).toMatchObject({ verdict: 'stay-put', halts: true });
    expect(at(all(), second!.branches[1]!.to).drive.verdict).toBe('creep-to-safe-place');
  });
  it('[PLA-25] a finding that fires a rule shows at the node after it', () => {
    const compiled = all();
    const feel = steps(compiled).find(({ ask }) => ask.kind === 'check' && ask.check === 'feel')!;
    expect(at(compiled, feel.branches[0]!.to).drive).toMatchObject({ verdict: 'stay-put', halts: true });
    expect(feel.drive.halts).toBe(false);
  });
  it('[PLA-21] the expected number of checks is the same followed forwards and counted at the steps', () => {
    const compiled = all();
    const checksFrom = (to: number): number => {
      const node = at(compiled, to);
      if (node.kind === 'leaf') return 0;
      const own = Number(node.ask.kind === 'check');
      return node.branches.reduce((sum, branch) => sum + branch.share * checksFrom(branch.to), own);
    };
    const counted = steps(compiled)
      .filter(({ ask }) => ask.kind === 'check')
      .reduce((sum, { reach }) => sum + reach, 0);
    expect(checksFrom(1)).toBeCloseTo(counted, 12);
    expect(counted).toBeGreaterThan(1);
  });
  it('numbers nodes in reading order, and is plain data', () => {
    const compiled = all();
    expect(compiled.nodes.map(({ number }) => number)).toEqual(compiled.nodes.map((_, i) => i + 1));
    expect(JSON.parse(JSON.stringify(compiled))).toEqual(compiled);
  });
  it('starts from what is known already', () => {
    const situation = blank(small, vocabulary, 'mechanic', {
      stopAnswers: { smoke: 'no', pulls: 'no' },
      findings: [{ id: 'f', check: 'listen', value: { kind: 'result', result: 'loud' } }],
    });
    const compiled = compileTree(situation, { threshold: 0 });
    const first = compiled.nodes[0]!;
    const { advice } = assess(situation);
    expect(first.kind === 'step' && first.ask.kind === 'check' && first.ask.check).toBe(
      advice.kind === 'check' && advice.option.check,
    );
    expect(steps(compiled).some(({ ask }) => ask.kind === 'check' && ask.check === 'listen')).toBe(false);
  });
  it('refuses a share that is none', () => {
    for (const wrong of [-0.1, 1.1, NaN]) {
      expect(() => compileTree(blank(small, vocabulary, 'mechanic'), { threshold: wrong })).toThrow(/from 0 to 1/);
      expect(() => compileTree(blank(small, vocabulary, 'mechanic'), { cannotShare: wrong })).toThrow(/cannotShare/);
    }
  });
});

describe('[PLA-26] a layout question on paper', () => {
  const built = tree(
    [cause('drum-worn', 50), cause('disc-worn', 50)],
    [
      check(
        'measure',
        ['worn', 'sound'],
        [
          [0.99, 0.01],
          [0.02, 0.98],
        ],
        { when: { brake: ['drum-s-cam'] } },
      ),
      check(
        'ask',
        ['old', 'new'],
        [
          [0.6, 0.4],
          [0.5, 0.5],
        ],
      ),
    ],
    { unlistedShare: 0.02 },
  );
  it('has a branch for every value, all as likely, and one for "not known", which goes on without it', () => {
    const compiled = compileTree(blank(built, vocabulary, 'mechanic'), { threshold: 0 });
    const first = compiled.nodes[0] as Step;
    const { values, together } = vocabulary.layout.find(({ id }) => id === 'brake')!;
    expect(first.ask).toMatchObject({ kind: 'layout', feature: 'brake' });
    expect(first.branches.map(({ answer }) => (answer.kind === 'layout' ? answer.value : answer.kind))).toEqual([
      ...values.map(({ value }) => value),
      together,
      'layout-unknown',
    ]);
    expect(new Set(first.branches.slice(0, -1).map(({ share }) => share)).size).toBe(1);
    expect(first.branches.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    const unknown = compiled.nodes[first.branches.at(-1)!.to - 1]!;
    expect(unknown.kind === 'step' && unknown.ask.kind).not.toBe('layout');
  });
});
