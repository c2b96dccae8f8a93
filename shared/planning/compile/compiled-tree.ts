/** A complaint tree as a decision tree on paper: plain data, every text ready to print. */
import type { Layout } from '../../knowledge/layout.ts';
import type { LayoutAnswer } from '../../knowledge/layout-answer.ts';
import type { Role, Verdict } from '../../knowledge/tree.ts';

export interface CompiledTree {
  readonly complaint: string;
  readonly title: string;
  readonly version: number;
  readonly who: Role;
  /** What was known of the coach at the start. */
  readonly layout: Layout;
  /** Parents before children; `nodes[0]` is the start. Numbered in the order in which they are read. */
  readonly nodes: readonly CompiledNode[];
  /** Branches reached less often than this were not followed. */
  readonly threshold: number;
  /** Share given to "cannot be done, or not sure" at each check. Judgement. */
  readonly cannotShare: number;
  /** Probability of all leaves that say "continue in the program"; 1 less this ends on paper. */
  readonly cutOff: number;
}

export type CompiledNode = Step | Leaf;

interface Reached {
  /** 1, 2, 3 … in reading order; also the index in `nodes` plus 1. */
  readonly number: number;
  /**
   * Probability of getting here. Leaves together are 1 within 1e-12. Nobody knows how often a stop rule applies, so the
   * shares hold for coaches on which none does, and a leaf behind such an answer has 0.
   */
  readonly reach: number;
  readonly drive: DriveLine;
}

/** The drive verdict at a node. */
export interface DriveLine {
  readonly verdict: Verdict;
  readonly doNow: string;
  readonly because: string;
  /** A rule that halts the walk is in force: it is said before anything else. */
  readonly halts: boolean;
}

/** Something to ask or look at, with a branch for every answer. */
export interface Step extends Reached {
  readonly kind: 'step';
  readonly ask: Ask;
  readonly branches: readonly Branch[];
}

export type Ask =
  | { readonly kind: 'triage'; readonly rule: string; readonly text: string }
  | { readonly kind: 'layout'; readonly feature: string; readonly text: string }
  | {
      readonly kind: 'check';
      readonly check: string;
      readonly text: string;
      /** Read before the check is done. */
      readonly cautions: readonly string[];
      readonly minutes: number;
      readonly accessMinutes: number;
      readonly reason: string;
    };

export interface Branch {
  readonly answer: Answer;
  readonly label: string;
  /** P(this answer | the step is reached). */
  readonly share: number;
  /** `number` of the node it leads to. */
  readonly to: number;
}

export type Answer =
  | { readonly kind: 'stop'; readonly answer: 'yes' | 'no' | 'not-sure' }
  | { readonly kind: 'layout'; readonly value: LayoutAnswer }
  | { readonly kind: 'layout-unknown' }
  | { readonly kind: 'result'; readonly result: string }
  /** Could not be done, or looked and could not say: carries no weight either way. */
  | { readonly kind: 'cannot' };

/** Where a path on paper ends. Every leaf carries probable cause, next test and caution. */
export interface Leaf extends Reached {
  readonly kind: 'leaf';
  /**
   * `conclude`, `hand-over`: as the program would. `continue`: reached too seldom to be printed further. `stop`: a stop
   * rule was answered yes or not sure.
   */
  readonly end: 'conclude' | 'hand-over' | 'continue' | 'stop';
  readonly cause: NamedCause;
  /** Other causes that are still worth naming. */
  readonly alsoOpen: readonly NamedCause[];
  readonly nextTest: NextTest;
  readonly caution: string;
  readonly because: string;
}

export interface NamedCause {
  readonly cause: string;
  readonly name: string;
  readonly probability: number;
}

export type NextTest =
  | {
      readonly kind: 'check';
      readonly check: string;
      readonly text: string;
      readonly who: Role;
      readonly cautions: readonly string[];
    }
  /** The cause is settled: what proves the correction. */
  | { readonly kind: 'proof'; readonly steps: readonly string[]; readonly wait: string }
  /** No check of this tree is left for it. */
  | { readonly kind: 'look-further'; readonly text: string };
