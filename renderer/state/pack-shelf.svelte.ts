import type { HostAnswer, HostRequest, Notice, PackCard, PackProblem } from '../../shared/host/host-api.ts';
import type { AppState } from './app-state.svelte.ts';
import { base64Of } from './base64.ts';
import { Guarded } from './guarded.svelte.ts';

type Source = HostRequest<'packs.install'>['source'];

/** Packs and drafts as the page of the trees shows them. */
export class PackShelf extends Guarded {
  readonly #app: AppState;

  packs = $state.raw<readonly PackCard[]>([]);
  notices = $state.raw<readonly Notice[]>([]);
  drafts = $state.raw<HostAnswer<'trees.draft'>['drafts']>([]);
  draftsFolder = $state('');
  /** What was chosen last; it stays until it is installed or another is chosen. */
  chosen = $state.raw<{ readonly name: string; readonly source: Source } | null>(null);
  /** What is wrong with it. */
  problems = $state.raw<readonly PackProblem[]>([]);
  busy = $state(false);
  /** What has just been done. */
  done = $state('');

  constructor(app: AppState) {
    super();
    this.#app = app;
  }

  /** Reads packs and drafts anew. */
  async refresh(): Promise<void> {
    await this.said(async () => {
      const [{ packs, notices }, { folder, drafts }] = await Promise.all([
        this.#app.ask('packs.list', {}),
        this.#app.ask('trees.draft', { id: null, seen: null }),
      ]);
      this.packs = packs;
      this.notices = notices;
      this.drafts = drafts;
      this.draftsFolder = folder;
    });
  }

  /** Installs what was chosen, in place of a pack of that name when told to. */
  async install(replace = false): Promise<void> {
    const { chosen } = this;
    if (!chosen) return;
    this.problems = [];
    this.done = '';
    await this.#alone(async () => {
      const { installed, problems } = await this.#app.ask('packs.install', { source: chosen.source, replace });
      this.problems = problems;
      if (!installed) return;
      this.chosen = null;
      this.done = `“${installed.name}”, version ${installed.version}, is here with ${counted(installed.trees.length, 'tree')}.`;
      await this.#app.trees.refresh();
    });
    await this.refresh();
  }

  async remove(name: string): Promise<void> {
    this.done = '';
    await this.#alone(async () => {
      await this.#app.ask('packs.remove', { name });
      this.done = `“${name}” is removed. Visits that began with it keep their trees.`;
      await this.#app.trees.refresh();
    });
    await this.refresh();
  }

  /** Something that was asked for: nothing else is taken meanwhile. */
  async #alone(run: () => Promise<void>): Promise<void> {
    this.busy = true;
    try {
      await this.guard(run);
    } finally {
      this.busy = false;
    }
  }
}

/** "1 tree", "3 trees"; `many` where it is not the word with an s. */
export function counted(count: number, word: string, many = `${word}s`): string {
  return `${count} ${count === 1 ? word : many}`;
}

/** A chosen zip as it is sent. */
export async function zipSource(file: File): Promise<Source> {
  return { zip: base64Of(await file.arrayBuffer()) };
}

/** The files of a chosen folder as they are sent. */
export async function folderSource(files: readonly File[]): Promise<Source> {
  return {
    files: await Promise.all(
      files.map(async (file) => ({ path: file.webkitRelativePath || file.name, text: await file.text() })),
    ),
  };
}
