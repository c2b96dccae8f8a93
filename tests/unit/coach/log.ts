import { COACH_EVENT_VERSION, type CoachEvent, type CoachEventBody } from '../../../shared/coach/index.ts';
import { newEventId } from '../../../shared/visit/index.ts';

/** Events of one writer, one after the other; the day is that of the event. */
export function coachLog(bodies: readonly CoachEventBody[], day = '2026-05-13', writer = 'aa'): CoachEvent[] {
  return bodies.map((body, i) => ({
    id: newEventId(1000 + i, i, writer),
    v: COACH_EVENT_VERSION,
    at: `${day}T08:00:00.000Z`,
    by: 'Mina',
    ...body,
  }));
}

export const OPENED: CoachEventBody = { kind: 'coach.opened', name: 'Invented coach 7', demo: true };

export const set = (
  field: string,
  value: string | number | boolean,
  more: { readonly unit?: string; readonly on?: string } = {},
): CoachEventBody => ({ kind: 'coach.set', field, value, ...more });
