import fc from 'fast-check';
import { expect, it } from 'vitest';
import { beliefModel } from '../../../shared/inference/index.ts';
import { VERDICTS } from '../../../shared/knowledge/index.ts';
import { assess, defaultCosts, driveVerdict, type Costs, type Situation } from '../../../shared/planning/index.ts';
import { shippedTrees } from '../../shipped-trees.ts';

const TREE = 'air-leaks-when-brake-held';
const { trees, vocabulary } = await shippedTrees(TREE);
const tree = trees.get(TREE)!.value!;
const usual = defaultCosts('owner-basic-tools');
const minutes = fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 48_000 }));
const anyCosts: fc.Arbitrary<Costs> = fc.record({
  handOver: minutes,
  wrongPart: minutes,
  comeBack: minutes,
  tow: minutes,
  creep: minutes,
  missDanger: minutes,
  missDamage: minutes,
});
function situation(costs: Costs, more: Partial<Situation> = {}): Situation {
  return {
    tree,
    vocabulary: vocabulary!,
    who: 'owner-basic-tools',
    layout: {},
    findings: [],
    stopAnswers: Object.fromEntries(tree.stopRules.map(({ id }) => [id, 'no'])),
    corrections: [],
    access: [],
    costs,
    ...more,
  };
}

it('[PLA-36] no costs, nothing and a hundred working days included, make the limit higher or the verdict milder', () => {
  const model = beliefModel(tree, {});
  const results = tree.checks.flatMap(({ id, results }) => results.map((result) => ({ check: id, result: result.id })));
  const found = fc.uniqueArray(fc.constantFrom(...results), { maxLength: 6, selector: ({ check }) => check });
  fc.assert(
    fc.property(anyCosts, found, (costs, looked) => {
      const findings = looked.map(({ check, result }) => ({
        id: check,
        check,
        value: { kind: 'result', result } as const,
      }));
      const own = driveVerdict(situation(costs, { findings }), model);
      const standard = driveVerdict(situation(usual, { findings }), model);
      expect(own.threshold).toBeLessThanOrEqual(0.03);
      expect(VERDICTS.indexOf(own.verdict)).toBeLessThanOrEqual(VERDICTS.indexOf(standard.verdict));
    }),
    { seed: 20261128, numRuns: 80 },
  );
});

it('[PLA-38] "park it and have it towed" is what an owner is told when the tow costs least, and not when it costs most', () => {
  const done = tree.checks.map(({ id }) => ({ id, check: id, value: { kind: 'cant-do' } as const }));
  const advice = (costs: Partial<Costs>) => assess(situation({ ...usual, ...costs }, { findings: done })).advice;
  const near = advice({ tow: 10 });
  expect(near).toMatchObject({ kind: 'hand-over' });
  expect(near.kind === 'hand-over' && near.reason).toMatch(/^Park it and have it towed: by the costs that are set/);
  const far = advice({ tow: 48_000 });
  expect(far.kind === 'hand-over' && far.reason).toMatch(/A licensed mechanic takes over/);
  expect(far.kind === 'hand-over' && far.reason).not.toMatch(/towed/);
});

it('[PLA-38] a workshop calls for help when that costs nothing, and when a wrong part is set to cost too much', () => {
  const couldNot = tree.checks.map(({ id }) => ({
    id,
    check: id,
    value: id === 'soap-chamber' ? ({ kind: 'result', result: 'rod-side' } as const) : ({ kind: 'cant-do' } as const),
  }));
  const mechanic = (costs: Partial<Costs>) =>
    assess(situation({ ...defaultCosts('mechanic'), ...costs }, { who: 'mechanic', findings: couldNot })).advice;
  expect(mechanic({}).kind).toBe('conclude');
  expect(mechanic({ handOver: 0 })).toMatchObject({ kind: 'hand-over' });
  expect(mechanic({ wrongPart: 20_000 })).toMatchObject({ kind: 'hand-over' });
});
