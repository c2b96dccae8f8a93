import { assign, setup } from 'xstate';
import type { Tree } from '../knowledge/tree.ts';
import type { StopAnswer } from '../planning/situation.ts';
import type { RecordedValue, VisitEvent } from './events.ts';

/** What the machine has to know of a tree. */
export interface StopIndex {
  readonly rules: readonly {
    readonly id: string;
    readonly halts: boolean;
    readonly firedBy: readonly { readonly check: string; readonly results: readonly string[] }[];
  }[];
}

/** Results that a recorded value may stand for; readings need the tree's bands and the instrument, so they are passed in. */
export type ResultsOf = (check: string, value: RecordedValue) => readonly string[];

export interface ComplaintInput {
  readonly index: StopIndex;
  readonly resultsOf: ResultsOf;
}

interface ComplaintContext extends ComplaintInput {
  /** Rules that halt the walk while they are in force: what fires them, and whether the person has read it. */
  readonly inForce: Readonly<Record<string, { readonly by: readonly string[]; readonly read: boolean }>>;
  readonly answers: Readonly<Record<string, StopAnswer>>;
  /** Rules that a check has answered without firing. */
  readonly looked: readonly string[];
  /** Finding → its check. */
  readonly checkOf: Readonly<Record<string, string>>;
  /** Work that a halt broke off and that waits for it: a correction under way or not yet proven. */
  readonly brokenOff: 'correcting' | 'proving' | null;
}

/** Log events that a complaint hears. */
export type ComplaintLogEvent = Extract<VisitEvent, { readonly complaint: string }>;

/** The machine's own events: a log event under the name that XState wants. */
export type ComplaintMachineEvent = {
  [K in ComplaintLogEvent['kind']]: { readonly type: K; readonly event: Extract<ComplaintLogEvent, { kind: K }> };
}[ComplaintLogEvent['kind']];

/** A log event as the machine hears it. */
export function heard(event: ComplaintLogEvent): ComplaintMachineEvent {
  // Type and event belong together by construction; the compiler cannot follow a union through both fields.
  return { type: event.kind, event } as ComplaintMachineEvent;
}

/** The index of a tree's stop rules. `drive-and-book` rules never halt. */
export function stopIndexOf(tree: Tree): StopIndex {
  return {
    rules: tree.stopRules.map(({ id, verdict, firedBy }) => ({ id, halts: verdict !== 'drive-and-book', firedBy })),
  };
}

type Judged = Pick<ComplaintContext, 'inForce' | 'answers' | 'looked' | 'checkOf'>;

/** What an event does to the rules. Total: an unknown rule, check or finding changes nothing. */
function judged(context: ComplaintContext, event: ComplaintLogEvent): Judged {
  // Guards and actions of one step ask the same; the answer depends on nothing else.
  const known = lastJudged.get(event);
  if (known?.context === context) return known.result;
  const result = judge(context, event);
  lastJudged.set(event, { context, result });
  return result;
}

const lastJudged = new WeakMap<ComplaintLogEvent, { readonly context: ComplaintContext; readonly result: Judged }>();

function judge(context: ComplaintContext, event: ComplaintLogEvent): Judged {
  if (event.kind === 'stop.answered') {
    const rule = context.index.rules.find(({ id }) => id === event.rule);
    if (!rule) return context;
    return {
      ...context,
      answers: { ...context.answers, [rule.id]: event.answer },
      inForce: rule.halts ? withSource(context.inForce, rule.id, 'answer', event.answer === 'yes') : context.inForce,
    };
  }
  if (event.kind !== 'finding.recorded' && event.kind !== 'finding.changed') return context;
  const check = event.kind === 'finding.recorded' ? event.check : context.checkOf[event.finding];
  if (check === undefined) return context;
  const results = context.resultsOf(check, event.value);
  let { inForce, looked } = context;
  for (const rule of context.index.rules) {
    const entry = rule.firedBy.find((each) => each.check === check);
    if (!entry || !rule.halts) continue;
    const fires = results.some((result) => entry.results.includes(result));
    inForce = withSource(inForce, rule.id, event.finding, fires);
    if (!fires && results.length > 0 && !looked.includes(rule.id)) looked = [...looked, rule.id];
  }
  return { ...context, inForce, looked, checkOf: { ...context.checkOf, [event.finding]: check } };
}

function withSource(
  inForce: ComplaintContext['inForce'],
  rule: string,
  source: string,
  fires: boolean,
): ComplaintContext['inForce'] {
  const before = inForce[rule];
  const by = (before?.by ?? []).filter((each) => each !== source);
  if (fires)
    return {
      ...inForce,
      [rule]: { by: [...by, source], read: before !== undefined && before.by.length > 0 && before.read },
    };
  return before ? { ...inForce, [rule]: { by, read: by.length > 0 && before.read } } : inForce;
}

function hasUnread({ inForce }: Judged): boolean {
  return Object.values(inForce).some(({ by, read }) => by.length > 0 && !read);
}

function questionsLeft({ index }: ComplaintContext, { answers, looked, inForce }: Judged): boolean {
  return index.rules.some(
    ({ id, halts }) => halts && answers[id] === undefined && !looked.includes(id) && !inForce[id]?.by.length,
  );
}

