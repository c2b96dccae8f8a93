import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { HostError, type Notice } from '../../shared/host/host-api.ts';
import {
  BACKUP_LIMITS,
  manifestText,
  photosNamed,
  type LogsOf,
  pictureFault,
  placeOf,
  readLogLines,
  VISIT_LIMITS,
  type Manifest,
} from '../../shared/visit/exchange/index.ts';
import { plainFiles } from './exchange-folder.ts';
import { keptFiles, keptSnapshot } from './kept-trees.ts';
import type { TreeSnapshot } from './tree-files.ts';
import { linesOf, type EventRecord, type LogFiles } from './visit-files.ts';
import { isMissing } from './whole-file.ts';
import { ZipWriter } from './zip-writer.ts';
import { photoFault } from './photo-files.ts';

/** Where everything lies that can go into an exchange. */
export interface ExchangeSources {
  readonly visits: LogFiles;
  readonly coaches: LogFiles;
  readonly learners: LogFiles;
  readonly dataFolder: string;
  readonly draftsFolder: string;
  /** Trees that the program has itself. */
  readonly offered: () => Promise<readonly TreeSnapshot[]>;
  readonly version: string;
  readonly now: () => Date;
}

/** A file that was made. */
interface Made {
  readonly bytes: number;
  /** What was left out, and why. */
  readonly notices: readonly Notice[];
}

/** Writes one visit, with what belongs to it. @throws {HostError} `no-such-visit`, `too-much`. */
export async function exportVisit(path: string, visit: string, sources: ExchangeSources): Promise<Made> {
  return write(path, 'visit', sources, async (out) => {
    await out.visit(visit);
    for (const coach of out.coachesNamed) if (await sources.coaches.has(coach)) await out.logs('coaches', coach);
  });
}

/** Writes everything of this machine. @throws {HostError} `too-much`. */
export async function writeBackup(path: string, sources: ExchangeSources): Promise<Made> {
  const { visits, coaches, learners, dataFolder, draftsFolder } = sources;
  return write(path, 'backup', sources, async (out) => {
    for (const visit of await visits.list()) await out.visit(visit);
    for (const coach of await coaches.list()) await out.logs('coaches', coach);
    for (const learner of await learners.list()) await out.logs('learners', learner);
    await out.folder('packs', join(dataFolder, 'packs'));
    await out.folder('drafts', draftsFolder);
    await out.folder('practice', join(dataFolder, 'practice'));
    try {
      await out.file('settings.json', await readFile(join(dataFolder, 'settings.json')));
    } catch (problem) {
      if (!isMissing(problem)) throw problem;
    }
  });
}

async function write(
  path: string,
  kind: Manifest['kind'],
  sources: ExchangeSources,
  fill: (out: Outgoing) => Promise<void>,
): Promise<Made> {
  const notices: Notice[] = [];
  const bytes = await ZipWriter.write(path, async (zip) => {
    const out = new Outgoing(zip, kind, sources, notices);
    await fill(out);
    await out.end();
  });
  return { bytes, notices };
}

/** A zip that is being filled, with the list of what is in it. */
class Outgoing {
  readonly coachesNamed = new Set<string>();
  readonly #zip: ZipWriter;
  readonly #whole: boolean;
  readonly #sources: ExchangeSources;
  readonly #notices: Notice[];
  readonly #files = new Map<string, Manifest['files'][number]>();
  readonly #visits: Manifest['visits'] = [];
  #bytes = 0;

  constructor(zip: ZipWriter, kind: Manifest['kind'], sources: ExchangeSources, notices: Notice[]) {
    this.#zip = zip;
    this.#whole = kind === 'backup';
    this.#sources = sources;
    this.#notices = notices;
  }

