/** What every log of the program has in common: events of a visit, of a coach. `event` names the one that is taken back. */
interface LogEntry {
  readonly id: string;
  readonly kind: string;
  readonly event?: string;
}

/** Events of all writers in one order: by id, which starts with the time; each id once. */
export function inOrder<E extends LogEntry>(events: readonly E[]): E[] {
  const seen = new Set<string>();
  return [...events]
    .sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0))
    .filter(({ id }) => !seen.has(id) && !!seen.add(id));
}

/** Openings of a log, and taking back itself. */
const STAY: readonly string[] = ['visit.opened', 'coach.opened', 'event.taken-back', 'event.put-back'];

/** Whether an event can be taken back: all but the opening of the log and taking back itself. */
export function canTakeBack({ kind }: LogEntry): boolean {
  return !STAY.includes(kind);
}

/** Ids of the events that are taken back at the end of the log. */
export function takenBack(events: readonly LogEntry[]): ReadonlySet<string> {
  const gone = new Set<string>();
  const known = new Map(events.map((event) => [event.id, event]));
  for (const event of events) {
    const target =
      event.kind === 'event.taken-back' || event.kind === 'event.put-back' ? known.get(event.event ?? '') : undefined;
    if (!target || !canTakeBack(target)) continue;
    if (event.kind === 'event.taken-back') gone.add(target.id);
    else gone.delete(target.id);
  }
  return gone;
}

/** The log as it counts: in order, without what was taken back and without the taking back itself. */
export function effectiveEvents<E extends LogEntry>(events: readonly E[]): E[] {
  const ordered = inOrder(events);
  const gone = takenBack(ordered);
  return ordered.filter(
    (event) => !gone.has(event.id) && event.kind !== 'event.taken-back' && event.kind !== 'event.put-back',
  );
}

/** The event that the undo key takes back: the newest that still counts. */
export function undoTarget<E extends LogEntry>(events: readonly E[]): E | undefined {
  return effectiveEvents(events).filter(canTakeBack).at(-1);
}

/** The event that the redo key puts back: the last one taken back, as long as nothing new has happened since. */
export function redoTarget<E extends LogEntry>(events: readonly E[]): E | undefined {
  const ordered = inOrder(events);
  const gone = takenBack(ordered);
  for (const event of [...ordered].reverse()) {
    if (event.kind === 'event.put-back') continue;
    if (event.kind !== 'event.taken-back') return undefined;
    if (gone.has(event.event ?? '')) return ordered.find(({ id }) => id === event.event);
  }
  return undefined;
}

/**
 * An id for a new event: sorts by time, then by the writer's own count, and cannot meet another writer's.
 *
 * @param timeMs   milliseconds since 1970; must not run backwards for one writer (pass the larger of clock and last).
 * @param counter  counts up with every event of the writer.
 * @param writer   lower-case letters and digits.
 */
export function newEventId(timeMs: number, counter: number, writer: string): string {
  return `${Math.floor(timeMs).toString(36).padStart(9, '0')}-${counter.toString(36).padStart(5, '0')}-${writer}`;
}
