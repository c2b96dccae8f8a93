/** A visit as derived from its events. */
import type { Finding } from '../inference/finding.ts';
import type { Layout } from '../knowledge/layout.ts';
import type { Role } from '../knowledge/tree.ts';
import type { Costs, CorrectionDone, StopAnswer } from '../planning/situation.ts';
import type { RecordedValue, Reading, VisitEvent } from './events.ts';

/** Where the complaint machine stands. `checking` and below are written with a dot. */
export type ComplaintPhase =
  | 'triage'
  | 'checking.choosing'
  | 'checking.doing'
  | 'checking.judging'
  | 'halted'
  | 'concluded'
  | 'correcting'
  | 'proving'
  | 'closed';

/** A finding with everything the visit knows of it. */
export interface TrailFinding {
  readonly id: string;
  readonly check: string;
  /** As recorded, in the unit typed. */
  readonly value: RecordedValue;
  readonly site?: string;
  readonly notes: readonly string[];
  readonly photos: readonly string[];
  readonly at: string;
  readonly by: string;
  readonly who: Role;
  readonly minutes: number;
  /** Complaint in which it was recorded, when that is another one of the visit. */
  readonly from?: string;
  /** Set after a correction that did not end the complaint: to be asked again before it counts. */
  readonly stale: boolean;
}

export interface ComplaintState {
  readonly id: string;
  readonly tree: string;
  readonly treeHash: string;
  readonly words: string;
  readonly phase: ComplaintPhase;
  /** Check being done or judged. */
  readonly check?: string;
  /** Reading being judged. */
  readonly reading?: Reading;
  readonly stopAnswers: Readonly<Record<string, StopAnswer>>;
  readonly haltAcknowledged: boolean;
  /** Oldest first; findings of shared checks from other complaints included. */
  readonly trail: readonly TrailFinding[];
  readonly access: readonly string[];
  readonly concluded?: string;
  readonly corrections: readonly CorrectionDone[];
  readonly closedHow?: 'cured' | 'handed-over' | 'left-open';
  readonly minutesSpent: number;
}

export interface VisitState {
  readonly coach: string;
  readonly demo: boolean;
  readonly openedAt: string;
  readonly who: Role;
  readonly tools?: readonly string[];
  readonly layout: Layout;
  readonly costs: Partial<Costs>;
  readonly complaints: readonly ComplaintState[];
  /** Newest event that can be taken back, and newest that can be put back; what the undo key acts on. */
  readonly undo?: VisitEvent;
  readonly redo?: VisitEvent;
}

/** Findings of a trail as inference takes them: current, converted to the check's unit. */
export type StandingFindings = readonly Finding[];
