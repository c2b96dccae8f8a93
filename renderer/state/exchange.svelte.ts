import { HostError, type HostAnswer, type PackProblem } from '../../shared/host/host-api.ts';
import type { AppState } from './app-state.svelte.ts';
import { base64Of, bytesOf } from './base64.ts';

/** Bytes handed over at once; the contract takes six million. */
const PIECE = 3_000_000;

export type MadeFile = HostAnswer<'visits.export'>;
export type Taken = NonNullable<HostAnswer<'visits.import'>['taken']>;
/** What a file is taken for. */
export type Way = 'visits.import' | 'backup.restore';

/** Visits that go out and come in, and backups, as their page shows them. */
export class Exchange {
  readonly #app: AppState;

  /** What was made last. */
  made = $state.raw<MadeFile | null>(null);
  /** What was chosen last; it stays until it is taken in or another is chosen. */
  chosen = $state.raw<{ readonly file: File; readonly way: Way } | null>(null);
  /** What came of it. */
  taken = $state.raw<Taken | null>(null);
  problems = $state.raw<readonly PackProblem[]>([]);
  /** What is being done, in words; empty when nothing is. */
  doing = $state('');
  fault = $state<string | null>(null);

  constructor(app: AppState) {
    this.#app = app;
  }

  async exportVisit(visit: string): Promise<void> {
    await this.#do('Writing the visit', async () => {
      this.made = await this.#app.ask('visits.export', { visit });
    });
  }

  async writeBackup(): Promise<void> {
    await this.#do('Writing the backup', async () => {
      this.made = await this.#app.ask('backup.write', {});
    });
  }

  /** Fetches the file that was made, piece by piece, for the browser to save where the person wants it. */
  async fetchMade(): Promise<Blob | null> {
    const { made } = this;
    if (!made) return null;
    const parts: Uint8Array<ArrayBuffer>[] = [];
    await this.#do('Fetching the file', async () => {
      for (let at: number | null = 0; at !== null;) {
        const { data, next }: HostAnswer<'exchange.fetch'> = await this.#app.ask('exchange.fetch', {
          name: made.name,
          at,
        });
        parts.push(bytesOf(data));
        at = next;
      }
    });
    return this.fault === null ? new Blob(parts, { type: 'application/zip' }) : null;
  }

  /** Hands the chosen file over and takes it in. */
  async takeIn(): Promise<void> {
    const { chosen } = this;
    if (!chosen) return;
    const { file, way } = chosen;
    this.made = null;
    this.taken = null;
    this.problems = [];
    await this.#do(`Looking through “${file.name}”`, async () => {
      const upload = `u-${this.#app.newId()}`;
      for (let at = 0; at === 0 || at < file.size; at += PIECE)
        await this.#app.ask('exchange.send', {
          upload,
          at,
          data: base64Of(await file.slice(at, at + PIECE).arrayBuffer()),
        });
      const { taken, problems } = await this.#app.ask(way, { upload });
      this.problems = problems;
      this.taken = taken;
      if (!taken) return;
      this.chosen = null;
      await this.#app.yard.refresh();
      if (taken.packs.length > 0) await this.#app.trees.refresh();
    });
  }

  /** Something that was asked for: nothing else is taken meanwhile, and what went wrong before is past. */
  async #do(words: string, run: () => Promise<void>): Promise<void> {
    if (this.doing !== '') return;
    this.doing = words;
    this.fault = null;
    try {
      await run();
    } catch (problem) {
      if (!(problem instanceof HostError)) throw problem;
      this.fault = problem.message;
    } finally {
      this.doing = '';
    }
  }
}
