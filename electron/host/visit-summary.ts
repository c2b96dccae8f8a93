import { effectiveEvents } from '../../shared/visit/index.ts';
import type { VisitSummary } from '../../shared/host/host-api.ts';
import type { EventRecord } from './visit-files.ts';

/** A visit as a row of the list; null when its opening is not in the log. */
export function visitSummaryOf(visit: string, records: readonly EventRecord[]): VisitSummary | null {
  const opened = records.find(({ kind }) => kind === 'visit.opened');
  if (!opened) return null;
  const coachId = coachOf(opened, records);
  return {
    id: visit,
    coach: typeof opened['coach'] === 'string' ? opened['coach'] : '',
    demo: opened['demo'] === true,
    openedAt: opened.at,
    lastAt: lastAt(records, opened.at),
    events: records.length,
    ...(coachId === undefined ? {} : { coachId }),
  };
}

/** Time of the newest record. */
export function lastAt(records: readonly EventRecord[], otherwise: string): string {
  return records.reduce((last, { at }) => (at > last ? at : last), otherwise);
}

/** The profile that a visit belongs to: the last link that still counts, else what the opening says. */
function coachOf(opened: EventRecord, records: readonly EventRecord[]): string | undefined {
  const named = (value: unknown): string | undefined =>
    typeof value === 'string' && /^[a-z0-9][a-z0-9-]{0,79}$/.test(value) ? value : undefined;
  const own = named(opened['coachId']);
  if (!records.some(({ kind }) => kind === 'coach.linked')) return own;
  const entries = records.map(({ id, kind, event, coachId }) => ({
    id,
    kind,
    coachId,
    ...(typeof event === 'string' ? { event } : {}),
  }));
  const link = effectiveEvents(entries).findLast(({ kind }) => kind === 'coach.linked');
  return link ? named(link.coachId) : own;
}
