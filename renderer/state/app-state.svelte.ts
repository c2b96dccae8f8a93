import { createContext } from 'svelte';
import type { LayoutAnswer, Role } from '../../shared/knowledge/index.ts';
import {
  DEFAULT_SETTINGS,
  HostError,
  type HostClient,
  type Notice,
  type Settings,
} from '../../shared/host/host-api.ts';
import { learnedOdds, withOdds, type LearnedOdds } from '../../shared/inference/index.ts';
import { assess, type Assessment, type Situation } from '../../shared/planning/index.ts';
import {
  caseId,
  effectiveEvents,
  putBackWith,
  replay,
  situationOf,
  takenWith,
  type ComplaintState,
  type EventHead,
  type VisitEvent,
  type VisitEventBody,
  type VisitState,
} from '../../shared/visit/index.ts';
import { Ahead } from './ahead.svelte.ts';
import { Bench } from './bench.svelte.ts';
import { JobPlan } from './job-plan.svelte.ts';
import { HandOver } from './hand-over.svelte.ts';
import { Sheets } from './sheets.svelte.ts';
import { Coaches } from './coaches.svelte.ts';
import { Keys } from './keys.svelte.ts';
import { SCREENS, type AuthorOf, type Screen } from './screens.ts';
import { TreeList, type Wanted } from './tree-list.svelte.ts';
import { nameIn, type LoadedTree } from './trees.ts';
import { noticedOf, type Noticed } from '../presenters/noticed.ts';
import { TreeOnPaper } from './tree-on-paper.svelte.ts';
import { readVisit } from './read-visit.ts';
import { Stamps } from './stamps.ts';
import { Yard } from './yard.svelte.ts';

/** Coach and person around the complaints that are opened; the demo says that it is invented. */
interface Around {
  readonly coach: string;
  readonly who: Role;
  readonly tools?: readonly string[];
  readonly demo?: boolean;
  /** Profile of the coach; what it knows of the layout goes into the visit. */
  readonly coachId?: string | null;
}
export const [getApp, setApp] = createContext<AppState>();

