import { randomBytes } from 'node:crypto';
import { copyFile, mkdir, open, readdir, readFile, rename, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { checkedRequest, HostError, type HostAnswer } from '../../shared/host/host-api.ts';
import { packError, type BuiltIn, type PackProblem } from '../../shared/knowledge/pack/index.ts';
import { mergeLogs, photosNamed, type LogsOf, type Manifest } from '../../shared/visit/exchange/index.ts';
import type { ExchangeSources } from './exchange-write.ts';
import { plainFiles } from './exchange-folder.ts';
import { restorePacks } from './exchange-packs.ts';
import type { PackFiles } from './pack-files.ts';
import type { SettingsFiles } from './settings-files.ts';
import { linesOf, parseLog, type EventRecord, type LogFiles } from './visit-files.ts';
import { isMissing, writeWhole } from './whole-file.ts';

/** Where an exchange is put. */
export interface ExchangeTargets extends ExchangeSources {
  readonly packs: PackFiles;
  readonly settings: SettingsFiles;
  /** What packs may lean on. */
  readonly builtIn: () => Promise<BuiltIn>;
}

type Taken = NonNullable<HostAnswer<'visits.import'>['taken']>;

/** A visit, coach or learner that came, and what of it is not here. */
interface Coming {
  readonly of: LogsOf;
  readonly id: string;
  /** File name → entries. */
  readonly logs: ReadonlyMap<string, readonly EventRecord[]>;
}

/** Puts what was looked through and found good into its place: new things whole, known ones by what they lack. */
export class ExchangePlacing {
  readonly #manifest: Manifest;
  readonly #staging: string;
  readonly #to: ExchangeTargets;

  constructor(manifest: Manifest, staging: string, targets: ExchangeTargets) {
    this.#manifest = manifest;
    this.#staging = staging;
    this.#to = targets;
  }

  /** Where what comes and what is here say different things under one name. Nothing is written. */
  async clashes(): Promise<PackProblem[]> {
    const problems: PackProblem[] = [];
    for (const coming of await this.#all()) {
      const here = await this.#here(coming);
      const { conflicts } = mergeLogs(here, entriesOf(coming));
      const opened = (records: readonly EventRecord[]): string | undefined =>
        records.find(({ kind }) => kind === 'visit.opened')?.id;
      const at = `${coming.of}/${coming.id}`;
      if (here.length > 0 && opened(here) !== opened(entriesOf(coming)))
        problems.push(
          packError(
            'other-visit',
            at,
            'Another visit with this name is here already, and it began otherwise. Both stay as they are; nothing was taken in.',
          ),
        );
      else if (conflicts.length > 0)
        problems.push(
          packError(
            'entry-differs',
            at,
            `The entry “${conflicts[0]}” is here already and says something else${conflicts.length > 1 ? `, and so do ${conflicts.length - 1} more` : ''}. One of the two was changed by hand. Nothing was taken in.`,
          ),
        );
    }
    return problems;
  }

  async place(): Promise<{ readonly taken: Taken; readonly remarks: readonly PackProblem[] }> {
    const visits: Taken['visits'][number][] = [];
    let unchanged = 0;
    let coaches = 0;
    let learners = 0;
    for (const coming of await this.#all()) {
      const done = await this.#placeOne(coming);
      if (coming.of === 'coaches') coaches += done ? 1 : 0;
      else if (coming.of === 'learners') learners += done ? 1 : 0;
      else if (done) visits.push(done);
      else unchanged++;
    }
    const { packs, remarks } = await restorePacks(
      join(this.#staging, 'packs'),
      this.#to.packs,
      await this.#to.builtIn(),
    );
    const drafts = await this.#copyNew('drafts', this.#to.draftsFolder, remarks);
    const files = await this.#copyNew('practice', join(this.#to.dataFolder, 'practice'), remarks);
    const settings = await this.#settings(remarks);
    return { taken: { visits, unchanged, coaches, packs, drafts, practice: files + learners, settings }, remarks };
  }

  /** Visits, coaches and learners that wait in the folder beside; coaches first, so that no visit speaks of one that is not here. */
  async #all(): Promise<readonly Coming[]> {
    const all: Coming[] = [];
    for (const of of ['coaches', 'visits', 'learners'] as const)
      for (const id of await namesIn(join(this.#staging, of))) {
        const folder = join(this.#staging, of, id);
        const logs = new Map<string, readonly EventRecord[]>();
        for (const name of await namesIn(folder))
          logs.set(name, parseLog(await readFile(join(folder, name), 'utf8'), name).records);
        all.push({ of, id, logs });
      }
    return all;
  }

  async #here({ of, id }: Coming): Promise<readonly EventRecord[]> {
    const store = this.#to[of];
    return (await store.has(id)) ? (await store.read(id)).records : [];
  }

  /** @returns what came of it; null when everything of it was here. */
  async #placeOne(coming: Coming): Promise<Taken['visits'][number] | null> {
    const { of, id } = coming;
    const store: LogFiles = this.#to[of];
    const entries = mergeLogs([], entriesOf(coming)).missing;
    const coach = entries.find(({ kind }) => kind === 'visit.opened')?.['coach'];
    const told = { visit: id, coach: typeof coach === 'string' ? coach : '' };
    const isNew = await store.place(id, async (folder) => {
      for (const [name, records] of coming.logs) await writeWhole(join(folder, name), linesOf(records));
      if (of === 'visits') await this.#copyShared(id, folder);
    });
    if (isNew) return { ...told, isNew, entries: entries.length, photos: new Set(entries.flatMap(photosNamed)).size };
    const { missing } = mergeLogs((await store.read(id)).records, entries);
    // Photos and trees go first: an entry never speaks of one that is not here. Each is named by its content.
    const photos = of === 'visits' ? await this.#copyShared(id, store.folderOf(id)) : 0;
    if (missing.length > 0) await store.addLog(id, missing);
    return missing.length + photos > 0 ? { ...told, isNew, entries: missing.length, photos } : null;
  }

  /** Copies the photos and trees of a visit that its folder lacks. @returns how many photos. */
  async #copyShared(visit: string, folder: string): Promise<number> {
    const { photos = [], trees = [] } = this.#manifest.visits.find((each) => each.visit === visit) ?? {};
    let copied = 0;
    for (const name of photos)
      if (await copyIfMissing(join(this.#staging, 'photos', name), join(folder, 'photos', name))) copied++;
    for (const hash of trees) {
      const { files } = await plainFiles(join(this.#staging, 'trees', hash), () => true, Infinity);
      // tree.yaml comes last: a tree whose copying was broken off is taken for missing, not for another.
      const order = [...files.keys()].sort((a, b) => Number(a === 'tree.yaml') - Number(b === 'tree.yaml'));
      for (const file of order)
        await copyIfMissing(join(this.#staging, 'trees', hash, file), join(folder, 'trees', hash, file));
    }
    return copied;
  }

  /** Files that are not here; one that is here and says something else stays, and is named. */
  async #copyNew(what: 'drafts' | 'practice', folder: string, remarks: PackProblem[]): Promise<number> {
    const { files } = await plainFiles(join(this.#staging, what), () => true, Infinity);
    let copied = 0;
    for (const [path, bytes] of files) {
      const target = join(folder, path);
      if (await copyIfMissing(join(this.#staging, what, path), target)) copied++;
      else if (!Buffer.from(bytes).equals(await readFile(target)))
        remarks.push(
          remark(
            'stays-as-it-is',
            `${what}/${path}`,
            'The one here is another and stays; the backup still has its own.',
          ),
        );
    }
    return copied;
  }

  async #settings(remarks: PackProblem[]): Promise<Taken['settings']> {
    const text = await textIfThere(join(this.#staging, 'settings.json'));
    if (text === null) return 'none';
    if ((await textIfThere(join(this.#to.dataFolder, 'settings.json'))) !== null) return 'kept';
    try {
      await this.#to.settings.write(checkedRequest('settings.write', JSON.parse(text)));
      return 'taken';
    } catch (problem) {
      if (!(problem instanceof SyntaxError || (problem instanceof HostError && problem.code === 'bad-request')))
        throw problem;
      remarks.push(remark('settings-broken', 'settings.json', 'The settings cannot be read; the usual ones hold.'));
      return 'none';
    }
  }
}

/** Something that the person should know of and that refuses nothing. */
export function remark(code: string, file: string, message: string): PackProblem {
  return { ...packError(code, file, message), level: 'warning' };
}

function entriesOf({ logs }: Coming): EventRecord[] {
  return [...logs.values()].flat();
}

async function namesIn(folder: string): Promise<string[]> {
  try {
    return (await readdir(folder)).sort();
  } catch (problem) {
    if (isMissing(problem)) return [];
    throw problem;
  }
}

async function textIfThere(path: string): Promise<string | null> {
  try {
    return await readFile(path, 'utf8');
  } catch (problem) {
    if (isMissing(problem)) return null;
    throw problem;
  }
}

/** @returns false when there is a file already; it is not touched. */
async function copyIfMissing(from: string, to: string): Promise<boolean> {
  try {
    await stat(to);
    return false;
  } catch (problem) {
    if (!isMissing(problem)) throw problem;
  }
  await mkdir(dirname(to), { recursive: true });
  // Beside first, so that a crash leaves no half file under a name that promises its content.
  const beside = `${to}.${randomBytes(4).toString('hex')}.new`;
  await copyFile(from, beside);
  const file = await open(beside, 'r+');
  try {
    await file.sync();
  } finally {
    await file.close();
  }
  await rename(beside, to);
  return true;
}
