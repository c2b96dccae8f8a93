import { describe, expect, it } from 'vitest';
import { solveExactly } from '../../../shared/planning/exact.ts';
import { tableProblem, type TableProblem } from '../../../shared/planning/model-problem.ts';
import {
  evaluatePolicy,
  expand,
  oneStepPolicy,
  repairsOnlyPolicy,
  rolloutPolicy,
  type Action,
  type Policy,
  type TableState,
} from '../../../shared/planning/policy.ts';
import {
  advicePolicy,
  aheadPolicy,
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

  it('[PLA-4] looking ahead is within 2 in 100 of the optimum and no dearer than the flowchart of the model', () => {
    const ours = evaluatePolicy(problem, aheadPolicy(problem, model)).cost;
    expect(ours - expected.optimalCost).toBeLessThanOrEqual(0.02 * Math.abs(expected.optimalCost) + 1e-9);
    if (flowchart) expect(ours).toBeLessThanOrEqual(expected.policies['authoredFlowchart']!.cost + 1e-9);
    // From a rule of one step alone it is not: m11 is built so that both must fail.
    const rollout = evaluatePolicy(problem, rolloutPolicy(problem, oneStepPolicy(problem))).cost;
    if (id === 'm11-two-step-trap') expect(rollout).toBeCloseTo(7, 9);
    else expect(rollout - expected.optimalCost).toBeLessThanOrEqual(0.02 * Math.abs(expected.optimalCost) + 1e-9);
  });

  it('[PLA-39] [EVA-8] the rule of this program, followed, is as far above the optimum as SPEC says', () => {
    const { cost } = evaluatePolicy(problem, advicePolicy(problem, model));
    const gap = (100 * (cost - expected.optimalCost)) / Math.abs(expected.optimalCost);
    expect(gap).toBeGreaterThanOrEqual(-1e-6);
    expect(gap).toBeLessThanOrEqual((ABOVE_OPTIMUM[id] ?? 0) + 0.05);
  });
});

/** The largest takes ten seconds to be solved anew, two others one each; the kept evaluation has all. */
const LARGEST = 'm4a-wheel-end-road-test';
const LARGE = /^m4|^m5/;

it('[EVA-3] with numbers off by σ = .5 looking ahead costs on average within 10 in 100 of the best plan', () => {
  const excess = MODELS.filter(({ id }) => id !== LARGEST).map(({ id, model }) => {
    const problem = tableProblem(model);
    const ours = aheadPolicy(problem, model);
    return excessWhenDisturbed(model, ours, 0.5, LARGE.test(id) ? 1 : 8, 31);
  });
  for (const each of excess) expect(each).toBeGreaterThanOrEqual(-1e-9);
  expect(excess.reduce((sum, each) => sum + each, 0) / excess.length).toBeLessThan(0.1);
});

/**
 * P(cause present and unsafe advice) of a policy on the roadside model: driving on with any of the three, or limping without
 * tightening when the nuts are loose.
 */
function misses(policy: Policy): Record<'wheel_nuts' | 'bearing' | 'drag', number> {
  const { model } = MODELS.find(({ id }) => id === 'm6-roadside-triage')!;
  const problem = tableProblem(model);
  const unsafe = { wheel_nuts: ['drive_on', 'limp_to_workshop'], bearing: ['drive_on'], drag: ['drive_on'] };
  const missed = { wheel_nuts: 0, bearing: 0, drag: 0 };
  const walk = (state: TableState, reach: number): void => {
    const action = policy(state);
    for (const { share, next } of expand(problem, state, action).branches) walk(next, reach * share);
    if (action.kind !== 'decide') return;
    const belief = problem.belief(state);
    for (const cause of ['wheel_nuts', 'bearing', 'drag'] as const)
      if (unsafe[cause].includes(model.decisions[action.decision]!.id))
        missed[cause] += reach * belief[model.causes.findIndex(({ id }) => id === cause)]!;
  };
  walk({ ...problem.start, access: 0 }, 1);
  return missed;
}

// Values of the optimum and of one step: the reference solver's decision shares on this model, to five digits.
it('[PLA-4] roadside: the best plan misses a danger as seldom as the reference solver found, and no other plan in 1 of 1000', () => {
  const { model } = MODELS.find(({ id }) => id === 'm6-roadside-triage')!;
  const problem = tableProblem(model);
  const best = misses(solveExactly(problem).policy);
  expect(best.wheel_nuts).toBeCloseTo(0.00018, 5);
  expect(best.bearing).toBeCloseTo(0.00022, 5);
  expect(best.drag).toBeCloseTo(0.00003, 5);
  expect(misses(oneStepPolicy(problem))).toEqual({ wheel_nuts: 0, bearing: 0, drag: 0 });
  for (const policy of [advicePolicy(problem, model), aheadPolicy(problem, model)])
    expect(Math.max(...Object.values(misses(policy)))).toBeLessThan(0.001);
});
