import { beforeAll, describe, expect, it } from 'vitest';
import { loadTrees } from '../../../electron/cli/load-trees.ts';
import type { Vocabulary } from '../../../shared/knowledge/index.ts';
import { isUnit } from '../../../shared/units/index.ts';
import {
  entryId,
  heldAgainst,
  holdOf,
  hubPairVerdict,
  inspectionHolds,
  INSPECTION_PARTS,
  notOpenedYet,
  oddEnds,
  pairsOf,
  planOf,
  QUANTITIES,
  quantityOf,
  readEvent,
  replay,
  sitesOf,
  type InspectionItem,
  type InspectionState,
  type VisitEventBody,
} from '../../../shared/visit/index.ts';
import { OPENED, sheetLog } from './sheet-log.ts';

let vocabulary: Vocabulary;
beforeAll(async () => {
  ({ vocabulary } = (await loadTrees({ only: [] })) as { vocabulary: Vocabulary });
});

type Recorded = Extract<VisitEventBody, { kind: 'inspection.recorded' }>;
const entry = (item: string, site: string, more: Partial<Recorded> = {}): Recorded => ({
  kind: 'inspection.recorded',
  entry: entryId(item, site),
  item,
  site,
  state: 'good',
  ...more,
});
const measured = (
  what: string,
  site: string,
  value: number,
  facts: Readonly<Record<string, string>> = {},
): Recorded => {
  const { item, unit } = quantityOf(what)!;
  return entry(item, site, { readings: [{ what, reading: { value, unit } }], facts });
};
const of = (bodies: readonly VisitEventBody[]): InspectionState =>
  replay(sheetLog([OPENED, ...bodies]), new Map()).inspection;
const held = (what: string, site: string, value: number, facts: Readonly<Record<string, string>> = {}) =>
  heldAgainst(of([measured(what, site, value, facts)]).items[0]!, quantityOf(what)!);

describe('[INS-1] items', () => {
  it('count without any complaint, with who found them and when', () => {
    const { items } = of([entry('hose', 'left drive', { state: 'bad', note: 'cord in sight' })]);
    expect(items).toEqual<InspectionItem[]>([
      {
        id: 'hose@left drive',
        item: 'hose',
        site: 'left drive',
        state: 'bad',
        readings: [],
        facts: {},
        note: 'cord in sight',
        photos: [],
        foundAt: '2020-01-01T00:00:01.000Z',
        at: '2020-01-01T00:00:01.000Z',
        by: 'Mina',
      },
    ]);
  });
  it('every part says what good, watch and bad look like, with a source, and has a place', () => {
    for (const part of INSPECTION_PARTS) {
      expect(
        [part.good, part.watch, part.bad, part.source].every((words) => words.length > 10),
        part.item,
      ).toBe(true);
      expect(sitesOf(part).length, part.item).toBeGreaterThan(1);
    }
    expect(new Set(INSPECTION_PARTS.map(({ item }) => item)).size).toBe(INSPECTION_PARTS.length);
  });
  it('[VIS-1] comes back as it was written', () => {
    const bodies: VisitEventBody[] = [
      measured('stroke', 'left front', 1.5, { chamber: 'clamp 24' }),
      { kind: 'inspection.round', what: 'hub-heat', minutes: 5, sameSpot: true, emissivity: 0.95 },
    ];
    for (const event of sheetLog(bodies)) expect(readEvent(JSON.parse(JSON.stringify(event)))).toEqual(event);
    const [bad] = sheetLog([{ ...entry('hub', 'left front'), state: 'fine' as 'good' }]);
    expect(() => readEvent(bad)).toThrow(/state/);
  });
});

it('[INS-2] not opened yet is a state of its own, until it is opened', () => {
  const closed = entry('bearing', 'left front', { state: 'not-opened' });
  expect(notOpenedYet(of([closed, entry('hub', 'left front')])).map(({ id }) => id)).toEqual(['bearing@left front']);
  expect(notOpenedYet(of([closed, entry('bearing', 'left front', { state: 'watch' })]))).toEqual([]);
});

