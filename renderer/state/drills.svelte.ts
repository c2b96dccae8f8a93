import { Guarded } from './guarded.svelte.ts';
import { learnerOf, type AroundLearner, type Learner } from './learner.svelte.ts';
import { madeOnce } from './made-once.svelte.ts';
import {
  answered,
  deckOf,
  limitCards,
  nextCard,
  progressOf,
  unlabelled,
  type Card,
  type Drill,
  type Next,
  type Outcome,
  type Progress,
} from '../../shared/practice/drills/index.ts';
import { HostError, type Settings } from '../../shared/host/host-api.ts';
import type { TreeList } from './tree-list.svelte.ts';
import { listedKey, type LoadedTree } from './trees.ts';

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

/** What drills need of the window. */
interface Around extends AroundLearner {
  readonly trees: Pick<TreeList, 'listed' | 'read'>;
  readonly settings: Settings;
}

/** What is drilled, and the card in front. */
export class Drills extends Guarded {
  readonly #app: Around;
  readonly who: Learner;

  busy = $state(false);

  #chosen = $state.raw<{ readonly what: string; readonly learner: string | null } | null>(null);
  /** Key of a complaint, or `ALL_LIMITS`; null while it is being chosen. */
  get chosen(): string | null {
    return this.#chosen?.learner === this.who.id ? this.#chosen.what : null;
  }
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

  readonly card: Card | null = $derived(this.next?.kind === 'card' ? this.next.card : null);
  get progress(): readonly Progress[] {
    return progressOf(this.who.known, this.at);
  }

  constructor(app: Around) {
    super();
    this.#app = app;
    this.who = learnerOf(app);
  }

  /** Who practises, and what is due by now. */
  async open(): Promise<void> {
    this.at = Date.now();
    await this.who.open();
  }

  /** Lays out the cards of a complaint, or the limits of all, and asks the first. */
  async start(chosen: string, drill: Drill | null): Promise<void> {
    this.busy = true;
    await this.guard(async () => {
      const listed = this.#app.trees.listed.find((tree) => listedKey(tree) === chosen) ?? this.#app.trees.listed[0];
      if (!listed) return;
      const loaded = await this.#app.trees.read(listed.hash);
      if (!loaded) return;
      this.loaded = loaded;
      const { tree, vocabulary } = loaded;
      const who = this.#app.settings.who === 'mechanic' ? 'mechanic' : 'apprentice';
      this.deck = chosen === ALL_LIMITS ? limitCards(vocabulary) : deckOf(tree, vocabulary, { who });
      this.#chosen = { what: chosen, learner: this.who.id };
      this.drill = drill;
      await this.#ask();
    });
    this.busy = false;
  }

  /** Away from the cards, to what else can be drilled. */
  backToChoice(): void {
    this.#chosen = null;
    this.next = null;
    this.outcome = null;
  }

  /** Asks what is to be asked now. */
  async goOn(): Promise<void> {
    await this.guard(() => this.#ask());
  }

  async #ask(): Promise<void> {
    this.at = Date.now();
    this.outcome = null;
    this.drawing = null;
    this.next = nextCard(this.deck, this.who.known, this.drill, this.at);
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
    const { card } = this;
    if (!card || this.who.id === null || this.outcome !== null || this.busy) return;
    this.busy = true;
    await this.guard(async () => {
      const [event] = await this.who.answer([answered(card, outcome, given.helped ?? false)]);
      if (event) this.at = Date.parse(event.at);
      this.given = { ...NOTHING_GIVEN, ...given };
      this.outcome = outcome;
    });
    this.busy = false;
  }
}

/** A drawing as an address for an image: as a picture it can neither run nor fetch anything. */
function addressOf(svg: string): string {
  return `data:image/svg+xml,${encodeURIComponent(svg)}`;
}

/** The one of a window. */
export const drillsOf = madeOnce((app: Around) => new Drills(app));
