import { evidenceLedger, withOdds, type LedgerLine } from '../inference/index.ts';
import { assess, beliefNow, type Assessment, type BeliefNow, type Situation } from '../planning/index.ts';
import { situationOf, type ComplaintState } from '../visit/index.ts';
import type { HandOverInput } from './input.ts';
import { TreeTexts } from './tree-text.ts';

/** How far the cause that a report names has got. */
export type Standing = 'proven' | 'unproven' | 'taken' | 'likeliest';

/** A complaint with what speaks for the cause that the report names, as it stood when that cause was settled on. */
export interface ComplaintCase {
  readonly complaint: ComplaintState;
  readonly texts: TreeTexts;
  /** As it stands now. */
  readonly situation: Situation;
  readonly assessment: Assessment;
  readonly standing: Standing;
  /** Cause id, or `unlisted`. */
  readonly cause: string;
  /** Null when the cause does not apply to this coach as it is described now, so that it has no odds. */
  readonly weighed: Weighed | null;
  /** Places that the findings point to for this cause (PLA-44), as it stood when it was settled on; empty when to none. */
  readonly places: readonly string[];
}

export interface Weighed {
  readonly lines: readonly LedgerLine[];
  /** Belief in the cause before any finding, and after those that were there when it was settled on. */
  readonly before: number;
  readonly after: number;
}

/** The complaints of a visit whose trees are here, as cases. */
export function casesOf({ visit, trees, learned }: HandOverInput): readonly ComplaintCase[] {
  return visit.complaints.flatMap((complaint) => {
    const pinned = trees.get(complaint.treeHash);
    if (!pinned) return [];
    const odds = learned?.get(complaint.id);
    const tree = odds ? withOdds(pinned.tree, odds) : pinned.tree;
    const at = (then: ComplaintState): Situation => situationOf(visit, then, tree, pinned.vocabulary);
    const situation = at(complaint);
    const assessment = assess(situation);
    const { cause, standing, then } = settledOn(complaint, assessment);
    const { leading } = then === complaint ? assessment : assess(at(then));
    return [
      {
        complaint,
        texts: new TreeTexts(pinned, complaint.treeHash),
        situation,
        assessment,
        standing,
        cause,
        weighed: weighedFor(cause, beliefNow(at(then))),
        places: leading.cause === cause ? leading.sites : [],
      },
    ];
  });
}

/** The cause that was corrected last and not in vain; else the one taken; else the likeliest now. */
function settledOn(
  complaint: ComplaintState,
  assessment: Assessment,
): { readonly cause: string; readonly standing: Standing; readonly then: ComplaintState } {
  const last = complaint.corrections.at(-1);
  if (last && last.proof !== 'still-there') {
    const before = new Set(last.findingsBefore);
    return {
      cause: last.cause,
      standing: last.proof === 'gone' ? 'proven' : 'unproven',
      // What was measured after the correction proves it, and says nothing about why it was chosen.
      then: {
        ...complaint,
        trail: complaint.trail.filter(({ id }) => before.has(id)),
        corrections: complaint.corrections.slice(0, -1),
      },
    };
  }
  return complaint.concluded === undefined
    ? { cause: assessment.leading.cause, standing: 'likeliest', then: complaint }
    : { cause: complaint.concluded, standing: 'taken', then: complaint };
}

function weighedFor(cause: string, { model, findings, excluded }: BeliefNow): Weighed | null {
  if (!model.causeIds.includes(cause) || excluded.has(cause)) return null;
  const { lines, before, after } = evidenceLedger(model, findings, cause, excluded);
  return { lines, before: shareOf(before), after: shareOf(after) };
}

/** Probability of log-odds in decibans. */
function shareOf(decibans: number): number {
  return 1 / (1 + 10 ** (-decibans / 10));
}

/** Least weight of a finding that lets a cause be named: below it the words are "hardly matters". Decibans. */
const SPEAKS = 1;

/** Whether nothing that was found speaks for the likeliest cause: then the starting odds alone would name it. */
export function nothingSpeaks({ standing, weighed }: ComplaintCase): boolean {
  return standing === 'likeliest' && !weighed?.lines.some(({ decibans }) => decibans >= SPEAKS);
}
