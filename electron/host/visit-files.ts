import { randomBytes } from 'node:crypto';
import { mkdir, open, readdir, readFile, rename, rm, stat, truncate } from 'node:fs/promises';
import { join } from 'node:path';
import { HostError, type Notice } from '../../shared/host/host-api.ts';
import { flushFolder, realDisk, type Disk } from './disk.ts';
import { isMissing, writeFlushed, writeWhole } from './whole-file.ts';

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

/** The file of one writer. */
export interface WriterLog extends LogRead {
  readonly name: string;
}

/**
 * Visits, coaches or learners on disk: `<visits>/<visit>/events-<device>.jsonl`, one JSON object a line, appended and flushed
 * before the answer. Each device writes only its own file; reading takes all. A torn last line costs that line only.
 */
export class LogFiles {
  readonly #folder: string;
  readonly #device: string;
  readonly #kind: KeptKind;
  readonly #disk: Disk;
  readonly #queues = new Map<string, Promise<unknown>>();

  constructor(folder: string, device: string, kind: KeptKind, disk: Disk = realDisk) {
    this.#folder = folder;
    this.#device = device;
    this.#kind = kind;
    this.#disk = disk;
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

  /**
   * Begins a visit: its folder is made beside and renamed, so that it is there with its first entry or not at all.
   *
   * @throws {HostError} `visit-exists`.
   */
  create(visit: string, first: EventRecord): Promise<void> {
    return this.#inTurn(visit, async () => {
      const placed = await this.#placed(visit, (beside) =>
        writeFlushed(join(beside, `events-${this.#device}.jsonl`), linesOf([first]), this.#disk),
      );
      if (!placed)
        throw new HostError({
          code: `${this.#kind}-exists`,
          message: `There is a ${this.#kind} with this name already. Nothing was written.`,
        });
    });
  }

  /**
   * Takes in a visit that is not here, whole or not at all.
   *
   * @param fill  writes its files into an empty folder.
   * @returns false when there is one of that name: then nothing was changed.
   */
  place(visit: string, fill: (folder: string) => Promise<void>): Promise<boolean> {
    return this.#inTurn(visit, () => this.#placed(visit, fill));
  }

  async #placed(visit: string, fill: (folder: string) => Promise<void>): Promise<boolean> {
    if (await this.has(visit)) return false;
    const beside = join(this.#folder, `.${visit}.${randomBytes(4).toString('hex')}.new`);
    try {
      await mkdir(beside, { recursive: true });
      await fill(beside);
      await flushFolder(beside);
      await rename(beside, this.folderOf(visit));
    } catch (problem) {
      await rm(beside, { recursive: true, force: true });
      // Somebody else has made it meanwhile.
      if (isThere(problem)) return false;
      throw problem;
    }
    await flushFolder(this.#folder);
    return true;
  }

  /** Whether there is anything of a visit. */
  async has(visit: string): Promise<boolean> {
    try {
      return (await readdir(this.folderOf(visit))).length > 0;
    } catch (problem) {
      if (isMissing(problem)) return false;
      throw problem;
    }
  }

  /**
   * Adds entries of other writers in a file of their own: no file that is there is touched, and a crash leaves all of them
   * or none.
   *
   * @throws {HostError} `no-such-visit`.
   */
  addLog(visit: string, records: readonly EventRecord[]): Promise<void> {
    return this.#inTurn(visit, async () => {
      await this.#exists(visit);
      const name = `events-${randomBytes(6).toString('hex')}.jsonl`;
      await writeWhole(join(this.folderOf(visit), name), linesOf(records), this.#disk);
      await flushFolder(this.folderOf(visit));
    });
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
  #inTurn<T>(visit: string, write: () => Promise<T>): Promise<T> {
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
    const before = await sizeOf(path);
    const lines = linesOf(records);
    try {
      await this.#flushed(path, lines);
    } catch (problem) {
      await takeOff(path, before ?? 0, lines);
      throw problem;
    }
    if (before === null) await flushFolder(this.folderOf(visit));
  }

  async #flushed(path: string, data: string | Uint8Array): Promise<void> {
    const file = await this.#disk.open(path, 'a');
    try {
      await file.appendFile(data);
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
    if (await endsWithLine(path)) return;
    const bytes = await readFile(path);
    const end = bytes.lastIndexOf(0x0a) + 1;
    if (parseLine(bytes.subarray(end).toString('utf8'))) {
      // The record is whole, only its line end is missing: it was shown, so it stays.
      await this.#flushed(path, '\n');
      return;
    }
    const aside = path.replace(/\.jsonl$/, '.torn');
    await this.#flushed(aside, Buffer.concat([bytes.subarray(end), Buffer.from('\n')]));
    await truncate(path, end);
  }

  /**
   * All events of all writers, each once, with what could not be read.
   *
   * @throws {HostError} `no-such-visit`.
   */
  async read(visit: string): Promise<LogRead> {
    const logs = await this.logs(visit);
    const seen = new Set<string>();
    return {
      // One that was sent again, or came back from another machine, stands in two places and counts once.
      records: logs.flatMap(({ records }) => records).filter(({ id }) => !seen.has(id) && !!seen.add(id)),
      notices: logs.flatMap(({ notices }) => notices),
    };
  }

  /**
   * The files of all writers, by name.
   *
   * @throws {HostError} `no-such-visit`.
   */
  async logs(visit: string): Promise<readonly WriterLog[]> {
    await this.#queues.get(visit);
    await this.#exists(visit);
    const names = (await readdir(this.folderOf(visit))).filter((name) => LOG_NAME.test(name)).sort();
    const logs: WriterLog[] = [];
    for (const name of names)
      logs.push({ name, ...parseLog(await readFile(join(this.folderOf(visit), name), 'utf8'), name, this.#kind) });
    return logs;
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
    const beside = `${target}.${randomBytes(4).toString('hex')}.new`;
    try {
      for (const [name, text] of Object.entries(files)) await writeWhole(join(beside, name), text, this.#disk);
      await rename(beside, target);
    } catch (problem) {
      await rm(beside, { recursive: true, force: true });
      // Another machine has kept the same, under the same hash.
      if (!isThere(problem)) throw problem;
    }
  }
}

/** Entries as lines of a log. */
export function linesOf(records: readonly EventRecord[]): string {
  return records.map((record) => `${JSON.stringify(record)}\n`).join('');
}

/** Whether the next entry begins a line of its own. Looks at the last byte alone: a long log is not read for every entry. */
async function endsWithLine(path: string): Promise<boolean> {
  const size = await sizeOf(path);
  if (size === null || size === 0) return true;
  const file = await open(path, 'r');
  try {
    const { bytesRead, buffer } = await file.read(Buffer.alloc(1), 0, 1, size - 1);
    return bytesRead === 1 && buffer[0] === 0x0a;
  } finally {
    await file.close();
  }
}

async function sizeOf(path: string): Promise<number | null> {
  try {
    return (await stat(path)).size;
  } catch (problem) {
    if (isMissing(problem)) return null;
    throw problem;
  }
}

/**
 * Takes off the end of a file what a refused append has left there: the person is told that nothing was written, and does it
 * again. What somebody else has written meanwhile stays.
 */
async function takeOff(path: string, before: number, lines: string): Promise<void> {
  const now = await sizeOf(path);
  if (now === null || now <= before) return;
  const tail = (await readFile(path)).subarray(before);
  if (Buffer.from(lines, 'utf8').subarray(0, tail.length).equals(tail)) await truncate(path, before);
}

/** Whether a folder could not be renamed because another one is there. */
function isThere(problem: unknown): boolean {
  return problem instanceof Error && 'code' in problem && (problem.code === 'ENOTEMPTY' || problem.code === 'EEXIST');
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
