/**
 * What can happen to the profile of a coach. A profile is an append-only list of these, as a visit is: everything else is
 * derived from it by `profile.ts`. Facts in the past tense; ids, time and person arrive with the event.
 */
import * as v from 'valibot';
import type { LayoutAnswer } from '../knowledge/index.ts';
import { EventError, type EventHead } from '../visit/index.ts';

/** Version of this list; a log of a newer one is read only. */
export const COACH_EVENT_VERSION = 1;

/** A list is what a coach has at once of a choice that lets it. An older program keeps such an event and leaves it out. */
export type CoachValue = number | LayoutAnswer;

export type CoachEventBody =
  | { readonly kind: 'coach.opened'; readonly name: string; readonly demo: boolean }
  | { readonly kind: 'coach.named'; readonly name: string }
  | {
      readonly kind: 'coach.set';
      /** Id of `fields.ts`, or `layout.` and a feature of the vocabulary. */
      readonly field: string;
      readonly value: CoachValue;
      /** Unit of a figure as typed. */
      readonly unit?: string;
      /** Calendar day for which it was true, when that is not the day of the event: the day an odometer was read. */
      readonly on?: string;
    }
  /** Not known any more, or never was. */
  | { readonly kind: 'coach.cleared'; readonly field: string }
  | { readonly kind: 'event.taken-back'; readonly event: string }
  | { readonly kind: 'event.put-back'; readonly event: string };

export type CoachEvent = EventHead & CoachEventBody;

const id = v.pipe(v.string(), v.minLength(1), v.maxLength(120));
const name = v.pipe(v.string(), v.maxLength(200));
const head = { id, v: v.number(), at: v.string(), by: v.pipe(v.string(), v.maxLength(80)) };
const event = v.variant('kind', [
  v.strictObject({ ...head, kind: v.literal('coach.opened'), name, demo: v.boolean() }),
  v.strictObject({ ...head, kind: v.literal('coach.named'), name }),
  v.strictObject({
    ...head,
    kind: v.literal('coach.set'),
    field: id,
    value: v.union([
      v.pipe(v.string(), v.maxLength(2000)),
      v.pipe(v.number(), v.finite()),
      v.boolean(),
      v.pipe(v.array(id), v.minLength(2), v.maxLength(20)),
    ]),
    unit: v.optional(v.pipe(v.string(), v.maxLength(20))),
    on: v.optional(v.pipe(v.string(), v.isoDate())),
  }),
  v.strictObject({ ...head, kind: v.literal('coach.cleared'), field: id }),
  v.strictObject({ ...head, kind: v.literal('event.taken-back'), event: id }),
  v.strictObject({ ...head, kind: v.literal('event.put-back'), event: id }),
]);

/**
 * A log record as an event of a profile.
 *
 * @throws {EventError} `newer-version` when a newer program wrote it; `not-an-event` with the place and what was found.
 */
export function readCoachEvent(record: unknown): CoachEvent {
  const version = typeof record === 'object' && record !== null && 'v' in record ? record.v : undefined;
  if (typeof version === 'number' && version > COACH_EVENT_VERSION)
    throw new EventError(
      'newer-version',
      `This coach was written by a newer Droplight (log version ${version}; this one knows ${COACH_EVENT_VERSION}). It can be read here only in part. Bring this program up to date to go on with it.`,
    );
  const parsed = v.safeParse(event, record);
  if (!parsed.success) {
    const issue = parsed.issues[0];
    const where = issue.path?.map((item) => String(item.key)).join('.') ?? '';
    throw new EventError(
      'not-an-event',
      `A record of the coach cannot be used${where ? ` ("${where}")` : ''}: found ${issue.received}, wanted is ${issue.expected ?? issue.message}. It is kept in the file and left out here.`,
    );
  }
  // The schema above and the type say the same; the compiler cannot see that optional keys are left out, not undefined.
  return parsed.output as CoachEvent;
}
