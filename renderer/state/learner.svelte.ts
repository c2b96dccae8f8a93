import type { HostClient, LearnerSummary, Notice } from '../../shared/host/host-api.ts';
import {
  readPracticeRecord,
  workedExercises,
  type PracticeBody,
  type PracticeRecord,
  type WorkedExercise,
} from '../../shared/practice/index.ts';
import {
  learnerState,
  LEARNER_EVENT_VERSION,
  readLearnerEvents,
  type LearnerEvent,
  type LearnerEventBody,
  type LearnerState,
} from '../../shared/practice/drills/index.ts';
import { Guarded } from './guarded.svelte.ts';
import { madeOnce } from './made-once.svelte.ts';
import { counted } from './pack-shelf.svelte.ts';

/** What the choice of a learner needs of the window. */
export interface AroundLearner {
  readonly ask: HostClient['call'];
  readonly settings: { readonly name: string };
  newId(): string;
}

/** Who practises in this window, with their log: exercises and drills are lines of the same one. */
export class Learner extends Guarded {
  readonly #app: AroundLearner;

  learners = $state.raw<readonly LearnerSummary[]>([]);
  /** Id; null while nobody practises. */
  id = $state<string | null>(null);
  /** Part of the log is from a newer program: nothing is added to it. */
  readOnly = $state(false);
  notices = $state.raw<readonly Notice[]>([]);
  /** What has just been done. */
  done = $state('');
  events = $state.raw<readonly LearnerEvent[]>([]);
  records = $state.raw<readonly PracticeRecord[]>([]);

  readonly name: string = $derived(this.learners.find(({ id }) => id === this.id)?.name ?? '');
  /** What the drills have shown. */
  readonly known: LearnerState = $derived(learnerState(this.events));
  /** The exercises that were worked. */
  readonly worked: readonly WorkedExercise[] = $derived(workedExercises(this.records));

  constructor(app: AroundLearner) {
    super();
    this.#app = app;
  }

  /** Reads who practises here; the only one is taken at once. */
  async open(): Promise<void> {
    await this.guard(async () => {
      await this.#list();
      const [only] = this.learners;
      const taken = this.id ?? (this.learners.length === 1 ? only?.id : undefined);
      if (taken !== undefined) await this.#read(taken);
    });
  }

  /** Somebody begins to practise here. @returns false when it was refused. */
  async create(name: string): Promise<boolean> {
    return this.guard(async () => {
      const [first] = this.#stamped([{ kind: 'learner.opened' as const, name }]);
      if (!first) return;
      const { learner } = await this.#app.ask('learners.create', { learner: `l-${first.id}`, first: { ...first } });
      this.done = '';
      await this.#list();
      await this.#read(learner);
    });
  }

  async take(learner: string): Promise<void> {
    await this.guard(() => this.#read(learner));
  }

  /** Somebody else, or nobody, practises. */
  leave(): void {
    this.id = null;
    this.events = [];
    this.records = [];
    this.readOnly = false;
    this.done = '';
  }

  /** Removes everything of the learner. There is no way back. @returns false when it was refused. */
  async deleteAll(): Promise<boolean> {
    const { id, name } = this;
    if (id === null) return false;
    return this.guard(async () => {
      const { files } = await this.#app.ask('learners.delete', { learner: id });
      await this.#list();
      this.done = `Everything of ${name} is deleted: ${counted(files, 'file')}.`;
    });
  }

  /** Writes answers to cards. A refusal is thrown: whoever asks says what it means. */
  async answer(bodies: readonly LearnerEventBody[]): Promise<readonly LearnerEvent[]> {
    const events = this.#stamped(bodies);
    await this.#append(events);
    this.events = [...this.events, ...events];
    return events;
  }

  /** Writes what was done in an exercise. A refusal is thrown. */
  async record(bodies: readonly PracticeBody[]): Promise<void> {
    const records = this.#stamped(bodies);
    await this.#append(records);
    this.records = [...this.records, ...records];
  }

  async #append(lines: readonly (LearnerEvent | PracticeRecord)[]): Promise<void> {
    const { id } = this;
    if (id === null) throw new Error('Nobody practises: a page asks who does before anything is written.');
    await this.#app.ask('learners.append', { learner: id, events: lines.map((line) => ({ ...line })) });
  }

  #stamped<B extends { readonly kind: string }>(bodies: readonly B[]): readonly (Stamp & B)[] {
    return bodies.map((body) => ({
      id: this.#app.newId(),
      v: LEARNER_EVENT_VERSION,
      at: new Date().toISOString(),
      by: this.#app.settings.name,
      ...body,
    }));
  }

  async #list(): Promise<void> {
    const { learners, notices } = await this.#app.ask('learners.list', {});
    this.learners = learners;
    this.notices = notices;
    if (!learners.some(({ id }) => id === this.id)) this.leave();
  }

  async #read(learner: string): Promise<void> {
    const { events, notices, readOnly } = await this.#app.ask('learners.read', { learner });
    this.id = learner;
    this.events = readLearnerEvents(events);
    this.records = events.flatMap((event) => readPracticeRecord(event) ?? []);
    this.notices = notices;
    this.readOnly = readOnly;
  }
}

interface Stamp {
  readonly id: string;
  readonly v: number;
  readonly at: string;
  readonly by: string;
}

/** The one of a window. */
export const learnerOf = madeOnce((app: AroundLearner) => new Learner(app));
