/** What can happen in the inspection. */
import * as v from 'valibot';
import { eventHead, eventId, eventNumber, eventReading, eventText } from '../event-parts.ts';
import type { Reading } from '../reading.ts';

export const INSPECTION_STATES = ['not-opened', 'good', 'watch', 'bad'] as const;
/** `not-opened`: it belongs to the inspection and nobody has opened it yet. */
export type InspectionItemState = (typeof INSPECTION_STATES)[number];

export interface InspectionReading {
  /** Quantity id: `quantities.ts`; other words are kept as they are. */
  readonly what: string;
  readonly reading: Reading;
  /** Limit id of the vocabulary that it was held against. */
  readonly limit?: string;
}

export type InspectionEventBody =
  | {
      readonly kind: 'inspection.recorded';
      /** Unique in the visit; the same entry again changes it. */
      readonly entry: string;
      readonly item: string;
      /** Words, such as "left front". */
      readonly site: string;
      readonly state: InspectionItemState;
      /** Added to those that are there; the same quantity again takes its place. */
      readonly readings?: readonly InspectionReading[];
      /** What the limits hang on, such as the chamber's type: fact id → value. */
      readonly facts?: Readonly<Record<string, string>>;
      readonly note?: string;
      readonly photos?: readonly string[];
    }
  /** How a round of temperatures was taken; without it the ends are not compared. */
  | {
      readonly kind: 'inspection.round';
      readonly what: string;
      readonly minutes: number;
      readonly sameSpot: boolean;
      /** Of the surface aimed at, 0…1. */
      readonly emissivity: number;
    };

const reading = v.strictObject({ what: eventId, reading: eventReading, limit: v.optional(eventId) });

export const inspectionEventSchemas = [
  v.strictObject({
    ...eventHead,
    kind: v.literal('inspection.recorded'),
    entry: eventId,
    item: eventId,
    site: v.pipe(v.string(), v.maxLength(80)),
    state: v.picklist(INSPECTION_STATES),
    readings: v.optional(v.array(reading)),
    facts: v.optional(v.record(eventId, v.pipe(v.string(), v.maxLength(80)))),
    note: v.optional(eventText),
    photos: v.optional(v.array(eventId)),
  }),
  v.strictObject({
    ...eventHead,
    kind: v.literal('inspection.round'),
    what: eventId,
    minutes: v.pipe(eventNumber, v.minValue(0), v.maxValue(600)),
    sameSpot: v.boolean(),
    emissivity: v.pipe(eventNumber, v.minValue(0), v.maxValue(1)),
  }),
] as const;
