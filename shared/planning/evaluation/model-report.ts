import { solveExactly } from '../exact.ts';
import { tableProblem, type TableModel } from '../model-problem.ts';
import { evaluatePolicy, oneStepPolicy, repairsOnlyPolicy, rolloutPolicy, type Policy } from '../policy.ts';
import { disturbedModel } from './disturbed.ts';
import {
  advicePolicy,
  aheadPolicy,
  costByLot,
  flowchartPolicy,
  informationPolicy,
  swapPolicy,
  type FlowStep,
} from './model-ways.ts';
import { seededRandom } from './random.ts';

/** A small model with what its own author would do. */
export interface NamedModel {
  readonly id: string;
  readonly model: TableModel;
  readonly flowchart?: readonly FlowStep[] | undefined;
}

/** Expected costs on one model, each exact; null where a way makes no sense. */
export interface ModelRow {
  readonly model: string;
  /** What the program does: its rule for the next check (PLA-39), followed. */
  readonly ours: number;
  /** One step of policy improvement on that rule. */
  readonly ahead: number;
  readonly optimum: number;
  readonly oneStep: number;
  readonly rollout: number;
  readonly information: number;
  readonly taught: number | null;
  readonly swapped: number | null;
  readonly lot: number;
  readonly checks: number;
  readonly wrongParts: number;
  /** Share that ends with a decision instead of a correction. */
  readonly handedOver: number;
  /** Mean share by which ours costs more than the optimum when the truth differs from the file; one a spread. */
  readonly disturbed: readonly { readonly sigma: number; readonly excess: number }[];
}

/** Spreads of the natural logarithm of each number: a slip of a quarter, of two thirds, of nearly three times. */
export const SIGMAS = [0.25, 0.5, 1] as const;

/** All ways on one model, by one pass over the states that each reaches; no random numbers but for the disturbed tables. */
export function modelRow({ id, model, flowchart }: NamedModel, times: number, seed: number): ModelRow {
  const problem = tableProblem(model);
  const advice = advicePolicy(problem, model);
  const ours = evaluatePolicy(problem, advice);
  const cost = (policy: Policy): number => evaluatePolicy(problem, policy).cost;
  const base = oneStepPolicy(problem);
  const repairs = model.repairs.length > 0;
  return {
    model: id,
    ours: ours.cost,
    ahead: cost(aheadPolicy(problem, model)),
    optimum: solveExactly(problem).cost,
    oneStep: cost(base),
    rollout: cost(rolloutPolicy(problem, base)),
    information: cost(informationPolicy(problem, model)),
    taught: flowchart
      ? cost(flowchartPolicy(problem, model, flowchart))
      : repairs
        ? cost(repairsOnlyPolicy(problem))
        : null,
    swapped: repairs ? cost(swapPolicy(problem)) : null,
    lot: costByLot(problem),
    checks: ours.checks,
    // A correction that ended it was right; each other one was a wrong part.
    wrongParts: repairs ? Math.max(0, ours.corrections - (1 - ours.decided)) : 0,
    handedOver: ours.decided,
    disturbed: SIGMAS.map((sigma) => ({
      sigma,
      excess: excessWhenDisturbed(model, advice, sigma, times, seed),
    })),
  };
}

/** Mean of (cost of the file's policy − optimum) / |optimum| over disturbed truths. */
export function excessWhenDisturbed(
  model: TableModel,
  policy: Policy,
  sigma: number,
  times: number,
  seed: number,
): number {
  let sum = 0;
  for (let i = 0; i < times; i++) {
    const truth = tableProblem(disturbedModel(model, sigma, seededRandom(seed * 1_000 + i)));
    const optimum = solveExactly(truth).cost;
    sum += (evaluatePolicy(truth, whenImpossible(model, policy)).cost - optimum) / Math.abs(optimum);
  }
  return sum / times;
}

/** A policy that goes through the corrections in file order where the file says that nothing can be the matter. */
function whenImpossible(model: TableModel, policy: Policy): Policy {
  const problem = tableProblem(model);
  return (state) => {
    if (problem.belief(state).some((p) => p > 0)) return policy(state);
    const correction = model.repairs.findIndex((_, r) => !(state.failed & (1 << r)));
    return correction >= 0 ? { kind: 'correct', correction } : { kind: 'decide', decision: 0 };
  };
}
