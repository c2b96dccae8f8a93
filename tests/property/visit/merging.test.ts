import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { shippedTrees } from '../../shipped-trees.ts';
import type { Tree } from '../../../shared/knowledge/index.ts';
import { mergeLogs } from '../../../shared/visit/exchange/index.ts';
import {
  canTakeBack,
  EVENT_VERSION,
  inOrder,
  newEventId,
  replay,
  type PinnedTree,
  type VisitEvent,
  type VisitEventBody,
  type VisitState,
} from '../../../shared/visit/index.ts';

const HASH = 'a'.repeat(64);
const DEVICES = ['aa', 'bb'] as const;
let pinned: ReadonlyMap<string, PinnedTree>;
let tree: Tree;
beforeAll(async () => {
  const { trees, vocabulary } = await shippedTrees('air-leaks-when-brake-held');
  const value = trees.get('air-leaks-when-brake-held')?.value;
  if (!value || !vocabulary) throw new Error('The shipped tree cannot be read.');
  tree = value;
  pinned = new Map([[HASH, { tree, vocabulary }]]);
});

const START: readonly VisitEventBody[] = [
  { kind: 'visit.opened', coach: 'Invented coach', demo: true },
  { kind: 'person.set', who: 'mechanic' },
  { kind: 'complaint.opened', complaint: 'c', tree: 'air-leaks-when-brake-held', treeHash: HASH, words: 'hiss' },
];

/** What may happen in a visit, and who did it; taking back names an event by its place. */
interface Happening {
  readonly device: 0 | 1;
  readonly body: VisitEventBody | { readonly kind: 'event.taken-back' | 'event.put-back'; readonly nth: number };
  /** Milliseconds since the last event of whoever. Two at the same moment are told apart by their writer. */
  readonly later: number;
}

function happenings(): fc.Arbitrary<readonly Happening[]> {
  const results = tree.checks
    .slice(0, 8)
    .flatMap((check) => check.results.map(({ id }) => ({ check: check.id, result: id })));
  const complaint = fc.constantFrom('c', 'd', 'no-such');
  const body: fc.Arbitrary<Happening['body']> = fc.oneof(
    {
      arbitrary: fc.constantFrom(...tree.stopRules).chain(({ id }) =>
        fc.record({
          kind: fc.constant('stop.answered' as const),
          complaint,
          rule: fc.constant(id),
          answer: fc.constantFrom('yes' as const, 'no' as const, 'not-sure' as const),
        }),
      ),
      weight: 4,
    },
    {
      arbitrary: fc
        .record({ found: fc.constantFrom(...results), n: fc.nat(40), complaint })
        .map(({ found, n, complaint: c }): VisitEventBody => ({
          kind: 'finding.recorded',
          complaint: c,
          finding: `f${n}`,
          check: found.check,
          value: { kind: 'result', result: found.result },
        })),
      weight: 4,
    },
    fc.record({ kind: fc.constantFrom('event.taken-back' as const, 'event.put-back' as const), nth: fc.nat(40) }),
    fc.record({ kind: fc.constant('note.added' as const), complaint, text: fc.string({ maxLength: 8 }) }),
    fc.record({
      kind: fc.constant('layout.set' as const),
      feature: fc.constantFrom('tag-axle', 'odd'),
      value: fc.constantFrom(true, false, 'x', null),
    }),
    fc.constantFrom<VisitEventBody>(
      { kind: 'complaint.opened', complaint: 'd', tree: tree.id, treeHash: HASH, words: 'again' },
      { kind: 'person.set', who: 'owner-no-tools' },
      { kind: 'cost.set', cost: 'tow', minutes: 90 },
      { kind: 'halt.acknowledged', complaint: 'c' },
      { kind: 'checking.resumed', complaint: 'c' },
      { kind: 'conclusion.accepted', complaint: 'c', cause: 'service-hose' },
      { kind: 'correction.started', complaint: 'c', cause: 'service-hose' },
      { kind: 'correction.done', complaint: 'c', cause: 'service-hose', partSeen: 'bad', parts: [], alsoRenewed: [] },
      { kind: 'proof.recorded', complaint: 'c', outcome: 'still-there' },
      { kind: 'complaint.closed', complaint: 'c', how: 'left-open' },
      { kind: 'complaint.reopened', complaint: 'c' },
    ),
  );
  return fc.array(fc.record({ device: fc.constantFrom(0 as const, 1 as const), body, later: fc.nat(3) }), {
    maxLength: 22,
  });
}

/** The events as two devices write them: each counts for itself, and time goes on. */
function written(happened: readonly Happening[]): VisitEvent[] {
  let ms = 1000;
  const counters = [0, 0];
  const events: VisitEvent[] = [];
  const add = (body: Happening['body'], device: 0 | 1): void => {
    const head = {
      id: newEventId(ms, ++counters[device]!, DEVICES[device]),
      v: EVENT_VERSION,
      at: new Date(ms).toISOString(),
      by: DEVICES[device],
    };
    if ('nth' in body) events.push({ ...head, kind: body.kind, event: events[body.nth % events.length]!.id });
    else events.push({ ...head, ...body });
  };
  for (const body of START) add(body, 0);
  for (const { device, body, later } of happened) {
    ms += later;
    add(body, device);
  }
  return events;
}