it('[INS-3] made again, an entry keeps its place; what was measured before stays', () => {
  const { items } = of([
    entry('drum', 'left front', {
      readings: [{ what: 'drum-heat', reading: { value: 150, unit: 'degF' } }],
      photos: ['p1'],
      note: 'blue',
    }),
    entry('hub', 'left front'),
    entry('drum', 'left front', {
      state: 'watch',
      readings: [
        { what: 'drum-heat', reading: { value: 160, unit: 'degF' } },
        { what: 'drum-diameter', reading: { value: 16.6, unit: 'in' } },
      ],
      photos: ['p1', 'p2'],
      facts: { 'nominal-in': '16.5' },
    }),
  ]);
  expect(items.map(({ id }) => id)).toEqual(['drum@left front', 'hub@left front']);
  expect(items[0]).toMatchObject({
    state: 'watch',
    note: 'blue',
    photos: ['p1', 'p2'],
    facts: { 'nominal-in': '16.5' },
  });
  expect(items[0]!.readings.map(({ what, reading }) => [what, reading.value])).toEqual([
    ['drum-heat', 160],
    ['drum-diameter', 16.6],
  ]);
});

describe('[INS-4] against which limit', () => {
  const T24 = { chamber: 'clamp 24', 'stroke-class': 'standard', 'tank-psi': '85' };
  // 49 CFR 393.47(d) and (e), Appendix A to Part 396, RP 618, 393.75: the figures as MEA-20 to MEA-31 and MEA-55 have them.
  it.each([
    ['stroke', 'left front', 1.5, T24, 'meets', [1.75]],
    ['stroke', 'left front', 2.125, T24, 'fails', [1.75]],
    ['stroke', 'left front', 2.125, { ...T24, 'stroke-class': 'unknown' }, 'fails', [1.75]],
    ['lining-left', 'left drive', 0.375, { lining: 'drum' }, 'meets', [0.25]],
    ['lining-left', 'left drive', 0.15, { lining: 'drum' }, 'fails', [0.25]],
    ['lining-left', 'left front', 0.21875, { lining: 'drum-one-strip' }, 'too-close', [0.1875, 0.25]],
    ['drum-diameter', 'left drive', 16.63, { 'nominal-in': '16.5' }, 'fails', [16.62]],
    ['drum-diameter', 'left drive', 16.6, { 'nominal-in': '16.5', 'cast-in': '16.62' }, 'meets', [16.62]],
    ['end-play', 'left front', 0.003, {}, 'meets', [0.001, 0.005]],
    ['end-play', 'left front', 0, {}, 'fails', [0.001, 0.005]],
    ['tread', 'left front', 3 / 32, {}, 'fails', [4 / 32]],
    ['tread', 'left drive', 3 / 32, {}, 'meets', [2 / 32]],
    ['drum-heat', 'left drive', 300, {}, 'meets', [600]],
  ] as const)('%s at %s, %s with %j: %s', (what, site, value, facts, decision, limits) => {
    const found = held(what, site, value, facts);
    expect(found).toMatchObject({ kind: 'held', decision });
    if (found?.kind !== 'held') return;
    expect(found.against.map(({ limit }) => limit.value)).toEqual(limits);
    for (const { limit } of found.against) expect(limit.source.length, limit.id).toBeGreaterThan(5);
  });
  it('a usual figure says that it is practice', () => {
    const found = held('drum-diameter', 'left drive', 16.6, { 'nominal-in': '16.5' });
    expect(found).toMatchObject({ against: [{ limit: { status: 'practice' } }] });
  });
  it('what the limit hangs on is asked for; a wrong pressure and an oily lining are refused with the reason', () => {
    expect(held('stroke', 'left front', 1.5)).toMatchObject({ kind: 'compared-only' });
    expect(held('drum-diameter', 'left drive', 16.6)).toMatchObject({ kind: 'compared-only' });
    expect(held('hub-heat', 'left front', 130)).toMatchObject({ kind: 'compared-only' });
    expect(held('stroke', 'left front', 1.5, { ...T24, 'tank-psi': '60' })).toMatchObject({ kind: 'refused' });
    expect(held('lining-left', 'left drive', 0.6, { oily: 'yes' })).toMatchObject({
      kind: 'refused',
      message: expect.stringContaining('at any thickness') as string,
    });
  });
  it('a limit of a quantity stands in the vocabulary, its unit is one, and its part is inspected', () => {
    for (const { what, limit, unit, item } of QUANTITIES) {
      if (limit !== undefined) expect(vocabulary.limits.has(limit), what).toBe(true);
      expect(isUnit(unit), what).toBe(true);
      expect(
        INSPECTION_PARTS.some((part) => part.item === item),
        what,
      ).toBe(true);
    }
  });
});

