import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Draft } from '../../electron/host/draft-files.ts';
import { readTreeFolder, snapshotsOf } from '../../electron/host/tree-files.ts';
import { TreeReader } from '../../electron/host/tree-reader.ts';
import { treeCard } from '../../shared/knowledge/index.ts';
import { coachSummaryOf } from '../../electron/host/coach-calls.ts';
import { visitSummaryOf } from '../../electron/host/visit-summary.ts';
import { visitRecord } from '../../shared/coach/index.ts';
import {
  checkedRequest,
  DEFAULT_SETTINGS,
  HostError,
  type HostAnswer,
  type HostClient,
  type HostMethod,
  type HostRequest,
  type PackCard,
  type Settings,
} from '../../shared/host/host-api.ts';
import { EVENT_VERSION, readEvent } from '../../shared/visit/index.ts';

type EventRecord = HostAnswer<'visits.read'>['events'][number];

/** A machine side that lives in memory, over the trees that come with the program. Requests are checked as the real one does. */
export interface FakeHost extends HostClient {
  /** Visit → its log, as it would be on disk. */
  readonly logs: Map<string, EventRecord[]>;
  /** Learner → its log. */
  readonly learners: Map<string, EventRecord[]>;
  /** Coach → its log. */
  readonly coaches: Map<string, EventRecord[]>;
  settings: Settings;
  /** While set, writing is refused with this sentence. */
  refusal: string | null;
  packs: readonly PackCard[];
  drafts: readonly Draft[];
  /** Photos by name. */
  readonly photos: Map<string, HostAnswer<'photos.read'>>;
  /** What comes of installing a pack; a test sets it. */
  install: (replace: boolean) => HostAnswer<'packs.install'>;
  /** What comes of taking in a visit or a backup; a test sets it. */
  takeIn: (method: 'visits.import' | 'backup.restore') => HostAnswer<'visits.import'>;
  /** Pieces handed over so far, by upload. */
  readonly uploads: Map<string, readonly string[]>;
  /** What is in every file that is made. */
  made: Uint8Array;
  /** While set, writing waits for it. */
  slow: Promise<void> | null;
}

/** A window over a few complaints opens as one over all of them does, only sooner. */
const SHOWN: readonly string[] = [
  'air-leaks-when-brake-held',
  'coach-wont-roll-free',
  'growl-through-floor-at-speed',
  'oil-drip-under-engine',
  'weak-engine-brake',
];
const TREES = join(import.meta.dirname, '../../trees');
const folder = await readTreeFolder(TREES);
const reader = new TreeReader();
/** Each tree is read once for all tests of a file. */
const trees = snapshotsOf(folder)
  .filter(({ id }) => SHOWN.includes(id))
  .map((snapshot) => reader.answer(snapshot));
const list: HostAnswer<'trees.list'> = {
  trees: trees.flatMap(({ hash, read }) => (read ? [{ hash, card: treeCard(read.tree) }] : [])),
  tools: [...(trees[0]?.read?.vocabulary.tools ?? [])],
  notices: [],
};

const MADE = { path: 'the folder of exports/a-file.zip', notices: [] };