/** What the visit is, without what the undo and redo keys would do: that changes with every event by its nature. */
const standing = (state: VisitState): object =>
  Object.fromEntries(Object.entries(state).filter(([key]) => key !== 'undo' && key !== 'redo'));
const state = (events: readonly VisitEvent[]): object => standing(replay(events, pinned));

describe('the events of two devices', () => {
  it('[VIS-3][VIS-11] give one state in whatever order their files are read, mixed and doubled', () => {
    fc.assert(
      fc.property(
        happenings().chain((happened) => {
          const events = written(happened);
          return fc.tuple(
            fc.constant(events),
            fc.shuffledSubarray([...events, ...events], { minLength: events.length * 2 }),
          );
        }),
        ([events, mixed]) => {
          const whole = replay(events, pinned);
          const of = (device: string): VisitEvent[] => events.filter(({ by }) => by === device);
          expect(replay([...of('aa'), ...of('bb')], pinned)).toEqual(whole);
          expect(replay([...of('bb'), ...of('aa')], pinned)).toEqual(whole);
          expect(replay(mixed, pinned)).toEqual(whole);
        },
      ),
      { seed: 21, numRuns: 60 },
    );
  });

  it('[VIS-16] arriving one at a time they end in the state of all at once, and none ever fails', () => {
    fc.assert(
      fc.property(
        happenings().chain((happened) => {
          const events = written(happened);
          return fc.tuple(fc.constant(events), fc.shuffledSubarray(events, { minLength: events.length }));
        }),
        ([events, arriving]) => {
          let here: readonly VisitEvent[] = [];
          let last: VisitState | null = null;
          for (const event of arriving) {
            here = [...here, ...mergeLogs(here, [event]).missing];
            last = replay(here, pinned);
          }
          expect(last).toEqual(replay(events, pinned));
        },
      ),
      { seed: 22, numRuns: 25 },
    );
  });

  it('[EXC-3] merge to the same whichever side takes in the other', () => {
    fc.assert(
      fc.property(happenings(), fc.nat(1000), (happened, cut) => {
        const events = written(happened);
        // Both have the beginning; each has its own of the rest, and something of the other’s.
        const a = events.filter(({ by }, i) => by === 'aa' || i < 3 || (cut >> (i % 10)) % 2 === 0);
        const b = events.filter(({ by }, i) => by === 'bb' || i < 3 || (cut >> (i % 10)) % 2 === 1);
        const intoA = [...a, ...mergeLogs(a, b).missing];
        const intoB = [...b, ...mergeLogs(b, a).missing];
        expect(replay(intoA, pinned)).toEqual(replay(events, pinned));
        expect(replay(intoB, pinned)).toEqual(replay(events, pinned));
        expect(mergeLogs(intoA, intoB)).toEqual({ missing: [], conflicts: [] });
      }),
      { seed: 24, numRuns: 40 },
    );
  });
});

describe('undo', () => {
  it('[VIS-17] of the last event returns to the state before it, and putting it back to the state after', () => {
    fc.assert(
      fc.property(happenings(), (happened) => {
        // What was written at the same moment counts in the order of the ids.
        const events = inOrder(written(happened)).filter(canTakeBack);
        const opening = written([])[0]!;
        for (let n = 1; n <= events.length; n++) {
          const before = [opening, ...events.slice(0, n - 1)];
          const after = [opening, ...events.slice(0, n)];
          const { undo } = replay(after, pinned);
          expect(undo?.id).toBe(events[n - 1]!.id);
          const back = [...after, sequel(after, 'event.taken-back', undo!.id)];
          expect(state(back)).toEqual(state(before));
          const { redo } = replay(back, pinned);
          expect(redo?.id).toBe(undo!.id);
          expect(state([...back, sequel(back, 'event.put-back', redo!.id)])).toEqual(state(after));
        }
      }),
      { seed: 25, numRuns: 12 },
    );
  });

  it('[VIS-17] of any event is as if it had never happened', () => {
    fc.assert(
      fc.property(happenings(), fc.nat(), (happened, nth) => {
        const events = written(happened).filter((event) => canTakeBack(event) || event.kind === 'visit.opened');
        const target = events.filter(canTakeBack)[nth % (events.length - 1)]!;
        const without = events.filter(({ id }) => id !== target.id);
        expect(state([...events, sequel(events, 'event.taken-back', target.id)])).toEqual(state(without));
      }),
      { seed: 26, numRuns: 60 },
    );
  });
});

/** What is written after all the others. */
function sequel(events: readonly VisitEvent[], kind: 'event.taken-back' | 'event.put-back', event: string): VisitEvent {
  return {
    id: newEventId(9000 + events.length, events.length, 'aa'),
    v: EVENT_VERSION,
    at: '2020-01-01T00:00:00Z',
    by: 'aa',
    kind,
    event,
  };
}
