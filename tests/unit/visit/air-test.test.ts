import { beforeAll, describe, expect, it } from 'vitest';
import { shippedTrees } from '../../shipped-trees.ts';
import { assess } from '../../../shared/planning/index.ts';
import {
  AIR_STEPS,
  airTestComplete,
  airTestHolds,
  airTestStandings,
  airTestVerdict,
  holdOf,
  readEvent,
  replay,
  situationOf,
  WALK_ROUND,
  type AirTestSetup,
  type PinnedTree,
  type VisitEventBody,
  type VisitState,
} from '../../../shared/visit/index.ts';
import { OPENED, sheetLog } from './sheet-log.ts';

const SETUP: AirTestSetup = { builtYear: 1988, system: 'dual', springBrakes: true, towedUnits: 0 };
const BEGUN: VisitEventBody = { kind: 'air-test.begun', setup: SETUP };
const GOOD: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  'governor-cut-out': { 'cut-in': 100, 'cut-out': 125 },
  'released-leak': { start: 125, end: 125 },
  'applied-leak': { start: 118, end: 117 },
  'low-air-warning': { 'came-on': 68 },
  'parking-valve': { popped: 32 },
  'build-up-dual': { seconds: 30 },
};
const record = (
  step: string,
  values: Readonly<Record<string, number>> | 'right' | 'wrong' | 'cant-do',
): VisitEventBody => {
  if (typeof values === 'string') return { kind: 'air-test.recorded', step, answer: values };
  const figures = AIR_STEPS.find(({ id }) => id === step)!.figures;
  return {
    kind: 'air-test.recorded',
    step,
    readings: Object.fromEntries(
      Object.entries(values).map(([id, value]) => [id, { value, unit: figures.find((each) => each.id === id)!.unit }]),
    ),
  };
};
const ALL: readonly VisitEventBody[] = [
  BEGUN,
  ...AIR_STEPS.filter((step) => step.applies(SETUP)).map(({ id }) => record(id, GOOD[id] ?? 'right')),
  ...WALK_ROUND.map(({ id }): VisitEventBody => ({ kind: 'walk-round.noted', item: id, state: 'right' })),
];
const visitOf = (bodies: readonly VisitEventBody[], trees: ReadonlyMap<string, PinnedTree> = new Map()): VisitState =>
  replay(sheetLog([OPENED, ...bodies]), trees);
const airOf = (bodies: readonly VisitEventBody[]) => visitOf(bodies).airTest;

describe('[AIR-1] the steps of a coach', () => {
  it('every step names its source and how it was read, and a caution wherever the coach can roll or move', () => {
    expect(AIR_STEPS.filter(({ source }) => source.length < 10)).toEqual([]);
    for (const step of AIR_STEPS.filter(({ id }) => /leak|tug|warning|valve/.test(id)))
      expect(step.cautions.join(' '), step.id).not.toBe('');
  });
  it('no knob without spring brakes, and the build-up of its own system', () => {
    const ids = (setup: AirTestSetup): string[] =>
      airTestStandings(airOf([{ kind: 'air-test.begun', setup }])).map(({ step }) => step.id);
    expect(ids(SETUP)).toContain('parking-valve');
    const old = ids({ builtYear: 1960, system: 'single', springBrakes: false, towedUnits: 0 });
    expect(old).not.toContain('parking-valve');
    expect(old).toContain('build-up-single');
    expect(old).not.toContain('build-up-dual');
  });
});

describe('[AIR-3] what holds the coach', () => {
  it('nothing in a test that met every limit', () => {
    expect(airTestHolds(airOf(ALL))).toEqual([]);
    expect(airTestVerdict(airOf(ALL))).toBeNull();
  });
  it.each([
    ['released-leak', { start: 120, end: 110 }, 'stay-put'],
    ['applied-leak', { start: 120, end: 110 }, 'stay-put'],
    ['low-air-warning', { 'came-on': 40 }, 'stay-put'],
    ['build-up-dual', { seconds: 90 }, 'stay-put'],
    ['parking-valve', { popped: 5 }, 'creep-to-safe-place'],
    ['governor-cut-out', { 'cut-in': 60, 'cut-out': 125 }, 'creep-to-safe-place'],
    ['parking-tug', 'wrong', 'stay-put'],
    ['service-tug', 'wrong', 'stay-put'],
    ['released-leak', { start: 120, end: 119 }, 'creep-to-safe-place'],
  ] as const)('%s with %j holds it: %s', (step, values, verdict) => {
    const air = airOf([...ALL, record(step, values)]);
    expect(airTestHolds(air)).toHaveLength(1);
    expect(airTestVerdict(air)).toMatchObject({ verdict, because: expect.stringMatching(/^Air test: /) as string });
  });
  it('the strictest of several is named, and the walk-round counts with the test or without', () => {
    const lamps: VisitEventBody = { kind: 'walk-round.noted', item: 'lamps', state: 'wrong' };
    const nuts: VisitEventBody = { kind: 'walk-round.noted', item: 'nuts', state: 'wrong' };
    expect(airTestVerdict(airOf([lamps]))?.verdict).toBe('creep-to-safe-place');
    expect(airTestVerdict(airOf([lamps, nuts]))).toMatchObject({ verdict: 'stay-put', of: 'nuts' });
    expect(airTestVerdict(airOf([lamps, { ...lamps, state: 'right' }]))).toBeNull();
  });
});

