import * as v from 'valibot';
import { ROLES } from '../knowledge/tree.ts';
import { arrivalEventSchemas } from './arrival/events.ts';
import { EVENT_VERSION, type VisitEvent } from './events.ts';
import { airTestEventSchemas } from './air-test/events.ts';
import { inspectionEventSchemas } from './inspection/events.ts';
import { migrate } from './migrations/index.ts';
import { planEventSchemas } from './plan/events.ts';
import { roadEventSchemas } from './road/events.ts';

/** A log line that cannot be taken. The message is for the user; the line itself stays in its file. */
export class EventError extends Error {
  readonly code: 'newer-version' | 'not-an-event';
  constructor(code: 'newer-version' | 'not-an-event', message: string) {
    super(message);
    this.name = 'EventError';
    this.code = code;
  }
}

const id = v.pipe(v.string(), v.minLength(1), v.maxLength(120));
const text = v.pipe(v.string(), v.maxLength(10_000));
const ids = v.array(id);
const number = v.pipe(v.number(), v.finite());
const worked = v.strictObject({
  calculation: id,
  observations: v.pipe(v.array(v.strictObject({ what: text, said: text })), v.maxLength(500)),
  uncertainty: v.pipe(number, v.minValue(0)),
});
const reading = v.strictObject({
  value: number,
  unit: v.string(),
  instrument: v.optional(v.string()),
  worked: v.optional(worked),
});
const value = v.variant('kind', [
  v.strictObject({ kind: v.literal('result'), result: id }),
  v.strictObject({ kind: v.literal('reading'), reading }),
  v.strictObject({ kind: v.literal('not-sure'), leaning: v.optional(id) }),
  v.strictObject({ kind: v.literal('cant-do'), why: v.optional(text) }),
]);

const head = { id, v: v.number(), at: v.string(), by: v.pipe(v.string(), v.maxLength(80)) };
const complaint = id;
const event = v.variant('kind', [
  ...airTestEventSchemas,
  ...roadEventSchemas,
  ...inspectionEventSchemas,
  ...arrivalEventSchemas(head),
  v.strictObject({
    ...head,
    kind: v.literal('visit.opened'),
    coach: text,
    demo: v.boolean(),
    coachId: v.optional(id),
  }),
  v.strictObject({ ...head, kind: v.literal('person.set'), who: v.picklist(ROLES), tools: v.optional(ids) }),
  v.strictObject({
    ...head,
    kind: v.literal('layout.set'),
    feature: id,
    value: v.nullable(v.union([v.string(), v.boolean(), v.pipe(ids, v.minLength(2))])),
  }),
  v.strictObject({
    ...head,
    kind: v.literal('cost.set'),
    cost: id,
    minutes: v.nullable(v.pipe(number, v.minValue(0))),
  }),
  v.strictObject({
    ...head,
    kind: v.literal('complaint.opened'),
    complaint,
    tree: id,
    treeHash: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/)),
    words: text,
  }),
  v.strictObject({
    ...head,
    kind: v.literal('stop.answered'),
    complaint,
    rule: id,
    answer: v.picklist(['yes', 'no', 'not-sure']),
  }),
  v.strictObject({ ...head, kind: v.literal('halt.acknowledged'), complaint }),
  v.strictObject({ ...head, kind: v.literal('noticed.asked'), complaint }),
  v.strictObject({ ...head, kind: v.literal('check.chosen'), complaint, check: id }),
  v.strictObject({ ...head, kind: v.literal('check.put-back'), complaint }),
  v.strictObject({ ...head, kind: v.literal('reading.taken'), complaint, check: id, reading }),
  v.strictObject({
    ...head,
    kind: v.literal('finding.recorded'),
    complaint,
    finding: id,
    check: id,
    value,
    site: v.optional(text),
    note: v.optional(text),
    photos: v.optional(ids),
    minutes: v.optional(v.pipe(number, v.minValue(0))),
  }),
  v.strictObject({
    ...head,
    kind: v.literal('finding.changed'),
    complaint,
    finding: id,
    value,
    site: v.optional(text),
  }),
  v.strictObject({ ...head, kind: v.literal('note.added'), complaint, finding: v.optional(id), text }),
  v.strictObject({ ...head, kind: v.literal('photo.added'), complaint, finding: v.optional(id), photo: id }),
  v.strictObject({ ...head, kind: v.literal('access.set'), complaint, open: ids }),
  v.strictObject({ ...head, kind: v.literal('conclusion.accepted'), complaint, cause: id }),
  v.strictObject({ ...head, kind: v.literal('checking.resumed'), complaint }),
  v.strictObject({ ...head, kind: v.literal('correction.started'), complaint, cause: id }),
  v.strictObject({
    ...head,
    kind: v.literal('correction.done'),
    complaint,
    cause: id,
    partSeen: v.picklist(['bad', 'good', 'unknown']),
    parts: v.array(text),
    alsoRenewed: v.array(text),
    minutes: v.optional(v.pipe(number, v.minValue(0))),
    note: v.optional(text),
  }),
  v.strictObject({
    ...head,
    kind: v.literal('proof.recorded'),
    complaint,
    outcome: v.picklist(['gone', 'still-there']),
    note: v.optional(text),
  }),
  v.strictObject({
    ...head,
    kind: v.literal('complaint.closed'),
    complaint,
    how: v.picklist(['cured', 'handed-over', 'left-open']),
  }),
  v.strictObject({ ...head, kind: v.literal('complaint.reopened'), complaint }),
  v.strictObject({ ...head, kind: v.literal('event.taken-back'), event: id }),
  v.strictObject({ ...head, kind: v.literal('event.put-back'), event: id }),
  ...planEventSchemas,
]);

/** Whether this version has events of a kind; those that it has not stay in their file (VIS-15). */
export function isKnownKind(kind: string): boolean {
  return KINDS.has(kind);
}

const KINDS: ReadonlySet<string> = new Set(event.options.map(({ entries }) => entries.kind.literal));

/**
 * A log record as an event, older versions brought up to date.
 *
 * @throws {EventError} `newer-version` when a newer program wrote it; `not-an-event` with the place and what was found.
 */
export function readEvent(record: unknown): VisitEvent {
  const version = typeof record === 'object' && record !== null && 'v' in record ? record.v : undefined;
  if (typeof version === 'number' && version > EVENT_VERSION) {
    throw new EventError(
      'newer-version',
      `This visit was written by a newer Droplight (log version ${version}; this one knows ${EVENT_VERSION}). It can be read here only in part. Bring this program up to date to go on with it.`,
    );
  }
  const parsed = v.safeParse(event, migrate(record));
  if (!parsed.success) {
    const issue = parsed.issues[0];
    const where = issue.path?.map((item) => String(item.key)).join('.') ?? '';
    throw new EventError(
      'not-an-event',
      `A record of the visit cannot be used${where ? ` ("${where}")` : ''}: found ${issue.received}, wanted is ${issue.expected ?? issue.message}. It is kept in the file and left out here.`,
    );
  }
  // The schema above and the type say the same; the compiler cannot see that optional keys are left out, not undefined.
  return parsed.output as VisitEvent;
}
