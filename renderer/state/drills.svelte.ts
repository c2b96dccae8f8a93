import { madeOnce } from './made-once.svelte.ts';
import {
  answered,
  deckOf,
  learnerState,
  LEARNER_EVENT_VERSION,
  limitCards,
  nextCard,
  progressOf,
  readLearnerEvents,
  unlabelled,
  type Card,
  type Drill,
  type LearnerEvent,
  type LearnerEventBody,
  type LearnerState,
  type Next,
  type Outcome,
  type Progress,
} from '../../shared/practice/drills/index.ts';
import {
  HostError,
  type HostClient,
  type LearnerSummary,
  type Notice,
  type Settings,
} from '../../shared/host/host-api.ts';
import { listedKey, loadSnapshot, type ListedTree, type LoadedTree } from './trees.ts';

/** What is drilled: one complaint by its key in the list, or the limits of all of them. */
export const ALL_LIMITS = 'limits';

/** What was answered, for showing it beside what is right. Null where it was not asked or not known. */
export interface Given {
  readonly check: string | null;
  readonly option: string | null;
  /** A figure as it was typed, with its unit. */
  readonly typed: string | null;
  /** Another source that prints the figure given. */
  readonly by: string | null;
  /** A drawing was put into words. */
  readonly helped: boolean;
}
export const NOTHING_GIVEN: Given = { check: null, option: null, typed: null, by: null, helped: false };

/** What practice needs of the window. */
interface Around {
  readonly ask: HostClient['call'];
  readonly listed: readonly ListedTree[];
  readonly settings: Settings;
  newId(): string;
}

/** Who practises, with what, and the card in front. */
export class Drills {
  readonly #app: Around;

  learners = $state.raw<readonly LearnerSummary[]>([]);
  learner = $state<string | null>(null);
  /** Part of the log is from a newer program: nothing is added to it. */
  readOnly = $state(false);
  events = $state.raw<readonly LearnerEvent[]>([]);
  notices = $state.raw<readonly Notice[]>([]);
  fault = $state<string | null>(null);
  /** What has just been done. */
  done = $state('');
  busy = $state(false);

  /** Key of a complaint, or `ALL_LIMITS`; null while it is being chosen. */
  chosen = $state<string | null>(null);
  drill = $state<Drill | null>(null);
  loaded = $state.raw<LoadedTree | null>(null);
  deck = $state.raw<readonly Card[]>([]);
  next = $state.raw<Next | null>(null);
  /** When the card in front was laid down, milliseconds since 1970. */
  at = $state(0);
  /** The drawing of the card in front, whole and without its words; null while it is fetched, '' when it cannot be. */
  drawing = $state.raw<{ readonly whole: string; readonly bare: string } | null>(null);
  /** How the answer to the card in front came out; null while it is asked. */
  outcome = $state<Outcome | null>(null);
  given = $state.raw<Given>(NOTHING_GIVEN);

  readonly known: LearnerState = $derived(learnerState(this.events));
  readonly card: Card | null = $derived(this.next?.kind === 'card' ? this.next.card : null);
  readonly progress: readonly Progress[] = $derived(progressOf(this.known, this.at));

  constructor(app: Around) {
    this.#app = app;
  }

