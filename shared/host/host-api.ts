/**
 * The one contract between the window and the machine side. Electron's channels, the HTTP routes, both clients and the
 * validation on the machine side are made from this table; nothing else crosses.
 */
import * as v from 'valibot';
import type { TreeData } from '../knowledge/tree-data.ts';
import { ROLES } from '../knowledge/tree.ts';

const id = v.pipe(v.string(), v.regex(/^[a-z0-9][a-z0-9-]{0,79}$/, 'letters, digits and hyphens, at most 80'));
const hash = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/, '64 hex digits'));

const line = { id, v: v.number(), at: v.string(), by: v.string() };
/** Kinds of lines of a learner's log: never those of a visit, so that practice is not taken for a coach that was repaired. */
const LEARNER_KIND = /^(learner|drill|practice|exercise)\./;

/** One log line; `shared/visit/read-event.ts` checks its inside. */
const eventRecord = v.looseObject({
  ...line,
  kind: v.pipe(
    v.string(),
    v.check((kind) => !LEARNER_KIND.test(kind), 'an event of a visit, not a line of a learner’s log'),
  ),
});

/** One line of a learner's log; `shared/practice` checks its inside. */
const learnerRecord = v.looseObject({
  ...line,
  kind: v.pipe(v.string(), v.regex(LEARNER_KIND, 'a line of a learner’s log, not an event of a visit')),
});

const learnerSummary = v.object({ id, name: v.string(), events: v.number(), lastAt: v.string() });

const visitSummary = v.object({
  id,
  coach: v.string(),
  demo: v.boolean(),
  openedAt: v.string(),
  lastAt: v.string(),
  events: v.number(),
  /** Profile of its coach, when it is linked to one. */
  coachId: v.optional(id),
});

const coachSummary = v.object({
  id,
  name: v.string(),
  demo: v.boolean(),
  lastAt: v.string(),
  events: v.number(),
});

/** What is wrong with stored data, for the user: a sentence with what was kept and what to do. */
const notice = v.object({ code: v.string(), message: v.string() });

const settings = v.object({
  light: v.picklist(['day', 'night', 'system']),
  units: v.picklist(['us', 'metric']),
  name: v.pipe(v.string(), v.maxLength(80)),
  singleKeys: v.boolean(),
  /** Who usually works here; offered first. */
  who: v.picklist(ROLES),
  /** Let proven cures on this machine move the starting odds. */
  learning: v.optional(v.boolean(), false),
  /** Cases that somebody has taken out of it: ids of `shared/visit/closed-cases.ts`. */
  casesTakenOut: v.optional(v.pipe(v.array(v.pipe(v.string(), v.maxLength(200))), v.maxLength(10_000)), []),
});

/** A pack of trees from somebody else, as it names itself. */
const packHead = v.object({ name: id, version: v.number() });

/** A tree with its vocabulary, read on the machine side; the window never sees the text. */
const treeSnapshot = v.object({
  id,
  /** Of the text of all its files. */
  hash,
  /** Made by `shared/knowledge` from checked files, so it is not checked again; null when the files have an error. */
  read: v.nullable(v.custom<TreeData>((data) => typeof data === 'object' && data !== null)),
  /** The first error with its place, when there is one. */
  fault: v.nullable(v.string()),
  /** The pack that it came with; absent = it came with the program. */
  pack: v.optional(packHead),
  /** Drawings of that pack that the tree names: file name → SVG text. */
  drawings: v.optional(v.record(v.string(), v.string())),
});

/** Small cards of logs, kept so that a long list need not read every log again (electron/host/log-cards.ts). */
export const logCards = { visit: visitSummary, coach: coachSummary };
export const noticeSchema = notice;

/** A list that is only read. */
const listOf = <S extends v.GenericSchema>(schema: S) => v.pipe(v.array(schema), v.readonly());

const pastVisit = v.object({
  ...visitSummary.entries,
  complaints: listOf(
    v.object({
      complaint: v.string(),
      tree: v.string(),
      words: v.string(),
      closedHow: v.nullable(v.picklist(['cured', 'handed-over', 'left-open'])),
      cause: v.nullable(v.string()),
    }),
  ),
  readings: listOf(
    v.object({
      finding: v.string(),
      tree: v.string(),
      check: v.string(),
      site: v.nullable(v.string()),
      value: v.number(),
      unit: v.string(),
      at: v.string(),
    }),
  ),
});

