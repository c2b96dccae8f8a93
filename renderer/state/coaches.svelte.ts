import {
  benchStart,
  COACH_EVENT_VERSION,
  coachProfile,
  layoutForVisit,
  readCoachEvent,
  type CoachEvent,
  type CoachEventBody,
  type CoachProfile,
} from '../../shared/coach/index.ts';
import type { CoachSummary, HostClient, Notice, PastVisit } from '../../shared/host/host-api.ts';
import type { LayoutFeature } from '../../shared/knowledge/index.ts';
import { EventError, type VisitEventBody } from '../../shared/visit/index.ts';
import type { Bench } from './bench.svelte.ts';
import type { TreeList } from './tree-list.svelte.ts';

/** What the state of coaches needs of the window. */
interface Window {
  readonly ask: HostClient['call'];
  readonly trees: Pick<TreeList, 'listed' | 'read'>;
  readonly settings: { readonly name: string };
  newId(): string;
}

/** Coaches known on this machine, and the one whose page is open. Every call may throw a HostError. */
export class Coaches {
  readonly #window: Window;
  list = $state.raw<readonly CoachSummary[]>([]);
  openId = $state<string | null>(null);
  events = $state.raw<readonly CoachEvent[]>([]);
  readOnly = $state(false);
  notices = $state.raw<readonly Notice[]>([]);
  readonly profile: CoachProfile | null = $derived(this.openId === null ? null : coachProfile(this.events));
  /** Visits of the open coach, newest first, as they were when they were asked for. */
  history = $state.raw<readonly PastVisit[]>([]);
  /** Questions about the layout; empty until they were read. */
  features = $state.raw<readonly LayoutFeature[]>([]);
  /** Profile for which a visit is about to begin. */
  arriving = $state<string | null>(null);

  constructor(window: Window) {
    this.#window = window;
  }

  async refresh(): Promise<void> {
    const { coaches, notices } = await this.#window.ask('coaches.list', {});
    this.list = coaches;
    this.notices = notices;
  }

  nameOf(coach: string | null): string | undefined {
    return this.list.find(({ id }) => id === coach)?.name;
  }

  /** Reads a profile into the page; the questions about the layout with it, once. */
  async open(coach: string): Promise<void> {
    const { events, readOnly, notices } = await this.#read(coach);
    await this.#readFeatures();
    if (coach !== this.openId) this.history = [];
    this.openId = coach;
    this.events = events;
    this.readOnly = readOnly;
    this.notices = notices;
  }

  async readHistory(coach: string): Promise<void> {
    const { visits, notices } = await this.#window.ask('coaches.history', { coach });
    this.history = visits;
    this.notices = notices;
  }

  /** Begins a profile; what is known already goes with it. */
  async create(name: string, demo: boolean, known: readonly CoachEventBody[] = []): Promise<string> {
    const first = this.#stamped({ kind: 'coach.opened', name: name.trim() || 'A coach', demo });
    const { coach } = await this.#window.ask('coaches.create', { coach: `c-${first.id}`, first: { ...first } });
    if (known.length > 0) await this.#append(coach, known);
    await this.refresh();
    return coach;
  }

  /** Writes to the open profile; the page changes when it is on disk. */
  async act(...bodies: readonly CoachEventBody[]): Promise<void> {
    if (this.openId === null) return;
    this.events = [...this.events, ...(await this.#append(this.openId, bodies))];
  }

  async undo(): Promise<void> {
    const target = this.profile?.undo;
    if (target) await this.act({ kind: 'event.taken-back', event: target.id });
  }

  async redo(): Promise<void> {
    const target = this.profile?.redo;
    if (target) await this.act({ kind: 'event.put-back', event: target.id });
  }

  /** What a new visit of a coach begins with. */
  async layoutOf(coach: string): Promise<readonly VisitEventBody[]> {
    const { events } = await this.#read(coach);
    await this.#readFeatures();
    return layoutForVisit(coachProfile(events), this.features);
  }

  /** Fills the bench from a profile; null takes out what came from one. */
  async startBench(bench: Bench, coach: string | null): Promise<void> {
    const profile = coach === null ? null : coachProfile((await this.#read(coach)).events);
    bench.startFrom(profile && { name: profile.name, start: benchStart(profile) });
  }

  async #append(coach: string, bodies: readonly CoachEventBody[]): Promise<readonly CoachEvent[]> {
    const events = bodies.map((body) => this.#stamped(body));
    await this.#window.ask('coaches.append', { coach, events: events.map((event) => ({ ...event })) });
    return events;
  }

  #stamped(body: CoachEventBody): CoachEvent {
    return {
      id: this.#window.newId(),
      v: COACH_EVENT_VERSION,
      at: new Date().toISOString(),
      by: this.#window.settings.name,
      ...body,
    };
  }

  async #read(
    coach: string,
  ): Promise<{ readonly events: CoachEvent[]; readonly readOnly: boolean; readonly notices: readonly Notice[] }> {
    const { events: records, notices, readOnly } = await this.#window.ask('coaches.read', { coach });
    const events: CoachEvent[] = [];
    const unread: Notice[] = [];
    for (const record of records) {
      try {
        events.push(readCoachEvent(record));
      } catch (problem) {
        if (!(problem instanceof EventError)) throw problem;
        if (unread.length === 0) unread.push({ code: `coach-${problem.code}`, message: problem.message });
      }
    }
    return { events, readOnly, notices: [...notices, ...unread] };
  }

  async #readFeatures(): Promise<void> {
    const [tree] = this.#window.trees.listed;
    if (this.features.length > 0 || !tree) return;
    this.features = (await this.#window.trees.read(tree.hash))?.vocabulary.layout ?? [];
  }
}
