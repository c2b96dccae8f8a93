import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { shippedTrees } from '../../shipped-trees.ts';
import {
  benchStart,
  COACH_FIELDS,
  coachProfile,
  derivedWords,
  distanceAYear,
  fieldOf,
  layoutFields,
  layoutForVisit,
  askOf,
  learnedBodies,
  learnedInVisit,
  MEASURES,
  monthsBetween,
  monthsWords,
  readCoachEvent,
  trendsOf,
  tyreDay,
  typedValue,
  visitRecord,
  type CoachEventBody,
  type CoachProfile,
} from '../../../shared/coach/index.ts';
import type { Vocabulary } from '../../../shared/knowledge/index.ts';
import { EVENT_VERSION, newEventId, type VisitEvent, type VisitEventBody } from '../../../shared/visit/index.ts';
import { coachLog, OPENED, set } from './log.ts';

let vocabulary: Vocabulary;
beforeAll(async () => {
  const loaded = await shippedTrees('air-leaks-when-brake-held');
  if (!loaded.vocabulary) throw new Error('The shipped vocabulary cannot be read.');
  vocabulary = loaded.vocabulary;
});

const profile = (...bodies: CoachEventBody[]): CoachProfile => coachProfile(coachLog([OPENED, ...bodies]));
const field = (id: string) => {
  const found = fieldOf(id);
  if (!found) throw new Error(`There is no field ${id}.`);
  return found;
};

describe('[COA-1] an event of a coach', () => {
  it('comes back as it was written', () => {
    const events = coachLog([OPENED, set('odometer', 120_000, { unit: 'mi', on: '2026-01-02' })]);
    expect(events.map((event) => readCoachEvent(JSON.parse(JSON.stringify(event))))).toEqual(events);
  });
  it.each([
    ['a newer version', { v: 2, kind: 'coach.set' }, 'newer-version', /newer Droplight/],
    ['another kind', { id: 'e', v: 1, at: '', by: '', kind: 'coach.sold' }, 'not-an-event', /kind/],
    [
      'a value that is a list',
      { id: 'e', v: 1, at: '', by: '', kind: 'coach.set', field: 'x', value: [] },
      'not-an-event',
      /value/,
    ],
    [
      'a day that is none',
      { id: 'e', v: 1, at: '', by: '', kind: 'coach.set', field: 'x', value: 1, on: 'May' },
      'not-an-event',
      /on/,
    ],
    ['nothing', null, 'not-an-event', /null/],
  ])('that is %s is refused', (_, record, code, words) => {
    let refusal: unknown;
    try {
      readCoachEvent(record);
    } catch (problem) {
      refusal = problem;
    }
    expect(refusal).toMatchObject({ code, message: expect.stringMatching(words) as unknown });
  });
});

describe('[COA-3] what is typed for a field', () => {
  it.each([
    ['ratio.axle', '4 1/8', undefined, { ok: true, value: 4.125, unit: 'to-1' }],
    ['axle.1.weight', '5,450', 'kg', { ok: true, value: 5450, unit: 'kg' }],
    ['axle.1.weight', '5450', 'stone', { ok: false, reason: 'unknown-unit' }],
    ['axle.1.weight', '545', 'kg', { ok: false, reason: 'out-of-range' }],
    ['axle.2.drum', '16 1/2', 'in', { ok: true, value: 16.5, unit: 'in' }],
    ['axle.2.drum', '16.5', 'mm', { ok: false, reason: 'out-of-range' }],
    ['axle.2.drum', 'large', 'in', { ok: false, reason: 'not-a-number' }],
    ['axle.2.drum', '  ', 'in', { ok: false, reason: 'empty' }],
    ['engine.cylinders', '6.5', undefined, { ok: false, reason: 'not-whole' }],
    ['axle.1.chamber', 'clamp 30', undefined, { ok: true, value: 'clamp 30' }],
    ['axle.1.chamber', 'clamp 31', undefined, { ok: false, reason: 'not-a-choice' }],
    ['service.hubs', '2024-02-29', undefined, { ok: true, value: '2024-02-29' }],
    ['service.hubs', '2023-02-29', undefined, { ok: false, reason: 'not-a-day' }],
    ['axle.1.tyre-week', '1419', undefined, { ok: true, value: '1419' }],
    ['axle.1.tyre-week', '5419', undefined, { ok: false, reason: 'not-a-tyre-week' }],
    ['axle.1.tyre-week', '249', undefined, { ok: false, reason: 'not-a-tyre-week' }],
    ['axle.1.tyre-size', 'x'.repeat(41), undefined, { ok: false, reason: 'too-long' }],
  ])('%s: “%s” %s', (id, text, unit, expected) => {
    const found = typedValue(field(id), text, unit);
    expect(found).toMatchObject(expected);
    if (!found.ok) expect(found.message).toMatch(/^.{10,}\.$/s);
  });
  it('a refusal of a figure names the span in the unit typed', () => {
    expect(typedValue(field('axle.1.weight'), '100', 'kg')).toMatchObject({
      message: expect.stringContaining('(907 to 13600 kg)') as unknown,
    });
  });
});

