import { statesAtMost } from '../ahead/exact.ts';
import { tableProblem, type TableModel, type TableProblem } from '../model-problem.ts';
import { evaluatePolicy, exactPlan, oneStepPolicy, repairsOnlyPolicy, rolloutPolicy, type Policy } from '../policy.ts';
import { disturbedModel } from './disturbed.ts';
import {
  advicePolicy,
  aheadPolicy,
  costByLot,
  flowchartPolicy,
  informationPolicy,
  rulePolicy,
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
  /** What the program does: the best plan where few enough states can follow, else its rule. */
  readonly ours: number;
  /** Its rule for the next check (PLA-39) alone, which is what larger trees are walked by. */
  readonly rule: number;
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
  /** Share by which ours costs more than the optimum when the truth differs from the file; one a spread. */
  readonly disturbed: readonly { readonly sigma: number; readonly excess: number }[];
  /** Truths drawn for each spread. */
  readonly truths: number;
}

/** Models of fewer states are solved at once, so that so many times as many truths cost nothing. */
const SMALL = 1_000;
const OFTENER = 20;

/** Spreads of the natural logarithm of each number: a slip of a quarter, of two thirds, of nearly three times. */
export const SIGMAS = [0.25, 0.5, 1] as const;

/**
 * All ways on one model, by one pass over the states that each reaches; no random numbers but for the disturbed tables.
 *
 * @param times  truths for each spread; more of a small model.
 */
export function modelRow({ id, model, flowchart }: NamedModel, times: number, seed: number): ModelRow {
  const problem = tableProblem(model);
  const advice = advicePolicy(problem, model);
  const ours = evaluatePolicy(problem, advice);
  const cost = (policy: Policy): number => evaluatePolicy(problem, policy).cost;
  const base = oneStepPolicy(problem);
  const repairs = model.repairs.length > 0;
  const states = statesAtMost(
    model.checks.map(({ outcomes }) => outcomes.length),
    model.repairs.length,
  );
  const truths = states < SMALL ? times * OFTENER : times;
  return {
    model: id,
    ours: ours.cost,
    rule: cost(rulePolicy(problem, model)),
    ahead: cost(aheadPolicy(problem, model)),
    optimum: optimumOf(problem),
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
      excess: excessWhenDisturbed(model, advice, sigma, truths, seed),
    })),
    truths,
  };
}

/** @throws {RangeError} for a model of more states than are solved. */
function optimumOf(problem: TableProblem): number {
  const plan = exactPlan(problem);
  if (!plan) throw new RangeError('The model has more states than are solved exactly; its optimum is not known.');
  return plan.cost;
}

/**
 * By which share the file's policy costs more than the best plan when the truth differs from the file, over all truths together: a
 * single truth whose best plan costs nothing would make a mean of shares endless.
 */
export function excessWhenDisturbed(
  model: TableModel,
  policy: Policy,
  sigma: number,
  times: number,
  seed: number,
): number {
  let more = 0;
  let least = 0;
  for (let i = 0; i < times; i++) {
    const truth = tableProblem(disturbedModel(model, sigma, seededRandom(seed * 1_000 + i)));
    const optimum = optimumOf(truth);
    more += evaluatePolicy(truth, whenImpossible(model, policy)).cost - optimum;
    least += Math.abs(optimum);
  }
  return more / least;
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
