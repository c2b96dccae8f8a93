/** What a visit comes to: what is done about it, why, in which order, and what has been agreed. Made by `plan-of.ts`. */
import type { CauseHazard, Verdict } from '../../knowledge/tree.ts';
import type { LifeModel, ReplaceOrWait } from '../../measuring/index.ts';
import type { Decision as Decided, Urgency } from './events.ts';

/** Lowest and highest, in the unit that the field names. */
export type Span = readonly [low: number, high: number];

/** Where a line comes from. */
export type LineOrigin =
  | { readonly kind: 'complaint'; readonly complaint: string; readonly cause: string }
  | { readonly kind: 'inspection'; readonly item: string }
  /** `of` is the line that opens the place; `what` the words of the proposal. */
  | { readonly kind: 'renew-while-open'; readonly of: string; readonly what: string }
  | { readonly kind: 'by-hand' };

/** One thing that was found or measured and speaks for the line. */
export interface Reason {
  /** The check or item, and what was found; a reading is beside it, in the unit typed, for the reader's units. */
  readonly text: string;
  readonly place?: string;
  readonly reading?: { readonly value: number; readonly unit: string };
  /** Limits that it was held against, ids of the vocabulary. */
  readonly limits: readonly string[];
  /** Names of stored photos. */
  readonly photos: readonly string[];
  /** Weight for the cause, in decibans on judged odds; absent outside complaints. */
  readonly decibans?: number;
  readonly at: string;
  readonly by: string;
}

/** One state that has to be opened, at one place of the coach: what lines can share. */
export interface AccessStep {
  /** State of the vocabulary, with the place where it is opened: "hub-open@left front". */
  readonly id: string;
  readonly state: string;
  readonly name: string;
  /** Place in words; empty for the coach as a whole. */
  readonly place: string;
  readonly openMinutes: number;
  readonly closeMinutes: number;
}

/** What a line costs; only when the person gave the labour rate. One unit of money, whatever it is. */
export interface CostBand {
  /** Own labour and the parts priced. Access is shared and stands in the plan's own band. */
  readonly low: number;
  readonly high: number;
  readonly ratePerHour: number;
  readonly partsCost: number;
  /** Parts without a price: not in the band. */
  readonly unpriced: readonly string[];
}

/** A figure of a calculation, what it is and where it is from. */
export interface Input {
  readonly id: string;
  readonly words: string;
  readonly value: number | null;
  readonly unit: string;
  readonly from: 'given' | 'judged' | 'access-tree';
}

/** Something to renew, look at or weigh while the place is open. */
export interface RenewProposal {
  readonly what: string;
  /** `renew`: the trade never puts it back. `look`: by inspection. `limit`: a safety part, its limit decides. `weigh`: by cost. */
  readonly rule: 'renew' | 'look' | 'limit' | 'weigh';
  readonly because: string;
  readonly inputs: readonly Input[];
  /** Empty unless `weigh` and every input is there. Half, once and twice the judged life: it is a guess. */
  readonly weighed: readonly { readonly life: LifeModel; readonly result: ReplaceOrWait }[];
  /** With the age unknown: the same for a new part and for one at its judged life, as bounds. */
  readonly bounds: readonly { readonly age: number; readonly result: ReplaceOrWait }[];
  /** Over the three lives; `depends` when they disagree. */
  readonly advice?: 'now' | 'wait' | 'no-clear-winner' | 'depends';
  /** What is missing or why no figure comes out, for the person. */
  readonly missing?: string;
  /** Line that took it into the plan. */
  readonly taken?: string;
}

/** Rebuild or replace: what the trade says, and the figures when the person gave them. */
export interface RebuildChoice {
  readonly words: string;
  readonly inputs: readonly Input[];
  readonly result?: {
    readonly rebuildCost: number;
    readonly replaceCost: number;
    /** Comeback of the rebuild at which both cost the same; above 1 = never. */
    readonly breakEvenComeback: number;
    readonly cheaper: 'rebuild' | 'replace' | 'no-clear-winner';
  };
  readonly missing?: string;
}

/** May the coach be driven before this is done? */
export interface Meanwhile {
  readonly verdict: Verdict;
  readonly because: string;
  readonly doNow: string;
}

/** What the customer said to a line. */
export interface LineDecision {
  readonly decision: Decided;
  readonly at: string;
  readonly by: string;
  /** Their words; may be empty. */
  readonly words: string;
  /** In plain words for the record when a danger line is not agreed to: what they were told, and what they decided. */
  readonly record?: string;
}

/**
 * Where the correction stands: still to do; being done; done and not proven; proven; done in vain; nothing to prove, because
 * the customer declined or deferred it.
 */
export type ProofState = 'to-do' | 'under-way' | 'unproven' | 'held' | 'did-not-hold' | 'not-done';

export interface LineProof {
  readonly state: ProofState;
  readonly steps: readonly string[];
  /** How long until the job counts as proven. */
  readonly wait: string;
  /** When the correction was done. */
  readonly doneAt?: string;
  /** When the proof was recorded, and the words with it. */
  readonly provenAt?: string;
  readonly words?: string;
}

