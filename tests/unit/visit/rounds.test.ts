import { beforeAll, describe, expect, it } from 'vitest';
import { loadTrees } from '../../../electron/cli/load-trees.ts';
import type { Tree } from '../../../shared/knowledge/index.ts';
import { assess } from '../../../shared/planning/index.ts';
import {
  EVENT_VERSION,
  newEventId,
  placesBy,
  putBackWith,
  readEvent,
  replay,
  roundEvents,
  roundOf,
  situationOf,
  takenWith,
  trailLines,
  type PinnedTree,
  type RoundEntry,
  type VisitEvent,
  type VisitEventBody,
  type VisitState,
} from '../../../shared/visit/index.ts';
import { cause, check, stopRule, tree } from '../planning/small-tree.ts';

const HASH = 'd'.repeat(64);
const PLACES = ['left front', 'right front', 'left drive', 'right drive', 'left tag', 'right tag'];
const SMALL: Tree = tree(
  [cause('bearing', 1, { hazard: 'danger' }), cause('tyre', 9)],
  [
    check(
      'hub',
      ['cool', 'warm', 'hot'],
      [
        [0.2, 0.2, 0.6],
        [0.8, 0.15, 0.05],
      ],
      { site: 'wheel-end', minutes: 12 },
    ),
    check(
      'hub-off',
      ['bright', 'pitted'],
      [
        [0.01, 0.99],
        [0.99, 0.01],
      ],
      { site: 'wheel-end', settles: ['bearing'], requires: [{ check: 'hub', results: ['hot'] }] },
    ),
  ],
  {
    stopRules: [
      stopRule('hot-hub', 'stay-put', { covers: ['bearing'], firedBy: [{ check: 'hub', results: ['hot'] }] }),
    ],
  },
);
let pinned: ReadonlyMap<string, PinnedTree>;
beforeAll(async () => {
  const { vocabulary } = await loadTrees({ only: [] });
  if (!vocabulary) throw new Error('The shipped vocabulary cannot be read.');
  pinned = new Map([[HASH, { tree: SMALL, vocabulary }]]);
});

const START: readonly VisitEventBody[] = [
  { kind: 'visit.opened', coach: 'Invented coach', demo: true },
  { kind: 'person.set', who: 'mechanic' },
  { kind: 'complaint.opened', complaint: 'c', tree: 'small', treeHash: HASH, words: 'hum' },
  { kind: 'stop.answered', complaint: 'c', rule: 'hot-hub', answer: 'no' },
];
function log(bodies: readonly VisitEventBody[]): VisitEvent[] {
  return bodies.map((body, i) => ({
    id: newEventId(1000 + i, i, 'aa'),
    v: EVENT_VERSION,
    at: '2020-01-01T00:00:00Z',
    by: 'Mina',
    ...body,
  }));
}
const entries = (found: Readonly<Record<string, string>>): RoundEntry[] =>
  Object.entries(found).map(([place, result]) => ({ place, value: { kind: 'result', result } }));
const round = (found: Readonly<Record<string, string>>, first: string | null = null, id = 'r1'): VisitEventBody[] =>
  roundEvents({ complaint: 'c', check: 'hub', round: id }, entries(found), first);
const COOL = Object.fromEntries(PLACES.map((place) => [place, 'cool']));
const hotAt = (place: string) => ({ ...COOL, [place]: 'hot' });
const state = (bodies: readonly VisitEventBody[]): VisitState => replay(log([...START, ...bodies]), pinned);
const complaint = (bodies: readonly VisitEventBody[]) => state(bodies).complaints[0]!;
const assessed = (bodies: readonly VisitEventBody[]) => {
  const visit = state(bodies);
  const { tree: own, vocabulary } = pinned.get(HASH)!;
  return assess(situationOf(visit, visit.complaints[0]!, own, vocabulary));
};

