import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import {
  checkedRequest,
  HostError,
  isHostMethod,
  logCards,
  type HostAnswer,
  type HostClient,
  type HostMethod,
  type HostRequest,
} from '../../shared/host/host-api.ts';
import { LEARNER_EVENT_VERSION } from '../../shared/practice/drills/index.ts';
import { EVENT_VERSION } from '../../shared/visit/events.ts';
import { coachCalls } from './coach-calls.ts';
import { systemClock, type Clock } from './clock.ts';
import type { Disk } from './disk.ts';
import { DraftFiles, type Draft } from './draft-files.ts';
import { deviceId } from './device-id.ts';
import { exchangeHandlers } from './exchange-handlers.ts';
import { faultOf, reportOf } from './fault.ts';
import { LearnerFiles } from './learner-files.ts';
import { keptFiles, keptSnapshot } from './kept-trees.ts';
import { PackFiles } from './pack-files.ts';
import { PhotoFiles } from './photo-files.ts';
import { SettingsFiles } from './settings-files.ts';
import { TreeCards } from './tree-cards.ts';
import { TreeReader } from './tree-reader.ts';
import { readTreeFolder, snapshotsOf, type TreeSnapshot } from './tree-files.ts';
import { LogCards } from './log-cards.ts';
import { LogFiles, type EventRecord } from './visit-files.ts';
import { refuseNewerEvents, refuseNewerLog } from './newer.ts';
import { visitSummaryOf } from './visit-summary.ts';
import { readIfThere } from './whole-file.ts';

export interface HostOptions {
  readonly dataFolder: string;
  readonly treesFolder: string;
  /** Where visits and coaches lie when several machines share them; the data folder unless given. */
  readonly sharedFolder?: string;
  /** Name of the machine, by which writers are told apart; the system's unless given. */
  readonly machine?: string;
  /** For tests: a disk that fails. */
  readonly disk?: Disk;
  /** Where trees lie that somebody is writing; `drafts/` in the data folder unless given. */
  readonly draftsFolder?: string;
  /** The list of complaints as the build made it; saves reading every tree at the first start. */
  readonly preparedCards?: string;
  readonly shell: 'electron' | 'browser';
  readonly version: string;
  readonly clock?: Clock;
  /** Gets the details of what nobody expected, for whoever mends the program; standard error unless given. */
  readonly report?: (line: string) => void;
}

/** The machine side: every call of the contract, whatever carries it. */
export interface Host extends HostClient {
  /** For carriers: a method by name with an unchecked request. @throws {HostError} and nothing else. */
  answer(method: string, request: unknown): Promise<unknown>;
  /** Folder of the drawings that trees name. */
  readonly picturesFolder: string;
}

type Handlers = { readonly [M in HostMethod]: (request: HostRequest<M>) => Promise<HostAnswer<M>> };