export interface PlanLine {
  /** Stable over replays: `complaint:<complaint>:<cause>`, `item:<item>`, `line:<id of the event>`. */
  readonly id: string;
  readonly from: LineOrigin;
  /** What is done, in words of the trade. */
  readonly title: string;
  /** What is wrong, for the customer. */
  readonly plain: string;
  /** Complaint that asked for it, in the owner's words, or what the item is. */
  readonly asked: string;
  /** Place on the coach in words; null when nobody said. */
  readonly place: string | null;
  readonly why: readonly Reason[];
  readonly hazard: CauseHazard;
  readonly danger: boolean;
  /** What happens if it is left, and how fast. */
  readonly ifLeft: string;
  readonly urgency: Urgency;
  /** What the danger and the verdict say by themselves. */
  readonly urgencyProposed: Urgency;
  readonly urgencySet?: { readonly at: string; readonly by: string; readonly words: string };
  readonly parts: readonly string[];
  /** Own work without access, minutes. Judgement. */
  readonly minutes: Span;
  /** Outermost first; empty when nothing is opened or the tree does not say (`accessKnown`). */
  readonly accessSteps: readonly AccessStep[];
  /** Minutes to open and close all of its steps, if it were done alone. */
  readonly accessMinutes: number;
  /** False: the hours are counted whole, because the tree does not say what is opened. */
  readonly accessKnown: boolean;
  readonly costBand?: CostBand;
  readonly proposals: readonly RenewProposal[];
  readonly rebuild?: RebuildChoice;
  readonly meanwhile: Meanwhile;
  readonly decision?: LineDecision;
  readonly proof: LineProof;
}

/** What is done at one place, opened once. Stages in order; depth 0 is the coach as it stands. */
export interface Stage {
  readonly step: AccessStep | null;
  readonly depth: number;
  /** Lines done here, in order; ids. */
  readonly lines: readonly string[];
}

export interface PlanHours {
  /** Minutes of own work of all lines that are not declined or deferred. */
  readonly own: Span;
  /** Access of the whole plan, each place opened once. */
  readonly access: number;
  /** `own` and `access` together. */
  readonly total: Span;
  /** What the same lines would take one by one. */
  readonly apart: Span;
  /** What sharing saves. */
  readonly saved: number;
  /** Steps that more than one line uses, with their number of users. */
  readonly shared: readonly { readonly step: AccessStep; readonly lines: number }[];
}

export interface PlanWarning {
  readonly code: 'not-opened' | 'unproven' | 'place-unknown' | 'declined-danger' | 'lowered-danger' | 'no-tree';
  readonly text: string;
  readonly line?: string;
}

/** Something that identifies a part: to be measured or read before it is ordered. */
export interface Identity {
  readonly id: string;
  readonly ask: string;
  /** `text` for what is stamped or printed. */
  readonly kind: 'length' | 'text';
  readonly found: readonly {
    readonly place: string;
    readonly value: { readonly value: number; readonly unit: string } | string;
    readonly at: string;
    readonly by: string;
  }[];
}

export interface PartNeed {
  readonly line: string;
  readonly place: string;
}

export interface PartRow {
  /** Stable: the name in lower case, hyphenated. */
  readonly key: string;
  readonly name: string;
  readonly needs: readonly PartNeed[];
  readonly identity: readonly Identity[];
  /** What still decides the part: to be measured before ordering. */
  readonly measureFirst: readonly string[];
  /** Needed only if something is found; the words say what. */
  readonly onlyIf: boolean;
  /** `fitted`: every line that needs it is done. */
  readonly state: 'measure' | 'if' | 'order' | 'ordered' | 'here' | 'not-needed' | 'fitted';
  readonly price: number | null;
}

export interface PartsList {
  readonly rows: readonly PartRow[];
  readonly warnings: readonly string[];
}

export interface Reminder {
  readonly id: string;
  readonly what: string;
  /** ISO date without time. */
  readonly dueDate?: string;
  readonly dueMiles?: number;
  readonly line?: string;
  readonly done?: { readonly at: string; readonly by: string; readonly words: string };
}

/** A reminder that the corrections call for and that nobody has set yet. */
export interface ReminderProposal {
  readonly what: string;
  readonly afterMiles?: number;
  readonly line: string;
  readonly source: string;
}

/** How the visit was closed, when it was. */
export interface ClosedOut {
  readonly at: string;
  readonly by: string;
  /** Corrections that were left unproven, and why: said, not hidden. */
  readonly unproven: readonly { readonly line: string; readonly because: string }[];
  readonly words: string;
}

export interface Plan {
  /** In the order of work: by danger, then by access. */
  readonly lines: readonly PlanLine[];
  readonly stages: readonly Stage[];
  readonly hours: PlanHours;
  /** Labour of the whole plan with access and the priced parts; only with a labour rate. */
  readonly costBand?: CostBand;
  readonly parts: PartsList;
  /** The strictest of all lines that are not proven. */
  readonly meanwhile: Meanwhile | null;
  readonly reminders: readonly Reminder[];
  readonly reminderProposals: readonly ReminderProposal[];
  /** Corrections that are done without a proof that held: each needs a reason before the visit closes. */
  readonly unproven: readonly { readonly line: string; readonly title: string }[];
  readonly warnings: readonly PlanWarning[];
  readonly closedOut?: ClosedOut;
}
