/**
 * The knowledge of one kind of complaint, as the rest of the program sees it: read, checked, shared checks filled in.
 * `read-tree.ts` makes it from `tree.yaml`; nothing else constructs one outside tests.
 */
import type { CalculationId } from '../measuring/index.ts';
import type { Blocks } from './blocks.ts';

/** Features of a coach that decide whether something applies: feature → values that fit. All features must fit, any value. */
export type When = Readonly<Record<string, readonly LayoutValue[]>>;
/** A layout answer: a word of the vocabulary, or yes/no. */
export type LayoutValue = string | boolean;

/** The worst that is likely when a cause is ignored. `danger` = people can be hurt. */
export type CauseHazard = 'none' | 'nuisance' | 'damage' | 'danger';

/** Least qualified person who may do a check alone, from least to most. */
export const ROLES = ['owner-no-tools', 'owner-basic-tools', 'apprentice', 'mechanic'] as const;
export type Role = (typeof ROLES)[number];

/** An owner looks and decides whether to drive; correcting is left to others. */
export function isOwner(who: Role): boolean {
  return who === 'owner-no-tools' || who === 'owner-basic-tools';
}

/** Drive verdicts from strictest to mildest. */
export const VERDICTS = ['stay-put', 'creep-to-safe-place', 'drive-and-book'] as const;
export type Verdict = (typeof VERDICTS)[number];

/** What can hurt somebody while a check is done. */
export const CHECK_HAZARDS = [
  'lifts',
  'under',
  'rolls',
  'runs',
  'hot',
  'pressure',
  'spring',
  'fuel',
  'electric',
  'dust',
  'road',
] as const;
export type CheckHazard = (typeof CHECK_HAZARDS)[number];

/** A check is done once, or at each of these places. */
export const SITE_KINDS = ['wheel-end', 'axle', 'side', 'bank', 'cylinder', 'air-spring'] as const;
export type SiteKind = (typeof SITE_KINDS)[number];

/** The cause that every tree has without naming it: something that the tree does not list. */
export const UNLISTED = 'unlisted';

export interface Correction {
  /** What is done, in words of the trade. */
  readonly does: string;
  /** Generic part names. */
  readonly parts: readonly string[];
  /** Low and high labour hours for a competent independent workshop, access included. Judgement. */
  readonly hours: readonly [number, number];
  /** What is sensibly renewed while it is apart. */
  readonly alsoWhileOpen: readonly string[];
  readonly rebuildOrReplace: string;
  /** Access state in which the correction is done, when a check shares it; its opening cost is then saved if it is open. */
  readonly access?: string;
}

export interface Cause {
  readonly id: string;
  readonly name: string;
  /** One sentence for a customer. */
  readonly plain: string;
  /** Relative frequency given this complaint; any positive number. Judgement. */
  readonly weight: number;
  /** Weights that hold in its place once a feature of the coach is known; the first that fits counts. Judgement. */
  readonly weightIf?: readonly { readonly when: When; readonly weight: number }[];
  readonly hazard: CauseHazard;
  /** How fast it gets there. */
  readonly urgency: string;
  /** No single look proves it: it is what is left when its rivals have been looked at. */
  readonly byExclusion: boolean;
  readonly when: When;
  /** `when` in words; empty when it applies to every coach. */
  readonly appliesTo: string;
  readonly correction: Correction;
}

export interface Result {
  readonly id: string;
  readonly label: string;
  /** What was found lies at one place, and the words do not say which: recording it asks for the place. Absent = it does not. */
  readonly where?: true;
  /** How an owner says it unasked; `factsIn` looks for these. Absent = nobody has written any. */
  readonly says?: readonly string[];
  /** Measuring checks: [low, high) in the check's unit; null = open-ended. Null as a whole = a state, not a band. */
  readonly range: readonly [number | null, number | null] | null;
}

export interface Measure {
  /** Unit id of `shared/units`. The ranges are in this unit. */
  readonly unit: string;
  /** What exactly is read: "at the spring port, tank at cut-out". May be empty. */
  readonly of: string;
  /** Instrument id of the vocabulary; its uncertainty spreads readings near a limit. */
  readonly instrument: string;
}

export interface Prerequisite {
  readonly check: string;
  readonly results: readonly string[];
}

/** A calculation of `shared/measuring`, named by a check. */
export interface CheckCalculation {
  readonly use: CalculationId;
  /** Settings of the calculation that the check fixes. */
  readonly set: Readonly<Record<string, string>>;
}