describe('[COA-4] what uses a field', () => {
  it('every field has a use, a place to find it and a span that makes sense', () => {
    const ids = COACH_FIELDS.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const each of [...COACH_FIELDS, ...layoutFields(vocabulary.layout)]) {
      expect(each.uses.length, each.id).toBeGreaterThan(0);
      expect(each.where.length, each.id).toBeGreaterThan(15);
      if (each.kind !== 'figure') continue;
      expect(each.range[0], each.id).toBeLessThan(each.range[1]);
      expect(MEASURES[each.measure][0]?.factor).toBe(1);
    }
  });
  it('names fields that its page of the bench has', () => {
    const pages: Readonly<Record<string, string>> = {
      stroke: 'Stroke',
      build: 'BuildUp',
      bands: 'AirBands',
      flow: 'LeakFlow',
      lining: 'Lining',
      heat: 'Heat',
      orders: 'Orders',
    };
    const uses = [...COACH_FIELDS, ...layoutFields(vocabulary.layout)].flatMap((each) =>
      each.uses.flatMap((use) => (use.kind === 'bench' ? [use] : [])),
    );
    expect(uses.length).toBeGreaterThan(20);
    for (const { page, entry } of uses) {
      const file = join(import.meta.dirname, `../../../renderer/screens/bench/${pages[page] ?? page}Page.svelte`);
      const name = entry.replace(/^stroke\.\d/, 'stroke.{axle}').replace(/axle\d$/, 'axle{axle}');
      expect(readFileSync(file, 'utf8'), `${page}: ${entry}`).toContain(`name="${name}"`);
    }
  });
});

describe('the profile', () => {
  it('[COA-5] leaves out what it cannot use, says why, and keeps the rest', () => {
    const found = profile(
      set('wings', 2),
      set('axle.1.weight', 3, { unit: 'lb' }),
      set('ratio.axle', 4.1, { unit: 'to-1' }),
    );
    expect(Object.keys(found.values)).toEqual(['ratio.axle']);
    expect(found.ignored.map(({ why }) => why)).toEqual([
      '“wings” is not a field that this version knows.',
      expect.stringContaining('outside what a coach has'),
    ]);
  });
  it('[COA-2] clears, renames and takes back', () => {
    const events = coachLog([
      OPENED,
      set('ratio.axle', 4.1, { unit: 'to-1' }),
      { kind: 'coach.cleared', field: 'ratio.axle' },
      { kind: 'coach.named', name: 'The blue one' },
    ]);
    expect(coachProfile(events)).toMatchObject({ name: 'The blue one', values: {} });
    const back = coachLog([{ kind: 'event.taken-back', event: events[2]!.id }], '2026-05-14', 'bb').map((event) => ({
      ...event,
      id: newEventId(9000, 1, 'bb'),
    }));
    expect(coachProfile([...events, ...back]).values['ratio.axle']).toMatchObject({ value: 4.1 });
  });
  it('[COA-8] keeps every odometer reading with its day, and works out a year from them', () => {
    const found = profile(
      set('odometer', 103_652.5, { unit: 'mi', on: '2026-01-01' }),
      set('odometer', 100_000, { unit: 'mi', on: '2025-01-01' }),
    );
    expect(found.values['odometer']).toMatchObject({ value: 103_652.5, on: '2026-01-01' });
    // 3652.5 miles in 365 days are 10.0068… a day, and a year has 365.25 of them: 3655.0 miles.
    expect(distanceAYear(found.readings['odometer'] ?? [])).toBeCloseTo((3652.5 / 365) * 365.25, 6);
    expect(distanceAYear((found.readings['odometer'] ?? []).slice(1))).toBeNull();
    const backwards = profile(
      set('odometer', 100, { unit: 'mi', on: '2026-01-01' }),
      set('odometer', 200, { unit: 'mi', on: '2025-01-01' }),
    );
    expect(distanceAYear(backwards.readings['odometer'] ?? [])).toBeNull();
  });
  it('says ages in words, from the calendar alone', () => {
    expect(monthsBetween('2024-01-31', '2024-02-29')).toBe(0);
    expect(monthsBetween('2020-05-13', '2026-05-13')).toBe(72);
    expect([0, 1, 12, 38].map(monthsWords)).toEqual(['less than a month', '1 month', '1 year', '3 years, 2 months']);
    // Week 1 begins on 1 January as weeks are counted here; week 14 thirteen weeks later.
    expect(tyreDay('0119')).toBe('2019-01-01');
    expect(tyreDay('1419')).toBe('2019-04-02');
    const found = profile(
      set('service.hubs', '2023-03-13'),
      set('axle.1.tyre-week', '1419'),
      set('axle.1.weight', 10_000, { unit: 'lb' }),
    );
    expect(derivedWords(field('service.hubs'), found, '2026-05-13')).toBe('That was 3 years, 2 months ago.');
    expect(derivedWords(field('service.hubs'), found, '2023-01-01')).toContain('still ahead');
    expect(derivedWords(field('axle.1.tyre-week'), found, '2026-05-13')).toBe('The tyre is 7 years, 1 month old.');
    // Half of 10,000 lb and 5 in 100 for the heavier side is 5,250 lb; a quarter on top 6,562.5, to the hundred above.
    expect(derivedWords(field('axle.1.weight'), found, '2026-05-13')).toMatch(/5,300 lb.*at least 6,600 lb/);
  });
});