const treeCard = v.object({
  id,
  title: v.string(),
  phrases: listOf(v.string()),
  confusedWith: listOf(v.object({ text: v.string(), complaint: v.optional(v.string()) })),
  causes: listOf(v.object({ id: v.string(), name: v.string(), plain: v.string() })),
  checks: listOf(v.object({ id: v.string(), name: v.string() })),
});

/** Complaints by card and content hash, the kinds of tools that can be at hand, and what could not be read. */
export const treeList = v.object({
  /** Two may have one id when one of them came with a pack; the pack tells them apart. */
  trees: listOf(v.object({ hash, card: treeCard, pack: v.optional(packHead) })),
  tools: listOf(
    v.object({ id: v.string(), name: v.string(), covers: listOf(v.string()), usualFor: listOf(v.string()) }),
  ),
  notices: listOf(notice),
});

const packCard = v.object({ ...packHead.entries, trees: listOf(v.string()), drawings: v.number() });

/** What is wrong with a pack, a tree or an exchange, at its place. */
const packProblem = v.object({
  level: v.picklist(['error', 'warning']),
  code: v.string(),
  /** Path inside the pack or the folder of drafts. */
  file: v.string(),
  /** Counted from 1; null where the fault is of the file as a whole. */
  line: v.nullable(v.number()),
  message: v.string(),
});

/** A file that was made for the person to keep: in the folder of exports, and taken away piece by piece. */
const exchangeFile = v.object({
  name: v.string(),
  path: v.string(),
  bytes: v.number(),
  /** What was left out, and why. */
  notices: listOf(notice),
});
const exchangeName = v.pipe(v.string(), v.regex(/^[a-z0-9][a-z0-9-]{0,150}\.zip$/, 'the name of an exported file'));

/** What came of taking in a visit or a backup; null = refused, and nothing was written. */
const takenIn = v.object({
  taken: v.nullable(
    v.object({
      /** Those that brought something; `entries` and `photos` that were not here. */
      visits: listOf(
        v.object({ visit: id, coach: v.string(), isNew: v.boolean(), entries: v.number(), photos: v.number() }),
      ),
      /** Visits of which everything was here. */
      unchanged: v.number(),
      coaches: v.number(),
      packs: listOf(v.string()),
      /** Files. */
      drafts: v.number(),
      practice: v.number(),
      settings: v.picklist(['taken', 'kept', 'none']),
    }),
  ),
  /** Faults where it was refused, else remarks. */
  problems: listOf(packProblem),
});

const draftProblem = v.object({
  ...packProblem.entries,
  column: v.number(),
  /** The line of the file, with the width of the marked part. */
  excerpt: v.optional(v.object({ text: v.string(), width: v.number() })),
});

const draftId = v.pipe(v.string(), v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'the name of a draft'), v.maxLength(80));

