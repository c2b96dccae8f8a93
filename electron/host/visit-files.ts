import { mkdir, open, readdir, readFile, rename, stat, truncate } from 'node:fs/promises';
import { join } from 'node:path';
import { HostError, type Notice } from '../../shared/host/host-api.ts';
import { isMissing, writeWhole } from './whole-file.ts';

/** A log line as stored; its inside is checked by `shared/visit`. */
export interface EventRecord {
  readonly id: string;
  readonly v: number;
  readonly at: string;
  readonly by: string;
  readonly kind: string;
  readonly [key: string]: unknown;
}

interface LogRead {
  readonly records: EventRecord[];
  readonly notices: Notice[];
}

/** What a folder of logs keeps: the word of its messages and codes. */
export type KeptKind = 'visit' | 'coach' | 'learner';

/** Name of a file that one device writes to. */
export const LOG_NAME = /^events-[0-9a-f]+\.jsonl$/;

/**
 * Visits, coaches or learners on disk: `<visits>/<visit>/events-<device>.jsonl`, one JSON object a line, appended and flushed
 * before the answer. Each device writes only its own file; reading takes all. A torn last line costs that line only.
 */
export class LogFiles {
  readonly #folder: string;
  readonly #device: string;
  readonly #kind: KeptKind;
  readonly #queues = new Map<string, Promise<unknown>>();

  constructor(folder: string, device: string, kind: KeptKind) {
    this.#folder = folder;
    this.#device = device;
    this.#kind = kind;
  }

  folderOf(visit: string): string {
    return join(this.#folder, visit);
  }

  #ownLog(visit: string): string {
    return join(this.folderOf(visit), `events-${this.#device}.jsonl`);
  }

  /** Ids of all visits, by name. */
  async list(): Promise<string[]> {
    try {
      const entries = await readdir(this.#folder, { withFileTypes: true });
      return entries
        .filter((entry) => entry.isDirectory() && /^[a-z0-9][a-z0-9-]{0,79}$/.test(entry.name))
        .map(({ name }) => name)
        .sort();
    } catch (problem) {
      if (isMissing(problem)) return [];
      throw problem;
    }
  }

  /** @throws {HostError} `visit-exists`, or the same of a coach. */
  async create(visit: string, first: EventRecord): Promise<void> {
    await mkdir(this.#folder, { recursive: true });
    try {
      await mkdir(this.folderOf(visit));
    } catch (problem) {
      if (problem instanceof Error && 'code' in problem && problem.code === 'EEXIST') {
        throw new HostError({
          code: `${this.#kind}-exists`,
          message: `There is a ${this.#kind} with this name already. Nothing was written.`,
        });
      }
      throw problem;
    }
    await this.append(visit, [first]);
  }

  /**
   * Appends to this device's file; done when the lines are on disk. Calls for one visit are done one after the other.
   *
   * @throws {HostError} `no-such-visit`.
   */
  append(visit: string, records: readonly EventRecord[]): Promise<void> {
    return this.#inTurn(visit, () => this.#append(visit, records));
  }

  /** Writes to one visit one after the other, in the order of the calls. */
  #inTurn(visit: string, write: () => Promise<void>): Promise<void> {
    const before = this.#queues.get(visit) ?? Promise.resolve();
    const mine = before.then(write);
    // The queue goes on after a failure; the caller still gets it through `mine`.
    this.#queues.set(
      visit,
      mine.then(
        () => undefined,
        () => undefined,
      ),
    );
    return mine;
  }

