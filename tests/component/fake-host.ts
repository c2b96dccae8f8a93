import { join } from 'node:path';
import { cardsOf } from '../../electron/host/tree-cards.ts';
import type { Draft } from '../../electron/host/draft-files.ts';
import { readTreeFolder, snapshotsOf } from '../../electron/host/tree-files.ts';
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
  type VisitSummary,
} from '../../shared/host/host-api.ts';

type EventRecord = HostAnswer<'visits.read'>['events'][number];

/** A machine side that lives in memory, over the trees that come with the program. Requests are checked as the real one does. */
export interface FakeHost extends HostClient {
  /** Visit → its log, as it would be on disk. */
  readonly logs: Map<string, EventRecord[]>;
  settings: Settings;
  /** While set, writing is refused with this sentence. */
  refusal: string | null;
  packs: readonly PackCard[];
  drafts: readonly Draft[];
  /** Photos that can be read, by name; none are written. */
  readonly photos: Map<string, HostAnswer<'photos.read'>>;
  /** What comes of installing a pack; a test sets it. */
  install: (replace: boolean) => HostAnswer<'packs.install'>;
}

/** A window over a few complaints opens as one over all of them does, only sooner. */
const SHOWN: readonly string[] = [
  'air-leaks-when-brake-held',
  'coach-wont-roll-free',
  'growl-through-floor-at-speed',
  'oil-drip-under-engine',
  'weak-engine-brake',
];
const trees = snapshotsOf(await readTreeFolder(join(import.meta.dirname, '../../trees'))).filter(({ id }) =>
  SHOWN.includes(id),
);
const list = cardsOf(trees);

/** Builds the fake; each test gets its own. */
export function fakeHost(settings: Partial<Settings> = {}): FakeHost {
  const logs = new Map<string, EventRecord[]>();
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
      tree: fake.drafts.find(({ snapshot }) => snapshot.id === id && snapshot.hash !== seen) ?? null,
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
    'visits.list': () => ({ visits: [...logs].map(([id, log]) => summaryOf(id, log)), notices: [] }),
    'visits.create': ({ visit, first }) => {
      refuseIfTold();
      logs.set(visit, [first]);
      return { visit };
    },
    'visits.read': ({ visit }) => ({ events: logOf(visit), notices: [], readOnly: false }),
    'visits.append': ({ visit, events }) => {
      refuseIfTold();
      logOf(visit).push(...events);
      return { written: events.length };
    },
    'photos.write': () => {
      throw new HostError({ code: 'no-photos', message: 'This machine side keeps no photos.' });
    },
    'photos.read': ({ photo }) => {
      const kept = fake.photos.get(photo);
      if (!kept) throw new HostError({ code: 'no-photos', message: 'This machine side keeps no photos.' });
      return kept;
    },
  };
  const fake: FakeHost = {
    logs,
    settings: { ...DEFAULT_SETTINGS, ...settings },
    refusal: null,
    packs: [],
    drafts: [],
    photos: new Map(),
    install: () => ({ installed: null, problems: [] }),
    async call(method, request) {
      const checked = checkedRequest(method, request);
      // As over a wire: nothing of the window's own objects gets through.
      return Promise.resolve(structuredClone(handlers[method](checked)));
    },
  };
  return fake;
}

function summaryOf(id: string, log: readonly EventRecord[]): VisitSummary {
  const first = log[0];
  if (!first) throw new Error(`The log of ${id} is empty.`);
  return {
    id,
    coach: String(first['coach']),
    demo: first['demo'] === true,
    openedAt: first.at,
    lastAt: log.at(-1)?.at ?? first.at,
    events: log.length,
  };
}