export const hostApi = {
  'app.info': {
    request: v.object({}),
    answer: v.object({
      version: v.string(),
      shell: v.picklist(['electron', 'browser']),
      dataFolder: v.string(),
      now: v.string(),
    }),
  },
  'settings.read': { request: v.object({}), answer: v.object({ settings, notices: v.array(notice) }) },
  'settings.write': { request: settings, answer: v.object({ settings }) },
  /** Complaints that this machine knows; the hash of each is what a new complaint pins. */
  'trees.list': { request: v.object({}), answer: treeList },
  /** A tree of the list, whole. */
  'trees.read': { request: v.object({ hash }), answer: treeSnapshot },
  /** A tree as it was when an old visit was made. */
  'trees.snapshot': { request: v.object({ visit: id, hash }), answer: treeSnapshot },
  /**
   * The trees that somebody is writing, in the folder of drafts; asked again and again while one is open. `tree` is given
   * whole when its files are not the `seen` ones.
   */
  'trees.draft': {
    request: v.object({ id: v.nullable(draftId), seen: v.nullable(hash) }),
    answer: v.object({
      folder: v.string(),
      drafts: listOf(v.object({ id, hash, errors: v.number(), warnings: v.number() })),
      tree: v.nullable(v.object({ snapshot: treeSnapshot, problems: listOf(draftProblem) })),
    }),
  },
  /** The text of a drawing that came with the program. */
  'trees.drawing': {
    request: v.object({ file: v.pipe(v.string(), v.regex(/^[a-z0-9-]{1,100}\.svg$/, 'the file name of a drawing')) }),
    answer: v.object({ svg: v.string() }),
  },
  /** Packs of trees from other people, and those that cannot be read any more. */
  'packs.list': { request: v.object({}), answer: v.object({ packs: listOf(packCard), notices: listOf(notice) }) },
  /**
   * Checks a pack and keeps it, whole or not at all; every fault is in the answer. One that is here already is replaced
   * only when told to.
   */
  'packs.install': {
    request: v.object({
      source: v.union([
        /** base64. */
        v.strictObject({ zip: v.pipe(v.string(), v.maxLength(12_000_000, 'a zip of at most 9 MB')) }),
        v.strictObject({
          files: v.pipe(
            v.array(v.object({ path: v.pipe(v.string(), v.maxLength(300)), text: v.string() })),
            v.maxLength(2000, 'at most 2000 files'),
          ),
        }),
      ]),
      replace: v.boolean(),
    }),
    answer: v.object({ installed: v.nullable(packCard), problems: listOf(packProblem) }),
  },
  /** Visits that began with a tree of the pack keep it. */
  'packs.remove': { request: v.object({ name: id }), answer: v.object({ removed: v.string() }) },
  'visits.list': {
    request: v.object({}),
    answer: v.object({ visits: v.array(visitSummary), notices: v.array(notice) }),
  },
  'visits.create': { request: v.object({ visit: id, first: eventRecord }), answer: v.object({ visit: id }) },
  'visits.read': {
    request: v.object({ visit: id }),
    answer: v.object({ events: v.array(eventRecord), notices: v.array(notice), readOnly: v.boolean() }),
  },
  /** On disk, flushed, before the answer. The tree that a complaint.opened names is kept beside the visit first. */
  'visits.append': {
    request: v.object({ visit: id, events: v.pipe(v.array(eventRecord), v.minLength(1), v.maxLength(50)) }),
    answer: v.object({ written: v.number() }),
  },
  'coaches.list': {
    request: v.object({}),
    answer: v.object({ coaches: v.array(coachSummary), notices: v.array(notice) }),
  },
  'coaches.create': { request: v.object({ coach: id, first: eventRecord }), answer: v.object({ coach: id }) },
  'coaches.read': {
    request: v.object({ coach: id }),
    answer: v.object({ events: v.array(eventRecord), notices: v.array(notice), readOnly: v.boolean() }),
  },
  /** On disk, flushed, before the answer. */
  'coaches.append': {
    request: v.object({ coach: id, events: v.pipe(v.array(eventRecord), v.minLength(1), v.maxLength(100)) }),
    answer: v.object({ written: v.number() }),
  },
  /** What the visits of a coach left behind, newest first: complaints, how they ended, every reading. */
  'coaches.history': {
    request: v.object({ coach: id }),
    answer: v.object({ visits: listOf(pastVisit), notices: v.array(notice) }),
  },
  /** Writes a visit with everything that belongs to it as one file. */
  'visits.export': { request: v.object({ visit: id }), answer: exchangeFile },
  /** Takes in a visit from a file that was handed over with `exchange.send`; by entries where it is here already. */
  'visits.import': { request: v.object({ upload: id }), answer: takenIn },
  /** Writes everything of this machine as one file. */
  'backup.write': { request: v.object({}), answer: exchangeFile },
  /** Adds what a backup has and this machine lacks; nothing that is here is changed. */
  'backup.restore': { request: v.object({ upload: id }), answer: takenIn },
  /** Hands a file over piece by piece: the calls of every carrier stay small, and no path crosses. `at` = bytes so far. */
  'exchange.send': {
    request: v.object({
      upload: id,
      at: v.pipe(v.number(), v.integer(), v.minValue(0)),
      /** base64, at most 6 MB decoded. */
      data: v.pipe(v.string(), v.maxLength(8_400_000, 'a piece of at most 6 MB')),
    }),
    answer: v.object({ received: v.number() }),
  },
  /** A piece of a file that was made, in base64; `next` = where the following one begins, null after the last. */
  'exchange.fetch': {
    request: v.object({ name: exchangeName, at: v.pipe(v.number(), v.integer(), v.minValue(0)) }),
    answer: v.object({ data: v.string(), next: v.nullable(v.number()) }),
  },
  'photos.write': {
    request: v.object({
      visit: id,
      type: v.picklist(['image/jpeg', 'image/png', 'image/webp']),
      /** base64, at most 12 MB decoded. */
      data: v.pipe(v.string(), v.maxLength(16_800_000)),
    }),
    answer: v.object({ photo: v.string() }),
  },
  'photos.read': {
    request: v.object({ visit: id, photo: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}\.(jpg|png|webp)$/)) }),
    answer: v.object({ type: v.string(), data: v.string() }),
  },
  /** Who practises on this machine. Each has a log of its own; nothing of it is a visit. */
  'learners.list': {
    request: v.object({}),
    answer: v.object({ learners: listOf(learnerSummary), notices: listOf(notice) }),
  },
  'learners.create': { request: v.object({ learner: id, first: learnerRecord }), answer: v.object({ learner: id }) },
  'learners.read': {
    request: v.object({ learner: id }),
    answer: v.object({ events: listOf(learnerRecord), notices: listOf(notice), readOnly: v.boolean() }),
  },
  'learners.append': {
    request: v.object({ learner: id, events: v.pipe(v.array(learnerRecord), v.minLength(1), v.maxLength(50)) }),
    answer: v.object({ written: v.number() }),
  },
  /** Every file of the learner is gone before the answer, other machines' lines too. There is no way back. */
  'learners.delete': { request: v.object({ learner: id }), answer: v.object({ deleted: id, files: v.number() }) },
} as const;

