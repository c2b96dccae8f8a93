import { join } from 'node:path';
import { COACH_EVENT_VERSION, visitRecord } from '../../shared/coach/index.ts';
import {
  HostError,
  logCards,
  type CoachSummary,
  type HostAnswer,
  type HostMethod,
  type HostRequest,
  type PastVisit,
  type VisitSummary,
} from '../../shared/host/host-api.ts';
import {
  effectiveEvents,
  EventError,
  readEvent,
  type VisitEvent,
  type VisitEventBody,
} from '../../shared/visit/index.ts';
import { LogCards, sideBySide } from './log-cards.ts';
import { refuseNewerEvents, refuseNewerLog } from './newer.ts';
import type { EventRecord, LogFiles } from './visit-files.ts';
import { lastAt } from './visit-summary.ts';

type CoachMethod = Extract<HostMethod, `coaches.${string}`>;
type CoachCalls = { readonly [M in CoachMethod]: (request: HostRequest<M>) => Promise<HostAnswer<M>> };

interface CoachCallsOptions {
  readonly dataFolder: string;
  readonly coaches: LogFiles;
  readonly version: string;
  readonly visits: LogFiles;
  readonly visitCards: LogCards<VisitSummary>;
}

/** Events that a visit's record is made from; the others need not be read for it. */
const RECORD_KINDS: ReadonlySet<string> = new Set<VisitEventBody['kind']>([
  'complaint.opened',
  'complaint.closed',
  'complaint.reopened',
  'correction.done',
  'proof.recorded',
  'finding.recorded',
  'finding.changed',
  'inspection.recorded',
  'air-test.begun',
  'air-test.recorded',
  'road.begun',
  'road.noted',
  'road.ended',
  'event.taken-back',
  'event.put-back',
]);

/** The calls about coaches: `<data>/coaches/<coach>/events-<device>.jsonl`, written and read as visits are. */
export function coachCalls({ dataFolder, coaches, version, visits, visitCards }: CoachCallsOptions): CoachCalls {
  const cards = new LogCards({
    path: join(dataFolder, 'cache', 'coaches.json'),
    version,
    files: coaches,
    schema: logCards.coach,
    cardOf: coachSummaryOf,
  });
  return {
    'coaches.list': async () => {
      const { cards: summaries, notices } = await cards.all();
      return { coaches: summaries.sort(byName), notices };
    },
    'coaches.create': async ({ coach, first }) => {
      if (first.kind !== 'coach.opened')
        throw new HostError({ code: 'bad-request', message: 'A coach begins with its opening. Nothing was written.' });
      refuseNewerEvents([first], COACH_EVENT_VERSION);
      await coaches.create(coach, first);
      return { coach };
    },
    'coaches.read': async ({ coach }) => {
      const { records, notices } = await coaches.read(coach);
      const newer = records.some((record) => record.v > COACH_EVENT_VERSION);
      const message =
        'Part of this coach was written by a newer Droplight. What this one understands is shown; nothing can be added until the program is up to date.';
      return {
        events: records,
        readOnly: newer,
        notices: newer ? [...notices, { code: 'newer-version', message }] : notices,
      };
    },
    'coaches.append': async ({ coach, events }) => {
      refuseNewerEvents(events, COACH_EVENT_VERSION);
      refuseNewerLog((await coaches.read(coach)).records, COACH_EVENT_VERSION, 'coach');
      await coaches.append(coach, events);
      return { written: events.length };
    },
    'coaches.history': async ({ coach }) => {
      const { cards: summaries } = await visitCards.all();
      const read = await sideBySide(
        summaries.filter(({ coachId }) => coachId === coach),
        async (summary) => ({ summary, ...(await visits.read(summary.id)) }),
      );
      return {
        visits: read
          .map(({ summary, records }): PastVisit => ({ ...summary, ...visitRecord(eventsOf(records)) }))
          .sort((a, b) => (a.openedAt < b.openedAt ? 1 : -1)),
        notices: read.flatMap(({ notices }) => notices),
      };
    },
  };
}

/** The events that a record needs; one that cannot be read is left out here and named when its visit is opened. */
function eventsOf(records: readonly EventRecord[]): VisitEvent[] {
  return records.flatMap((record) => {
    if (!RECORD_KINDS.has(record.kind) || isResult(record)) return [];
    try {
      return [readEvent(record)];
    } catch (problem) {
      if (problem instanceof EventError) return [];
      throw problem;
    }
  });
}

/** A finding, part or touch without a reading: there are many, and the record does not name them. */
function isResult({ kind, value, readings, entry }: EventRecord): boolean {
  if (kind === 'inspection.recorded') return !Array.isArray(readings) || readings.length === 0;
  const of = kind === 'finding.recorded' ? value : kind === 'road.noted' ? entry : undefined;
  return typeof of === 'object' && of !== null && !('reading' in of);
}

/** A coach as a row of the list; null when its opening is not in the log. The last name counts. */
export function coachSummaryOf(coach: string, records: readonly EventRecord[]): CoachSummary | null {
  const opened = records.find(({ kind }) => kind === 'coach.opened');
  if (!opened) return null;
  const named = nameOf(records) ?? opened['name'];
  return {
    id: coach,
    name: typeof named === 'string' ? named : '',
    demo: opened['demo'] === true,
    lastAt: lastAt(records, opened.at),
    events: records.length,
  };
}

function nameOf(records: readonly EventRecord[]): unknown {
  const entries = records.map(({ id, kind, event, name }) => ({
    id,
    kind,
    name,
    ...(typeof event === 'string' ? { event } : {}),
  }));
  return effectiveEvents(entries).findLast(({ kind }) => kind === 'coach.named')?.name;
}

function byName(a: CoachSummary, b: CoachSummary): number {
  const [left, right] = [a.name.toLowerCase(), b.name.toLowerCase()];
  return left < right ? -1 : left > right ? 1 : a.id < b.id ? -1 : 1;
}