describe('[COA-6] profile and visit', () => {
  it('a visit begins with what the profile knows and the vocabulary has', () => {
    const known = profile(
      set('layout.engine', 'two-stroke'),
      set('layout.lock-up', true),
      set('layout.engine-kind', 'steam'),
    );
    const contradicted = profile(set('layout.engine', 'steam'));
    expect(layoutForVisit(known, vocabulary.layout)).toEqual([
      { kind: 'layout.set', feature: 'engine', value: 'two-stroke' },
      { kind: 'layout.set', feature: 'lock-up', value: true },
    ]);
    expect(layoutForVisit(known, vocabulary.layout, { engine: 'four-stroke' }).map(({ feature }) => feature)).toEqual([
      'lock-up',
    ]);
    expect(layoutForVisit(contradicted, vocabulary.layout)).toEqual([]);
    // No question of the vocabulary, but what the places of a check go by (KNO-30).
    const six = profile({ kind: 'coach.set', field: 'engine.cylinders', value: 6, unit: '' });
    expect(layoutForVisit(six, vocabulary.layout)).toEqual([{ kind: 'layout.set', feature: 'cylinders', value: '6' }]);
    expect(layoutForVisit(six, vocabulary.layout, { cylinders: '8' })).toEqual([]);
  });
  it('how many cylinders the visit was told of is offered back as the figure that the profile has for it', () => {
    const bare = profile();
    const learned = learnedInVisit(bare, { cylinders: '6' }, vocabulary.layout);
    expect(learned).toEqual([{ feature: 'cylinders', value: '6' }]);
    expect(askOf('cylinders', vocabulary.layout)).toBe('How many cylinders has the diesel?');
    expect(learnedBodies(learned)).toEqual([{ kind: 'coach.set', field: 'engine.cylinders', value: 6 }]);
    const six = profile(...learnedBodies(learned));
    expect(six.ignored).toEqual([]);
    expect(learnedInVisit(six, { cylinders: '6' }, vocabulary.layout)).toEqual([]);
    expect(learnedInVisit(six, { cylinders: '8' }, vocabulary.layout)).toEqual([
      { feature: 'cylinders', value: '8', was: '6' },
    ]);
    expect(learnedInVisit(six, { cylinders: 'many' }, vocabulary.layout)).toEqual([]);
  });
  it('what the visit learned is offered back, with what it contradicts, and taken over as it is', () => {
    const known = profile(set('layout.engine', 'two-stroke'), set('layout.lock-up', true));
    const learned = learnedInVisit(
      known,
      { engine: 'four-stroke', 'lock-up': true, parking: 'spring', wings: true },
      vocabulary.layout,
    );
    expect(learned).toEqual([
      { feature: 'engine', value: 'four-stroke', was: 'two-stroke' },
      { feature: 'parking', value: 'spring' },
    ]);
    const after = profile(set('layout.engine', 'two-stroke'), set('layout.lock-up', true), ...learnedBodies(learned));
    expect(
      learnedInVisit(after, { engine: 'four-stroke', 'lock-up': true, parking: 'spring' }, vocabulary.layout),
    ).toEqual([]);
  });
});

