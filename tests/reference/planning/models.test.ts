import { describe, expect, it } from 'vitest';
import { solveExactly } from '../../../shared/planning/exact.ts';
import { tableProblem, type TableProblem } from '../../../shared/planning/model-problem.ts';
import {
  evaluatePolicy,
  oneStepPolicy,
  repairsOnlyPolicy,
  rolloutPolicy,
  type Action,
} from '../../../shared/planning/policy.ts';
import {
  advicePolicy,
  costByLot,
  flowchartPolicy,
  informationPolicy,
  swapPolicy,
} from '../../../shared/planning/evaluation/model-ways.ts';
import { excessWhenDisturbed } from '../../../shared/planning/evaluation/index.ts';
import { MODELS } from '../../../electron/cli/load-models.ts';

const nameOf = (problem: TableProblem, action: Action): string =>
  action.kind === 'check'
    ? problem.checks[action.check]!.id
    : action.kind === 'correct'
      ? problem.corrections[action.correction]!.id
      : problem.decisions[action.decision]!.id;

/** Measured: by how many in 100 the rule of this program costs more than the best plan; 0 where none is named. */
const ABOVE_OPTIMUM: Readonly<Record<string, number>> = {
  'm3-dependent-actions': 3.4,
  'm4a-wheel-end-road-test': 4.1,
  'm4b-wheel-end-on-stands': 2.2,
  'm5-slow-air-imperfect': 1.8,
  'm6-roadside-triage': 1.3,
  'm7-chain-perfect': 1.3,
  'm10-one-step-trap': 1.4,
  'm12-cost-cluster': 0.7,
};

describe.each(MODELS)('$id', ({ id, model, expected, flowchart }) => {
  const problem = tableProblem(model);
  const solution = solveExactly(problem);

  it('[PLA-1] the exact solver reaches the optimal cost', () => {
    expect(solution.cost).toBeCloseTo(expected.optimalCost, 6);
  });

  it('[PLA-1] the first action is the optimal one where it is unique', () => {
    const ranked = [...solution.first].sort((a, b) => a.cost - b.cost);
    if (expected.gapToSecond > 1e-6) {
      expect(nameOf(problem, ranked[0]!.action)).toBe(expected.firstAction);
      expect(ranked[1]!.cost - ranked[0]!.cost).toBeCloseTo(expected.gapToSecond, 6);
    } else expect(ranked[0]!.cost).toBeCloseTo(expected.optimalCost, 6);
  });

  it('[PLA-2] the optimal policy, followed, costs what the solver said', () => {
    expect(evaluatePolicy(problem, solution.policy).cost).toBeCloseTo(expected.optimalCost, 6);
  });

  const printed = (name: string): number | undefined => expected.policies[name]?.cost;
  it('[PLA-3] corrections alone, one step ahead, and one step improved by rollout cost what the reference solver found', () => {
    const base = oneStepPolicy(problem);
    const ours = {
      repairsOnlyPC: evaluatePolicy(problem, repairsOnlyPolicy(problem)).cost,
      lookahead1: evaluatePolicy(problem, base).cost,
      rolloutOfLookahead1: evaluatePolicy(problem, rolloutPolicy(problem, base)).cost,
    };
    for (const [name, cost] of Object.entries(ours)) {
      const reference = printed(name);
      if (reference !== undefined) expect(cost, `${id} ${name}`).toBeCloseTo(reference, 4);
    }
    expect(ours.rolloutOfLookahead1).toBeLessThanOrEqual(ours.lookahead1 + 1e-9);
  });

  it('[EVA-3] information per cost, swapping, the flowchart and lots cost what the reference solver found', () => {
    const ours: Record<string, number> = {
      infoGainPerCost: evaluatePolicy(problem, informationPolicy(problem, model)).cost,
      uniformRandom: costByLot(problem),
      ...(model.repairs.length > 0 ? { mostLikelyFirstSwap: evaluatePolicy(problem, swapPolicy(problem)).cost } : {}),
      ...(flowchart
        ? { authoredFlowchart: evaluatePolicy(problem, flowchartPolicy(problem, model, flowchart)).cost }
        : {}),
    };
    for (const [name, cost] of Object.entries(ours)) {
      const reference = printed(name);
      expect(reference, name).toBeDefined();
      expect(cost, `${id} ${name}`).toBeCloseTo(reference!, 4);
    }
    if (flowchart) expect(solution.cost).toBeLessThanOrEqual(ours['authoredFlowchart']! + 1e-9);
  });

  it('[PLA-4] the rollout is within 2 in 100 of the optimum, but for the model that is built against it', () => {
    const rollout = evaluatePolicy(problem, rolloutPolicy(problem, oneStepPolicy(problem))).cost;
    if (id === 'm11-two-step-trap') expect(rollout).toBeCloseTo(7, 9);
    else expect(rollout - expected.optimalCost).toBeLessThanOrEqual(0.02 * Math.abs(expected.optimalCost) + 1e-9);
  });

  it('[PLA-39] [EVA-8] the rule of this program, followed, is as far above the optimum as SPEC says', () => {
    const { cost } = evaluatePolicy(problem, advicePolicy(problem, model));
    const gap = (100 * (cost - expected.optimalCost)) / Math.abs(expected.optimalCost);
    expect(gap).toBeCloseTo(ABOVE_OPTIMUM[id] ?? 0, 1);
  });
});

/** Two models are traps in which a hundredth decides between two plans: numbers that far off must cost there. */
const TRAPS = ['m10-one-step-trap', 'm11-two-step-trap'];
/** Large models take seconds to be solved anew; the kept evaluation has them. */
const SMALL = MODELS.filter(({ id }) => !/^m4|^m5/.test(id) && !TRAPS.includes(id));

it('[EVA-3] with numbers off by σ = .5 the plan of the file costs on average within 10 in 100 of the optimum', () => {
  const excess = SMALL.map(({ model }) =>
    excessWhenDisturbed(model, solveExactly(tableProblem(model)).policy, 0.5, 6, 31),
  );
  const mean = excess.reduce((sum, each) => sum + each, 0) / excess.length;
  expect(excess.length).toBe(8);
  for (const each of excess) expect(each).toBeGreaterThanOrEqual(-1e-9);
  expect(mean).toBeLessThan(0.1);
});