describe('[INS-5] pairs', () => {
  const lining = quantityOf('lining-left')!;
  it('stand front to rear, left minus right; one side alone is no pair', () => {
    const pairs = pairsOf(
      of([
        measured('lining-left', 'right drive', 0.4),
        measured('lining-left', 'left drive', 0.25),
        measured('lining-left', 'left front', 0.5),
      ]),
      lining,
    );
    expect(
      pairs.map(({ axle, apart, uneven }) => [axle, apart === null ? null : Number(apart.toFixed(4)), uneven]),
    ).toEqual([
      ['front', null, false],
      ['drive', -0.15, true],
    ]);
  });
  it('metric readings are compared in one unit', () => {
    const mm = entry('lining', 'left drive', {
      readings: [{ what: 'lining-left', reading: { value: 10.16, unit: 'mm' } }],
    });
    const [pair] = pairsOf(of([mm, measured('lining-left', 'right drive', 0.4)]), lining);
    expect(pair!.apart).toBeCloseTo(0, 9);
  });
});

describe('[INS-6] which end stands out', () => {
  const hub = quantityOf('hub-heat')!;
  // The round of the picture: six hubs after a hot stop, one of them 41 °F above its mate.
  const ROUND = [
    ['left front', 133],
    ['right front', 92],
    ['left drive', 98],
    ['right drive', 96],
    ['left tag', 89],
    ['right tag', 91],
  ] as const;
  const readings = ROUND.map(([site, value]) => measured('hub-heat', site, value));
  const round: VisitEventBody = {
    kind: 'inspection.round',
    what: 'hub-heat',
    minutes: 5,
    sameSpot: true,
    emissivity: 0.95,
  };
  it('is the left steer hub; by hand: median 94, deviations 39 2 4 2 5 3, their median 3.5, 0.6745·39/3.5 = 7.5', () => {
    const found = oddEnds(of([...readings, round]), hub);
    expect(found).toMatchObject({
      kind: 'compared',
      compared: 'all',
      odd: [{ site: 'left front', marked: 'hot', fromMiddleF: 39, fromOtherSideF: 41 }],
    });
    expect(found.kind === 'compared' && found.odd[0]!.score).toBeCloseTo(7.5157, 3);
  });
  it('is not said before the round is described, nor of a round that cannot be compared', () => {
    expect(oddEnds(of(readings), hub)).toMatchObject({ kind: 'waiting' });
    expect(oddEnds(of([]), hub)).toMatchObject({ kind: 'waiting' });
    expect(oddEnds(of([...readings, { ...round, minutes: 30 }]), hub)).toMatchObject({ kind: 'refused' });
  });
  it('a pair of hubs has its own thresholds', () => {
    const [front] = pairsOf(of(readings), hub);
    expect(hubPairVerdict(front!)).toMatchObject({ verdict: 'caution' });
    const [half] = pairsOf(of([readings[0]!]), hub);
    expect(hubPairVerdict(half!)).toBeNull();
  });
});