describe('[COA-7] the bench', () => {
  it('starts from the profile', () => {
    const start = benchStart(
      profile(
        set('axle.count', '3'),
        set('axle.1.chamber', 'clamp 24'),
        set('axle.2.chamber', 'bolt C'),
        set('axle.1.drum', 16.5, { unit: 'in' }),
        set('axle.2.drum', 16.5, { unit: 'in' }),
        set('ratio.axle', 4.1, { unit: 'to-1' }),
        set('reservoir.supply', 1500, { unit: 'in³' }),
        set('reservoir.first', 10, { unit: 'gal' }),
        set('layout.engine', 'two-stroke'),
        set('odometer', 100, { unit: 'mi' }),
      ),
    );
    expect(start.choices).toEqual({
      'stroke.axles': '3',
      'heat.axles': '3',
      'stroke.1.chamber': 'clamp 24',
      'stroke.2.chamber': 'bolt C',
      // Tanks are reckoned from the type number alone, which a bolted flange does not have.
      'build.axle1': '24',
      'orders.strokes': '2',
    });
    expect(start.figures).toEqual({
      'drum.nominal': { value: 16.5, unit: 'in' },
      'orders.axle': { value: 4.1, unit: '' },
      // Ten gallons of 231 in³ each, and the supply tank where all tanks count.
      'build.fitted': { value: 3810, unit: 'in³' },
      'flow.volume': { value: 2310, unit: 'in³' },
      'wear.secondAt': { value: 100, unit: 'mi' },
    });
  });
  it('leaves a field open where axles disagree', () => {
    const start = benchStart(
      profile(
        set('axle.1.drum', 15, { unit: 'in' }),
        set('axle.2.drum', 16.5, { unit: 'in' }),
        set('axle.3.drum', 16.5, { unit: 'in' }),
      ),
    );
    expect(start.figures).toEqual({});
  });
});

