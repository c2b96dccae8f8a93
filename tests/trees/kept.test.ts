import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { MODELS } from '../../electron/cli/load-models.ts';
import { shippedTrees } from '../shipped-trees.ts';
import type { Tree } from '../../shared/knowledge/index.ts';
import {
  adviceWay,
  figuresMark,
  leastCost,
  scoreWay,
  swapperWay,
  taughtWay,
  type KeptEvaluation,
} from '../../shared/planning/evaluation/index.ts';
import { advicePolicy, aheadPolicy, rulePolicy } from '../../shared/planning/evaluation/model-ways.ts';
import { evaluatePolicy, exactPlan } from '../../shared/planning/policy.ts';
import { tableProblem } from '../../shared/planning/model-problem.ts';

// Written by `npm run evaluate -- --keep` alone; what is read of it is compared with the trees below.
const kept = JSON.parse(
  readFileSync(new URL('../../renderer/data/evaluation.json', import.meta.url), 'utf8'),
) as KeptEvaluation;
const { trees, vocabulary } = await shippedTrees();
const hasWeightIf = ({ causes }: Tree): boolean => causes.some(({ weightIf = [] }) => weightIf.length > 0);

describe('the kept evaluation', () => {
  const fresh = kept.trees.filter(({ tree, mark }) => {
    const value = trees.get(tree)?.value;
    return value && figuresMark(value, vocabulary!) === mark;
  });

  it('[EVA-5] has every tree, with the figures of today; run npm run evaluate -- --keep when it has not', () => {
    expect(kept.trees.map(({ tree }) => tree)).toEqual([...trees.keys()].sort());
    expect(fresh.map(({ tree }) => tree)).toEqual(kept.trees.map(({ tree }) => tree));
  });

  it('[EVA-5] is known as older once a weight that hangs on a feature, or who has what tools, is another', () => {
    const tree = [...trees.values()].flatMap(({ value }) => value ?? []).find((each) => hasWeightIf(each))!;
    const mark = figuresMark(tree, vocabulary!);
    expect(figuresMark({ ...tree, title: `${tree.title}, or so` }, vocabulary!)).toBe(mark);
    const causes = tree.causes.map((cause) => ({
      ...cause,
      ...(cause.weightIf && { weightIf: cause.weightIf.map((each) => ({ ...each, weight: each.weight + 1 })) }),
    }));
    expect(figuresMark({ ...tree, causes }, vocabulary!)).not.toBe(mark);
    const tools = vocabulary!.tools.map((tool) => ({ ...tool, usualFor: [] }));
    expect(figuresMark(tree, { ...vocabulary!, tools })).not.toBe(mark);
  });

  it('[EVA-5] gives the same figures when a part is worked out again', () => {
    const row = fresh.reduce((a, b) => (b.checks < a.checks ? b : a));
    const tree = trees.get(row.tree)!.value!;
    const least = leastCost(tree, vocabulary!);
    expect(least.known).toBeCloseTo(row.least.known, 2);
    expect(least.proven).toBeCloseTo(row.least.proven, 2);
    for (const way of [adviceWay(), taughtWay(), swapperWay()]) {
      const now = scoreWay(way, tree, vocabulary!, row.counts);
      const then = row.ways.find((each) => each.way === way.name)!;
      expect(now.cost / then.cost).toBeCloseTo(1, 4);
      expect(now.right).toBeCloseTo(then.right, 4);
      expect(now.wrongParts).toBeCloseTo(then.wrongParts, 4);
    }
    for (const { model: id, ours, rule, ahead, optimum } of kept.models.filter((each) =>
      /^m[12378]-/.test(each.model),
    )) {
      const { model } = MODELS.find((each) => each.id === id)!;
      const problem = tableProblem(model);
      expect(exactPlan(problem)!.cost).toBeCloseTo(optimum, 3);
      expect(evaluatePolicy(problem, advicePolicy(problem, model)).cost).toBeCloseTo(ours, 3);
      expect(evaluatePolicy(problem, rulePolicy(problem, model)).cost).toBeCloseTo(rule, 3);
      expect(evaluatePolicy(problem, aheadPolicy(problem, model)).cost).toBeCloseTo(ahead, 3);
    }
    expect(kept.models.length).toBe(MODELS.length);
  });

  it('[EVA-4] the proven least cost is above the known cause, and below what any way costs but for the draw', () => {
    for (const { least, ways } of kept.trees) {
      expect(least.proven).toBeGreaterThanOrEqual(least.known);
      for (const { cost, costError } of ways) expect(least.proven).toBeLessThan(cost + 3 * costError);
    }
  });

  it('[EVA-1] as kept, ours costs at most .40 of swapping parts on every tree, and less than the taught order', () => {
    for (const { tree, ways } of kept.trees) {
      const cost = (name: string): number => ways.find(({ way }) => way === name)!.cost;
      expect(cost('this program') / cost('likeliest part first'), tree).toBeLessThanOrEqual(0.4);
      expect(cost('this program'), tree).toBeLessThan(cost('taught order'));
    }
  });
});