/**
 * One complaint, from the safety questions to a proven cure. Pure: no clock, no file, no timer; driven by the events of
 * the log alone, so that replaying them gives the same state. The event's `kind` is its type.
 */
export const complaintMachine = setup({
  types: {
    // Declared for the compiler only; nothing is constructed here.
    events: {} as ComplaintMachineEvent,
    context: {} as ComplaintContext,
    input: {} as ComplaintInput,
  },
  guards: {
    halts: ({ context, event }) => hasUnread(judged(context, event.event)),
    isGone: ({ event }) => event.type === 'proof.recorded' && event.event.outcome === 'gone',
    hasNoQuestion: ({ context }) => !questionsLeft(context, context),
    brokeOffCorrecting: ({ context }) => context.brokenOff === 'correcting',
    brokeOffProving: ({ context }) => context.brokenOff === 'proving',
  },
  actions: {
    judge: assign(({ context, event }) => judged(context, event.event)),
    markRead: assign(({ context }) => ({
      inForce: Object.fromEntries(Object.entries(context.inForce).map(([id, rule]) => [id, { ...rule, read: true }])),
    })),
    breakOffCorrecting: assign({ brokenOff: 'correcting' }),
    breakOffProving: assign({ brokenOff: 'proving' }),
  },
}).createMachine({
  id: 'complaint',
  context: ({ input }) => ({ ...input, inForce: {}, answers: {}, looked: [], checkOf: {}, brokenOff: null }),
  initial: 'triage',
  on: {
    'complaint.closed': '.closed',
    'stop.answered': [{ guard: 'halts', target: '.halted', actions: 'judge' }, { actions: 'judge' }],
    'finding.recorded': [{ guard: 'halts', target: '.halted', actions: 'judge' }, { actions: 'judge' }],
    'finding.changed': [{ guard: 'halts', target: '.halted', actions: 'judge' }, { actions: 'judge' }],
  },
  states: {
    triage: {
      always: { guard: 'hasNoQuestion', target: 'checking' },
    },
    checking: {
      initial: 'choosing',
      on: {
        'finding.recorded': [
          { guard: 'halts', target: 'halted', actions: 'judge' },
          { target: '.choosing', actions: 'judge' },
        ],
        'check.chosen': '.doing',
        'reading.taken': '.judging',
        'conclusion.accepted': 'concluded',
        'correction.started': 'correcting',
      },
      states: {
        choosing: {},
        doing: { on: { 'check.put-back': 'choosing' } },
        judging: { on: { 'check.put-back': 'choosing' } },
      },
    },
    halted: {
      exit: assign({ brokenOff: null }),
      on: {
        'halt.acknowledged': [
          { guard: 'brokeOffProving', target: 'proving', actions: 'markRead' },
          { guard: 'brokeOffCorrecting', target: 'correcting', actions: 'markRead' },
          { target: 'triage', actions: 'markRead' },
        ],
        // Stays as it is: leaving and coming in again would forget what was broken off.
        'finding.recorded': { actions: 'judge' },
        'stop.answered': [
          { guard: 'halts', actions: 'judge' },
          { guard: 'brokeOffProving', target: 'proving', actions: 'judge' },
          { guard: 'brokeOffCorrecting', target: 'correcting', actions: 'judge' },
          { target: 'triage', actions: 'judge' },
        ],
        'finding.changed': [
          { guard: 'halts', actions: 'judge' },
          { guard: 'brokeOffProving', target: 'proving', actions: 'judge' },
          { guard: 'brokeOffCorrecting', target: 'correcting', actions: 'judge' },
          { target: 'triage', actions: 'judge' },
        ],
      },
    },
    concluded: {
      on: {
        'correction.started': 'correcting',
        'checking.resumed': 'checking',
        'check.chosen': 'checking.doing',
        'finding.recorded': [
          { guard: 'halts', target: 'halted', actions: 'judge' },
          { target: 'checking', actions: 'judge' },
        ],
      },
    },
    correcting: {
      on: {
        'correction.done': 'proving',
        'checking.resumed': 'checking',
        'stop.answered': [
          { guard: 'halts', target: 'halted', actions: ['judge', 'breakOffCorrecting'] },
          { actions: 'judge' },
        ],
        'finding.recorded': [
          { guard: 'halts', target: 'halted', actions: ['judge', 'breakOffCorrecting'] },
          { actions: 'judge' },
        ],
        'finding.changed': [
          { guard: 'halts', target: 'halted', actions: ['judge', 'breakOffCorrecting'] },
          { actions: 'judge' },
        ],
      },
    },
    proving: {
      on: {
        'proof.recorded': [{ guard: 'isGone', target: 'closed' }, { target: 'checking' }],
        'stop.answered': [
          { guard: 'halts', target: 'halted', actions: ['judge', 'breakOffProving'] },
          { actions: 'judge' },
        ],
        'finding.recorded': [
          { guard: 'halts', target: 'halted', actions: ['judge', 'breakOffProving'] },
          { actions: 'judge' },
        ],
        'finding.changed': [
          { guard: 'halts', target: 'halted', actions: ['judge', 'breakOffProving'] },
          { actions: 'judge' },
        ],
      },
    },
    closed: {
      on: {
        'complaint.reopened': 'checking',
        'stop.answered': undefined,
        'finding.recorded': undefined,
        'finding.changed': undefined,
      },
    },
  },
});
