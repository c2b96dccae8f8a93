import { EVENT_VERSION, newEventId, type VisitEvent, type VisitEventBody } from '../../../shared/visit/index.ts';

/** Bodies as a log: one a second, by one writer. */
export function sheetLog(bodies: readonly VisitEventBody[], writer = 'aa', from = 0): VisitEvent[] {
  return bodies.map((body, i) => ({
    id: newEventId(1_000_000 + 1000 * (from + i), from + i, writer),
    v: EVENT_VERSION,
    at: new Date(1_577_836_800_000 + 1000 * (from + i)).toISOString(),
    by: 'Mina',
    ...body,
  }));
}

/** A visit without complaints begins so. */
export const OPENED: VisitEventBody = { kind: 'visit.opened', coach: 'Invented coach', demo: true };