describe('[AIR-4] no permission', () => {
  it('a test that was not done, or only in part, holds nothing and is not complete', () => {
    expect(airTestVerdict(airOf([]))).toBeNull();
    expect(airTestComplete(airOf([]))).toBe(false);
    expect(airTestComplete(airOf(ALL.slice(0, -1)))).toBe(false);
    expect(airTestComplete(airOf([...ALL, record('parking-tug', 'cant-do')]))).toBe(false);
    expect(airTestComplete(airOf(ALL))).toBe(true);
  });
  it('says nowhere that the coach is safe', () => {
    const words = JSON.stringify([AIR_STEPS, WALK_ROUND]);
    expect(words).not.toMatch(/\bis safe\b|\bOK\b/i);
  });
});

describe('[AIR-5] [PLA-37] the verdict of a complaint under the sheets', () => {
  const HASH = 'a'.repeat(64);
  let trees: ReadonlyMap<string, PinnedTree>;
  beforeAll(async () => {
    const { trees: read, vocabulary } = await shippedTrees('growl-through-floor-at-speed');
    trees = new Map([[HASH, { tree: read.get('growl-through-floor-at-speed')!.value!, vocabulary: vocabulary! }]]);
  });
  const assessed = (more: readonly VisitEventBody[]) => {
    const pinned = trees.get(HASH)!;
    const visit = visitOf(
      [
        { kind: 'person.set', who: 'mechanic' },
        { kind: 'complaint.opened', complaint: 'c', tree: pinned.tree.id, treeHash: HASH, words: '' },
        ...pinned.tree.stopRules.map(({ id }): VisitEventBody => ({
          kind: 'stop.answered',
          complaint: 'c',
          rule: id,
          answer: 'no',
        })),
        ...more,
      ],
      trees,
    );
    return assess(situationOf(visit, visit.complaints[0]!, pinned.tree, pinned.vocabulary));
  };
  const LEAKS = [BEGUN, record('applied-leak', { start: 120, end: 100 })];
  const LAMPS: VisitEventBody = { kind: 'walk-round.noted', item: 'lamps', state: 'wrong' };

  it('is at least as strict as what they hold it to, and says why', () => {
    const before = assessed([]).verdict;
    expect(before.verdict).not.toBe('stay-put');
    expect(assessed(LEAKS).verdict).toMatchObject({
      verdict: 'stay-put',
      because: expect.stringContaining('pedal held') as string,
    });
  });
  it('is never made milder', () => {
    const rule = trees.get(HASH)!.tree.stopRules.find(({ verdict }) => verdict === 'stay-put')!;
    const yes: VisitEventBody = { kind: 'stop.answered', complaint: 'c', rule: rule.id, answer: 'yes' };
    const alone = assessed([yes]).verdict;
    const under = assessed([yes, LAMPS]).verdict;
    expect(alone.verdict).toBe('stay-put');
    expect(under).toMatchObject({ verdict: 'stay-put', because: alone.because, doNow: alone.doNow });
  });
  it('offers no road check while they hold it, be it only to creep', () => {
    const road = (more: readonly VisitEventBody[]) =>
      assessed(more).options.filter(({ check, blocked }) => check === 'speed-sweep' && blocked?.kind === 'verdict');
    expect(road([])).toHaveLength(0);
    expect(road([LAMPS])).toHaveLength(1);
    expect(road(LEAKS)).toHaveLength(1);
  });
  it('belief and the order of what is worth doing are the same', () => {
    expect(assessed(LEAKS).belief).toEqual(assessed([]).belief);
  });
});

describe('[AIR-6] events', () => {
  it('the watch runs from its event until its step is recorded', () => {
    const running = airOf([BEGUN, { kind: 'air-test.timer-started', step: 'released-leak' }]);
    expect(running.timer).toEqual({ step: 'released-leak', startedAt: '2020-01-01T00:00:02.000Z' });
    const other = [
      BEGUN,
      { kind: 'air-test.timer-started', step: 'released-leak' },
      record('parking-tug', 'right'),
    ] as const;
    expect(airOf(other).timer).not.toBeNull();
    expect(airOf([...other, record('released-leak', { start: 120, end: 119 })]).timer).toBeNull();
  });
  it('what was recorded again counts, and another setup empties the sheet but not the walk-round', () => {
    const twice = airOf([BEGUN, record('parking-tug', 'wrong'), record('parking-tug', 'right')]);
    expect(airTestVerdict(twice)).toBeNull();
    const again = airOf([...ALL, { kind: 'air-test.begun', setup: { ...SETUP, towedUnits: 1 } }]);
    expect(again.records).toEqual({});
    expect(Object.keys(again.walk)).toHaveLength(WALK_ROUND.length);
  });
  it('taken back, a failed step holds no longer', () => {
    const log = sheetLog([OPENED, BEGUN, record('parking-tug', 'wrong')]);
    expect(holdOf(replay(log, new Map()))?.verdict).toBe('stay-put');
    const back = [...log, ...sheetLog([{ kind: 'event.taken-back', event: log[2]!.id }], 'aa', 3)];
    expect(holdOf(replay(back, new Map()))).toBeNull();
  });
  it('[VIS-1] comes back as it was written; a year that cannot be is refused', () => {
    for (const event of sheetLog([OPENED, ...ALL])) expect(readEvent(JSON.parse(JSON.stringify(event)))).toEqual(event);
    const [bad] = sheetLog([{ kind: 'air-test.begun', setup: { ...SETUP, builtYear: 88 } }]);
    expect(() => readEvent(bad)).toThrow(/builtYear/);
  });
});
