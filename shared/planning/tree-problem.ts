import {
  beliefModel,
  outlook,
  posterior,
  type BeliefModel,
  type Finding,
  type Outlook,
  type Posterior,
} from '../inference/index.ts';
import { isOwner, type Cause, type Check } from '../knowledge/tree.ts';
import { maskOf, needOf, vocabularyGraph, type AccessGraph } from './access.ts';
import { driveLosses } from './drive-loss.ts';
import type { ActNow, CheckAction, CorrectionAction, DecisionAction, Problem, Stage } from './problem.ts';
import { generalProof, proofRisk } from './proof.ts';
import { bestDecision, repairPlan, type PlanParts } from './repair-plan.ts';
import type { Situation } from './situation.ts';
import { standing } from './standing.ts';

/** Findings that count, and the belief that follows from them. */
export interface Knowledge {
  readonly findings: readonly Finding[];
  readonly now: Posterior;
}

/** A coach with a complaint as a troubleshooting problem. */
export interface TreeProblem extends Problem<Knowledge> {
  readonly model: BeliefModel;
  readonly start: Knowledge;
  readonly stage: Stage;
  /** Same order as `corrections`. */
  readonly causesOf: readonly Cause[];
  /** Same order as `checks`. */
  readonly checksOf: readonly Check[];
  readonly excluded: ReadonlySet<string>;
  /** Expected cost from here if this cause, by its index, were known to be it. */
  whenKnown(cause: number): number;
}

/** Correction minutes never fall below this, however much is open already. Judgement. */
export const LEAST_CORRECTION = 15;

/**
 * The problem of a situation. Corrections cure exactly their cause and cost their mean hours, less the opening that the
 * access then adds again; the proof follows each, with what it costs that a proof can be wrong, and the wrong-part allowance is
 * added when it did not end the matter. Handing over costs its flat price and
 * the correction all the same, since somebody has to do it. An owner corrects nothing: what ends the matter is the drive
 * decision, and after it the workshop's own search, which somebody pays for.
 *
 * @param canDo  checks that this person can be offered; decides `openChecks`.
 */
export function treeProblem(situation: Situation, canDo: (check: Check) => boolean): TreeProblem {
  const { tree } = situation;
  const model = beliefModel(tree, situation.layout);
  const { findings, excluded } = standing(model, situation);
  const fixed = fixedParts(situation, model);
  const { access, parts, causesOf, checks, losses, owner, known } = fixed;
  const { corrections } = parts;
  const failed = corrections.reduce((mask, { id }, r) => (excluded.has(id) ? mask | (1 << r) : mask), 0);

  const checksOf = tree.checks;
  const offered = checksOf.map((check) => canDo(check));
  const start = { findings, now: posterior(model, findings, excluded) };
  /** What the checks would do from the start; share, worth and reason of a check all ask for it. */
  const looked: (Outlook | undefined)[] = [];
  const stage = { access: maskOf(access, situation.access), failed };
  const actNow = (belief: Float64Array, from: Stage): ActNow => {
    const plan = repairPlan(parts, belief, from);
    if (!owner) return plan;
    const drive = bestDecision(losses, belief, 1);
    return { cost: drive.cost + plan.cost, first: { kind: 'decide', decision: drive.index } };
  };
  return {
    ...parts,
    decisions: owner ? losses : parts.decisions,
    causes: model.causeIds.length,
    model,
    checks,
    checksOf,
    causesOf,
    excluded,
    start,
    stage,
    belief: ({ now }) => now.probability,
    openChecks: (knowledge) =>
      checksOf.flatMap((check, k) =>
        offered[k] && !knowledge.findings.some((finding) => finding.check === check.id) ? [k] : [],
      ),
    outlook({ now }, check) {
      if (now !== start.now) return outlook(model, now, checks[check]!.id);
      const ahead = looked[check] ?? outlook(model, now, checks[check]!.id);
      looked[check] = ahead;
      return ahead;
    },
    learn(knowledge, check, result) {
      const found: Finding = {
        id: `if-${checks[check]!.id}`,
        check: checks[check]!.id,
        value: { kind: 'result', result: checksOf[check]!.results[result]!.id },
      };
      const next = [...knowledge.findings, found];
      return { findings: next, now: posterior(model, next, excluded) };
    },
    actNow,
    whenKnown(cause) {
      const key = `${stage.access} ${stage.failed} ${cause}`;
      const before = known.get(key);
      if (before !== undefined) return before;
      const certain = new Float64Array(model.causeIds.length);
      certain[cause] = 1;
      const { cost } = actNow(certain, stage);
      known.set(key, cost);
      return cost;
    },
  };
}

