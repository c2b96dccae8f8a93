/** Pieces of which the schemas of events are made. */
import * as v from 'valibot';

export const eventId = v.pipe(v.string(), v.minLength(1), v.maxLength(120));
export const eventText = v.pipe(v.string(), v.maxLength(10_000));
export const eventNumber = v.pipe(v.number(), v.finite());
export const eventReading = v.strictObject({
  value: eventNumber,
  unit: v.string(),
  instrument: v.optional(v.string()),
});
/** What every event carries. */
export const eventHead = { id: eventId, v: v.number(), at: v.string(), by: v.pipe(v.string(), v.maxLength(80)) };
