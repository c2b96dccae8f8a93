/** What can happen on a road test. */
import * as v from 'valibot';
import { eventHead, eventId, eventReading, eventText } from '../event-parts.ts';
import type { Reading } from '../reading.ts';

/** One touch on the sheet: a row with its choice, a gauge with its figure, or a sign at which the drive ends. */
export type RoadEntry =
  | { readonly kind: 'choice'; readonly row: string; readonly choice: string }
  | { readonly kind: 'gauge'; readonly gauge: string; readonly reading: Reading }
  | { readonly kind: 'sign'; readonly sign: string };

export type RoadEventBody =
  | {
      readonly kind: 'road.begun';
      /** Unique in the visit. */
      readonly drive: string;
      readonly driver: string;
      /** Who writes; never the one who drives. */
      readonly writer: string;
      readonly route?: string;
    }
  | { readonly kind: 'road.noted'; readonly drive: string; readonly entry: RoadEntry }
  | { readonly kind: 'road.ended'; readonly drive: string; readonly note?: string }
  /** A sign that ended a drive was followed up: what was found and done. */
  | { readonly kind: 'road.sign-followed'; readonly drive: string; readonly sign: string; readonly found: string };

const person = v.pipe(v.string(), v.trim(), v.minLength(1), v.maxLength(80));
const entry = v.variant('kind', [
  v.strictObject({ kind: v.literal('choice'), row: eventId, choice: eventId }),
  v.strictObject({ kind: v.literal('gauge'), gauge: eventId, reading: eventReading }),
  v.strictObject({ kind: v.literal('sign'), sign: eventId }),
]);

export const roadEventSchemas = [
  v.strictObject({
    ...eventHead,
    kind: v.literal('road.begun'),
    drive: eventId,
    driver: person,
    writer: person,
    route: v.optional(eventText),
  }),
  v.strictObject({ ...eventHead, kind: v.literal('road.noted'), drive: eventId, entry }),
  v.strictObject({ ...eventHead, kind: v.literal('road.ended'), drive: eventId, note: v.optional(eventText) }),
  v.strictObject({
    ...eventHead,
    kind: v.literal('road.sign-followed'),
    drive: eventId,
    sign: eventId,
    found: v.pipe(eventText, v.trim(), v.minLength(1)),
  }),
] as const;
