import { assess, type Assessment } from '../../shared/planning/index.ts';
import {
  replay,
  situationOf,
  type ComplaintState,
  type PinnedTree,
  type VerdictOfComplaint,
  type VisitEvent,
  type VisitState,
} from '../../shared/visit/index.ts';

/** Where one complaint of a visit stands, for the yard. */
export interface ComplaintStanding {
  readonly id: string;
  readonly title: string;
  readonly words: string;
  readonly phase: ComplaintState['phase'];
  readonly closedHow?: ComplaintState['closedHow'];
  readonly verdict: Assessment['verdict']['verdict'];
}

/** Where each complaint of a visit stands, as replay and the planner have it; one whose tree is not here is left out. */
export function standingsOf(
  events: readonly VisitEvent[],
  trees: ReadonlyMap<string, PinnedTree>,
): readonly ComplaintStanding[] {
  const visit = replay(events, trees);
  return visit.complaints.flatMap((complaint) => {
    const pinned = trees.get(complaint.treeHash);
    if (!pinned) return [];
    const { verdict } = assess(situationOf(visit, complaint, pinned.tree, pinned.vocabulary)).verdict;
    const { id, words, phase, closedHow } = complaint;
    return [{ id, title: pinned.tree.title, words, phase, verdict, ...(closedHow ? { closedHow } : {}) }];
  });
}

/** The drive verdict of each complaint that is not closed. */
export function verdictsOf(visit: VisitState, trees: ReadonlyMap<string, PinnedTree>): VerdictOfComplaint[] {
  return visit.complaints.flatMap((complaint) => {
    const pinned = trees.get(complaint.treeHash);
    if (!pinned || complaint.phase === 'closed') return [];
    const { tree, vocabulary } = pinned;
    return [{ title: tree.title, verdict: assess(situationOf(visit, complaint, tree, vocabulary)).verdict }];
  });
}
