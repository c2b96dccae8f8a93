import { describe, expect, it } from 'vitest';
import {
  compareTemperatures,
  judgeEndPlay,
  judgeHubPair,
  modifiedScores,
  nutProcedure,
  torqueAgainst,
  type NutSystem,
} from '../../../shared/measuring/index.ts';
import { reasonOf, told } from '../../unit/measuring/told.ts';

describe('[MEA-30] end play, TMC RP 618: 0.001 to 0.005 in', () => {
  it.each([
    [0.003, null, 'meets'],
    [0, 'preload-not-known', 'fails'],
    [0.006, 'too-loose', 'fails'],
    [0.001, null, 'too-close'],
    [0.005, null, 'too-close'],
  ])('%s in', (endPlay, redo, decision) => {
    expect(told(judgeEndPlay(endPlay))).toMatchObject({ redo, decision });
  });
  it('a hub unit has its maker’s procedure', () => {
    expect(reasonOf(judgeEndPlay(0.003, 0.0003, true))).toBe('makers-procedure');
  });
});

describe('[MEA-31] nut procedure, TMC RP 618 / 618A', () => {
  it.each<[NutSystem, number, number, readonly [number, number] | null]>([
    [{ spindle: 'drive', nut: 'double', threadsPerInch: 12, washer: 'dowel' }, 1 / 4, 0.0208, [300, 400]],
    [{ spindle: 'drive', nut: 'double', threadsPerInch: 16, washer: 'tang' }, 1 / 4, 0.0156, [200, 275]],
    [{ spindle: 'steer', nut: 'single-with-cotter-pin', threadsPerInch: 18 }, 1 / 4, 0.0139, null],
    [{ spindle: 'steer', nut: 'single-with-cotter-pin', threadsPerInch: 12 }, 1 / 6, 0.0139, null],
    [{ spindle: 'steer', nut: 'double', threadsPerInch: 14, nutSizeIn: 2.5 }, 1 / 2, 0.0357, [200, 300]],
    [{ spindle: 'steer', nut: 'double', threadsPerInch: 18, nutSizeIn: 2.625 }, 1 / 2, 0.0278, [300, 400]],
    [{ spindle: 'trailer', nut: 'double', threadsPerInch: 16, nutSizeIn: 2.5 }, 1 / 4, 0.0156, [200, 300]],
  ])('%j', (system, lastTurns, travel, lock) => {
    const { steps, lastTravelIn, cautions } = told(nutProcedure(system));
    expect(steps.map((step) => step.torqueLbFt?.[0] ?? step.backOffTurns)).toEqual([
      200,
      1,
      50,
      lastTurns,
      lock?.[0] ?? null,
      null,
    ]);
    expect(steps.map((step) => step.torqueLbFt)).toEqual([[200, 200], null, [50, 50], null, lock, null]);
    expect(lastTravelIn).toBeCloseTo(travel, 4);
    expect(cautions.join(' ')).toMatch(/impact wrench/);
  });
  it('what the source does not list is refused, not guessed', () => {
    expect(reasonOf(nutProcedure({ spindle: 'drive', nut: 'double', threadsPerInch: 14, washer: 'tang' }))).toBe(
      'not-listed',
    );
    expect(reasonOf(nutProcedure({ spindle: 'drive', nut: 'double', threadsPerInch: 12 }))).toBe('washer-needed');
    expect(reasonOf(nutProcedure({ spindle: 'steer', nut: 'double', threadsPerInch: 14 }))).toBe('nut-size-needed');
  });
  it('350 lb-ft: inside with a dowel washer, above with a tang washer; 180 below', () => {
    expect([torqueAgainst(350, [300, 400]), torqueAgainst(350, [200, 275]), torqueAgainst(180, [200, 300])]).toEqual([
      'inside',
      'above',
      'below',
    ]);
  });
});

describe('[MEA-32] modified z-score, Iglewicz & Hoaglin', () => {
  it('Tietjen & Moore 1972, NIST/SEMATECH e-Handbook; scores by NumPy and R', () => {
    const found = told(modifiedScores([199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57]));
    expect(found.median).toBeCloseTo(201.37, 9);
    expect(found.medianDeviation).toBeCloseTo(0.995, 9);
    [-1.3965, -1.2473, -0.7999, -0.3728, 0.3728, 0.3932, 0.5491, 29.9627].forEach((score, i) =>
      expect(found.scores[i]).toBeCloseTo(score, 3),
    );
  });
  it.each([
    [
      'two high ones that hide each other (data of Iglewicz & Hoaglin)',
      [2.1, 2.6, 2.4, 2.5, 2.3, 2.1, 2.3, 2.6, 8.2, 8.3],
      9,
      26.305,
    ],
    ['eight ends, one hot', [168, 172, 165, 170, 175, 171, 169, 248], 7, 26.137],
    ['six ends, one cold', [182, 178, 185, 180, 176, 112], 5, -15.064],
    ['two hot of eight', [170, 168, 172, 171, 169, 173, 230, 236], 7, 21.753],
    ['no spread but one', [150, 150, 150, 150, 150, 190], 5, 4.787],
    ['no spread of four', [140, 140, 140, 150], 3, 3.192],
  ])('%s; NumPy and R', (_, values, index, score) => {
    expect(told(modifiedScores(values)).scores[index]).toBeCloseTo(score, 2);
  });
});

