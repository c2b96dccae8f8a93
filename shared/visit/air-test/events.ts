/** What can happen in the in-cab air test and the walk-round. */
import * as v from 'valibot';
import { eventHead, eventId, eventReading, eventText } from '../event-parts.ts';
import type { Reading } from '../reading.ts';

/** What the limits of the air test hang on. */
export interface AirTestSetup {
  /** Year of build; the warning of a coach built before March 1975 has another limit. */
  readonly builtYear: number;
  /** 1…12; matters for 1975 only. */
  readonly builtMonth?: number;
  readonly system: 'dual' | 'single';
  /** Spring chambers pop their knob out; older parking systems do not. */
  readonly springBrakes: boolean;
  /** Towed units with air brakes of their own. */
  readonly towedUnits: number;
}

export const AIR_ANSWERS = ['right', 'wrong', 'cant-do'] as const;
/** For a step without a figure: as it should be, not as it should be; for any step: it could not be done. */
export type AirAnswer = (typeof AIR_ANSWERS)[number];

export const WALK_STATES = ['right', 'wrong', 'not-looked'] as const;
export type WalkState = (typeof WALK_STATES)[number];

export type AirTestEventBody =
  | { readonly kind: 'air-test.begun'; readonly setup: AirTestSetup }
  /** The watch of a timed step was started; what runs is the time of this event. */
  | { readonly kind: 'air-test.timer-started'; readonly step: string }
  | {
      readonly kind: 'air-test.recorded';
      readonly step: string;
      readonly answer?: AirAnswer;
      /** Figure id of the step → as read. */
      readonly readings?: Readonly<Record<string, Reading>>;
      readonly note?: string;
    }
  | { readonly kind: 'walk-round.noted'; readonly item: string; readonly state: WalkState; readonly note?: string };

const setup = v.strictObject({
  builtYear: v.pipe(v.number(), v.integer(), v.minValue(1930), v.maxValue(2100)),
  builtMonth: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(12))),
  system: v.picklist(['dual', 'single']),
  springBrakes: v.boolean(),
  towedUnits: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(3)),
});

export const airTestEventSchemas = [
  v.strictObject({ ...eventHead, kind: v.literal('air-test.begun'), setup }),
  v.strictObject({ ...eventHead, kind: v.literal('air-test.timer-started'), step: eventId }),
  v.strictObject({
    ...eventHead,
    kind: v.literal('air-test.recorded'),
    step: eventId,
    answer: v.optional(v.picklist(AIR_ANSWERS)),
    readings: v.optional(v.record(eventId, eventReading)),
    note: v.optional(eventText),
  }),
  v.strictObject({
    ...eventHead,
    kind: v.literal('walk-round.noted'),
    item: eventId,
    state: v.picklist(WALK_STATES),
    note: v.optional(eventText),
  }),
] as const;
