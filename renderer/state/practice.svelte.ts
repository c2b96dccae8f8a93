import { Guarded } from './guarded.svelte.ts';
import { learnerOf, type AroundLearner, type Learner } from './learner.svelte.ts';
import { madeOnce } from './made-once.svelte.ts';
import {
  choose,
  codeOf,
  complaintOfCode,
  complaintOfFile,
  drawExercise,
  exerciseOfFile,
  foldSession,
  layoutCount,
  layoutOfNumber,
  logFile,
  openLogFile,
  readExerciseFile,
  reckon,
  SEEDS,
  settingOfCode,
  summaryOf,
  usualLayout,
  type Choice,
  type Exercise,
  type ExerciseFile,
  type ExerciseSource,
  type Level,
  type OpenedLog,
  type PassRule,
  type PracticeBody,
  type Reckoning,
  type Session,
  type WorkedExercise,
} from '../../shared/practice/index.ts';
import { HostError } from '../../shared/host/host-api.ts';
import { formatProblem, type Problem, type Tree } from '../../shared/knowledge/index.ts';
import type { TreeList } from './tree-list.svelte.ts';
import { listedKey, type ListedTree, type LoadedTree } from './trees.ts';

/** A complaint drawn as well. */
export const SURPRISE = '';

/** What practice needs of the window around it. */
interface Around extends AroundLearner {
  readonly trees: Pick<TreeList, 'listed' | 'known' | 'read'>;
  go(screen: 'exercise' | 'reckoning'): void;
}

/** The exercise in front. */
interface Open {
  readonly id: string;
  /** Whose exercise it is. */
  readonly learner: string | null;
  readonly session: Session;
  readonly source: ExerciseSource;
  /** What counts as passed, when an instructor says so. */
  readonly passed: PassRule | null;
  /** What it came to, once it has ended. */
  readonly reckoning: Reckoning | null;
}

/** An instructor's file as it was opened. */
export interface OpenedFile {
  readonly name: string;
  readonly text: string;
  readonly file: ExerciseFile | null;
  readonly problems: readonly Problem[];
  readonly tree: LoadedTree | null;
}

/** One exercise of somebody's log, played again. */
export interface Replay {
  readonly learner: string;
  readonly worked: WorkedExercise;
  readonly reckoning: Reckoning;
  readonly passed: PassRule | null;
}

/** The exercise in front, and what an instructor opens. */
export class Practice extends Guarded {
  readonly #app: Around;

  readonly who: Learner;
  busy = $state(false);

  /** What the next exercise is drawn from; `SURPRISE` = any complaint. */
  complaint = $state(SURPRISE);
  level = $state<Level>('listed');
  /** Draw how the coach is built as well, instead of the usual one. */
  anyCoach = $state(false);

  #front = $state.raw<Open | null>(null);
  /** The exercise of whoever practises now. */
  get open(): Open | null {
    return this.#front?.learner === this.who.id ? this.#front : null;
  }
  get reckoning(): Reckoning | null {
    return this.open?.reckoning ?? null;
  }

  file = $state.raw<OpenedFile | null>(null);
  log = $state.raw<OpenedLog | null>(null);
  replay = $state.raw<Replay | null>(null);

  /** The last exercise that was begun and not ended. */
  get unfinished(): WorkedExercise | null {
    return this.who.worked.findLast(({ summary }) => summary === null) ?? null;
  }

  constructor(app: Around) {
    super();
    this.#app = app;
    this.who = learnerOf(app);
  }

  /** Begins a fresh exercise as it is set on the page. */
  async begin(): Promise<void> {
    await this.guard(async () => {
      const { listed } = this.#app.trees;
      const tree =
        listed.find((each) => listedKey(each) === this.complaint) ?? listed[drawn(Math.max(1, listed.length))];
      if (!tree) return;
      const pinned = await this.#loaded(tree);
      const layout =
        (this.anyCoach
          ? layoutOfNumber(pinned.tree, pinned.vocabulary, drawn(layoutCount(pinned.tree, pinned.vocabulary)))
          : null) ?? usualLayout(pinned.tree, pinned.vocabulary);
      const code = codeOf(pinned, { level: this.level, seed: drawn(SEEDS), layout });
      await this.#begin({ from: 'code', code }, pinned);
    });
  }

  /** Begins the exercise of a code that somebody typed. @returns false with a fault when it is none. */
  async beginCode(typed: string): Promise<boolean> {
    return this.guard(async () => {
      const pinned = await this.#treeOfCode(typed);
      const read = settingOfCode(typed, pinned);
      if ('problem' in read) throw refusal(read.problem);
      await this.#begin({ from: 'code', code: codeOf(pinned, read.setting) }, pinned);
    });
  }

  /** Begins the exercise of the file that is open. */
  async beginFile(): Promise<void> {
    const { file } = this;
    if (!file?.file || !file.tree) return;
    const { text, tree } = file;
    await this.guard(() => this.#begin({ from: 'file', text, seed: this.#app.newId() }, tree));
  }

  /** The same exercise once more. */
  async again(): Promise<void> {
    const { open } = this;
    if (!open) return;
    await this.guard(async () => {
      const { tree } = open.session.exercise;
      const pinned = [...this.#app.trees.known.values()].find((each) => each.tree === tree);
      if (pinned) await this.#begin(open.source, pinned);
    });
  }

  /** Goes on with the exercise that was begun last. */
  async resume(): Promise<void> {
    const { unfinished } = this;
    if (!unfinished) return;
    await this.guard(async () => {
      const { exercise, passed } = await this.#exerciseOf(unfinished.begun);
      this.#show(unfinished.exercise, foldSession(exercise, unfinished.choices), unfinished.begun.source, passed);
    });
  }

  async #begin(source: ExerciseSource, pinned: LoadedTree): Promise<void> {
    const id = `x-${this.#app.newId()}`;
    const { exercise, passed } = this.#made(source, pinned);
    await this.who.record([
      { kind: 'practice.begun', exercise: id, tree: pinned.tree.id, treeHash: pinned.hash, source },
    ]);
    this.#show(id, foldSession(exercise, []), source, passed);
  }

  #show(id: string, session: Session, source: ExerciseSource, passed: PassRule | null): void {
    const reckoning = session.end ? reckon(session) : null;
    this.#front = { id, learner: this.who.id, session, source, passed, reckoning };
    this.#app.go(session.end ? 'reckoning' : 'exercise');
  }

