/** What is told and seen when the coach arrives, before anything is looked for. */
import * as v from 'valibot';
import { DRIP_COLOURS, DRIP_FEELS, DRIP_PLACES, DRIP_SIZES } from './drip-words.ts';
import type { DripColour, DripFeel, DripPlace, DripSize } from './drip-words.ts';
import { TRIP_TRAITS, WORK_AREAS, type TripTrait, type WorkArea } from './told-words.ts';

export type ArrivalEventBody =
  /** The profile that this visit belongs to; null = to none that is known here. The latest counts. */
  | { readonly kind: 'coach.linked'; readonly coachId: string | null }
  /** Something that was done to the coach lately, as told. */
  | {
      readonly kind: 'arrival.work-told';
      /** Unique in the visit. */
      readonly work: string;
      readonly area: WorkArea;
      readonly what: string;
      /** As told: "last week", "before the winter". */
      readonly when: string;
    }
  /** What the coach is to do next; the latest counts. */
  | {
      readonly kind: 'arrival.trip-told';
      readonly where: string;
      readonly distance?: { readonly value: number; readonly unit: 'mi' | 'km' };
      /** Calendar day, YYYY-MM-DD. */
      readonly leaves?: string;
      readonly traits: readonly TripTrait[];
    }
  /** The sheet under the coach was looked at in the morning, and nothing lay on it. */
  | { readonly kind: 'drip.none-seen' }
  | {
      readonly kind: 'drip.spot-seen';
      /** Unique in the visit. */
      readonly spot: string;
      readonly place: DripPlace;
      readonly colour: DripColour;
      readonly feel: DripFeel;
      readonly size: DripSize;
      readonly note: string;
      readonly photo?: string;
    };

const id = v.pipe(v.string(), v.minLength(1), v.maxLength(120));
const text = v.pipe(v.string(), v.maxLength(2000));
/** The ids of a table of words, as a picklist wants them. */
const idsOf = <I extends string>(table: readonly { readonly id: I }[]) => v.picklist(table.map((row) => row.id));

/** The same as schemas: `head` is what every event carries. */
export const arrivalEventSchemas = <H extends v.ObjectEntries>(head: H) =>
  [
    v.strictObject({ ...head, kind: v.literal('coach.linked'), coachId: v.nullable(id) }),
    v.strictObject({
      ...head,
      kind: v.literal('arrival.work-told'),
      work: id,
      area: idsOf(WORK_AREAS),
      what: text,
      when: text,
    }),
    v.strictObject({
      ...head,
      kind: v.literal('arrival.trip-told'),
      where: text,
      distance: v.optional(
        v.strictObject({
          value: v.pipe(v.number(), v.finite(), v.minValue(0)),
          unit: v.picklist(['mi', 'km']),
        }),
      ),
      leaves: v.optional(v.pipe(v.string(), v.isoDate())),
      traits: v.array(idsOf(TRIP_TRAITS)),
    }),
    v.strictObject({ ...head, kind: v.literal('drip.none-seen') }),
    v.strictObject({
      ...head,
      kind: v.literal('drip.spot-seen'),
      spot: id,
      place: idsOf(DRIP_PLACES),
      colour: idsOf(DRIP_COLOURS),
      feel: idsOf(DRIP_FEELS),
      size: idsOf(DRIP_SIZES),
      note: text,
      photo: v.optional(id),
    }),
  ] as const;