describe('[VIS-20] a round', () => {
  it('is one finding a place, each readable by itself, the one that counts first; the minutes are spent once', () => {
    const bodies = round(hotAt('left drive'), 'left drive');
    expect(bodies.map((body) => (body.kind === 'finding.recorded' ? body.site : ''))).toEqual([
      'left drive',
      ...PLACES.filter((place) => place !== 'left drive'),
    ]);
    for (const event of log(bodies)) expect(readEvent(JSON.parse(JSON.stringify(event)))).toEqual(event);
    const { trail, minutesSpent } = complaint(bodies);
    expect(trail.map(({ minutes }) => minutes)).toEqual([12, 0, 0, 0, 0, 0]);
    expect(minutesSpent).toBe(12);
    expect(new Set(trail.map(({ id }) => roundOf(id)))).toEqual(new Set(['r1']));
    expect(roundOf('f-0abc-00001-aa')).toBeNull();
  });

  it('is taken back and put back in one go, but for a place that was taken back before', () => {
    const events = log([...START, ...round(COOL, null, 'r0'), ...round(hotAt('left front'), 'left front')]);
    let n = events.length;
    const write = (bodies: readonly VisitEventBody[]): void => {
      for (const body of bodies)
        events.push({ id: newEventId(2000 + n, n++, 'aa'), v: EVENT_VERSION, at: '', by: '', ...body });
    };
    const sites = (): number => replay(events, pinned).complaints[0]!.trail.length;
    expect(sites()).toBe(12);
    const single = events.at(-1)!;
    write([{ kind: 'event.taken-back', event: single.id }]);
    expect(sites()).toBe(11);
    const together = takenWith(events, replay(events, pinned).undo!);
    expect(together).toHaveLength(5);
    write(together.map(({ id }) => ({ kind: 'event.taken-back', event: id })));
    expect(sites()).toBe(6);
    // Both goes stand one behind the other in the log and are of one round: redo brings all of it back.
    const back = putBackWith(events, replay(events, pinned).redo!);
    write(back.map(({ id }) => ({ kind: 'event.put-back', event: id })));
    expect(sites()).toBe(12);
    expect(takenWith(events, events[3]!)).toEqual([events[3]]);
    expect(putBackWith(events, events[3]!)).toEqual([events[3]]);
  });

  it('fires a stop rule at any place, wherever it stands in the round, as a single finding does', () => {
    const alone = complaint([...round({ 'left front': 'hot' })]);
    for (const place of PLACES)
      for (const first of [place, null, 'right tag']) {
        const after = complaint(round(hotAt(place), first));
        expect(after.phase, `${place}, first ${first}`).toBe('halted');
        expect(after.phase).toBe(alone.phase);
        expect(assessed(round(hotAt(place), first)).verdict).toMatchObject({
          verdict: 'stay-put',
          fired: [{ rule: 'hot-hub', by: { kind: 'finding', check: 'hub', result: 'hot' } }],
        });
      }
    expect(complaint(round(COOL)).phase).toBe('checking.choosing');
  });

  it('halts a correction and comes back to it, though more of the round follows the bad place', () => {
    const halted = [
      { kind: 'correction.started', complaint: 'c', cause: 'tyre' } as const,
      ...round(hotAt('left front'), 'left front'),
    ];
    expect(complaint(halted).phase).toBe('halted');
    expect(complaint([...halted, { kind: 'halt.acknowledged', complaint: 'c' }]).phase).toBe('correcting');
  });

  it('a bad place is not hidden by a good one recorded later at another place', () => {
    const later = [...round({ 'left front': 'hot' }), ...round({ 'right front': 'cool' }, null, 'r2')];
    expect(assessed(later).verdict.verdict).toBe('stay-put');
    expect(assessed(later).leading.sites).toEqual(['left front']);
    const read = [...later, { kind: 'halt.acknowledged', complaint: 'c' } as const];
    expect(complaint(read).phase).toBe('checking.choosing');
    expect(assessed(read).verdict.verdict).toBe('stay-put');
  });

  it('meets a prerequisite by the result of any place', () => {
    const blocked = (found: Readonly<Record<string, string>>) =>
      assessed(round(found)).options.find((option) => option.check === 'hub-off')?.blocked;
    expect(blocked(COOL)).toEqual({ kind: 'requires' });
    expect(blocked(hotAt('right tag'))).toBeUndefined();
  });
});

describe('[VIS-21] the line of a round', () => {
  const said = (bodies: readonly VisitEventBody[], places = PLACES): string[] =>
    trailLines(complaint(bodies).trail).map((line) =>
      placesBy(
        line,
        ({ value }) => ({ key: JSON.stringify(value), words: value.kind === 'result' ? value.result : '' }),
        places,
      )
        .map(({ places: at, words }) => `${at}: ${words}`)
        .join('; '),
    );
  it('names the odd places and counts the rest, when every place was looked at', () => {
    expect(said(round(hotAt('left front'), 'left front'))).toEqual(['left front: hot; the other five: cool']);
    expect(said(round(COOL))).toEqual(['all six places: cool']);
    expect(said(round({ ...hotAt('left tag'), 'right drive': 'warm' }, 'left tag'))).toEqual([
      'left tag: hot; right drive: warm; the other four: cool',
    ]);
  });
  it('names every place when some were not looked at', () => {
    expect(
      said(round({ 'left front': 'hot', 'right front': 'cool', 'left drive': 'cool', 'right drive': 'cool' })),
    ).toEqual(['left front: hot; right front, left drive and right drive: cool']);
    expect(said(round({ 'left front': 'cool' }))).toEqual(['left front: cool']);
  });
  it('begins anew for a place that is looked at again, and for a finding without a place', () => {
    const single = { kind: 'finding.recorded', complaint: 'c', finding: 'f', check: 'hub' } as const;
    expect(
      trailLines(
        complaint([
          ...round(COOL),
          { ...single, value: { kind: 'result', result: 'warm' }, site: 'left front' },
          { ...single, finding: 'g', value: { kind: 'result', result: 'cool' } },
        ]).trail,
      ).map(({ findings }) => findings.length),
    ).toEqual([6, 1, 1]);
  });
});
