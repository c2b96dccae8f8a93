/**
 * What can happen in a visit. A visit is an append-only list of these, one JSON object a line; everything else is
 * derived from it by `replay.ts`. Facts in the past tense. Nothing here is made inside the domain: ids, time and
 * person arrive with the event.
 */
import type { LayoutAnswer } from '../knowledge/layout-answer.ts';
import type { Role } from '../knowledge/tree.ts';
import type { StopAnswer } from '../planning/situation.ts';
import type { PlanEventBody } from './plan/events.ts';
import type { AirTestEventBody } from './air-test/events.ts';
import type { InspectionEventBody } from './inspection/events.ts';
import type { Reading } from './reading.ts';
import type { RoadEventBody } from './road/events.ts';

export type { Observation, Reading, Worked } from './reading.ts';
import type { ArrivalEventBody } from './arrival/events.ts';

/** Version of this list. A log of a newer version is opened read-only with a message; older ones are migrated. */
export const EVENT_VERSION = 1;

/** What every event carries. */
export interface EventHead {
  /** Unique in the visit, made by the writer: time-ordered, so that two writers' files merge into one order. */
  readonly id: string;
  readonly v: number;
  /** ISO 8601 with offset. For the report and the order only; never for a decision. */
  readonly at: string;
  /** Who did it: a free name, may be empty. */
  readonly by: string;
}

/** What was recorded as the outcome of a check. */
export type RecordedValue =
  | { readonly kind: 'result'; readonly result: string }
  | { readonly kind: 'reading'; readonly reading: Reading }
  | { readonly kind: 'not-sure'; readonly leaning?: string }
  | { readonly kind: 'cant-do'; readonly why?: string };

export type VisitEventBody =
  | AirTestEventBody
  | RoadEventBody
  | InspectionEventBody
  | ArrivalEventBody
  | {
      readonly kind: 'visit.opened';
      readonly coach: string;
      readonly demo: boolean;
      /** Profile of the coach, when there was one; `coach.linked` may say so later. */
      readonly coachId?: string;
    }
  /** Who works now and what they have; holds until changed. `tools` undefined = what the role usually has. */
  | { readonly kind: 'person.set'; readonly who: Role; readonly tools?: readonly string[] }
  /** A layout answer about the coach; null says that nobody knows. */
  | { readonly kind: 'layout.set'; readonly feature: string; readonly value: LayoutAnswer | null }
  | { readonly kind: 'cost.set'; readonly cost: string; readonly minutes: number | null }
  | {
      readonly kind: 'complaint.opened';
      /** Unique in the visit. */
      readonly complaint: string;
      readonly tree: string;
      /** Content hash of the tree and vocabulary as kept beside the visit. */
      readonly treeHash: string;
      /** The owner's words. */
      readonly words: string;
    }
  | { readonly kind: 'stop.answered'; readonly complaint: string; readonly rule: string; readonly answer: StopAnswer }
  /** The person has read a halt and goes on with what can be done where the coach stands. */
  | { readonly kind: 'halt.acknowledged'; readonly complaint: string }
  /** What the person has already noticed was asked, whatever came of it; it is not asked again by itself. */
  | { readonly kind: 'noticed.asked'; readonly complaint: string }
  | { readonly kind: 'check.chosen'; readonly complaint: string; readonly check: string }
  | { readonly kind: 'check.put-back'; readonly complaint: string }
  /** A reading was taken and is being judged: not yet a finding. */
  | { readonly kind: 'reading.taken'; readonly complaint: string; readonly check: string; readonly reading: Reading }
  | {
      readonly kind: 'finding.recorded';
      readonly complaint: string;
      /** Unique in the visit. */
      readonly finding: string;
      readonly check: string;
      readonly value: RecordedValue;
      readonly site?: string;
      readonly note?: string;
      readonly photos?: readonly string[];
      /** Minutes really spent, when known; the check's own minutes otherwise. */
      readonly minutes?: number;
    }
  /** An old answer was changed; it keeps its place in the trail. */
  | {
      readonly kind: 'finding.changed';
      readonly complaint: string;
      readonly finding: string;
      readonly value: RecordedValue;
      readonly site?: string;
    }
  | { readonly kind: 'note.added'; readonly complaint: string; readonly finding?: string; readonly text: string }
  | { readonly kind: 'photo.added'; readonly complaint: string; readonly finding?: string; readonly photo: string }
  /** The set of open access states, as it is now. */
  | { readonly kind: 'access.set'; readonly complaint: string; readonly open: readonly string[] }
  | { readonly kind: 'conclusion.accepted'; readonly complaint: string; readonly cause: string }
  | { readonly kind: 'checking.resumed'; readonly complaint: string }
  | { readonly kind: 'correction.started'; readonly complaint: string; readonly cause: string }
  | {
      readonly kind: 'correction.done';
      readonly complaint: string;
      readonly cause: string;
      readonly partSeen: 'bad' | 'good' | 'unknown';
      readonly parts: readonly string[];
      readonly alsoRenewed: readonly string[];
      readonly minutes?: number;
      readonly note?: string;
    }
  | {
      readonly kind: 'proof.recorded';
      readonly complaint: string;
      readonly outcome: 'gone' | 'still-there';
      readonly note?: string;
    }
  | {
      readonly kind: 'complaint.closed';
      readonly complaint: string;
      readonly how: 'cured' | 'handed-over' | 'left-open';
    }
  | { readonly kind: 'complaint.reopened'; readonly complaint: string }
  /** Takes back one earlier event; `event.put-back` takes that back. Any event but visit.opened and these two. */
  | { readonly kind: 'event.taken-back'; readonly event: string }
  | { readonly kind: 'event.put-back'; readonly event: string }
  | PlanEventBody;

export type VisitEvent = EventHead & VisitEventBody;
export type VisitEventKind = VisitEventBody['kind'];
/** The event of one kind. */
export type EventOf<K extends VisitEventKind> = EventHead & Extract<VisitEventBody, { kind: K }>;
