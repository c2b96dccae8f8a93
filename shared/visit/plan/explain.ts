import {
  beliefModel,
  evidenceOf,
  posterior,
  type BeliefModel,
  type Evidence,
  type Finding,
} from '../../inference/index.ts';
import type { Picture } from '../../knowledge/tree.ts';
import type { PinnedTree } from '../pinned-tree.ts';
import { situationOf } from '../situation-of.ts';
import type { ComplaintState, VisitState } from '../state.ts';
import type { PlanLine, Reason } from './plan.ts';
import { reasonOf } from './why.ts';

/** Share from which another cause is not ruled out. Judgement. */
const STILL_OPEN = 0.1;
/** Other causes named: those that were as likely beforehand. */
const NAMED = 4;

/** Another cause that it could have been. */
export interface Rival {
  readonly cause: string;
  readonly name: string;
  readonly plain: string;
  readonly danger: boolean;
  /** Belief in it now, on judged odds. */
  readonly share: number;
  /** It has not been ruled out by what was found. */
  readonly open: boolean;
  /** Findings that speak for the cause of the line and against this one, strongest first; `decibans` between the two. */
  readonly against: readonly Reason[];
}

/** One line of the plan for a customer. */
export interface Explanation {
  readonly line: PlanLine;
  readonly pictures: readonly Picture[];
  /** What else it could have been; empty for a line that no complaint stands behind. */
  readonly rivals: readonly Rival[];
  /** Belief in the cause itself, on judged odds; absent without a complaint. */
  readonly share?: number;
  /** What speaks against the cause, so that nothing is hidden. */
  readonly against: readonly Reason[];
}

/** What a customer is shown of a line: the part, what was found, what else it could have been and why it is not that. */
export function explanationOf(visit: VisitState, trees: ReadonlyMap<string, PinnedTree>, line: PlanLine): Explanation {
  const nothing: Explanation = { line, pictures: [], rivals: [], against: [] };
  if (line.from.kind !== 'complaint') return nothing;
  const { complaint: id, cause } = line.from;
  const complaint = visit.complaints.find((each) => each.id === id);
  const pinned = complaint && trees.get(complaint.treeHash);
  if (!pinned) return nothing;
  const model = beliefModel(pinned.tree, visit.layout);
  const column = model.causeIds.indexOf(cause);
  if (column < 0) return nothing;
  const situation = situationOf(visit, complaint, pinned.tree, pinned.vocabulary);
  const corrected = complaint.corrections.find((each) => each.cause === cause);
  const findings = corrected
    ? situation.findings.filter((finding) => corrected.findingsBefore.includes(finding.id))
    : situation.findings;
  const belief = posterior(model, findings);
  const evidence = evidenceOf(model, findings);
  return {
    line,
    pictures: picturesOf(pinned, findings),
    rivals: rivalsOf(pinned, complaint, model, evidence, belief.probability, column),
    share: belief.probability[column]!,
    against: evidence.flatMap((each) => {
      // Against all others together, weighed by the belief in them.
      const others = meanOf(each, model.prior, column);
      const decibans = ((each.log[column]! - others) * each.exponent * 10) / Math.LN10;
      return decibans <= -1 ? reason(pinned, complaint, each, decibans) : [];
    }),
  };
}

/** Log of the mean likelihood of one finding under all causes but one, weighed by the prior. */
function meanOf({ log }: Evidence, prior: ArrayLike<number>, column: number): number {
  let weight = 0;
  let sum = 0;
  for (let c = 0; c < log.length; c++) {
    if (c === column) continue;
    weight += prior[c]!;
    sum += prior[c]! * Math.exp(log[c]!);
  }
  return Math.log(sum / weight);
}

function rivalsOf(
  pinned: PinnedTree,
  complaint: ComplaintState,
  model: BeliefModel,
  evidence: readonly Evidence[],
  share: ArrayLike<number>,
  column: number,
): Rival[] {
  const listed = pinned.tree.causes
    .map((cause) => ({ cause, c: model.causeIds.indexOf(cause.id) }))
    .filter(({ c }) => c >= 0 && c !== column);
  const likely = [...listed].sort((a, b) => model.prior[b.c]! - model.prior[a.c]!).slice(0, NAMED);
  const open = listed.filter(({ c }) => share[c]! >= STILL_OPEN);
  return [...new Set([...open, ...likely])]
    .sort((a, b) => share[b.c]! - share[a.c]!)
    .map(({ cause, c }) => ({
      cause: cause.id,
      name: cause.name,
      plain: cause.plain,
      danger: cause.hazard === 'danger',
      share: share[c]!,
      open: share[c]! >= STILL_OPEN,
      against: evidence
        .map((each) => ({ each, decibans: ((each.log[column]! - each.log[c]!) * each.exponent * 10) / Math.LN10 }))
        .filter(({ decibans }) => decibans >= 1)
        .sort((a, b) => b.decibans - a.decibans)
        .slice(0, 3)
        .flatMap(({ each, decibans }) => reason(pinned, complaint, each, decibans)),
    }));
}

function reason({ tree }: PinnedTree, complaint: ComplaintState, { finding }: Evidence, decibans: number): Reason[] {
  const check = tree.checks.find(({ id }) => id === finding.check);
  const made = complaint.trail.find(({ id }) => id === finding.id);
  return check && made ? [reasonOf(check, made, decibans)] : [];
}

/** Drawings that explain the results found, then those of the checks as a whole. */
function picturesOf({ tree }: PinnedTree, findings: readonly Finding[]): Picture[] {
  const found = findings.flatMap(({ check: checkId, value }) => {
    const check = tree.checks.find(({ id }) => id === checkId);
    return (check?.pictures ?? []).map((picture) => ({
      picture,
      exact: value.kind === 'result' && picture.results.includes(value.result),
      whole: picture.results.length === 0,
    }));
  });
  const fitting = [...found.filter(({ exact }) => exact), ...found.filter(({ exact, whole }) => whole && !exact)];
  return [...new Map(fitting.map(({ picture }) => [picture.file, picture])).values()].slice(0, 3);
}