  /** Reads who practises here; the only one is taken at once. */
  async open(): Promise<void> {
    this.at = Date.now();
    await this.#guard(async () => {
      await this.#list();
      const [only] = this.learners;
      if (this.learner === null && only && this.learners.length === 1) await this.#read(only.id);
    });
  }

  async #list(): Promise<void> {
    const { learners, notices } = await this.#app.ask('learners.list', {});
    this.learners = learners;
    this.notices = notices;
    if (!learners.some(({ id }) => id === this.learner)) this.#forget();
  }

  /** @returns false when it was refused: the name stays where it was typed. */
  async create(name: string): Promise<boolean> {
    return this.#guard(async () => {
      const first = this.#stamped({ kind: 'learner.opened', name });
      const { learner } = await this.#app.ask('learners.create', { learner: `l-${first.id}`, first: { ...first } });
      await this.#list();
      await this.#read(learner);
    });
  }

  async choose(learner: string): Promise<void> {
    await this.#guard(() => this.#read(learner));
  }

  async #read(learner: string): Promise<void> {
    const { events, notices, readOnly } = await this.#app.ask('learners.read', { learner });
    this.learner = learner;
    this.events = readLearnerEvents(events);
    this.notices = notices;
    this.readOnly = readOnly;
  }

  /** Somebody else, or nobody, practises. */
  leave(): void {
    this.#forget();
  }

  #forget(): void {
    this.learner = null;
    this.events = [];
    this.readOnly = false;
    this.backToChoice();
  }

  /** Removes everything of the learner. There is no way back. */
  async deleteAll(): Promise<void> {
    const { learner } = this;
    if (learner === null) return;
    const { name } = this.known;
    await this.#guard(async () => {
      const { files } = await this.#app.ask('learners.delete', { learner });
      await this.#list();
      this.done = `Everything of ${name} is deleted: ${files} file${files === 1 ? '' : 's'}.`;
    });
  }

  /** Lays out the cards of a complaint, or the limits of all, and asks the first. */
  async start(chosen: string, drill: Drill | null): Promise<void> {
    this.busy = true;
    await this.#guard(async () => {
      const listed = this.#app.listed.find((tree) => listedKey(tree) === chosen) ?? this.#app.listed[0];
      if (!listed) return;
      const loaded = this.loaded?.hash === listed.hash ? this.loaded : await this.#load(listed.hash);
      if (!loaded) return;
      this.loaded = loaded;
      const { tree, vocabulary } = loaded;
      const who = this.#app.settings.who === 'mechanic' ? 'mechanic' : 'apprentice';
      this.deck = chosen === ALL_LIMITS ? limitCards(vocabulary) : deckOf(tree, vocabulary, { who });
      this.chosen = chosen;
      this.drill = drill;
      await this.#ask();
    });
    this.busy = false;
  }

  async #load(hash: string): Promise<LoadedTree | null> {
    const { tree, notices } = loadSnapshot(await this.#app.ask('trees.read', { hash }));
    this.notices = notices;
    return tree;
  }

  /** Away from the cards, to what else can be drilled. */
  backToChoice(): void {
    this.chosen = null;
    this.next = null;
    this.outcome = null;
  }

  /** Asks what is to be asked now. */
  async goOn(): Promise<void> {
    await this.#guard(() => this.#ask());
  }

  async #ask(): Promise<void> {
    this.at = Date.now();
    this.outcome = null;
    this.drawing = null;
    this.next = nextCard(this.deck, this.known, this.drill, this.at);
    if (this.card?.drill === 'picture') await this.#fetchDrawing(this.card.file);
  }

  async #fetchDrawing(file: string): Promise<void> {
    const own = this.loaded?.drawings?.[file];
    try {
      const whole = own ?? (await this.#app.ask('trees.drawing', { file })).svg;
      this.drawing = { whole: addressOf(whole), bare: addressOf(unlabelled(whole)) };
    } catch (problem) {
      if (!(problem instanceof HostError)) throw problem;
      this.drawing = { whole: '', bare: '' };
      this.fault = problem.message;
    }
  }

  /** Writes an answer; the screen says how it came out when it is on disk. */
  async answer(outcome: Outcome, given: Partial<Given> = {}): Promise<void> {
    const { card, learner } = this;
    if (!card || learner === null || this.outcome !== null || this.busy) return;
    this.busy = true;
    await this.#guard(async () => {
      const event = this.#stamped(answered(card, outcome, given.helped ?? false));
      await this.#app.ask('learners.append', { learner, events: [{ ...event }] });
      this.events = [...this.events, event];
      this.at = Date.parse(event.at);
      this.given = { ...NOTHING_GIVEN, ...given };
      this.outcome = outcome;
    });
    this.busy = false;
  }

  #stamped<B extends LearnerEventBody>(body: B): B & Omit<LearnerEvent, keyof LearnerEventBody> {
    return {
      id: this.#app.newId(),
      v: LEARNER_EVENT_VERSION,
      at: new Date().toISOString(),
      by: this.#app.settings.name,
      ...body,
    };
  }

  async #guard(run: () => Promise<void>): Promise<boolean> {
    this.fault = null;
    this.done = '';
    try {
      await run();
      return true;
    } catch (problem) {
      if (!(problem instanceof HostError)) throw problem;
      this.fault = problem.message;
      return false;
    }
  }
}

/** A drawing as an address for an image: as a picture it can neither run nor fetch anything. */
function addressOf(svg: string): string {
  return `data:image/svg+xml,${encodeURIComponent(svg)}`;
}

/** The one of a window. */
export const drillsOf = madeOnce((app: Around) => new Drills(app));