/** Builds the machine side over a data folder. */
export async function createHost(options: HostOptions): Promise<Host> {
  const { dataFolder, treesFolder, clock = systemClock, report = toStandardError } = options;
  const shared = options.sharedFolder ?? dataFolder;
  const visitsFolder = join(shared, 'visits');
  const device = await deviceId(dataFolder, options.machine);
  const visits = new LogFiles(visitsFolder, device, 'visit', options.disk);
  const coaches = new LogFiles(join(shared, 'coaches'), device, 'coach', options.disk);
  const learners = new LearnerFiles(join(dataFolder, 'learners'), device);
  const visitCards = new LogCards({
    path: join(dataFolder, 'cache', 'visits.json'),
    version: options.version,
    files: visits,
    schema: logCards.visit,
    cardOf: visitSummaryOf,
  });
  const photos = new PhotoFiles(visitsFolder);
  const settings = new SettingsFiles(dataFolder);
  const cards = new TreeCards(dataFolder, options.version, options.preparedCards);
  const reader = new TreeReader();
  const packs = new PackFiles(dataFolder);
  const drafts = new DraftFiles(options.draftsFolder ?? join(dataFolder, 'drafts'));
  const picturesFolder = join(treesFolder, 'pictures');
  /** Every tree that a new complaint can begin with: the program's own first, then those of the packs. */
  const offered = async (): Promise<TreeSnapshot[]> => {
    const shipped = await readTreeFolder(treesFolder);
    return [...snapshotsOf(shipped), ...(await packs.snapshots(shipped.vocabulary))];
  };

  const exchange = exchangeHandlers(dataFolder, {
    visits,
    coaches,
    // What is read and added here goes into files of its own; writing and forgetting stay with LearnerFiles.
    learners: new LogFiles(join(dataFolder, 'learners'), device, 'learner'),
    dataFolder,
    draftsFolder: drafts.folder,
    offered,
    version: options.version,
    now: () => clock.now(),
    packs,
    settings,
    builtIn: async () => ({
      vocabulary: (await readTreeFolder(treesFolder)).vocabulary,
      pictures: new Set(await readdir(picturesFolder)),
    }),
  });

  const handlers: Handlers = {
    ...exchange,
    'app.info': () =>
      Promise.resolve({ version: options.version, shell: options.shell, dataFolder, now: clock.now().toISOString() }),
    'settings.read': () => settings.read(),
    'settings.write': async (request) => {
      await settings.write(request);
      return { settings: request };
    },
    'trees.list': async () => {
      const list = await cards.of(await offered());
      return { ...list, notices: [...list.notices, ...(await packs.list()).notices] };
    },
    'trees.read': async ({ hash }) => {
      const found = (await offered()).find((snapshot) => snapshot.hash === hash);
      if (!found)
        throw new HostError({
          code: 'no-such-tree',
          message: 'The trees on disk have changed since the window was opened. Open the window again.',
        });
      return reader.answer(found);
    },
    'trees.snapshot': async ({ visit, hash }) => {
      const kept = await keptSnapshot(visits.folderOf(visit), hash);
      const found = kept ?? (await offered()).find((snapshot) => snapshot.hash === hash);
      if (!found)
        throw new HostError({
          code: 'no-such-tree',
          message:
            'The tree that this visit was made with is not in its folder. Its findings are here; the odds cannot be worked out again.',
        });
      return reader.answer(found);
    },
    'trees.draft': async ({ id, seen }) => {
      const { vocabulary } = await readTreeFolder(treesFolder);
      const all = await drafts.all(vocabulary);
      const count = (problems: Draft['problems'], level: string): number =>
        problems.filter((problem) => problem.level === level).length;
      const asked = all.find(({ snapshot }) => snapshot.id === id && snapshot.hash !== seen);
      return {
        folder: drafts.folder,
        drafts: all.map(({ snapshot, problems }) => ({
          id: snapshot.id,
          hash: snapshot.hash,
          errors: count(problems, 'error'),
          warnings: count(problems, 'warning'),
        })),
        tree: asked ? { snapshot: reader.answer(asked.snapshot), problems: asked.problems } : null,
      };
    },
    'trees.drawing': async ({ file }) => {
      const svg = await readIfThere(() => readFile(join(picturesFolder, file), 'utf8'));
      if (svg === null)
        throw new HostError({
          code: 'no-such-drawing',
          message: `The drawing “${file}” did not come with this program. Open the window again, or read its description.`,
        });
      return { svg };
    },
    'packs.list': () => packs.list(),
    'packs.install': async ({ source, replace }) => {
      const { vocabulary } = await readTreeFolder(treesFolder);
      const pictures = new Set(await readdir(picturesFolder));
      return packs.install(source, replace, { vocabulary, pictures });
    },
    'packs.remove': async ({ name }) => {
      await packs.remove(name);
      return { removed: name };
    },
    'visits.list': async () => {
      const { cards: summaries, notices } = await visitCards.all();
      return { visits: summaries.sort((a, b) => (a.lastAt < b.lastAt ? 1 : -1)), notices };
    },
    'visits.create': async ({ visit, first }) => {
      if (first.kind !== 'visit.opened')
        throw new HostError({ code: 'bad-request', message: 'A visit begins with its opening. Nothing was written.' });
      refuseNewerEvents([first], EVENT_VERSION);
      await visits.create(visit, first);
      return { visit };
    },
    'visits.read': async ({ visit }) => {
      const { records, notices } = await visits.read(visit);
      const newer = records.some(({ v }) => v > EVENT_VERSION);
      const message = `Part of this visit was written by a newer Droplight. What this one understands is shown; nothing can be added until the program is up to date.`;
      return {
        events: records,
        readOnly: newer,
        notices: newer ? [...notices, { code: 'newer-version', message }] : notices,
      };
    },
    'visits.append': async ({ visit, events }) => {
      refuseNewerEvents(events, EVENT_VERSION);
      refuseNewerLog((await visits.read(visit)).records, EVENT_VERSION, 'visit');
      for (const event of events) if (event.kind === 'complaint.opened') await pin(visit, event);
      await visits.append(visit, events);
      return { written: events.length };
    },
    ...coachCalls({ dataFolder, coaches, version: options.version, visits, visitCards }),
    'photos.write': async ({ visit, type, data }) => {
      if (!(await visits.list()).includes(visit)) {
        throw new HostError({
          code: 'no-such-visit',
          message: 'This visit is not in the data folder. The photo was not stored.',
        });
      }
      refuseNewerLog((await visits.read(visit)).records, EVENT_VERSION, 'visit');
      return { photo: await photos.write(visit, type, data) };
    },
    'photos.read': ({ visit, photo }) => photos.read(visit, photo),
    'learners.list': () => learners.list(),
    'learners.create': async ({ learner, first }) => {
      if (first.kind !== 'learner.opened')
        throw new HostError({ code: 'bad-request', message: 'A learner begins with a name. Nothing was written.' });
      refuseNewerEvents([first], LEARNER_EVENT_VERSION);
      await learners.create(learner, first);
      return { learner };
    },
    'learners.read': async ({ learner }) => {
      const { records, notices } = await learners.read(learner);
      const newer = records.some(({ v }) => v > LEARNER_EVENT_VERSION);
      const message =
        'Part of this learner’s log was written by a newer Droplight. What this one understands counts; nothing can be added until the program is up to date.';
      return {
        events: records,
        readOnly: newer,
        notices: newer ? [...notices, { code: 'newer-version', message }] : notices,
      };
    },
    'learners.append': async ({ learner, events }) => {
      refuseNewerEvents(events, LEARNER_EVENT_VERSION);
      const { records } = await learners.read(learner);
      refuseNewerEvents(records, LEARNER_EVENT_VERSION);
      await learners.append(learner, events);
      return { written: events.length };
    },
    'learners.delete': async ({ learner }) => ({ deleted: learner, files: await learners.delete(learner) }),
  };

  return { call: (method, request) => run(method, request), answer, picturesFolder };

  function answer(method: string, request: unknown): Promise<unknown> {
    if (!isHostMethod(method))
      return Promise.reject(
        new HostError({
          code: 'no-such-method',
          message: `The machine side has no "${method.slice(0, 60)}". Nothing was written.`,
        }),
      );
    return run(method, request);
  }

  async function run<M extends HostMethod>(method: M, request: unknown): Promise<HostAnswer<M>> {
    const checked = checkedRequest(method, request);
    try {
      return await handlers[method](checked);
    } catch (problem) {
      const known = asHostError(problem);
      if (known instanceof HostError) throw known;
      report(`"${method}" failed: ${reportOf(problem)}`);
      throw new HostError(faultOf(problem), { cause: problem });
    }
  }

  /** Keeps the tree of a complaint beside the visit, so that it replays with it for ever. */
  async function pin(visit: string, event: EventRecord): Promise<void> {
    const hash = event['treeHash'];
    if (typeof hash !== 'string' || !/^[0-9a-f]{64}$/.test(hash)) {
      throw new HostError({
        code: 'bad-request',
        message: 'A complaint names its tree by 64 hex digits. Nothing was written.',
      });
    }
    const snapshot =
      (await offered()).find((each) => each.hash === hash) ?? (await keptSnapshot(visits.folderOf(visit), hash));
    if (!snapshot)
      throw new HostError({
        code: 'no-such-tree',
        message:
          'The tree of this complaint has changed on disk since the window was opened. Nothing was written. Open the window again.',
      });
    await visits.keep(visit, join('trees', hash), keptFiles(snapshot));
  }
}

function toStandardError(line: string): void {
  process.stderr.write(`${line}\n`);
}

/** System failures as the user meets them; programming mistakes pass through unchanged. */
function asHostError(problem: unknown): unknown {
  if (problem instanceof HostError || !(problem instanceof Error) || !('code' in problem)) return problem;
  const words: Readonly<Record<string, string>> = {
    ENOSPC: 'The disk is full',
    EACCES: 'The data folder may not be written',
    EPERM: 'The data folder may not be written',
    EROFS: 'The data folder can only be read',
    ENOENT: 'A file or folder that should be there is missing',
  };
  const what = words[String(problem.code)];
  return what === undefined
    ? problem
    : new HostError({
        code: 'disk',
        message: `${what} (${problem.message}). What you typed is still in the window; put the disk right and do it again.`,
      });
}
