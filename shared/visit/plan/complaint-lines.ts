import { beliefModel } from '../../inference/index.ts';
import { UNLISTED, type Cause, type Tree } from '../../knowledge/tree.ts';
import { driveVerdict, generalAdvice, stricter, strictestGuard } from '../../planning/index.ts';
import type { PinnedTree } from '../pinned-tree.ts';
import { situationOf } from '../situation-of.ts';
import type { ComplaintState, VisitState } from '../state.ts';
import type { DraftLine } from './draft-line.ts';
import type { Urgency } from './events.ts';
import { complaintLine } from './line-id.ts';
import { meanwhileOf } from './meanwhile.ts';
import type { LineProof, Meanwhile } from './plan.ts';
import { reasonsFor } from './why.ts';

/** Causes of a complaint that are in the plan: what was corrected, and what was concluded since; each once. */
export function plannedCauses(complaint: ComplaintState): string[] {
  const causes = complaint.corrections.map(({ cause }) => cause);
  return [...new Set(complaint.concluded === undefined ? causes : [...causes, complaint.concluded])];
}

/** Lines of the plan whose last correction has no proof that held. */
export function unprovenCauses(complaint: Pick<ComplaintState, 'id' | 'corrections'>): string[] {
  const last = new Map(complaint.corrections.map((each) => [each.cause, each]));
  return [...last.values()]
    .filter(({ proof }) => proof === 'pending')
    .map(({ cause }) => complaintLine(complaint.id, cause));
}

/** What a complaint puts into the plan. */
export function complaintLines(visit: VisitState, complaint: ComplaintState, pinned: PinnedTree): DraftLine[] {
  const { tree, vocabulary } = pinned;
  const situation = situationOf(visit, complaint, tree, vocabulary);
  const model = beliefModel(tree, visit.layout);
  const verdict = driveVerdict(situation, model);
  return plannedCauses(complaint).map((id): DraftLine => {
    const cause = tree.causes.find((each) => each.id === id);
    const corrections = complaint.corrections.filter((each) => each.cause === id);
    const first = corrections[0];
    // What was found after the correction speaks about the next fault, not about this one.
    const findings = first
      ? situation.findings.filter((finding) => first.findingsBefore.includes(finding.id))
      : situation.findings;
    const vain = complaint.corrections.slice(0, first ? complaint.corrections.indexOf(first) : undefined);
    const excluded = new Set(vain.filter(({ proof }) => proof === 'still-there').map(({ cause: each }) => each));
    const why = reasonsFor(pinned, complaint, model, findings, id, excluded);
    const meanwhile = meanwhileFor(tree, cause, verdict);
    const [low, high] = cause?.correction.hours ?? [0, 0];
    return {
      id: complaintLine(complaint.id, id),
      from: { kind: 'complaint', complaint: complaint.id, cause: id },
      title: cause?.correction.does ?? 'Look further: what was found fits no cause of the list',
      plain: cause?.plain ?? 'None of the causes that are known for this explains what was found.',
      asked: complaint.words,
      place: why.find(({ place }) => place !== undefined)?.place ?? null,
      why,
      hazard: cause?.hazard ?? 'damage',
      danger: cause?.hazard === 'danger',
      ifLeft: cause?.urgency ?? 'Not known, since the cause is not.',
      urgency: urgencyOf(cause, meanwhile),
      parts: cause?.correction.parts ?? [],
      minutes: [low * 60, high * 60],
      accessIncluded: true,
      ...(cause?.correction.access === undefined ? {} : { access: cause.correction.access }),
      states: vocabulary.access,
      alsoWhileOpen: cause?.correction.alsoWhileOpen ?? [],
      rebuildWords: cause?.correction.rebuildOrReplace ?? '',
      meanwhile,
      proof: proofOf(tree, complaint, id),
      tree: tree.id,
    };
  });
}

/** What the complaint as a whole means for driving on, for one that has put nothing into the plan yet. */
export function complaintMeanwhile(visit: VisitState, complaint: ComplaintState, pinned: PinnedTree): Meanwhile {
  const { tree, vocabulary } = pinned;
  const { verdict, because, doNow } = driveVerdict(
    situationOf(visit, complaint, tree, vocabulary),
    beliefModel(tree, visit.layout),
  );
  return { verdict, because, doNow };
}

/** A danger cause that was accepted holds the coach even while belief in it is low: somebody has decided that it is so. */
function meanwhileFor(tree: Tree, cause: Cause | undefined, verdict: Meanwhile): Meanwhile {
  const { verdict: now, because, doNow } = verdict;
  if (cause?.hazard !== 'danger') return { verdict: now, because, doNow };
  const guard = strictestGuard(tree, cause.id);
  if (stricter(now, guard) === now) return { verdict: now, because, doNow };
  return { verdict: guard, because: 'The cause that was accepted can hurt people.', doNow: generalAdvice(guard) };
}

/** Judgement: danger and whatever holds the coach now; what breaks more or is complained about soon. */
function urgencyOf(cause: Cause | undefined, { verdict }: Meanwhile): Urgency {
  if (cause?.hazard === 'danger' || verdict !== 'drive-and-book') return 'now';
  return cause?.hazard === 'none' ? 'watch' : 'soon';
}

function proofOf(tree: Tree, complaint: ComplaintState, cause: string): LineProof {
  const proof = tree.proofs.find(({ after }) => after === cause) ?? tree.proofs.find(({ after }) => after === '*');
  const words = { steps: proof?.steps ?? [], wait: proof?.wait ?? '' };
  const last = complaint.corrections.filter((each) => each.cause === cause).at(-1);
  if (last) {
    const state = last.proof === 'gone' ? 'held' : last.proof === 'still-there' ? 'did-not-hold' : 'unproven';
    return { ...words, state, doneAt: last.at, ...(last.note === undefined ? {} : { words: last.note }) };
  }
  return { ...words, state: complaint.phase === 'correcting' && cause !== UNLISTED ? 'under-way' : 'to-do' };
}

/** For a visit whose tree is missing: nothing can be said, so the stricter advice holds. */
export function withoutTree(words: string): Meanwhile {
  return meanwhileOf(
    'creep-to-safe-place',
    `The knowledge behind “${words}” is not here, so nothing can be said about it.`,
  );
}
