import { effectiveEvents, type EventOf, type VisitEvent, type VisitState } from '../visit/index.ts';
import type { Line, Origin } from './document.ts';

/** The log of a visit as the report looks things up in it: what counts, and which event said what. */
export class LogIndex {
  readonly events: readonly VisitEvent[];
  readonly #naming = new Map<string, VisitEvent[]>();

  constructor(visit: VisitState, events: readonly VisitEvent[]) {
    const unused = new Set(visit.ignored.map(({ event }) => event.id));
    this.events = effectiveEvents(events).filter(({ id }) => !unused.has(id));
    for (const event of this.events)
      for (const name of new Set(Object.values(event).filter((value): value is string => typeof value === 'string')))
        this.#naming.set(name, [...(this.#naming.get(name) ?? []), event]);
  }

  /** Events of a kind, oldest first. */
  of<K extends VisitEvent['kind']>(kind: K): readonly EventOf<K>[] {
    return this.events.filter((event): event is EventOf<K> => event.kind === kind);
  }

  /** Origins in every event that names an id of a finding, item, line or reminder. */
  naming(id: string, kinds?: readonly string[]): Origin[] {
    return (this.#naming.get(id) ?? [])
      .filter(({ kind }) => !kinds || kinds.includes(kind))
      .map(({ id: event }) => ({ kind: 'event', event }));
  }

  /** A line that says what the events naming an id say. */
  said(text: string, id: string, kinds?: readonly string[]): Line {
    return { text, from: this.naming(id, kinds) };
  }
}

/** A line that says what one event says. */
export function told(text: string, event: Pick<VisitEvent, 'id'>): Line {
  return { text, from: [{ kind: 'event', event: event.id }] };
}
