import type { AccessState } from '../../knowledge/vocabulary.ts';
import type { PinnedTree } from '../pinned-tree.ts';
import { holdOf } from '../hold.ts';
import type { VisitState } from '../state.ts';
import { accessSteps, needsPlace, stepMinutes } from './access-steps.ts';
import { addedDraft } from './added-lines.ts';
import { complaintLines, complaintMeanwhile, unprovenCauses, withoutTree } from './complaint-lines.ts';
import { costBand, partKey } from './cost-band.ts';
import { decisionRecord } from './decision-record.ts';
import type { DraftLine } from './draft-line.ts';
import { unprovenLines } from './fold.ts';
import type { InspectedItem } from './inspected.ts';
import { withItemLines } from './item-lines.ts';
import { meanwhileOf, strictestOf } from './meanwhile.ts';
import { isInWork, notOpenedWarnings, partsList } from './parts-list.ts';
import type { LineDecision, LineProof, Meanwhile, Plan, PlanLine, PlanWarning, Reason, Span } from './plan.ts';
import { REBUILD, rebuildChoice } from './rebuild.ts';
import { reminderProposals } from './reminders.ts';
import { renewProposal } from './renew-while-open.ts';
import { planHours, stagesOf, workOrder } from './stages.ts';
import type { PlanState, SaidOfLine } from './state.ts';

/** Least own work of a correction once its access is taken off, minutes. Judgement, as for the next check. */
const LEAST_WORK = 15;

/**
 * The plan of a visit: everything concluded, found or added, in the order of work. A pure function of the state.
 *
 * @param trees       by content hash, as for the replay; a complaint whose tree is missing gives a warning, no line.
 * @param inspection  items of the inspection; none where there was none.
 */
export function planOf(
  visit: VisitState,
  trees: ReadonlyMap<string, PinnedTree>,
  inspection: readonly InspectedItem[] = [],
): Plan {
  const { plan: state } = visit;
  const states = [...trees.values()][0]?.vocabulary.access ?? [];
  const warnings: PlanWarning[] = [];
  const open: Meanwhile[] = [];
  let drafts: DraftLine[] = [];
  for (const complaint of visit.complaints) {
    const pinned = trees.get(complaint.treeHash);
    if (!pinned) {
      warnings.push({ code: 'no-tree', text: withoutTree(complaint.words).because });
      open.push(withoutTree(complaint.words));
      continue;
    }
    const lines = complaintLines(visit, complaint, pinned);
    drafts.push(...lines);
    // What is not concluded yet holds the coach as much as what is.
    if (complaint.closedHow !== 'cured') open.push(complaintMeanwhile(visit, complaint, pinned));
  }
  drafts = withItemLines(drafts, inspection, states);
  const hosts = new Map(drafts.map((draft) => [draft.id, draft]));
  drafts.push(...state.added.map((added) => addedDraft(added, states, hosts.get(added.of ?? ''))));

  const finished = drafts.map((draft) => finish(draft, state, inspection, warnings));
  const working = finished.filter(isInWork);
  const stages = stagesOf(working);
  const order = workOrder(stages);
  const place = ({ id }: PlanLine): number => (order.includes(id) ? order.indexOf(id) : order.length);
  const lines = [...finished].sort((a, b) => place(a) - place(b) || Number(b.danger) - Number(a.danger));
  const toDo = working.filter(({ proof }) => proof.doneAt === undefined);
  const hours = planHours(toDo);
  const band = costBand(
    hours.total,
    toDo.flatMap(({ parts }) => parts),
    state.bases,
  );
  // "Drive and book" is said by what a complaint found out; a line by itself permits nothing (INS-9).
  const saysNothing = ({ verdict }: Meanwhile): boolean =>
    verdict === 'drive-and-book' && visit.complaints.length === 0;
  const holding = lines.filter(({ proof }) => proof.state !== 'held').map(({ meanwhile }) => meanwhile);
  for (const text of notOpenedWarnings(inspection)) warnings.push({ code: 'not-opened', text });
  for (const { id, title, proof, decision } of lines) {
    if (proof.state === 'unproven' || proof.state === 'did-not-hold')
      warnings.push({
        code: 'unproven',
        line: id,
        text: `${title}: ${proof.state === 'unproven' ? 'done, and not proven yet' : 'done, and it did not help'}.`,
      });
    if (decision?.record !== undefined) warnings.push({ code: 'declined-danger', line: id, text: decision.record });
  }
  return {
    lines,
    stages,
    hours,
    ...(band ? { costBand: band } : {}),
    parts: partsList(lines, state, inspection),
    meanwhile: strictestOf([...heldBySheets(visit), ...holding, ...open].filter((each) => !saysNothing(each))),
    reminders: state.reminders,
    reminderProposals: reminderProposals(working, state.reminders),
    // As the closing counts them, also when what a line came from is no longer there.
    unproven: [...visit.complaints.flatMap(unprovenCauses), ...unprovenLines(state)].map((line) => ({
      line,
      title: lines.find(({ id }) => id === line)?.title ?? line,
    })),
    warnings,
    ...(state.closedOut ? { closedOut: state.closedOut } : {}),
  };
}