/** Builds the fake; each test gets its own. */
export function fakeHost(settings: Partial<Settings> = {}): FakeHost {
  const logs = new Map<string, EventRecord[]>();
  const learners = new Map<string, EventRecord[]>();
  const learnerLog = (learner: string): EventRecord[] => {
    const log = learners.get(learner);
    if (!log) throw new HostError({ code: 'no-such-learner', message: 'There is no such learner.' });
    return log;
  };
  const coaches = new Map<string, EventRecord[]>();
  const coachOf = (coach: string): EventRecord[] => {
    const log = coaches.get(coach);
    if (!log) throw new HostError({ code: 'no-such-coach', message: 'There is no such coach.' });
    return log;
  };
  const logOf = (visit: string): EventRecord[] => {
    const log = logs.get(visit);
    if (!log) throw new HostError({ code: 'no-such-visit', message: 'There is no such visit.' });
    return log;
  };
  const snapshotOf = (hash: string): HostAnswer<'trees.read'> => {
    const found = trees.find((each) => each.hash === hash);
    if (!found) throw new HostError({ code: 'no-such-tree', message: 'There is no such tree.' });
    return found;
  };
  const refuseIfTold = (): void => {
    if (fake.refusal !== null) throw new HostError({ code: 'disk', message: fake.refusal });
  };
  const handlers: { readonly [M in HostMethod]: (request: HostRequest<M>) => HostAnswer<M> } = {
    'app.info': () => ({
      version: '0.0.0',
      shell: 'browser',
      dataFolder: 'the data folder',
      now: new Date().toISOString(),
    }),
    'settings.read': () => ({ settings: fake.settings, notices: [] }),
    'settings.write': (request) => {
      refuseIfTold();
      fake.settings = request;
      return { settings: request };
    },
    'trees.list': () => list,
    'trees.read': ({ hash }) => snapshotOf(hash),
    'trees.snapshot': ({ hash }) => snapshotOf(hash),
    'trees.draft': ({ id, seen }) => ({
      folder: 'the folder of drafts',
      drafts: fake.drafts.map(({ snapshot, problems }) => ({
        id: snapshot.id,
        hash: snapshot.hash,
        errors: problems.filter(({ level }) => level === 'error').length,
        warnings: problems.filter(({ level }) => level === 'warning').length,
      })),
      tree:
        fake.drafts
          .filter(({ snapshot }) => snapshot.id === id && snapshot.hash !== seen)
          .map(({ snapshot, problems }) => ({ snapshot: reader.answer(snapshot), problems }))[0] ?? null,
    }),
    'packs.list': () => ({ packs: fake.packs, notices: [] }),
    'packs.install': ({ replace }) => {
      refuseIfTold();
      return fake.install(replace);
    },
    'packs.remove': ({ name }) => {
      refuseIfTold();
      fake.packs = fake.packs.filter((pack) => pack.name !== name);
      return { removed: name };
    },
    'visits.list': () => ({ visits: [...logs].flatMap(([id, log]) => visitSummaryOf(id, log) ?? []), notices: [] }),
    'visits.create': ({ visit, first }) => {
      refuseIfTold();
      if (first.kind !== 'visit.opened')
        throw new HostError({ code: 'bad-request', message: 'A visit begins with its opening.' });
      refuseNewer([first]);
      if (logs.has(visit)) throw new HostError({ code: 'visit-exists', message: 'There is such a visit already.' });
      logs.set(visit, [first]);
      return { visit };
    },
    'visits.read': ({ visit }) => {
      const seen = new Set<string>();
      const events = logOf(visit).filter(({ id }) => !seen.has(id) && !!seen.add(id));
      return { events, notices: [], readOnly: false };
    },
    'visits.append': ({ visit, events }) => {
      refuseIfTold();
      refuseNewer(events);
      for (const event of events) if (event.kind === 'complaint.opened') snapshotOf(String(event['treeHash']));
      logOf(visit).push(...events);
      return { written: events.length };
    },
    'coaches.list': () => ({
      coaches: [...coaches].flatMap(([id, log]) => coachSummaryOf(id, log) ?? []),
      notices: [],
    }),
    'coaches.create': ({ coach, first }) => {
      refuseIfTold();
      coaches.set(coach, [first]);
      return { coach };
    },
    'coaches.read': ({ coach }) => ({ events: coachOf(coach), notices: [], readOnly: false }),
    'coaches.append': ({ coach, events }) => {
      refuseIfTold();
      coachOf(coach).push(...events);
      return { written: events.length };
    },
    'coaches.history': ({ coach }) => ({
      visits: [...logs]
        .flatMap(([id, log]) => {
          const summary = visitSummaryOf(id, log);
          return summary?.coachId === coach ? [{ ...summary, ...visitRecord(log.map(readEvent)) }] : [];
        })
        .sort((a, b) => (a.openedAt < b.openedAt ? 1 : -1)),
      notices: [],
    }),
    'visits.export': ({ visit }) => {
      refuseIfTold();
      logOf(visit);
      return { ...MADE, name: `visit-${visit}.zip`, bytes: fake.made.length };
    },
    'visits.import': () => fake.takeIn('visits.import'),
    'backup.write': () => {
      refuseIfTold();
      return { ...MADE, name: 'backup.zip', bytes: fake.made.length };
    },
    'backup.restore': () => fake.takeIn('backup.restore'),
    'exchange.send': ({ upload, at, data }) => {
      refuseIfTold();
      fake.uploads.set(upload, [...(at === 0 ? [] : (fake.uploads.get(upload) ?? [])), data]);
      return { received: at + atob(data).length };
    },
    'exchange.fetch': ({ at }) => ({
      data: btoa(String.fromCharCode(...fake.made.subarray(at, at + 4))),
      next: at + 4 < fake.made.length ? at + 4 : null,
    }),
    'photos.write': ({ type, data }) => {
      refuseIfTold();
      const photo = `${createHash('sha256').update(data).digest('hex')}.${type === 'image/jpeg' ? 'jpg' : type.slice(6)}`;
      fake.photos.set(photo, { type, data });
      return { photo };
    },
    'photos.read': ({ photo }) => {
      const kept = fake.photos.get(photo);
      if (!kept) throw new HostError({ code: 'no-photos', message: 'This machine side keeps no photos.' });
      return kept;
    },
    'trees.drawing': ({ file }) => ({ svg: readFileSync(join(TREES, 'pictures', file), 'utf8') }),
    'learners.list': () => ({
      learners: [...learners].map(([id, log]) => ({
        id,
        name: String(log[0]?.['name']),
        events: log.length,
        lastAt: log.at(-1)?.at ?? '',
      })),
      notices: [],
    }),
    'learners.create': ({ learner, first }) => {
      refuseIfTold();
      learners.set(learner, [first]);
      return { learner };
    },
    'learners.read': ({ learner }) => ({ events: learnerLog(learner), notices: [], readOnly: false }),
    'learners.append': ({ learner, events }) => {
      refuseIfTold();
      learnerLog(learner).push(...events);
      return { written: events.length };
    },
    'learners.delete': ({ learner }) => {
      refuseIfTold();
      learnerLog(learner);
      learners.delete(learner);
      return { deleted: learner, files: 1 };
    },
  };
  const fake: FakeHost = {
    logs,
    learners,
    coaches,
    settings: { ...DEFAULT_SETTINGS, ...settings },
    refusal: null,
    packs: [],
    drafts: [],
    photos: new Map(),
    install: () => ({ installed: null, problems: [] }),
    takeIn: () => ({ taken: null, problems: [] }),
    uploads: new Map(),
    made: new Uint8Array([1, 2, 3, 4, 5, 6]),
    slow: null,
    async call(method, request) {
      const checked = checkedRequest(method, request);
      if (fake.slow && method.endsWith('.append')) await fake.slow;
      // As over a wire: nothing of the window's own objects gets through.
      return Promise.resolve(structuredClone(handlers[method](checked)));
    },
  };
  return fake;
}

function refuseNewer(events: readonly EventRecord[]): void {
  if (events.some(({ v }) => v > EVENT_VERSION))
    throw new HostError({ code: 'newer-version', message: 'An event is of a newer version.' });
}