  async file(path: string, bytes: Uint8Array): Promise<void> {
    if (this.#files.has(path)) return;
    this.#bytes += bytes.length;
    const limits = this.#whole ? BACKUP_LIMITS : VISIT_LIMITS;
    if (this.#bytes > limits.unpackedBytes || this.#files.size + 2 > limits.files)
      throw new HostError({
        code: 'too-much',
        message: `This is more than one file holds (${limits.files} files, ${Math.round(limits.unpackedBytes / 1_048_576)} MB). Nothing was made. ${this.#whole ? 'Copy the data folder itself to another disk.' : 'Take photos out of the visit’s folder, or copy the folder itself.'}`,
      });
    this.#files.set(path, { path, bytes: bytes.length, sha256: sha256(bytes) });
    await this.#zip.add(path, bytes, !path.startsWith('photos/'));
  }

  /** A visit with the events of all writers, and what they name. */
  async visit(visit: string): Promise<void> {
    const records = await this.logs('visits', visit);
    const photos: string[] = [];
    for (const name of new Set(records.flatMap(photosNamed))) if (await this.#photo(visit, name)) photos.push(name);
    const trees: string[] = [];
    const hashes = records.flatMap(({ kind, ...event }) => (kind === 'complaint.opened' ? [event['treeHash']] : []));
    for (const hash of new Set(hashes))
      if (typeof hash === 'string' && (await this.#tree(visit, hash))) trees.push(hash);
    for (const { coachId } of records as readonly { readonly coachId?: unknown }[])
      if (typeof coachId === 'string' && /^[a-z0-9][a-z0-9-]{0,79}$/.test(coachId)) this.coachesNamed.add(coachId);
    if (records.length > 0) this.#visits.push({ visit, photos: photos.sort(), trees: trees.sort() });
  }

  /** The files of all writers about a visit or a coach, without what another machine would not take. */
  async logs(of: LogsOf, id: string): Promise<readonly EventRecord[]> {
    const all: EventRecord[] = [];
    for (const { name, records, notices } of await this.#sources[of].logs(id)) {
      this.#notices.push(...notices);
      const good = records.filter((record) => this.#taken(of, id, name, record));
      if (good.length > 0) await this.file(`${of}/${id}/${name}`, Buffer.from(linesOf(good), 'utf8'));
      all.push(...good);
    }
    return all;
  }

  #taken(of: LogsOf, id: string, name: string, record: EventRecord): boolean {
    const { problems } = readLogLines(name, linesOf([record]), { lenient: this.#whole, of });
    const wrong = problems.find(({ level, code }) => level === 'error' && code !== 'newer-version');
    if (wrong)
      this.#leftOut(`An entry of ${of}/${id}/${name} is not in the file. ${wrong.message} On this machine it stays.`);
    return !wrong;
  }

  async #photo(visit: string, name: string): Promise<boolean> {
    try {
      const bytes = await readFile(join(this.#sources.visits.folderOf(visit), 'photos', name));
      const fault = pictureFault(bytes, name.split('.').at(-1) ?? '');
      const clean = !fault && photoFault(name, bytes) === null;
      if (sha256(bytes) === name.split('.')[0] && (clean || (this.#whole && (!fault || fault.code === 'wrong-type')))) {
        await this.file(`photos/${name}`, bytes);
        return true;
      }
      this.#leftOut(
        `A photo of ${visit} is not what its name says, holds more than its picture, or is none, and is not in the file.`,
      );
    } catch (problem) {
      if (!isMissing(problem)) throw problem;
      this.#leftOut(`A photo of ${visit} is not in its folder, and so not in the file. The finding itself is.`);
    }
    return false;
  }

  async #tree(visit: string, hash: string): Promise<boolean> {
    const kept =
      (await keptSnapshot(this.#sources.visits.folderOf(visit), hash)) ??
      (await this.#sources.offered()).find((each) => each.hash === hash);
    if (!kept) {
      this.#leftOut(
        `The tree that a complaint of ${visit} was opened with is not in its folder, and so not in the file.`,
      );
      return false;
    }
    for (const [name, text] of Object.entries(keptFiles(kept)))
      await this.file(`trees/${hash}/${name}`, Buffer.from(text, 'utf8'));
    return true;
  }

  /** Files of a folder that have a place in a backup. */
  async folder(name: 'packs' | 'drafts' | 'practice', folder: string): Promise<void> {
    const fits = (path: string): boolean => !('code' in placeOf(`${name}/${path}`, true));
    const { files, others } = await plainFiles(folder, fits, BACKUP_LIMITS.fileBytes);
    for (const [path, bytes] of files) await this.file(`${name}/${path}`, bytes);
    if (others > 0)
      this.#leftOut(
        `${others} ${others === 1 ? 'thing' : 'things'} in ${folder} that Droplight did not write ${others === 1 ? 'is' : 'are'} not in the backup.`,
      );
  }

  async end(): Promise<void> {
    const { version, now } = this.#sources;
    const text = manifestText({
      kind: this.#whole ? 'backup' : 'visit',
      made: now().toISOString(),
      program: version,
      visits: this.#visits,
      files: [...this.#files.values()],
    });
    await this.#zip.add('manifest.json', Buffer.from(text, 'utf8'), true);
  }

  #leftOut(message: string): void {
    this.#notices.push({ code: 'left-out', message });
  }
}

/** SHA-256 of bytes, hex. */
export function sha256(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
