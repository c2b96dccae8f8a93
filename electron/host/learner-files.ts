import { readdir, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { HostError, type LearnerSummary, type Notice } from '../../shared/host/host-api.ts';
import { inTurn } from './in-turn.ts';
import { isMissing } from './whole-file.ts';
import { LogFiles, type EventRecord } from './visit-files.ts';

/**
 * Learners on disk: `<learners>/<learner>/events-<device>.jsonl`, written and read as visits are, in a folder of their own
 * and under kinds of their own. Nothing else is kept of a learner, so that deleting the folder deletes everything.
 */
export class LearnerFiles {
  readonly #logs: LogFiles;
  /** Deleting waits for what is being written, and nothing is written into what is being deleted. */
  readonly #inTurn = inTurn();

  constructor(folder: string, device: string) {
    this.#logs = new LogFiles(folder, device, 'learner');
  }

  /** Everybody who has a log here, by name; what could not be read is named. */
  list(): Promise<{ learners: LearnerSummary[]; notices: Notice[] }> {
    return this.#inTurn(async () => {
      const learners: LearnerSummary[] = [];
      const notices: Notice[] = [];
      for (const id of await this.#logs.list()) {
        const { records, notices: more } = await this.#read(id);
        notices.push(...more);
        const opened = records.find(({ kind }) => kind === 'learner.opened');
        const name = opened?.['name'];
        learners.push({
          id,
          // A log whose first line is damaged can still be opened and deleted.
          name: typeof name === 'string' && name !== '' ? name : 'Without a name',
          events: records.length,
          lastAt: records.reduce((last, { at }) => (at > last ? at : last), opened?.at ?? ''),
        });
      }
      return {
        learners: learners.sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1)),
        notices,
      };
    });
  }

  /** @throws {HostError} `learner-exists`. */
  create(learner: string, first: EventRecord): Promise<void> {
    return this.#inTurn(() => this.#logs.create(learner, first));
  }

  /** All lines of all writers. @throws {HostError} `no-such-learner`. */
  read(learner: string): Promise<{ records: EventRecord[]; notices: Notice[] }> {
    return this.#inTurn(() => this.#read(learner));
  }

  /** On disk before it is done. @throws {HostError} `no-such-learner`. */
  append(learner: string, records: readonly EventRecord[]): Promise<void> {
    return this.#inTurn(() => this.#logs.append(learner, records));
  }

  /**
   * Removes everything of a learner, the lines of other machines included.
   *
   * @returns number of files that are gone.
   * @throws {HostError} `no-such-learner`; `not-deleted` when something is left.
   */
  delete(learner: string): Promise<number> {
    return this.#inTurn(async () => {
      const folder = this.#logs.folderOf(learner);
      const names = await readdir(folder, { recursive: true }).catch((problem: unknown) => {
        if (isMissing(problem)) throw noSuchLearner();
        throw problem;
      });
      const files: string[] = [];
      for (const name of names) if ((await stat(join(folder, name))).isFile()) files.push(name);
      await rm(folder, { recursive: true, maxRetries: 3 });
      if ((await this.#logs.list()).includes(learner))
        throw new HostError({
          code: 'not-deleted',
          message: `Something of this learner is still in ${folder}: another program may hold a file. Close it and delete once more.`,
        });
      return files.length;
    });
  }

  #read(learner: string): Promise<{ records: EventRecord[]; notices: Notice[] }> {
    return this.#logs.read(learner);
  }
}

function noSuchLearner(): HostError {
  return new HostError({
    code: 'no-such-learner',
    message:
      'This learner is not in the data folder; somebody may have deleted it. Nothing was written. Open the page again.',
  });
}