export type HostApi = typeof hostApi;
export type HostMethod = keyof HostApi;
export type HostRequest<M extends HostMethod> = v.InferOutput<HostApi[M]['request']>;
export type HostAnswer<M extends HostMethod> = v.InferOutput<HostApi[M]['answer']>;

/** What the window calls. IPC, HTTP and an in-memory one for tests implement it. */
export interface HostClient {
  call<M extends HostMethod>(method: M, request: HostRequest<M>): Promise<HostAnswer<M>>;
}

/** A refusal or failure of the machine side, the same over every carrier. */
export interface HostFault {
  readonly code: string;
  /** A sentence for the user: what is wrong, what was kept, what to do. */
  readonly message: string;
}

/**
 * A fault as it is thrown on either side. `cause` is what went wrong underneath; it stays on the machine side.
 */
export class HostError extends Error {
  readonly code: string;
  constructor(fault: HostFault, options?: ErrorOptions) {
    super(fault.message, options);
    this.name = 'HostError';
    this.code = fault.code;
  }
}

export type Settings = v.InferOutput<typeof settings>;
export type VisitSummary = v.InferOutput<typeof visitSummary>;
export type LearnerSummary = v.InferOutput<typeof learnerSummary>;
export type CoachSummary = v.InferOutput<typeof coachSummary>;
export type PastVisit = v.InferOutput<typeof pastVisit>;
export type TreeList = v.InferOutput<typeof treeList>;
export type PackCard = v.InferOutput<typeof packCard>;
export type PackProblem = v.InferOutput<typeof packProblem>;
export type DraftProblem = v.InferOutput<typeof draftProblem>;
export type Notice = v.InferOutput<typeof notice>;
export type TreeSnapshotAnswer = v.InferOutput<typeof treeSnapshot>;

/** What holds until somebody chooses. */
export const DEFAULT_SETTINGS: Settings = {
  light: 'system',
  units: 'us',
  name: '',
  singleKeys: true,
  who: 'owner-no-tools',
  learning: false,
  casesTakenOut: [],
};

/**
 * A request as its method's schema takes it.
 *
 * @throws {HostError} `bad-request` naming the method, the place and what is wanted.
 */
export function checkedRequest<M extends HostMethod>(method: M, request: unknown): HostRequest<M> {
  const parsed = v.safeParse(hostApi[method].request, request);
  if (parsed.success) return parsed.output;
  const issue = parsed.issues[0];
  const where = issue.path?.map((item) => String(item.key)).join('.') ?? 'the request';
  throw new HostError({
    code: 'bad-request',
    message: `"${method}" was asked with something it does not take (${where}: ${issue.message}). Nothing was written.`,
  });
}

/** Whether a text names a method. */
export function isHostMethod(name: string): name is HostMethod {
  return Object.hasOwn(hostApi, name);
}