describe('history', () => {
  const visit = (bodies: readonly VisitEventBody[]): VisitEvent[] =>
    bodies.map((body, i) => ({
      id: newEventId(1000 + i, i, 'aa'),
      v: EVENT_VERSION,
      at: '2026-05-13T08:00:00Z',
      by: '',
      ...body,
    }));
  const reading = (finding: string, value: number, unit: string): VisitEventBody => ({
    kind: 'finding.recorded',
    complaint: 'c',
    finding,
    check: 'rate',
    value: { kind: 'reading', reading: { value, unit } },
  });

  it('[COA-9] a visit leaves complaints and readings, without what was taken back', () => {
    const events = visit([
      { kind: 'visit.opened', coach: 'Invented coach', demo: true },
      { kind: 'complaint.opened', complaint: 'c', tree: 't', treeHash: 'a'.repeat(64), words: 'hiss' },
      reading('f1', 2, 'psi/min'),
      reading('f2', 9, 'psi/min'),
      {
        kind: 'finding.changed',
        complaint: 'c',
        finding: 'f1',
        value: { kind: 'reading', reading: { value: 3, unit: 'psi/min' } },
      },
      { kind: 'event.taken-back', event: newEventId(1003, 3, 'aa') },
      { kind: 'correction.done', complaint: 'c', cause: 'hose', partSeen: 'bad', parts: [], alsoRenewed: [] },
      { kind: 'proof.recorded', complaint: 'c', outcome: 'gone' },
    ]);
    expect(visitRecord(events)).toEqual({
      complaints: [{ complaint: 'c', tree: 't', words: 'hiss', closedHow: 'cured', cause: 'hose' }],
      readings: [
        { finding: 'f1', tree: 't', check: 'rate', site: null, value: 3, unit: 'psi/min', at: '2026-05-13T08:00:00Z' },
      ],
    });
  });

  it('[COA-11] figures of the sheets: each reading of a part, what came of an air step, the marks of a drive', () => {
    const psi = (value: number) => ({ value, unit: 'psi' });
    const gauge = (of: string, value: number, unit: string): VisitEventBody => ({
      kind: 'road.noted',
      drive: 'd',
      entry: { kind: 'gauge', gauge: of, reading: { value, unit } },
    });
    const events = visit([
      { kind: 'visit.opened', coach: 'Invented coach', demo: true },
      {
        kind: 'inspection.recorded',
        entry: 'e',
        item: 'bearing',
        site: 'left front',
        state: 'good',
        readings: [{ what: 'end-play', reading: { value: 0.003, unit: 'in' } }],
      },
      { kind: 'air-test.begun', setup: { builtYear: 1987, system: 'dual', springBrakes: true, towedUnits: 0 } },
      { kind: 'air-test.recorded', step: 'governor-cut-out', readings: { 'cut-out': psi(120), 'cut-in': psi(102) } },
      { kind: 'air-test.recorded', step: 'parking-valve', readings: { popped: psi(33) } },
      { kind: 'road.begun', drive: 'd', driver: 'Ada', writer: 'Ben' },
      ...[gauge('speed', 0, 'mph'), gauge('oil', 60, 'psi'), gauge('coolant', 180, 'degF'), gauge('speed', 60, 'mph')],
      ...[gauge('oil', 50, 'psi'), gauge('oil', 45, 'psi'), gauge('coolant', 90, 'degC'), gauge('speed', 0, 'mph')],
      ...[gauge('oil', 120, 'kPa'), gauge('oil', 20, 'psi'), gauge('air', 105, 'psi')],
    ]);
    expect(
      visitRecord(events).readings.map(({ tree, check, site, value, unit }) => [tree, check, site, value, unit]),
    ).toEqual([
      ['sheet/inspection', 'end-play', 'left front', 0.003, 'in'],
      ['sheet/air-test', 'cut-out and cut-in of the compressor, cut-in', null, 102, 'psi'],
      ['sheet/air-test', 'cut-out and cut-in of the compressor, cut-out', null, 120, 'psi'],
      ['sheet/air-test', 'parking knob comes out by itself', null, 33, 'psi'],
      // 90 °C are 194 °F, more than 180; cold oil before is none of them; 120 kPa are 17.4 psi, less than 20.
      ['sheet/road', 'coolant-most', null, 90, 'degC'],
      ['sheet/road', 'oil-driven', null, 45, 'psi'],
      ['sheet/road', 'oil-standing', null, 120, 'kPa'],
      ['sheet/road', 'air-least', null, 105, 'psi'],
    ]);
  });

  it('[COA-10] a trend joins shared checks and units of one quantity, and keeps places and differences apart', () => {
    const past = (
      finding: string,
      tree: string,
      check: string,
      value: number,
      unit: string,
      year: number,
      site: string | null = null,
    ) => ({
      finding,
      tree,
      check,
      site,
      value,
      unit,
      at: `${year}-05-13T08:00:00Z`,
    });
    const trends = trendsOf(
      [
        {
          id: 'v2',
          readings: [
            past('b', 'air', 'applied', 100, 'kPa/min', 2025),
            past('d', 'heat', 'hub', 30, 'degF-diff', 2025),
          ],
        },
        {
          id: 'v1',
          readings: [past('a', 'brake', 'rate', 10, 'psi/min', 2024), past('c', 'heat', 'hub', 90, 'degF', 2024)],
        },
        {
          id: 'v3',
          readings: [
            past('e', 'air', 'applied', 2, 'psi/min', 2026, 'left'),
            past('f', 'air', 'applied', 1, 'cubits', 2026),
          ],
        },
      ],
      (tree, check) => (['air/applied', 'brake/rate'].includes(`${tree}/${check}`) ? 'applied-leak-rate' : undefined),
    );
    const joined = trends.find(
      ({ key, site, unit }) => key === 'applied-leak-rate' && site === null && unit !== 'cubits',
    );
    expect(joined?.unit).toBe('kPa/min');
    // 10 psi are 68.95 kPa (NIST SP 811, appendix B: 1 psi = 6.894757 kPa).
    expect(joined?.points.map(({ visit: of, value }) => [of, Number(value.toFixed(2))])).toEqual([
      ['v1', 68.95],
      ['v2', 100],
    ]);
    expect(trends).toHaveLength(5);
  });
});