/** What stays the same from check to check. */
interface FixedParts extends Pick<Situation, 'vocabulary' | 'costs'> {
  readonly owner: boolean;
  readonly access: AccessGraph;
  readonly parts: PlanParts;
  readonly causesOf: readonly Cause[];
  readonly checks: readonly CheckAction[];
  readonly losses: readonly DecisionAction[];
  /** Costs when the cause is known, by stage and cause. */
  readonly known: Map<string, number>;
}

/** The last parts made for a model: a walk, and a tree compiled for paper, ask for the same ones hundreds of times. */
const made = new WeakMap<BeliefModel, FixedParts>();

function fixedParts(situation: Situation, model: BeliefModel): FixedParts {
  const { tree, vocabulary, costs, who } = situation;
  const owner = isOwner(who);
  const before = made.get(model);
  if (before?.vocabulary === vocabulary && before.costs === costs && before.owner === owner) return before;
  const access = vocabularyGraph(vocabulary.access);
  const need = (id: string) => needOf(access, vocabulary.access, id);
  const causesOf = model.causeIds.flatMap((id) => tree.causes.find((cause) => cause.id === id) ?? []);
  const corrections = causesOf.map((cause, column): CorrectionAction => {
    const at = cause.correction.access ?? 'parked';
    return {
      id: cause.id,
      cost: Math.max(LEAST_CORRECTION, correctionMinutes(cause) - chainMinutes(access, at)),
      need: need(at),
      cures: [{ cause: column, share: 1 }],
    };
  });
  const meanCorrection = causesOf.reduce((sum, cause, c) => sum + model.prior[c]! * correctionMinutes(cause), 0);
  const handOver: DecisionAction = {
    id: 'hand-over',
    loss: Float64Array.from(
      model.causeIds,
      (_, c) => costs.handOver + (causesOf[c] ? correctionMinutes(causesOf[c]) : meanCorrection),
    ),
  };
  const proof = generalProof(tree);
  const risk = proofRisk(proof, costs);
  const parts: PlanParts = {
    access,
    corrections,
    decisions: [handOver],
    verify: { cost: proof.minutes, need: need(proof.access), again: risk.again },
    closeAtEnd: true,
    wrongPart: costs.wrongPart + risk.missed,
  };
  const checks = tree.checks.map((check): CheckAction => ({
    id: check.id,
    cost: check.minutes,
    need: need(check.access),
  }));
  const losses = Object.entries(driveLosses(tree, model, costs)).map(([id, loss]): DecisionAction => ({ id, loss }));
  const fixed = { vocabulary, costs, owner, access, parts, causesOf, checks, losses, known: new Map<string, number>() };
  made.set(model, fixed);
  return fixed;
}

/** Mean labour of a correction, minutes, access included. */
export function correctionMinutes(cause: Cause): number {
  return ((cause.correction.hours[0] + cause.correction.hours[1]) / 2) * 60;
}

/** Minutes to open and close a state with its parents. */
export function chainMinutes(access: AccessGraph, id: string): number {
  const mask = access.chain[access.ids.indexOf(id)]!;
  return access.openCost.reduce((sum, open, i) => (mask & (1 << i) ? sum + open + access.closeCost[i]! : sum), 0);
}