  /** Makes a choice; what came of it is shown when it is on disk. @returns false when it could not be written. */
  async choose(choice: Choice): Promise<boolean> {
    const { open } = this;
    if (!open || this.busy) return false;
    const session = choose(open.session, choice);
    if (session === open.session) return false;
    this.busy = true;
    try {
      return await this.guard(async () => {
        const reckoning = session.end ? reckon(session) : null;
        const summary = reckoning ? summaryOf(reckoning) : null;
        const ended: PracticeBody[] = summary ? [{ kind: 'practice.ended', exercise: open.id, summary }] : [];
        await this.who.record([{ kind: 'practice.chosen', exercise: open.id, choice }, ...ended]);
        this.#front = { ...open, session, reckoning };
        if (reckoning) this.#app.go('reckoning');
      });
    } finally {
      this.busy = false;
    }
  }

  /** Reads an instructor's file. */
  async openFile(name: string, text: string): Promise<void> {
    this.file = await this.#read(name, text);
  }

  async #read(name: string, text: string): Promise<OpenedFile> {
    const complaint = complaintOfFile(text);
    const { listed } = this.#app.trees;
    const own = listed.find(({ card }) => card.id === complaint);
    const tree = own ? await this.#loaded(own) : null;
    const { value, problems } = readExerciseFile({
      text,
      file: name,
      complaints: listed.map(({ card }) => card.id),
      known: tree,
    });
    return { name, text, file: value, problems, tree };
  }

  /** A file to begin an exercise with, for a complaint of the list by its key; null when it cannot be read. */
  async templateOf(key: string, write: (tree: Tree) => string): Promise<string | null> {
    let text: string | null = null;
    await this.guard(async () => {
      const listed = this.#app.trees.listed.find((each) => listedKey(each) === key) ?? this.#app.trees.listed[0];
      if (listed) text = write((await this.#loaded(listed)).tree);
    });
    return text;
  }

  /** The learner's own log as a file; null while nothing has been practised. */
  logText(): string | null {
    const { name, records } = this.who;
    return records.length === 0 ? null : logFile(name, records);
  }

  /** Opens somebody's log. */
  openLog(text: string): void {
    this.fault = null;
    const read = openLogFile(text);
    this.log = 'log' in read ? read.log : null;
    this.replay = null;
    if ('problem' in read) this.fault = read.problem;
  }

  /** Plays an exercise of the opened log again. */
  async play(worked: WorkedExercise): Promise<void> {
    const learner = this.log?.learner ?? '';
    await this.guard(async () => {
      const { exercise, passed } = await this.#exerciseOf(worked.begun);
      this.replay = { learner, worked, passed, reckoning: reckon(foldSession(exercise, worked.choices)) };
    });
  }

  /** The exercise of a log, over the very tree it was made with. */
  async #exerciseOf({ tree, treeHash, source }: WorkedExercise['begun']): Promise<{
    readonly exercise: Exercise;
    readonly passed: PassRule | null;
  }> {
    const listed = this.#app.trees.listed.find(({ hash }) => hash === treeHash);
    if (!listed)
      throw refusal(
        `This exercise was made with another version of “${this.#app.trees.listed.find(({ card }) => card.id === tree)?.card.title ?? tree}”. What it drew cannot be shown again here; open it where the same version is.`,
      );
    return this.#made(source, await this.#loaded(listed));
  }

  #made(source: ExerciseSource, pinned: LoadedTree): { readonly exercise: Exercise; readonly passed: PassRule | null } {
    if (source.from === 'code') {
      const read = settingOfCode(source.code, pinned);
      if ('problem' in read) throw refusal(read.problem);
      return { exercise: drawExercise(pinned, read.setting), passed: null };
    }
    const { value, problems } = readExerciseFile({
      text: source.text,
      file: 'the exercise',
      complaints: [],
      known: pinned,
    });
    if (!value) throw refusal(problems[0] ? formatProblem(problems[0]) : 'The exercise cannot be read.');
    return { exercise: exerciseOfFile(value, pinned, source.seed), passed: value.passed };
  }

  async #treeOfCode(typed: string): Promise<LoadedTree> {
    const known = this.#app.trees.listed.map((listed) => ({ id: listed.card.id, hash: listed.hash, listed }));
    const found = complaintOfCode(typed, known);
    if ('problem' in found) throw refusal(found.problem);
    return this.#loaded(found.complaint.listed);
  }

  async #loaded({ hash, card }: ListedTree): Promise<LoadedTree> {
    const tree = await this.#app.trees.read(hash);
    if (!tree) throw refusal(`“${card.title}” cannot be read. What is wrong with its file is said above.`);
    return tree;
  }
}

function refusal(message: string): HostError {
  return new HostError({ code: 'practice', message });
}

/** A number from 0 to `count` − 1, by chance. */
function drawn(count: number): number {
  return (crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) % count;
}

/** The one of a window. */
export const practiceOf = madeOnce((app: Around) => new Practice(app));