  async #append(visit: string, records: readonly EventRecord[]): Promise<void> {
    const path = this.#ownLog(visit);
    await this.#exists(visit);
    await this.#setTornAside(path);
    const file = await open(path, 'a');
    try {
      await file.appendFile(records.map((record) => `${JSON.stringify(record)}\n`).join(''), 'utf8');
      await file.sync();
    } finally {
      await file.close();
    }
  }

  async #exists(visit: string): Promise<void> {
    try {
      await stat(this.folderOf(visit));
    } catch (problem) {
      if (isMissing(problem))
        throw new HostError({
          code: `no-such-${this.#kind}`,
          message: `This ${this.#kind} is not in the data folder. Nothing was written.`,
        });
      throw problem;
    }
  }

  /** Cuts a last line without its end off this device's file and keeps it beside, so that the next append starts a line. */
  async #setTornAside(path: string): Promise<void> {
    const bytes = await readFile(path).catch((problem: unknown) => {
      if (isMissing(problem)) return null;
      throw problem;
    });
    if (!bytes || bytes.length === 0 || bytes.at(-1) === 0x0a) return;
    const end = bytes.lastIndexOf(0x0a) + 1;
    if (parseLine(bytes.subarray(end).toString('utf8'))) {
      // The record is whole, only its line end is missing: it was shown, so it stays.
      const file = await open(path, 'a');
      try {
        await file.appendFile('\n');
        await file.sync();
      } finally {
        await file.close();
      }
      return;
    }
    const aside = await open(path.replace(/\.jsonl$/, '.torn'), 'a');
    try {
      await aside.appendFile(Buffer.concat([bytes.subarray(end), Buffer.from('\n')]));
      await aside.sync();
    } finally {
      await aside.close();
    }
    await truncate(path, end);
  }

  /**
   * All events of all writers, with what could not be read.
   *
   * @throws {HostError} `no-such-visit`.
   */
  async read(visit: string): Promise<LogRead> {
    await this.#queues.get(visit);
    await this.#exists(visit);
    const names = (await readdir(this.folderOf(visit))).filter((name) => LOG_NAME.test(name)).sort();
    const all: LogRead = { records: [], notices: [] };
    for (const name of names) {
      const { records, notices } = parseLog(await readFile(join(this.folderOf(visit), name), 'utf8'), name, this.#kind);
      all.records.push(...records);
      all.notices.push(...notices);
    }
    return all;
  }

  /**
   * Keeps a set of files beside the visit, once; in turn with what else is written to it.
   *
   * @throws {HostError} `no-such-visit`.
   */
  keep(visit: string, subfolder: string, files: Readonly<Record<string, string>>): Promise<void> {
    return this.#inTurn(visit, () => this.#keep(visit, subfolder, files));
  }

  async #keep(visit: string, subfolder: string, files: Readonly<Record<string, string>>): Promise<void> {
    await this.#exists(visit);
    const target = join(this.folderOf(visit), subfolder);
    try {
      await stat(target);
      return;
    } catch (problem) {
      if (!isMissing(problem)) throw problem;
    }
    const beside = `${target}.new`;
    for (const [name, text] of Object.entries(files)) await writeWhole(join(beside, name), text);
    await rename(beside, target);
  }
}

/** Lines of one log file; a line that is no record is left out and named. */
export function parseLog(text: string, name: string, kind: KeptKind = 'visit'): LogRead {
  const lines = text.split('\n');
  const torn = lines.pop() ?? '';
  const records: EventRecord[] = [];
  const notices: Notice[] = [];
  lines.forEach((line, i) => {
    if (line === '') return;
    const record = parseLine(line);
    if (record) records.push(record);
    else
      notices.push({
        code: `${kind}-log-damaged`,
        message: `Line ${i + 1} of ${name} cannot be read and was left out. The other ${lines.length - 1} lines are here; the file was not changed.`,
      });
  });
  if (torn !== '') {
    const whole = parseLine(torn);
    if (whole) records.push(whole);
    else
      notices.push({
        code: `${kind}-log-torn`,
        message: `The last line of ${name} was cut off. The ${records.length} before it are here.`,
      });
  }
  return { records, notices };
}

function parseLine(line: string): EventRecord | null {
  try {
    const data: unknown = JSON.parse(line);
    return isRecord(data) ? data : null;
  } catch (problem) {
    if (problem instanceof SyntaxError) return null;
    throw problem;
  }
}

function isRecord(data: unknown): data is EventRecord {
  return (
    typeof data === 'object' &&
    data !== null &&
    'id' in data &&
    typeof data.id === 'string' &&
    'kind' in data &&
    typeof data.kind === 'string' &&
    'v' in data &&
    typeof data.v === 'number' &&
    'at' in data &&
    typeof data.at === 'string' &&
    'by' in data &&
    typeof data.by === 'string'
  );
}
