import { describe, expect, it } from 'vitest';
import { tableProblem, type TableProblem } from '../../../shared/planning/model-problem.ts';
import {
  evaluatePolicy,
  exactPlan,
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
  rulePolicy,
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

describe.each(MODELS)('$id', ({ id, model, expected, flowchart }) => {
  const problem = tableProblem(model);
  const solution = exactPlan(problem)!;

  it('[PLA-1] the exact solver reaches the optimal cost', () => {
    expect(solution.cost).toBeCloseTo(expected.optimalCost, 6);
  });

  it('[PLA-1] the first action is the optimal one where it is unique', () => {
    const ranked = [...solution.first].sort((a, b) => a.cost - b.cost);
    if (expected.gapToSecond > 1e-6) {
      expect(nameOf(problem, ranked[0]!.step)).toBe(expected.firstAction);
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

  it('[PLA-4] the rollout of one step is within 2 in 100 of the optimum, but for the model that is built against it', () => {
    const { cost } = evaluatePolicy(problem, rolloutPolicy(problem, oneStepPolicy(problem)));
    if (id === 'm11-two-step-trap') expect(cost).toBeCloseTo(7, 9);
    else expect(cost - expected.optimalCost).toBeLessThanOrEqual(0.02 * Math.abs(expected.optimalCost) + 1e-9);
  });

  it('[PLA-33] [EVA-8] looking ahead is never dearer than the rule it looks ahead on, and within 2 in 100 but on one model', () => {
    const ours = evaluatePolicy(problem, aheadPolicy(problem, model)).cost;
    expect(ours).toBeLessThanOrEqual(evaluatePolicy(problem, rulePolicy(problem, model)).cost + 1e-9);
    const most = id === 'm5-slow-air-imperfect' ? 0.031 : 0.02;
    expect(ours - expected.optimalCost).toBeLessThanOrEqual(most * Math.abs(expected.optimalCost) + 1e-9);
  });

  it('[PLA-45] [EVA-8] the program reaches the optimum on every model, and no flowchart is cheaper', () => {
    const { cost } = evaluatePolicy(problem, advicePolicy(problem, model));
    expect(cost).toBeCloseTo(expected.optimalCost, 6);
    if (flowchart) expect(cost).toBeLessThanOrEqual(expected.policies['authoredFlowchart']!.cost + 1e-9);
  });

  it('[PLA-39] [EVA-8] its rule alone is within 2 in 100 of the best plan too, but on one model where it looks too often', () => {
    const { cost } = evaluatePolicy(problem, rulePolicy(problem, model));
    // Without a check to choose it corrects in the order of the reference.
    if (problem.checks.length === 0) expect(cost).toBeCloseTo(printed('repairsOnlyPC')!, 4);
    else {
      const most = id === 'm5-slow-air-imperfect' ? 0.06 : 0.02;
      expect(cost - expected.optimalCost).toBeLessThanOrEqual(most * Math.abs(expected.optimalCost) + 1e-9);
    }
  });
});

/** Truths drawn a model: a larger one takes a tenth to half a second each; the kept evaluation has more of them. */
const truths = (id: string): number => (/^m4|^m5/.test(id) ? 2 : id.startsWith('m7') ? 8 : 60);

it('[EVA-3] with numbers off by σ = .5 the program costs on average within 10 in 100 of the best plan', () => {
  const excess = MODELS.map(({ id, model }) =>
    excessWhenDisturbed(model, advicePolicy(tableProblem(model), model), 0.5, truths(id), 31),
  );
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

// Values of the optimum: the reference solver's decision shares on this model, to five digits.
it('[PLA-45] roadside: the program misses a danger as seldom as the reference solver found, and below .0005', () => {
  const { model } = MODELS.find(({ id }) => id === 'm6-roadside-triage')!;
  const problem = tableProblem(model);
  const ours = misses(advicePolicy(problem, model));
  expect(ours.wheel_nuts).toBeCloseTo(0.00018, 5);
  expect(ours.bearing).toBeCloseTo(0.00022, 5);
  expect(ours.drag).toBeCloseTo(0.00003, 5);
  for (const each of Object.values(ours)) expect(each).toBeLessThanOrEqual(0.0005);
  expect(misses(oneStepPolicy(problem))).toEqual({ wheel_nuts: 0, bearing: 0, drag: 0 });
  // Its rule alone and looking ahead miss a bearing more often.
  for (const policy of [rulePolicy(problem, model), aheadPolicy(problem, model)])
    expect(Math.max(...Object.values(misses(policy)))).toBeLessThan(0.001);
});