describe('[INS-8] [INS-9] what it holds the coach to', () => {
  const visit = (bodies: readonly VisitEventBody[]) => replay(sheetLog([OPENED, ...bodies]), new Map());
  const holds = (bodies: readonly VisitEventBody[]) => {
    const { inspection, plan } = visit(bodies);
    return inspectionHolds(inspection, plan).map(({ of: id, verdict }) => [id, verdict]);
  };
  const bad = (item: string) => entry(item, 'left drive', { state: 'bad' });
  it.each(INSPECTION_PARTS.map(({ item, holds: verdict }) => [item, verdict] as const))(
    '%s bad: %s, good: nothing',
    (item, verdict) => {
      expect(holds([bad(item)])).toEqual(verdict === 'drive-and-book' ? [] : [[`${item}@left drive`, verdict]]);
      expect(holds([bad(item), entry(item, 'left drive')])).toEqual([]);
    },
  );
  it('a kind that nobody described holds as creep; the strictest stands first and is the verdict of the plan without a complaint', () => {
    expect(holds([bad('luggage-door'), bad('hub')])).toEqual([
      ['hub@left drive', 'stay-put'],
      ['luggage-door@left drive', 'creep-to-safe-place'],
    ]);
    const state = visit([bad('luggage-door'), bad('hub')]);
    expect(holdOf(state)).toMatchObject({ verdict: 'stay-put', because: 'Inspection: hub, left drive: found bad.' });
    expect(planOf(state, new Map()).meanwhile).toMatchObject({ verdict: 'stay-put' });
    expect(planOf(visit([entry('hub', 'left drive')]), new Map()).meanwhile).toBeNull();
  });
  it('a figure holds whatever was said of the part: beyond its limit as bad, too close to call as creep', () => {
    expect(holds([measured('end-play', 'left front', 0.02)])).toEqual([['bearing@left front', 'stay-put']]);
    expect(holds([measured('lining-left', 'left front', 0.21875, { lining: 'drum-one-strip' })])).toEqual([
      ['lining@left front', 'creep-to-safe-place'],
    ]);
    expect(holds([entry('lining', 'left tag', { facts: { oily: 'yes' } })])).toEqual([['lining@left tag', 'stay-put']]);
    expect(holds([measured('end-play', 'left front', 0.02), measured('end-play', 'left front', 0.003)])).toEqual([]);
  });
  it('what was seen bad is never "not opened" again, and holds on', () => {
    const closed = entry('drum', 'left drive', { state: 'not-opened' });
    expect(of([bad('drum'), closed]).items[0]?.state).toBe('bad');
    expect(holds([bad('drum'), closed])).toEqual([['drum@left drive', 'stay-put']]);
    expect(of([closed]).items[0]?.state).toBe('not-opened');
  });
  it('without a complaint nothing in it says "drive and book": neither what is watched nor a leaking shock absorber', () => {
    const watch = entry('air-spring', 'left drive', { state: 'watch' });
    const plan = (bodies: readonly VisitEventBody[]) => {
      const state = visit(bodies);
      return planOf(state, new Map(), state.inspection.items);
    };
    expect(plan([watch, bad('damper')]).lines).toHaveLength(2);
    expect(plan([watch, bad('damper')]).meanwhile).toBeNull();
    expect(plan([watch, bad('damper-mount')]).meanwhile?.verdict).toBe('creep-to-safe-place');
  });
  it('a hub far hotter than its mate holds until it is read again', () => {
    const hot = [measured('hub-heat', 'left front', 170), measured('hub-heat', 'right front', 100)];
    expect(holds(hot)).toEqual([['hub@left front', 'stay-put']]);
    expect(holds([...hot, measured('hub-heat', 'left front', 118)])).toEqual([]);
  });
  it('work on its own line lifts it once it is proven; found bad after that, it holds again, and the line is to do', () => {
    const line = 'item:hose@left drive';
    const done: VisitEventBody = { kind: 'plan.done', line, words: 'renewed' };
    const proven: VisitEventBody = { kind: 'plan.proven', line, outcome: 'held', words: 'dry' };
    expect(holds([bad('hose'), done])).toHaveLength(1);
    expect(holds([bad('hose'), done, { ...proven, outcome: 'did-not-hold' }])).toHaveLength(1);
    expect(holds([bad('hose'), done, proven])).toEqual([]);
    // A picture of the new hose is no new look.
    const remarked = visit([bad('hose'), done, proven, entry('hose', 'left drive', { state: 'bad', photos: ['p'] })]);
    expect(holdOf(remarked)).toBeNull();
    expect(planOf(remarked, new Map(), remarked.inspection.items).lines[0]?.proof.state).toBe('held');
    const again = visit([bad('hose'), done, proven, bad('hose')]);
    expect(holdOf(again)?.verdict).toBe('stay-put');
    expect(planOf(again, new Map(), again.inspection.items).lines[0]?.proof.state).toBe('to-do');
  });
});
