import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { getShortestPaths } from 'xstate/graph';
import type { Tree } from '../../../shared/knowledge/index.ts';
import {
  complaintMachine,
  effectiveEvents,
  EventError,
  EVENT_VERSION,
  heard,
  migrate,
  newEventId,
  readEvent,
  replay,
  situationOf,
  type PinnedTree,
  type VisitEvent,
  type VisitEventBody,
} from '../../../shared/visit/index.ts';
import { shippedTrees } from '../../shipped-trees.ts';

const HASH = 'a'.repeat(64);
let pinned: ReadonlyMap<string, PinnedTree>;
let tree: Tree;
beforeAll(async () => {
  const { trees, vocabulary } = await shippedTrees('air-leaks-when-brake-held');
  const value = trees.get('air-leaks-when-brake-held')?.value;
  if (!value || !vocabulary) throw new Error('The shipped tree cannot be read.');
  tree = value;
  pinned = new Map([[HASH, { tree, vocabulary }]]);
});

function log(bodies: readonly VisitEventBody[]): VisitEvent[] {
  return bodies.map((body, i) => ({
    id: newEventId(1000 + i, i, 'aa'),
    v: EVENT_VERSION,
    at: '2020-01-01T00:00:00Z',
    by: 'Mina',
    ...body,
  }));
}
const START: readonly VisitEventBody[] = [
  { kind: 'visit.opened', coach: 'Invented coach', demo: true },
  { kind: 'person.set', who: 'mechanic' },
  { kind: 'complaint.opened', complaint: 'c', tree: 'air-leaks-when-brake-held', treeHash: HASH, words: 'hiss' },
];
const answered = (): VisitEventBody[] =>
  tree.stopRules.map(({ id }) => ({ kind: 'stop.answered', complaint: 'c', rule: id, answer: 'no' }));
const found = (n: number, check: string, result: string): VisitEventBody => ({
  kind: 'finding.recorded',
  complaint: 'c',
  finding: `f${n}`,
  check,
  value: { kind: 'result', result },
});
const phase = (bodies: readonly VisitEventBody[]): string | undefined =>
  replay(log([...START, ...bodies]), pinned).complaints[0]?.phase;

describe('[VIS-15] what has already been noticed', () => {
  it('is not asked in a log of before, and asked once it says so, wherever the complaint stands', () => {
    const before = replay(log([...START, ...answered()]), pinned);
    expect(before.complaints[0]).toMatchObject({ noticedAsked: false, phase: 'checking.choosing' });
    const after = replay(log([...START, ...answered(), { kind: 'noticed.asked', complaint: 'c' }]), pinned);
    expect(after.complaints[0]).toEqual({ ...before.complaints[0]!, noticedAsked: true });
    expect(after.ignored).toEqual([]);
    const early = replay(log([...START, { kind: 'noticed.asked', complaint: 'c' }]), pinned);
    expect(early.complaints[0]).toMatchObject({ noticedAsked: true, phase: 'triage' });
  });
  it('comes back from the log as it was written, and can be taken back', () => {
    const events = log([...START, ...answered(), { kind: 'noticed.asked', complaint: 'c' }]);
    const last = events.at(-1)!;
    expect(readEvent(JSON.parse(JSON.stringify(last)))).toEqual(last);
    const back = log([...START, ...answered()]).length + 1;
    const undone = [
      ...events,
      { ...last, id: newEventId(5000, back, 'aa'), kind: 'event.taken-back' as const, event: last.id },
    ];
    expect(replay(undone, pinned).complaints[0]?.noticedAsked).toBe(false);
  });
});

describe('reading the log', () => {
  it('[VIS-1] an event comes back as it was written; rubbish and a newer version are refused with a reason', () => {
    const [first] = log(START);
    expect(readEvent(JSON.parse(JSON.stringify(first)))).toEqual(first);
    expect(() => readEvent({ id: 'x', v: 1, at: '', by: '', kind: 'no-such' })).toThrow(EventError);
    expect(() => readEvent({ ...first, v: EVENT_VERSION + 1 })).toThrow(/newer Droplight/);
  });
  it('[VIS-2] migrations are applied in order', () => {
    const steps = [
      { from: 1, what: 'a', apply: (r: object) => ({ ...r, a: 1 }) },
      { from: 2, what: 'b', apply: (r: object) => ({ ...r, b: 2 }) },
    ];
    expect(migrate({ v: 1 }, steps)).toEqual({ v: 3, a: 1, b: 2 });
    expect(migrate('text', steps)).toBe('text');
  });
  it('[VIS-3] two writers merge into one order, an event counts once, and undo can be undone', () => {
    const events = log([...START, ...answered()]);
    const last = events.at(-1)!;
    const undo = {
      id: newEventId(9000, 1, 'aa'),
      v: 1,
      at: '',
      by: '',
      kind: 'event.taken-back',
      event: last.id,
    } as const;
    const redo = {
      id: newEventId(9001, 2, 'aa'),
      v: 1,
      at: '',
      by: '',
      kind: 'event.put-back',
      event: last.id,
    } as const;
    expect(effectiveEvents([...events].reverse().concat(events)).map(({ id }) => id)).toEqual(
      events.map(({ id }) => id),
    );
    expect(effectiveEvents([...events, undo])).toHaveLength(events.length - 1);
    expect(effectiveEvents([...events, undo, redo])).toHaveLength(events.length);
  });
});

