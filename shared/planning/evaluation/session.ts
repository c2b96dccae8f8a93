import { fitOf } from '../../knowledge/layout.ts';
import { ROLES, UNLISTED, type Role, type Tree } from '../../knowledge/tree.ts';
import type { Vocabulary } from '../../knowledge/vocabulary.ts';
import type { Finding } from '../../inference/index.ts';
import { closingCost, idsOf, maskOf, move, needOf, vocabularyGraph } from '../access.ts';
import { wordsAtHand } from '../blocked.ts';
import { isMet } from '../clear-result.ts';
import type { CorrectionDone, Costs, Situation } from '../situation.ts';
import { correctionMinutes } from '../tree-problem.ts';
import { generalProof, proofRisk } from '../proof.ts';
import { correctionAccess, correctionAlone } from '../work-costs.ts';
import type { SimulatedCoach } from './coach.ts';

/** What a way of working does next. */
export type Move =
  | { readonly kind: 'check'; readonly check: string }
  | { readonly kind: 'correct'; readonly cause: string }
  | { readonly kind: 'hand-over' };

/** A way of working: the planner's, the taught order's, the part swapper's. */
export interface WayOfWorking {
  readonly name: string;
  next(situation: Situation): Move;
}

export interface Outcome {
  /** First cause that was corrected, `unlisted` for a hand-over. */
  readonly concluded: string;
  readonly right: boolean;
  readonly cured: boolean;
  /** Minutes of checks with their access, and everything together with corrections, proofs and hand-over. */
  readonly checkMinutes: number;
  readonly cost: number;
  readonly checks: number;
  readonly wrongParts: number;
  /** The part of `cost` that is expected, not drawn: proofs that miss a fault or doubt a cure. */
  readonly proofRisks: number;
}

/**
 * Corrections are proven by the tree's first general proof. What it costs that a proof can be wrong is charged as its expectation:
 * the fault that was missed shows itself on the road, and the work goes on from there.
 */
export function work(
  coach: SimulatedCoach,
  way: WayOfWorking,
  tree: Tree,
  vocabulary: Vocabulary,
  who: Role,
  costs: Costs,
): Outcome {
  const graph = vocabularyGraph(vocabulary.access);
  const proof = generalProof(tree);
  const risk = proofRisk(proof, costs);
  let open = 0;
  let cost = 0;
  let checkMinutes = 0;
  let wrongParts = 0;
  let proofRisks = 0;
  let concluded: string | null = null;
  const findings: Finding[] = [];
  const corrections: CorrectionDone[] = [];
  const faults = [coach.cause, ...(coach.also === undefined ? [] : [coach.also])];
  const corrected = new Set<string>();
  /** What is left to correct for whoever takes over; a fault that the tree does not list takes half a second search. */
  const left = (): number =>
    faults
      .filter((id) => !corrected.has(id))
      .reduce((sum, id) => {
        const cause = tree.causes.find((each) => each.id === id);
        return sum + (cause ? correctionMinutes(cause) : costs.handOver / 2);
      }, 0);
  /** A fault that the tree does not list is named rightly by handing over. */
  const isRight = (id: string): boolean =>
    faults.includes(id) || (id === UNLISTED && !tree.causes.some((cause) => cause.id === coach.cause));
  const goTo = (access: string): number => {
    const there = move(graph, open, needOf(graph, vocabulary.access, access));
    open = there.state;
    return there.cost;
  };
  for (;;) {
    const step = way.next({
      tree,
      vocabulary,
      who,
      layout: coach.layout,
      findings,
      stopAnswers: {},
      corrections,
      access: idsOf(graph, open),
      costs,
    });
    if (step.kind === 'check') {
      const check = tree.checks.find(({ id }) => id === step.check)!;
      const minutes = check.minutes + goTo(check.access);
      cost += minutes;
      checkMinutes += minutes;
      findings.push({
        id: `f${findings.length}`,
        check: check.id,
        value: { kind: 'result', result: coach.look(check.id, corrected) },
      });
      continue;
    }
    if (step.kind === 'hand-over') {
      concluded ??= UNLISTED;
      cost += costs.handOver + closingCost(graph, open) + left();
      return {
        concluded,
        right: isRight(concluded),
        cured: false,
        checkMinutes,
        cost,
        checks: findings.length,
        wrongParts,
        proofRisks,
      };
    }
    concluded ??= step.cause;
    const cause = tree.causes.find(({ id }) => id === step.cause)!;
    cost += correctionAlone(graph, cause) + goTo(correctionAccess(cause));
    cost += proof.minutes + goTo(proof.access);
    const bad = faults.includes(step.cause) && !corrected.has(step.cause);
    if (bad) corrected.add(step.cause);
    const cured = corrected.size === faults.length;
    cost += cured ? risk.again : risk.missed;
    proofRisks += cured ? risk.again : risk.missed;
    if (cured)
      return {
        concluded,
        right: isRight(concluded),
        cured,
        checkMinutes,
        cost: cost + closingCost(graph, open),
        checks: findings.length,
        wrongParts,
        proofRisks,
      };
    if (!bad) {
      wrongParts += 1;
      cost += costs.wrongPart;
    }
    corrections.push({
      cause: step.cause,
      partSeen: bad ? 'bad' : 'good',
      proof: 'still-there',
      findingsBefore: findings.map(({ id }) => id),
    });
    open = maskOf(graph, idsOf(graph, open));
  }
}

/** Whether a person can do a check now, layout and prerequisites considered. */
export function canDo(check: Tree['checks'][number], situation: Situation): boolean {
  return (
    !situation.findings.some((finding) => finding.check === check.id) &&
    ROLES.indexOf(check.who) <= ROLES.indexOf(situation.who) &&
    fitOf(check.when, situation.layout).fits !== 'no' &&
    check.tools.every((word) => wordsAtHand(situation.vocabulary, situation).has(word)) &&
    isMet(check.requires, new Map(situation.tree.checks.map((each) => [each.id, each])), situation.findings)
  );
}