/** Left and right of each axle in turn. */
const round = (temperaturesF: readonly number[], more = {}) =>
  compareTemperatures({
    readings: temperaturesF.map((temperatureF, i) => ({
      axle: 1 + (i >> 1),
      side: i % 2 === 0 ? ('left' as const) : ('right' as const),
      temperatureF,
    })),
    minutes: 5,
    sameSpot: true,
    emissivity: 0.95,
    ...more,
  });
const marks = (temperaturesF: readonly number[]) => told(round(temperaturesF)).ends.map((end) => end.marked);

describe('[MEA-32] wheel ends against their fellows', () => {
  it.each([
    ['one hot of eight', [168, 172, 165, 170, 175, 171, 169, 248], 7, 'hot'],
    ['a cold one of six: its brake does not work', [182, 178, 185, 180, 176, 112], 5, 'cold'],
  ])('%s', (_, temperatures, index, marked) => {
    const found = marks(temperatures);
    expect(found[index]).toBe(marked);
    expect(found.filter((mark) => mark !== null)).toHaveLength(1);
  });
  it.each([
    ['none stands out', [150, 158, 162, 155, 149, 160]],
    ['29 °F from the middle is not enough', [140, 144, 139, 171]],
    ['nearly equal ends do not accuse the fifth for 6 °F', [150, 150, 150, 150, 150, 156]],
  ])('%s', (_, temperatures) => {
    expect(marks(temperatures).every((mark) => mark === null)).toBe(true);
  });
  it('two hot ends on one axle are seen by the axles, not by the ends', () => {
    const found = told(round([170, 168, 172, 171, 169, 173, 230, 236]));
    expect(found.ends.every((end) => end.marked === null)).toBe(true);
    expect(found.axleMediansF.get(4)).toBe(233);
  });
  it('fewer than four: only the sides of an axle, and one end or two axles with one end each tell nothing', () => {
    expect(told(round([150, 190]))).toMatchObject({ compared: 'pairs', ends: [{ marked: null }, { marked: 'hot' }] });
    expect(reasonOf(round([150]))).toBe('too-few-ends');
    const apart = [1, 2].map((axle) => ({ axle, side: 'left' as const, temperatureF: 150 }));
    expect(reasonOf(compareTemperatures({ readings: apart, minutes: 2, sameSpot: true, emissivity: 0.9 }))).toBe(
      'too-few-ends',
    );
  });
  it('a hot end whose other side was not read is marked all the same', () => {
    const ends = told(round([150, 152, 155, 158, 240])).ends;
    expect(ends.map((end) => end.marked)).toEqual([null, null, null, null, 'hot']);
    expect(ends[4]!.fromOtherSideF).toBeNull();
  });
  it('a pair at 30 °F is told, at 29 not; an even hot axle of four ends is not blamed on one end', () => {
    expect(told(round([150, 179])).ends.map((end) => end.marked)).toEqual([null, null]);
    expect(told(round([150, 180])).ends.map((end) => end.marked)).toEqual([null, 'hot']);
    expect(marks([150, 151, 152, 151, 150, 152, 200, 181])).toEqual([...Array<null>(6).fill(null), null, null]);
    expect(marks([150, 151, 152, 151, 150, 152, 200, 180])[6]).toBe('hot');
  });
  it('what cannot be compared is refused', () => {
    expect(reasonOf(round([150, 160, 155, 158], { minutes: 25 }))).toBe('not-comparable');
    expect(reasonOf(round([150, 160, 155, 158], { sameSpot: false }))).toBe('not-comparable');
    expect(reasonOf(round([150, 160, 155, 158], { emissivity: 0.1 }))).toBe('not-comparable');
    const twice = Array.from({ length: 4 }, () => ({ axle: 1, side: 'left' as const, temperatureF: 150 }));
    expect(reasonOf(compareTemperatures({ readings: twice, minutes: 2, sameSpot: true, emissivity: 0.9 }))).toBe(
      'twice-read',
    );
  });
});

describe('[MEA-32] a pair of hubs by absolute temperature: 225/250 °F from trade press, spreads are judgement', () => {
  it.each([
    [155, 150, false, 'usual'],
    [190, 150, false, 'caution'],
    [215, 150, true, 'inspect-before-driving'],
    [205, 200, false, 'inspect-before-driving'],
    [230, 220, true, 'caution'],
    [255, 250, false, 'do-not-drive'],
    [255, 250, true, 'inspect-before-driving'],
  ])('%s and %s °F, braked %s: %s', (hotter, cooler, braked, verdict) => {
    expect(told(judgeHubPair(hotter, cooler, braked)).verdict).toBe(verdict);
  });
  it('thresholds: at the figure it counts', () => {
    const at = (hotter: number, cooler: number, braked: boolean) => told(judgeHubPair(hotter, cooler, braked)).verdict;
    expect([at(179, 150, false), at(180, 150, false), at(199, 140, false), at(199, 139, false)]).toEqual([
      'usual',
      'caution',
      'caution',
      'inspect-before-driving',
    ]);
    expect([at(199, 190, false), at(200, 190, false), at(224, 220, true), at(225, 220, true)]).toEqual([
      'usual',
      'inspect-before-driving',
      'usual',
      'caution',
    ]);
    expect([at(249, 240, false), at(250, 240, false), at(249, 240, true), at(250, 240, true)]).toEqual([
      'inspect-before-driving',
      'do-not-drive',
      'caution',
      'inspect-before-driving',
    ]);
  });
  it('no verdict calls a wheel end sound', () => {
    expect(told(judgeHubPair(120, 118, false)).why).toMatch(/does not say/);
  });
});
