/** A visit as derived from its events. */
import type { Layout } from '../knowledge/layout.ts';
import type { Role } from '../knowledge/tree.ts';
import type { CorrectionDone, Costs, StopAnswer } from '../planning/situation.ts';
import type { AirTestState } from './air-test/state.ts';
import type { ArrivalState } from './arrival/state.ts';
import type { Reading, RecordedValue, VisitEvent } from './events.ts';
import type { PlanState } from './plan/state.ts';
import type { InspectionState } from './inspection/state.ts';
import type { RoadState } from './road/state.ts';

/** Where the complaint machine stands; substates of `checking` are written with a dot. */
export const PHASES = [
  'triage',
  'checking.choosing',
  'checking.doing',
  'checking.judging',
  'halted',
  'concluded',
  'correcting',
  'proving',
  'closed',
] as const;
export type ComplaintPhase = (typeof PHASES)[number];

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
  /** What the person has already noticed has been asked. Logs of before this was asked say no. */
  readonly noticedAsked: boolean;
  /** Oldest first; findings of shared checks from other complaints included. */
  readonly trail: readonly TrailFinding[];
  /** Notes and photos that belong to no finding. */
  readonly notes: readonly string[];
  readonly photos: readonly string[];
  readonly access: readonly string[];
  /** Cause accepted as the probable one, or being corrected. */
  readonly concluded?: string;
  readonly corrections: readonly (CorrectionDone & {
    readonly parts: readonly string[];
    readonly alsoRenewed: readonly string[];
    readonly note?: string;
    readonly at: string;
    readonly minutes?: number;
  })[];
  readonly closedHow?: 'cured' | 'handed-over' | 'left-open';
  /** Of checks with their access, and of corrections where they were noted. */
  readonly minutesSpent: number;
}

/** An event that could not be used where it stands. It stays in the log. */
export interface IgnoredEvent {
  readonly event: VisitEvent;
  readonly why: string;
}

export interface VisitState {
  readonly coach: string;
  readonly demo: boolean;
  readonly openedAt: string;
  readonly phase: 'arrived' | 'working' | 'done';
  readonly who: Role;
  readonly tools?: readonly string[];
  readonly layout: Layout;
  /** Features that were asked and that nobody could answer: not asked again by itself. */
  readonly layoutNotKnown: readonly string[];
  readonly costs: Partial<Costs>;
  /** What was told and seen at the arrival. */
  readonly arrival: ArrivalState;
  readonly complaints: readonly ComplaintState[];
  /** What was said about the plan; `planOf` joins it with the rest. */
  readonly plan: PlanState;
  readonly airTest: AirTestState;
  readonly road: RoadState;
  readonly inspection: InspectionState;
  readonly ignored: readonly IgnoredEvent[];
  /** What the undo key takes back and what the redo key puts back. */
  readonly undo?: VisitEvent;
  readonly redo?: VisitEvent;
}
