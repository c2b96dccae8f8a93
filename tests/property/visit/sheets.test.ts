import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ROAD_ROWS, ROAD_SIGNS, VERDICTS } from '../../../shared/knowledge/index.ts';
import {
  AIR_STEPS,
  airTestHolds,
  emptyAirTest,
  emptyInspection,
  emptyRoad,
  foldAirTest,
  foldInspection,
  foldRoad,
  holdOf,
  replay,
  WALK_ROUND,
  type VisitEvent,
  type VisitEventBody,
} from '../../../shared/visit/index.ts';
import { OPENED, sheetLog } from '../../unit/visit/sheet-log.ts';

const reading = fc.record({
  value: fc.double({ min: 0, max: 150, noNaN: true }),
  unit: fc.constantFrom('psi', 's', 'kPa'),
});
const drive = fc.constantFrom('d1', 'd2');
const body: fc.Arbitrary<VisitEventBody> = fc.oneof(
  fc.record({
    kind: fc.constant('air-test.begun' as const),
    setup: fc.record({
      builtYear: fc.integer({ min: 1930, max: 2030 }),
      system: fc.constantFrom('dual' as const, 'single' as const),
      springBrakes: fc.boolean(),
      towedUnits: fc.integer({ min: 0, max: 3 }),
    }),
  }),
  fc.record({
    kind: fc.constant('air-test.recorded' as const),
    step: fc.constantFrom(...AIR_STEPS.map(({ id }) => id), 'unknown-step'),
    answer: fc.constantFrom('right' as const, 'wrong' as const, 'cant-do' as const),
  }),
  fc.constantFrom(...AIR_STEPS.filter(({ figures }) => figures.length > 0)).chain((step) =>
    fc.record({
      kind: fc.constant('air-test.recorded' as const),
      step: fc.constant(step.id),
      readings: fc.record(Object.fromEntries(step.figures.map(({ id }) => [id, reading]))),
    }),
  ),
  fc.record({
    kind: fc.constant('walk-round.noted' as const),
    item: fc.constantFrom(...WALK_ROUND.map(({ id }) => id)),
    state: fc.constantFrom('right' as const, 'wrong' as const, 'not-looked' as const),
  }),
  fc.record({
    kind: fc.constant('road.begun' as const),
    drive,
    driver: fc.constantFrom('Ada', 'Ben'),
    writer: fc.constantFrom('Ada', 'Ben'),
  }),
  fc.record({
    kind: fc.constant('road.noted' as const),
    drive,
    entry: fc.oneof(
      fc
        .constantFrom(...ROAD_ROWS)
        .map((row) => ({ kind: 'choice' as const, row: row.id, choice: row.choices[0]!.id })),
      fc.constantFrom(...ROAD_SIGNS).map(({ id }) => ({ kind: 'sign' as const, sign: id })),
    ),
  }),
  fc.record({ kind: fc.constant('road.ended' as const), drive }),
  fc.record({
    kind: fc.constant('inspection.recorded' as const),
    entry: fc.constantFrom('a', 'b'),
    item: fc.constant('hub'),
    site: fc.constant('left front'),
    state: fc.constantFrom('not-opened' as const, 'good' as const, 'bad' as const),
    photos: fc.array(fc.constantFrom('p1', 'p2'), { maxLength: 2 }),
  }),
);
const bodies = fc.array(body, { maxLength: 25 });
const sheetsOf = (log: readonly VisitEvent[]) => {
  const { airTest, road, inspection } = replay(log, new Map());
  return { airTest, road, inspection };
};

describe('the sheets of a visit', () => {
  it('[AIR-6] [ROA-3] [INS-3] replay is the same as folding one event after the other', () => {
    fc.assert(
      fc.property(bodies, (some) => {
        const log = sheetLog([OPENED, ...some]);
        expect(sheetsOf(log)).toEqual({
          airTest: log.reduce(foldAirTest, emptyAirTest()),
          road: log.reduce(foldRoad, emptyRoad()),
          inspection: log.reduce(foldInspection, emptyInspection()),
        });
      }),
      { seed: 20, numRuns: 150 },
    );
  });
  it('[VIS-3] any order in which the logs of two devices are read gives one state', () => {
    fc.assert(
      fc.property(bodies, bodies, (mine, theirs) => {
        const a = sheetLog([OPENED, ...mine]);
        const b = sheetLog(theirs, 'bb', 1);
        expect(sheetsOf([...b, ...a])).toEqual(sheetsOf([...a, ...b]));
      }),
      { seed: 21, numRuns: 80 },
    );
  });
  it('[VIS-3] what is taken back is as if it had not been', () => {
    fc.assert(
      fc.property(bodies, fc.nat(), (some, nth) => {
        const log = sheetLog([OPENED, ...some]);
        if (log.length < 2) return;
        const target = log[1 + (nth % (log.length - 1))]!;
        const back = sheetLog([{ kind: 'event.taken-back', event: target.id }], 'aa', log.length);
        expect(sheetsOf([...log, ...back])).toEqual(sheetsOf(log.filter((event) => event !== target)));
      }),
      { seed: 22, numRuns: 150 },
    );
  });
  it('[AIR-3] the hold is the strictest of what holds, and one more thing wrong never makes it milder', () => {
    const rank = (log: readonly VisitEvent[]): number => {
      const hold = holdOf(replay(log, new Map()));
      return hold ? VERDICTS.indexOf(hold.verdict) : VERDICTS.length;
    };
    fc.assert(
      fc.property(bodies, fc.constantFrom(...WALK_ROUND), (some, item) => {
        const log = sheetLog([OPENED, ...some]);
        const holds = airTestHolds(sheetsOf(log).airTest);
        for (const hold of holds) expect(rank(log)).toBeLessThanOrEqual(VERDICTS.indexOf(hold.verdict));
        const wrong: VisitEventBody = { kind: 'walk-round.noted', item: item.id, state: 'wrong' };
        expect(rank([...log, ...sheetLog([wrong], 'aa', log.length)])).toBeLessThanOrEqual(rank(log));
      }),
      { seed: 23, numRuns: 120 },
    );
  });
});