export interface Check {
  readonly id: string;
  readonly name: string;
  /** Id of the shared check this one is an instance of; findings of it count in every tree of the visit that has it. */
  readonly sharedAs?: string;
  readonly who: Role;
  /** Free words; empty = none. */
  readonly tools: readonly string[];
  /** For someone who has done it before, access not included. */
  readonly minutes: number;
  /** Access state id of the vocabulary. */
  readonly access: string;
  readonly when: When;
  readonly appliesTo: string;
  readonly hazards: readonly CheckHazard[];
  readonly site?: SiteKind;
  /** Evidence group: checks of one tree that look at the same physical fact. */
  readonly group?: string;
  /** Sensible only after one of these; empty = always. */
  readonly requires: readonly Prerequisite[];
  /** Causes for which this check ends the argument. */
  readonly settles: readonly string[];
  readonly cautions: readonly string[];
  readonly steps: readonly string[];
  /** Seconds a timed test runs; absent = not timed. */
  readonly timerS?: number;
  /** Why it can come out otherwise the next time, the cause being the same; absent = the same again. Practice draws it anew. */
  readonly varies?: string;
  /** Limit ids of the vocabulary that the bands rest on. */
  readonly limits: readonly string[];
  /** Present for a measuring check. */
  readonly measure?: Measure;
  /** The calculation that makes the reading from raw observations; absent = the reading is read as it is. */
  readonly calculation?: CheckCalculation;
  /** At least two, in the order of the file. */
  readonly results: readonly Result[];
  /**
   * P(result | cause), judgement: rows = causes in the order of `Tree.causes`, columns = `results`; each row sums to 1
   * within 1e-9. `unlisted` has no row: `shared/inference` derives it.
   */
  readonly likelihood: readonly (readonly number[])[];
  /** Pictures beside tree.yaml that explain this check. */
  readonly pictures: readonly Picture[];
}

export interface Picture {
  /** File name inside the tree's `pictures/` folder. */
  readonly file: string;
  readonly title: string;
  /** Text alternative; never empty. */
  readonly alt: string;
  /** Results it explains; empty = the check as a whole. */
  readonly results: readonly string[];
}

export interface StopRule {
  readonly id: string;
  readonly verdict: Verdict;
  /** The condition in words. */
  readonly when: string;
  readonly why: string;
  /** A yes/no question for somebody who is not a mechanic; yes = the rule applies. */
  readonly ask: string;
  /** What to do at once when it fires; empty = the general advice of the verdict. */
  readonly now: string;
  /** Causes the rule stands guard over; may be empty. */
  readonly covers: readonly string[];
  /** Any of these results applies the rule without asking. */
  readonly firedBy: readonly Prerequisite[];
}

export interface Proof {
  /** Cause ids, or `*` for any correction of this complaint. */
  readonly after: string;
  readonly steps: readonly string[];
  /** How long until the job counts as proven. */
  readonly wait: string;
  readonly minutes: number;
  readonly access: string;
  /** P(it shows the complaint | the fault is still there) and P(it shows none | the fault is gone). Judgement. */
  readonly sensitivity: number;
  readonly specificity: number;
}

/** "Look there as well": a sign that the fault may belong to another complaint. */
export interface Door {
  readonly complaint: string;
  readonly when: string;
  readonly firedBy: readonly Prerequisite[];
}

export interface TeachingStep {
  readonly check: string;
  /** Why an instructor takes it here. */
  readonly why: string;
}

export interface Confusion {
  /** Markdown: what it is confused with and how to tell. */
  readonly text: string;
  readonly complaint?: string;
}

export interface Tree {
  readonly id: string;
  /** Counts up at each change of meaning; the content hash tells versions apart for certain. */
  readonly version: number;
  readonly title: string;
  /** How owners say it. */
  readonly phrases: readonly string[];
  /** Layout that the complaint as a whole supposes. */
  readonly when: When;
  readonly confusedWith: readonly Confusion[];
  /** Markdown: what is inside and outside. */
  readonly boundary: string;
  /** Prior share of `unlisted`, 0 < share < 0.5. Judgement. */
  readonly unlistedShare: number;
  readonly causes: readonly Cause[];
  readonly checks: readonly Check[];
  readonly teaching: readonly TeachingStep[];
  readonly stopRules: readonly StopRule[];
  readonly proofs: readonly Proof[];
  readonly leadsTo: readonly Door[];
  /** Parts often thrown at it in vain. */
  readonly wrongDiagnoses: readonly string[];
  /** Lint exceptions of the author: rule code, place and reason. */
  readonly exceptions: readonly LintException[];
}

export interface LintException {
  readonly rule: string;
  /** Id of the cause, check, stop rule … that the exception is for. */
  readonly at: string;
  readonly why: string;
}

/** A text of the tree after Markdown has been read. */
export type { Blocks };