/** A line with what people said of it and what its access comes to. */
function finish(
  draft: DraftLine,
  state: PlanState,
  inspection: readonly InspectedItem[],
  warnings: PlanWarning[],
): PlanLine {
  const said = saidNow(draft, state, inspection);
  const place = said.place === undefined ? draft.place : said.place.trim() === '' ? null : said.place;
  const steps = draft.access === undefined ? [] : accessSteps(draft.states, draft.access, place, draft.id);
  const accessMinutes = stepMinutes(steps);
  if (draft.access !== undefined && steps.some(({ id }) => id.includes('@?')) && needsPlace(draft.states, draft.access))
    warnings.push({
      code: 'place-unknown',
      line: draft.id,
      text: `${draft.title}: say where, so that what is opened there counts once.`,
    });
  const minutes: Span = draft.accessIncluded
    ? [withoutAccess(draft.minutes[0], accessMinutes), withoutAccess(draft.minutes[1], accessMinutes)]
    : draft.minutes;
  const urgency = said.urgency?.urgency ?? draft.urgency;
  if (draft.danger && urgency !== 'now')
    warnings.push({
      code: 'lowered-danger',
      line: draft.id,
      text: `${draft.title}: it can hurt people, and was set to “${urgency}”${said.urgency?.by ? ` by ${said.urgency.by}` : ''}. What may be driven is not changed by that.`,
    });
  const band = costBand(minutes, draft.parts, state.bases);
  const decision = decisionOf({ ...draft, place }, said.decision);
  const taken = new Map(
    state.added.flatMap(({ of, title, line }) => (of === draft.id ? [[partKey(title), line] as const] : [])),
  );
  const proof = proofOf(draft.proof, said, decision);
  return {
    id: draft.id,
    from: draft.from,
    title: draft.title,
    plain: draft.plain,
    asked: draft.asked,
    place,
    why: [...draft.why, ...photoReasons(said)],
    hazard: draft.hazard,
    danger: draft.danger,
    ifLeft: draft.ifLeft,
    urgency,
    urgencyProposed: draft.urgency,
    ...(said.urgency ? { urgencySet: { at: said.urgency.at, by: said.urgency.by, words: said.urgency.words } } : {}),
    parts: draft.parts,
    minutes,
    accessSteps: steps,
    accessMinutes,
    accessKnown: draft.access !== undefined,
    ...(band ? { costBand: band } : {}),
    proposals: draft.alsoWhileOpen.map((what) => {
      const line = taken.get(partKey(what));
      const proposal = renewProposal(what, said.figures.get(what) ?? {}, {
        accessMinutes: draft.access === undefined ? null : accessMinutes,
        bases: state.bases,
        items: inspection,
        place,
      });
      return line === undefined ? proposal : { ...proposal, taken: line };
    }),
    ...(draft.rebuildWords === ''
      ? {}
      : {
          rebuild: rebuildChoice(
            draft.rebuildWords,
            draft.danger,
            said.figures.get(REBUILD) ?? {},
            state.bases.get('roadside'),
          ),
        }),
    meanwhile: draft.meanwhile,
    ...(decision ? { decision } : {}),
    proof,
  };
}

/** What the sheets of the visit hold the coach to, with or without a complaint. */
function heldBySheets(visit: VisitState): Meanwhile[] {
  const hold = holdOf(visit);
  if (!hold) return [];
  const said = meanwhileOf(hold.verdict, hold.because);
  return [hold.doNow === '' ? said : { ...said, doNow: hold.doNow }];
}

/** What people said of a line; work on a part that was found bad after it was done counts no more. */
function saidNow({ id, from }: DraftLine, state: PlanState, inspection: readonly InspectedItem[]): SaidOfLine {
  const said: SaidOfLine = state.said.get(id) ?? { figures: new Map() };
  const item = from.kind === 'inspection' ? inspection.find((each) => each.id === from.item) : undefined;
  if (!said.done || !item || (item.foundAt ?? item.at) <= (said.proven?.at ?? said.done.at)) return said;
  return {
    figures: said.figures,
    ...(said.decision ? { decision: said.decision } : {}),
    ...(said.urgency ? { urgency: said.urgency } : {}),
    ...(said.place === undefined ? {} : { place: said.place }),
    ...(said.photos ? { photos: said.photos } : {}),
  };
}

/** Pictures that were added to a line, as what it rests on. */
function photoReasons({ photos = [] }: SaidOfLine): Reason[] {
  return photos.map(({ photo, at, by }) => ({ text: 'photo', limits: [], photos: [photo], at, by }));
}

/** Own work of hours that include access; hours of nothing stay nothing. */
function withoutAccess(minutes: number, access: number): number {
  return minutes === 0 ? 0 : Math.max(Math.min(LEAST_WORK, minutes), minutes - access);
}

function decisionOf(draft: DraftLine, decision: SaidOfLine['decision']): LineDecision | undefined {
  if (!decision) return undefined;
  const { at, by, who, words } = decision;
  const record = decisionRecord(draft, decision);
  return {
    decision: decision.decision,
    at,
    by: who.trim() === '' ? by : who,
    words,
    ...(record === undefined ? {} : { record }),
  };
}

function proofOf(proof: LineProof, { done, proven }: SaidOfLine, decision: LineDecision | undefined): LineProof {
  if (done) {
    const now = { ...proof, doneAt: done.at, words: proven?.words ?? done.words };
    if (!proven) return { ...now, state: 'unproven' };
    return { ...now, state: proven.outcome, provenAt: proven.at };
  }
  return proof.doneAt === undefined && decision && decision.decision !== 'agreed'
    ? { ...proof, state: 'not-done' }
    : proof;
}

/** Access states that a line added by hand can be done in. */
export function accessChoices(trees: ReadonlyMap<string, PinnedTree>): readonly AccessState[] {
  return [...trees.values()][0]?.vocabulary.access ?? [];
}
