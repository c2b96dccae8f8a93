import { mkdir, open, readdir, readFile, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { HostError } from '../../shared/host/host-api.ts';
import { BACKUP_LIMITS } from '../../shared/visit/exchange/index.ts';
import { isMissing } from './whole-file.ts';

/** Bytes of a piece: in base64 well below what any carrier takes at once. */
const PIECE = 4 * 1024 * 1024;

/** Steps of a path that are looked into. */
const DEEPEST = 4;

/**
 * Files on their way in and out. A window hands a file over piece by piece and takes one away in the same manner, whatever
 * carries its calls; no path ever comes from it. `exchange/` in the data folder holds what is on its way in, `exports/` what
 * was made, for the person to keep.
 */
export class ExchangeFolder {
  readonly #incoming: string;
  readonly exports: string;

  constructor(dataFolder: string) {
    this.#incoming = join(dataFolder, 'exchange');
    this.exports = join(dataFolder, 'exports');
  }

  /** A folder for what is being looked through; a fresh one each time. */
  staging(name: string): string {
    return join(this.#incoming, `${name}.staged`);
  }

  #part(upload: string): string {
    return join(this.#incoming, `${upload}.part`);
  }

  /** Where a file lies that was handed over. @throws {HostError} `no-such-upload`. */
  async arrived(upload: string): Promise<string> {
    if ((await sizeOf(this.#part(upload))) !== null) return this.#part(upload);
    throw new HostError({
      code: 'no-such-upload',
      message: 'The file has not arrived on the machine side. Nothing was taken in. Choose it again.',
    });
  }

  /**
   * Takes a piece of a file. The first piece of a new one clears away what was left of others.
   *
   * @param at  bytes taken so far.
   * @throws {HostError} `piece-out-of-turn`, `upload-too-large`.
   */
  async take(upload: string, at: number, base64: string): Promise<{ readonly received: number }> {
    const bytes = Buffer.from(base64, 'base64');
    if (at === 0) {
      await rm(this.#incoming, { recursive: true, force: true });
      await mkdir(this.#incoming, { recursive: true });
    }
    const path = this.#part(upload);
    const there = at === 0 ? 0 : await sizeOf(path);
    if (there !== at)
      throw new HostError({
        code: 'piece-out-of-turn',
        message:
          'A part of the file is missing on the machine side: another window has begun to hand over a file, or the program was started anew. Nothing was taken in. Choose the file again.',
      });
    if (at + bytes.length > BACKUP_LIMITS.zipBytes)
      throw new HostError({
        code: 'upload-too-large',
        message: `The file has more than ${Math.round(BACKUP_LIMITS.zipBytes / 1_048_576)} MB; more is not taken. Nothing was taken in.`,
      });
    const file = await open(path, 'a');
    try {
      await file.appendFile(bytes);
    } finally {
      await file.close();
    }
    return { received: at + bytes.length };
  }

  /** Forgets a file that was handed over. */
  async forget(upload: string): Promise<void> {
    await rm(this.#part(upload), { force: true });
  }

  /**
   * A piece of a file that was made.
   *
   * @returns base64, and where the next piece begins; null when this was the last.
   * @throws {HostError} `no-such-file`.
   */
  async give(name: string, at: number): Promise<{ readonly data: string; readonly next: number | null }> {
    try {
      const file = await open(join(this.exports, name), 'r');
      try {
        const { size } = await file.stat();
        const { buffer, bytesRead } = await file.read(Buffer.alloc(PIECE), 0, PIECE, at);
        const next = at + bytesRead;
        return { data: buffer.subarray(0, bytesRead).toString('base64'), next: next < size ? next : null };
      } finally {
        await file.close();
      }
    } catch (problem) {
      if (!isMissing(problem)) throw problem;
      throw new HostError({
        code: 'no-such-file',
        message: 'The file is not in the folder of exports any more. Make it again.',
      });
    }
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
 * Plain files below a folder, by path; links are left alone, and folders whose name begins with a point.
 *
 * @param fits  whether a file is wanted, by its path below the folder.
 * @param most  bytes of a file; larger ones are not wanted.
 * @returns the files, and how many others there are.
 */
export async function plainFiles(
  folder: string,
  fits: (path: string) => boolean,
  most: number,
): Promise<{ readonly files: ReadonlyMap<string, Uint8Array>; readonly others: number }> {
  const files = new Map<string, Uint8Array>();
  let others = 0;
  const walk = async (below: string): Promise<void> => {
    for (const entry of await readdir(join(folder, below), { withFileTypes: true })) {
      if (entry.name.startsWith('.')) continue;
      const path = below === '' ? entry.name : `${below}/${entry.name}`;
      if (entry.isDirectory() && path.split('/').length < DEEPEST) await walk(path);
      else if (entry.isFile() && fits(path) && (await stat(join(folder, path))).size <= most)
        files.set(path, await readFile(join(folder, path)));
      else others++;
    }
  };
  try {
    await walk('');
  } catch (problem) {
    if (!isMissing(problem)) throw problem;
  }
  return { files, others };
}