describe('a complaint', () => {
  it('[VIS-4] goes from the questions through checking, conclusion, correction and proof to closed', () => {
    const way: VisitEventBody[] = [
      ...answered(),
      { kind: 'conclusion.accepted', complaint: 'c', cause: 'service-hose' },
      { kind: 'correction.started', complaint: 'c', cause: 'service-hose' },
      { kind: 'correction.done', complaint: 'c', cause: 'service-hose', partSeen: 'bad', parts: [], alsoRenewed: [] },
      { kind: 'proof.recorded', complaint: 'c', outcome: 'gone' },
    ];
    const from = way.length - 4;
    expect([phase([]), phase(way.slice(0, from)), ...[1, 2, 3, 4].map((n) => phase(way.slice(0, from + n)))]).toEqual([
      'triage',
      'checking.choosing',
      'concluded',
      'correcting',
      'proving',
      'closed',
    ]);
  });
  it('[VIS-5] still there goes back to checking, and the corrected cause is out', () => {
    const events = log([
      ...START,
      ...answered(),
      { kind: 'correction.started', complaint: 'c', cause: 'service-hose' },
      { kind: 'correction.done', complaint: 'c', cause: 'service-hose', partSeen: 'good', parts: [], alsoRenewed: [] },
      { kind: 'proof.recorded', complaint: 'c', outcome: 'still-there' },
    ]);
    const visit = replay(events, pinned);
    expect(visit.complaints[0]).toMatchObject({
      phase: 'checking.choosing',
      corrections: [{ cause: 'service-hose', proof: 'still-there' }],
    });
  });
  it('[VIS-6] a yes halts, reading it goes on, and the same rule does not halt again', () => {
    const rule = tree.stopRules.find(({ verdict }) => verdict === 'stay-put')!;
    const halt: VisitEventBody[] = [{ kind: 'stop.answered', complaint: 'c', rule: rule.id, answer: 'yes' }];
    expect(phase(halt)).toBe('halted');
    const on: VisitEventBody[] = [...halt, { kind: 'halt.acknowledged', complaint: 'c' }];
    expect(phase(on)).toBe('triage');
    expect(phase([...on, ...answered().filter((each) => each.kind === 'stop.answered' && each.rule !== rule.id)])).toBe(
      'checking.choosing',
    );
  });
  it('[VIS-7] a finding that fires a rule halts, wherever the complaint stands', () => {
    const fires = tree.stopRules.flatMap(({ verdict, firedBy }) => (verdict === 'stay-put' ? firedBy : []))[0]!;
    expect(phase([...answered(), found(1, fires.check, fires.results[0]!)])).toBe('halted');
  });
  it('[VIS-12] a halt while a correction waits for its proof comes back to it, and the proof still counts', () => {
    const rule = tree.stopRules.find(({ verdict }) => verdict === 'stay-put')!;
    const yes: VisitEventBody = { kind: 'stop.answered', complaint: 'c', rule: rule.id, answer: 'yes' };
    const no: VisitEventBody = { kind: 'stop.answered', complaint: 'c', rule: rule.id, answer: 'no' };
    const read: VisitEventBody = { kind: 'halt.acknowledged', complaint: 'c' };
    const started: VisitEventBody[] = [
      ...answered(),
      { kind: 'correction.started', complaint: 'c', cause: 'service-hose' },
    ];
    expect(phase([...started, yes])).toBe('halted');
    expect(phase([...started, yes, read])).toBe('correcting');
    const waiting: VisitEventBody[] = [
      ...started,
      { kind: 'correction.done', complaint: 'c', cause: 'service-hose', partSeen: 'bad', parts: [], alsoRenewed: [] },
    ];
    expect(phase([...waiting, yes])).toBe('halted');
    expect(phase([...waiting, yes, no])).toBe('proving');
    const proven = replay(
      log([
        ...START,
        ...waiting,
        yes,
        read,
        no,
        yes,
        read,
        { kind: 'proof.recorded', complaint: 'c', outcome: 'still-there' },
      ]),
      pinned,
    );
    expect(proven.ignored).toEqual([]);
    expect(proven.complaints[0]).toMatchObject({
      phase: 'checking.choosing',
      corrections: [{ cause: 'service-hose', proof: 'still-there' }],
    });
    // A halt of its own time later does not remember the old correction.
    expect(phase([...waiting, { kind: 'proof.recorded', complaint: 'c', outcome: 'still-there' }, yes, read])).toBe(
      'checking.choosing',
    );
  });
  it('[VIS-13] a complaint opened again hears what the visit found meanwhile, with who found it', () => {
    const shared = tree.checks.find(({ sharedAs }) => sharedAs !== undefined)!;
    const [first, second] = shared.results;
    const other: VisitEventBody = {
      kind: 'complaint.opened',
      complaint: 'd',
      tree: tree.id,
      treeHash: HASH,
      words: 'it hisses again',
    };
    const finding = (result: string): VisitEventBody => ({
      kind: 'finding.recorded',
      complaint: 'c',
      finding: 'f1',
      check: shared.id,
      value: { kind: 'result', result },
    });
    const before: VisitEventBody[] = [...START, other, { kind: 'complaint.closed', complaint: 'd', how: 'left-open' }];
    const reopened: VisitEventBody[] = [
      { kind: 'person.set', who: 'owner-no-tools' },
      { kind: 'complaint.reopened', complaint: 'd' },
    ];
    const heard = (bodies: readonly VisitEventBody[]) =>
      replay(log(bodies), pinned).complaints.find(({ id }) => id === 'd')!.trail;
    expect(heard([...before, finding(first!.id)])).toEqual([]);
    expect(heard([...before, finding(first!.id), ...reopened])).toMatchObject([
      { id: 'f1', check: shared.id, who: 'mechanic', from: 'c', value: { result: first!.id } },
    ]);
    const changed: VisitEventBody = {
      kind: 'finding.changed',
      complaint: 'c',
      finding: 'f1',
      value: { kind: 'result', result: second!.id },
    };
    expect(
      heard([
        ...START,
        other,
        finding(first!.id),
        { kind: 'complaint.closed', complaint: 'd', how: 'left-open' },
        changed,
        ...reopened,
      ]),
    ).toMatchObject([{ id: 'f1', value: { result: second!.id } }]);
  });
  it('[VIS-14] a feature of the coach that nobody knows is not asked again, until somebody does', () => {
    const feature = pinned.get(HASH)!.vocabulary.layout[0]!;
    const asked: VisitEventBody[] = [...START, { kind: 'layout.set', feature: feature.id, value: null }];
    expect(replay(log(asked), pinned)).toMatchObject({ layout: {}, layoutNotKnown: [feature.id] });
    const known: VisitEventBody[] = [
      ...asked,
      { kind: 'layout.set', feature: feature.id, value: feature.values[0]!.value },
    ];
    expect(replay(log(known), pinned)).toMatchObject({
      layout: { [feature.id]: feature.values[0]!.value },
      layoutNotKnown: [],
    });
  });
  it('[VIS-8] what does not fit stays in the log and is listed with a reason', () => {
    const visit = replay(
      log([...START, { kind: 'proof.recorded', complaint: 'c', outcome: 'gone' }, found(1, 'no-such-check', 'x')]),
      pinned,
    );
    expect(visit.ignored.map(({ why }) => why)).toEqual([
      expect.stringMatching(/does not fit/),
      expect.stringMatching(/no check/),
    ]);
  });
  it('[VIS-9] a reading reaches the planner in the unit of its check', () => {
    const events = log([
      ...START,
      ...answered(),
      {
        kind: 'finding.recorded',
        complaint: 'c',
        finding: 'f',
        check: 'static-rate',
        value: { kind: 'reading', reading: { value: 23.44217, unit: 'kPa/min' } },
      },
    ]);
    const visit = replay(events, pinned);
    const { findings } = situationOf(visit, visit.complaints[0]!, tree, pinned.get(HASH)!.vocabulary);
    const value = findings[0]?.value;
    expect(value?.kind === 'reading' ? value.value : NaN).toBeCloseTo(3.4, 4);
  });
  it('[VIS-19] a reading that was worked out keeps what it was made of and its own uncertainty, converted with it', () => {
    const worked = {
      calculation: 'leak-down',
      observations: [{ what: 'After 2 min', said: '115.5 psi' }],
      uncertainty: 1.378951,
    };
    const value = { kind: 'reading', reading: { value: 23.44217, unit: 'kPa/min', worked } } as const;
    const recorded = { kind: 'finding.recorded', complaint: 'c', finding: 'f', check: 'static-rate', value } as const;
    const visit = replay(log([...START, ...answered(), recorded]), pinned);
    expect(visit.complaints[0]!.trail[0]?.value).toEqual(value);
    const { findings } = situationOf(visit, visit.complaints[0]!, tree, pinned.get(HASH)!.vocabulary);
    const found = findings[0]?.value;
    // 1 psi is 6.894757 kPa: 0.2 psi/min, where the gauge and watch of the check would leave 0.4.
    expect(found?.kind === 'reading' ? found.uncertainty : NaN).toBeCloseTo(0.2, 5);
    const event = { id: 'x', v: 1, at: '2026-01-01T00:00:00Z', by: '', ...recorded };
    expect(readEvent(event)).toEqual(event);
    const hostile = { ...value, reading: { ...value.reading, worked: { ...worked, uncertainty: -1 } } };
    expect(() => readEvent({ ...event, value: hostile })).toThrow(/cannot be used/);
  });
  it('[VIS-10] the machine can reach every phase', () => {
    const index = { rules: [{ id: 'r', halts: true, firedBy: [] }] };
    const say = (body: object, n: number) =>
      heard({ id: `e${n}`, v: 1, at: '', by: '', complaint: 'c', ...body } as Parameters<typeof heard>[0]);
    const bodies = [
      { kind: 'stop.answered', rule: 'r', answer: 'yes' },
      { kind: 'stop.answered', rule: 'r', answer: 'no' },
      { kind: 'halt.acknowledged' },
      { kind: 'check.chosen', check: 'k' },
      { kind: 'reading.taken', check: 'k', reading: { value: 1, unit: 'psi' } },
      { kind: 'conclusion.accepted', cause: 'x' },
      { kind: 'correction.started', cause: 'x' },
      { kind: 'correction.done', cause: 'x', partSeen: 'bad', parts: [], alsoRenewed: [] },
      { kind: 'proof.recorded', outcome: 'gone' },
    ];
    const paths = getShortestPaths(complaintMachine, {
      input: { index, resultsOf: () => [] },
      events: bodies.map(say),
    });
    const reached = new Set(paths.map(({ state }) => JSON.stringify(state.value)));
    for (const wanted of [
      '"triage"',
      '"halted"',
      '"concluded"',
      '"correcting"',
      '"proving"',
      '"closed"',
      '{"checking":"choosing"}',
      '{"checking":"doing"}',
      '{"checking":"judging"}',
    ])
      expect(reached).toContain(wanted);
  });
  it('[VIS-11] any sequence of events replays without a throw, the same in any reading order', () => {
    const results = fc.constantFrom(
      ...tree.checks.slice(0, 8).flatMap((check) => check.results.map(({ id }) => [check.id, id] as const)),
    );
    const body = fc.oneof(
      fc
        .constantFrom(...tree.stopRules)
        .map(({ id }): VisitEventBody => ({ kind: 'stop.answered', complaint: 'c', rule: id, answer: 'no' })),
      fc.tuple(results, fc.nat(30)).map(([[check, result], n]): VisitEventBody => found(n, check, result)),
      fc.constantFrom<VisitEventBody>(
        { kind: 'halt.acknowledged', complaint: 'c' },
        { kind: 'checking.resumed', complaint: 'c' },
        { kind: 'conclusion.accepted', complaint: 'c', cause: 'service-hose' },
        { kind: 'complaint.closed', complaint: 'c', how: 'left-open' },
        { kind: 'complaint.reopened', complaint: 'c' },
        { kind: 'event.taken-back', event: newEventId(1010, 10, 'aa') },
        { kind: 'event.put-back', event: newEventId(1010, 10, 'aa') },
      ),
    );
    fc.assert(
      fc.property(fc.array(body, { maxLength: 25 }), (bodies) => {
        const events = log([...START, ...bodies]);
        const visit = replay(events, pinned);
        expect(replay([...events].reverse(), pinned)).toEqual(visit);
        expect(visit.complaints[0]!.minutesSpent).toBeGreaterThanOrEqual(0);
      }),
      { seed: 7, numRuns: 80 },
    );
  });
});
