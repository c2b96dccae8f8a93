/** What `assess` says about a situation. Screens, the command line and the evaluation all read this. */
import type { Role, Verdict } from '../knowledge/tree.ts';
import type { Hold } from './situation.ts';

export interface CauseBelief {
  readonly cause: string;
  /** 0…1; all causes and `unlisted` together 1 within 1e-12. */
  readonly probability: number;
}

/** Why the drive verdict is what it is. */
export interface DriveVerdict {
  readonly verdict: Verdict;
  /** Rules in force, strictest first. */
  readonly fired: readonly FiredRule[];
  /** Belief in causes that can hurt somebody, together. */
  readonly dangerShare: number;
  /** Above this share "drive and book" is not offered. */
  readonly threshold: number;
  /** One sentence: what holds the verdict where it is. */
  readonly because: string;
  /** What to do now, in the user's words. */
  readonly doNow: string;
  /** Stop-rule questions not answered yet, in the order of the file. */
  readonly openQuestions: readonly string[];
  /** A sheet of the visit holds the coach at least so strictly, beside what the complaint says. */
  readonly hold?: Hold;
}

export interface FiredRule {
  readonly rule: string;
  readonly verdict: Verdict;
  readonly by:
    | { readonly kind: 'answer' }
    | { readonly kind: 'finding'; readonly finding: string; readonly check: string; readonly result: string };
}

/** One check that could be done next, with what it is worth. */
export interface CheckOption {
  readonly check: string;
  /** Minutes of the check itself, and of opening and closing for it from here. */
  readonly minutes: number;
  readonly accessMinutes: number;
  /**
   * What it is worth, minutes or money's worth, its own cost deducted; more than 0 when it pays. Where every order was worked out,
   * what the best plan with it first saves against acting now; else the estimate of PLA-39.
   */
  readonly saves: number;
  /** Expected saving if no check is made after it. */
  readonly savesAlone: number;
  /** Expected information about the causes, bits. */
  readonly bits: number;
  /** P(result) for each declared result, in file order. */
  readonly resultShares: readonly number[];
  /** Why it cannot be offered to this person now; absent = it can. */
  readonly blocked?: Blocked;
}

export type Blocked =
  | { readonly kind: 'who'; readonly needs: Role }
  | { readonly kind: 'tools'; readonly missing: readonly string[] }
  | { readonly kind: 'layout'; readonly feature: string; readonly known: boolean }
  | { readonly kind: 'requires' }
  | { readonly kind: 'done' }
  | { readonly kind: 'verdict' }
  | { readonly kind: 'triage' };

/** One finding as evidence for one cause against all others. */
export interface EvidenceLine {
  readonly finding: string;
  readonly check: string;
  /** Decibans: positive = for. Weighed in the order in which the findings were made. */
  readonly decibans: number;
  /** Belief in the cause had this finding not been made. */
  readonly without: number;
  /** The finding counts less because another of its group counts in full. */
  readonly overlaps: boolean;
}

export interface Conclusion {
  /** Cause id, or `unlisted`. */
  readonly cause: string;
  readonly probability: number;
  /** Places named by the findings that speak for it; empty when none. */
  readonly sites: readonly string[];
  readonly evidence: readonly EvidenceLine[];
  /** The check that would settle it; null when it has been done or there is none. */
  readonly settledBy: CheckOption | null;
  readonly settled: boolean;
  /** Other causes still worth naming: at least a third as likely, or dangerous and not ruled out. */
  readonly alsoOpen: readonly CauseBelief[];
  /** Always present: licensed help and local rules have the last word. */
  readonly caution: string;
  /** Why stop here: one sentence. */
  readonly because: string;
}

export type Advice =
  | { readonly kind: 'triage'; readonly rule: string }
  | { readonly kind: 'layout'; readonly feature: string }
  | { readonly kind: 'check'; readonly option: CheckOption; readonly reason: string }
  | { readonly kind: 'conclude'; readonly conclusion: Conclusion }
  | { readonly kind: 'hand-over'; readonly conclusion: Conclusion; readonly reason: string };

export interface Assessment {
  /** Most likely first; ties in the order of the file, `unlisted` last. */
  readonly belief: readonly CauseBelief[];
  readonly verdict: DriveVerdict;
  readonly advice: Advice;
  /** The best check that this person could do now, also when the advice is to conclude; null when none is left. */
  readonly nextCheck: { readonly option: CheckOption; readonly reason: string } | null;
  /** Every check of the tree: best first, blocked ones last. */
  readonly options: readonly CheckOption[];
  /** The leading cause as a conclusion, whether or not it is time to conclude. */
  readonly leading: Conclusion;
  /** Causes and checks that do not apply to this coach, with the feature that says so. */
  readonly leftOut: readonly { readonly kind: 'cause' | 'check'; readonly id: string; readonly feature: string }[];
  /** Doors to other complaints that a finding has opened. */
  readonly doors: readonly { readonly complaint: string; readonly when: string; readonly finding: string }[];
}