/** Everything the window shows, derived from the events of the open visit. The only place where the domain meets runes. */
export class AppState {
  readonly keys = new Keys();
  /** A call to the machine side for pages and states of their own. @throws {HostError} */
  readonly ask: HostClient['call'] = (method, request) => this.#host.call(method, request);
  /** Shows notices, in place of those of the same kind from before. */
  readonly #say = (notices: readonly Notice[], instead?: RegExp): void => {
    this.notices = [...this.notices.filter(({ code }) => !instead?.test(code)), ...notices];
  };
  readonly trees = new TreeList(this.ask, this.#say);
  readonly yard = new Yard(this.ask, this.trees, this.#say);
  readonly paper = new TreeOnPaper();
  readonly bench = new Bench();
  readonly job = new JobPlan(() => ({ visit: this.visit, trees: this.trees.known }));
  readonly handOver = new HandOver(() => ({
    visitId: this.visitId,
    visit: this.visit,
    events: this.events,
    trees: this.trees.known,
    units: this.settings.units,
    settings: this.settings,
    cases: this.yard.cases,
  }));
  readonly sheets = new Sheets();
  readonly coaches = new Coaches(this);
  readonly ahead = new Ahead();
  readonly #host: HostClient;
  readonly #stamps = new Stamps();
  /** What is being written; null as soon as the sheet shows it. */
  #writing: object | null = null;

  ready = $state(false);
  settings = $state.raw<Settings>(DEFAULT_SETTINGS);
  dataFolder = $state('');
  shell = $state('');
  notices = $state.raw<readonly Notice[]>([]);
  /** A refusal of the machine side that the person has to know about; what was typed stays. */
  fault = $state<string | null>(null);
  /** Said aloud by screen readers. */
  spoken = $state('');
  screen = $state<Screen>('yard');
  author = $state.raw<AuthorOf | null>(null);

  visitId = $state<string | null>(null);
  readOnly = $state(false);
  events = $state.raw<readonly VisitEvent[]>([]);
  complaintId = $state<string | null>(null);

  readonly visit: VisitState | null = $derived(this.events.length > 0 ? replay(this.events, this.trees.known) : null);
  readonly complaint: ComplaintState | null = $derived(
    this.visit?.complaints.find(({ id }) => id === this.complaintId) ?? null,
  );
  readonly pinned: LoadedTree | null = $derived(
    this.complaint ? (this.trees.known.get(this.complaint.treeHash) ?? null) : null,
  );
  /** Starting odds as proven cures of this workshop move them; without data while that is switched off. */
  readonly learned: LearnedOdds | null = $derived(
    this.visit && this.complaint && this.pinned
      ? learnedOdds(
          this.pinned.tree,
          this.visit.layout,
          // A complaint teaches nothing about itself.
          this.yard.cases.filter(({ id }) => id !== caseId(this.visitId ?? '', this.complaint?.id ?? '')),
          { on: this.settings.learning, takenOut: new Set(this.settings.casesTakenOut) },
        )
      : null,
  );
  readonly situation: Situation | null = $derived(
    this.visit && this.complaint && this.pinned
      ? situationOf(
          this.visit,
          this.complaint,
          this.learned ? withOdds(this.pinned.tree, this.learned) : this.pinned.tree,
          this.pinned.vocabulary,
        )
      : null,
  );
  readonly assessment: Assessment | null = $derived(this.situation ? assess(this.situation) : null);

  /** What the person may have noticed of the complaint in front, to be confirmed. */
  readonly noticed: Noticed | null = $derived(
    this.complaint && this.pinned && this.assessment
      ? noticedOf(this.complaint, this.pinned.tree, this.assessment)
      : null,
  );

  constructor(host: HostClient) {
    this.#host = host;
  }

  /** Loads settings, trees and the list of visits. */
  async start(): Promise<void> {
    await this.#guard(async () => {
      const [info, { settings, notices }] = await Promise.all([
        this.#host.call('app.info', {}),
        this.#host.call('settings.read', {}),
        this.trees.refresh(),
      ]);
      this.dataFolder = info.dataFolder;
      this.shell = info.shell;
      this.settings = settings;
      this.keys.enabled = settings.singleKeys;
      this.notices = [...notices, ...this.notices];
      await this.yard.refresh();
    });
    this.ready = true;
    await this.#lookRound();
  }

  /** What the yard shows beyond its list, once that is there. */
  async #lookRound(): Promise<void> {
    await this.#guard(() => this.yard.workOutStandings());
    if (this.settings.learning) await this.#guard(() => this.yard.gatherCases());
  }

  nameOf = (id: string): string | undefined => nameIn(this.pinned?.tree ?? null, this.trees.listed, id);

  /** Back to what is worked on: the complaint in front, or the visit as a whole while it has none. */
  toWork = (): void => this.go(this.complaint ? 'work' : this.visit ? 'visit' : 'yard');

  /** Goes to a page; the browser's back button comes back. */
  go(screen: Screen): void {
    if (screen === this.screen) return;
    history.pushState({ screen }, '');
    this.screen = screen;
  }

  /** To the bench, and back to where it was called from. */
  toBench(): void {
    const fromCoach = this.screen === 'profile';
    this.bench.from = fromCoach ? 'profile' : this.screen === 'yard' || !this.complaint ? 'yard' : 'work';
    const coach = fromCoach ? this.coaches.openId : this.bench.from === 'work' ? this.visit?.arrival.coachId : null;
    void this.#guard(() => this.coaches.startBench(this.bench, coach ?? null));
    this.go('bench');
  }

  /** The page that the browser's back or forward button leads to. */
  came(state: unknown): void {
    const screen =
      typeof state === 'object' && state !== null && 'screen' in state
        ? SCREENS.find((each) => each === state.screen)
        : undefined;
    this.screen = screen ?? 'yard';
  }

  async toYard(): Promise<void> {
    await this.#guard(() => this.yard.refresh());
    this.go('yard');
    await this.#lookRound();
  }

  async openVisit(visit: string, page?: Screen): Promise<void> {
    await this.#guard(async () => {
      const { read, notices, readOnly } = await readVisit(this.ask, this.trees, visit);
      this.visitId = visit;
      this.readOnly = readOnly;
      this.events = read;
      this.notices = notices;
      const opened = effectiveEvents(read).filter((event) => event.kind === 'complaint.opened');
      const last = opened.at(-1);
      this.complaintId = last?.kind === 'complaint.opened' ? last.complaint : null;
      this.go(page ?? (this.complaintId ? 'work' : 'visit'));
    });
  }

  /** Writes an invented coach with its visits into the yard and opens the newest: something to look round in. */
  async openDemo(): Promise<void> {
    await this.#once(async () => {
      const { writeDemo } = await import('../demo/write-demo.ts');
      await this.openVisit(await writeDemo(this, new Date()), 'visit');
    });
  }

  /**
   * Leaves the open visit for a fresh one; nothing is written before something is told.
   *
   * @param page  the one complaint, or the arrival with everything that is told.
   * @param coach  profile of the coach; null = of one that is not known here.
   */
  newVisit(page: 'intake' | 'arrival' = 'intake', coach: string | null = null): void {
    this.#leaveVisit();
    this.coaches.arriving = coach;
    this.go(page);
  }

  #leaveVisit(): void {
    this.visitId = null;
    this.events = [];
    this.complaintId = null;
    this.readOnly = false;
  }

  /** Opens a complaint, with a visit around it when there is none yet. */
  async openComplaint(input: Around & Wanted): Promise<void> {
    await this.openComplaints(input, [{ words: input.words, tree: input.tree }]);
  }

  /** Opens complaints of one visit in one go, each with its own words; the first is shown. */
  async openComplaints(around: Around, wanted: readonly Wanted[]): Promise<void> {
    await this.#once(async () => {
      for (const { tree } of wanted) if (!(await this.trees.read(tree.hash))) return;
      await this.#begin(around);
      const opened = wanted.map(({ tree, words }) => {
        const event = this.#stamped({
          kind: 'complaint.opened',
          complaint: '',
          tree: tree.card.id,
          treeHash: tree.hash,
          words,
        });
        return { ...event, complaint: `c-${event.id}` };
      });
      await this.#write(opened);
      this.complaintId = opened[0]?.complaint ?? this.complaintId;
      this.go('work');
    });
  }

  /** Begins a visit where none is open: coach, who works, and what the profile knows of the layout. */
  async beginVisit(around: Around): Promise<boolean> {
    return this.#once(() => this.#begin(around));
  }

  async #begin({ coach, who, tools, demo = false, coachId }: Around): Promise<void> {
    if (this.visitId !== null) return;
    const layout = coachId ? await this.coaches.layoutOf(coachId) : [];
    const first = this.#stamped({
      kind: 'visit.opened',
      coach: coach.trim() || 'A coach',
      demo,
      ...(coachId ? { coachId } : {}),
    });
    const { visit } = await this.#host.call('visits.create', { visit: `v-${first.id}`, first: { ...first } });
    this.visitId = visit;
    this.events = [first];
    await this.#append({ kind: 'person.set', who, ...(tools ? { tools } : {}) }, false);
    if (layout.length > 0)
      await this.#write(
        layout.map((body) => this.#stamped(body)),
        false,
      );
  }

  /** Goes to another complaint of the open visit. */
  toComplaint(complaint: string): void {
    this.complaintId = complaint;
    this.go('work');
  }

  /**
   * Writes what happened; the screen changes when it is on disk.
   *
   * @returns false when the machine side refused: the fault is shown, and whatever was typed stays where it is.
   */
  async act(body: VisitEventBody): Promise<boolean> {
    return this.#once(() => this.#append(body));
  }

  /** Writes several things in one go: all of them or, when refused, none. */
  async actAll(bodies: readonly VisitEventBody[]): Promise<boolean> {
    return this.#once(() => this.#write(bodies.map((body) => this.#stamped(body))));
  }

  /** Runs what another state asks of the machine side; a refusal is shown. False when there was one. */
  guarded = (run: () => Promise<unknown>): Promise<boolean> => this.#guard(run);

  /**
   * Writes in one go what the person has noticed, and that it was asked.
   *
   * @returns false when the machine side refused: nothing is written, and what was ticked stays.
   */
  async recordNoticed(found: readonly { readonly check: string; readonly result: string }[]): Promise<boolean> {
    const complaint = this.complaintId;
    if (complaint === null) return false;
    const findings = found.map(({ check, result }): VisitEventBody => ({
      kind: 'finding.recorded',
      complaint,
      finding: `f-${this.newId()}`,
      check,
      value: { kind: 'result', result },
      // Remembered, not looked at: no minutes were spent on it.
      minutes: 0,
    }));
    return this.#once(() =>
      this.#write([...findings, { kind: 'noticed.asked', complaint } as const].map((body) => this.#stamped(body))),
    );
  }

  /** An id for a new finding. */
  newId(): string {
    return this.#stamps.id();
  }

  async undo(): Promise<void> {
    const target = this.visit?.undo;
    if (!target || target.kind === 'complaint.opened') return;
    const all = takenWith(this.events, target);
    if (await this.actAll(all.map(({ id }) => ({ kind: 'event.taken-back', event: id }))))
      this.spoken = 'Taken back. Press u again for the one before, shift u to put it back.';
  }

  async redo(): Promise<void> {
    const target = this.visit?.redo;
    if (!target) return;
    const all = putBackWith(this.events, target);
    if (await this.actAll(all.map(({ id }) => ({ kind: 'event.put-back', event: id })))) this.spoken = 'Put back.';
  }

  async setLayout(feature: string, value: LayoutAnswer | null): Promise<boolean> {
    return this.act({ kind: 'layout.set', feature, value });
  }

  async saveSettings(change: Partial<Settings>): Promise<void> {
    const next = { ...this.settings, ...change };
    this.settings = next;
    this.keys.enabled = next.singleKeys;
    await this.#guard(() => this.#host.call('settings.write', next));
  }

  /** Stores a photo; null when it was refused. */
  async storePhoto(type: 'image/jpeg' | 'image/png' | 'image/webp', data: string): Promise<string | null> {
    let name: string | null = null;
    await this.#guard(async () => {
      name = (await this.#host.call('photos.write', { visit: this.visitId ?? '', type, data })).photo;
    });
    return name;
  }

  /** A stored photo as an address for an image; null when it is not there. */
  async photoAddress(photo: string): Promise<string | null> {
    let address: string | null = null;
    await this.#guard(async () => {
      const { type, data } = await this.#host.call('photos.read', { visit: this.visitId ?? '', photo });
      address = `data:${type};base64,${data}`;
    });
    return address;
  }

  #stamped<B extends VisitEventBody>(body: B): B & EventHead {
    return this.#stamps.on(body, this.settings.name);
  }

  async #append(body: VisitEventBody, last = true): Promise<void> {
    await this.#write([this.#stamped(body)], last);
  }

  /** @param last  false when more is written before the sheet changes. */
  async #write(events: readonly VisitEvent[], last = true): Promise<void> {
    if (this.visitId === null)
      throw new HostError({
        code: 'no-visit',
        message: 'No visit is open, so there is nothing to write to. Begin one in the yard.',
      });
    await this.#host.call('visits.append', { visit: this.visitId, events: events.map((event) => ({ ...event })) });
    // The next sheet takes presses from its first moment on.
    if (last) this.#writing = null;
    this.events = [...this.events, ...events];
  }

  /**
   * Something that writes. A second press while it is under way is not taken: it was meant for the same sheet and would be
   * written twice. Buttons stay as they are, so that none loses the focus.
   */
  async #once(run: () => Promise<unknown>): Promise<boolean> {
    if (this.#writing) return false;
    const mine = {};
    this.#writing = mine;
    try {
      return await this.#guard(run);
    } finally {
      if (this.#writing === mine) this.#writing = null;
    }
  }

  async #guard(run: () => Promise<unknown>): Promise<boolean> {
    try {
      await run();
      this.fault = null;
      return true;
    } catch (problem) {
      if (!(problem instanceof HostError)) throw problem;
      this.fault = problem.message;
      return false;
    }
  }
}
