import { describe, expect, it } from 'vitest';
import {
  coldStart,
  isoGrade,
  oilDrip,
  saeGrade,
  viscosityAt,
  viscosityIndex,
  viscosityOf,
  zOf,
} from '../../../shared/measuring/index.ts';
import { reasonOf, told } from '../../unit/measuring/told.ts';

describe('[MEA-50] viscosity index, worked examples of ASTM D2270 as an open chemistry library reproduces them', () => {
  it.each([
    [73.3, 8.86, 92],
    [22.83, 5.05, 156],
    [53.47, 7.8, 111],
    [73.5, 8.86, 92],
  ])('%s and %s mm²/s: %s', (at40, at100, index) => {
    expect(Math.round(told(viscosityIndex(at40, at100)).index)).toBe(index);
  });
  it.each([
    [140, 14.5, 102.062],
    [100, 11.2, 97.1967],
    [112, 14.8, 136.3804],
    [32, 5.4, 102.2127],
    [46, 6.8, 101.6085],
    [68, 8.7, 99.2587],
    [35, 7.4, 184.9832],
    [210, 19, 101.4043],
  ])('%s and %s mm²/s: %s by the same library, interpolation by NumPy', (at40, at100, index) => {
    expect(told(viscosityIndex(at40, at100)).index).toBeCloseTo(index, 3);
  });
  it('outside the table it is refused', () => {
    expect(reasonOf(viscosityIndex(1000, 100))).toBe('out-of-range');
    expect(reasonOf(viscosityIndex(10, 1.9))).toBe('out-of-range');
  });
});

describe('[MEA-50] viscosity against temperature, ASTM D341; solved twice, by inverse and by bisection', () => {
  it.each([
    [140, 14.5, [27295.8, 7712.93, 2648.64, 489.45, 54.1954, 9.0532]],
    [112, 14.8, [9395.46, 3329.46, 1370.53, 329.538, 48.6091, 9.583]],
    [32, 5.4, [2291.47, 805.147, 336, 86.2779, 15.1859, 3.7239]],
    [46, 6.8, [4517.84, 1474.33, 577.321, 133.838, 20.6227, 4.5714]],
    [68, 8.7, [9353.51, 2822.82, 1033.18, 214.761, 28.6587, 5.6879]],
    [35, 7.4, [943.582, 438.614, 227.316, 78.6985, 18.5714, 5.2491]],
  ])('%s and %s mm²/s at −20, −10, 0, 20, 60 and 120 °C', (at40, at100, expected) => {
    [-20, -10, 0, 20, 60, 120].forEach((temperatureC, i) => {
      const found = told(viscosityAt({ at40, at100 }, temperatureC));
      expect(found.viscosity / expected[i]!).toBeCloseTo(1, 4);
      expect(found.estimate).toBe(temperatureC < 0);
    });
  });
  it.each([
    [5, 5.000001],
    [3, 3.000108],
    [2, 2.000975],
    [1, 1.00024],
    [0.5, 0.501751],
  ])('there and back: %s', (v, expected) => {
    expect(viscosityOf(zOf(v))).toBeCloseTo(expected, 5);
  });
  it('crossed points are refused; a thick oil explains a slow crank', () => {
    expect(reasonOf(viscosityAt({ at40: 10, at100: 20 }, 0))).toBe('points-crossed');
    expect(told(coldStart(9395)).meaning).toBe('the-oil-alone-can-explain-it');
    expect(told(coldStart(1370)).meaning).toBe('usual');
    expect([2999, 3000, 7000, 7001].map((viscosity) => told(coldStart(viscosity)).meaning)).toEqual([
      'usual',
      'slow',
      'slow',
      'the-oil-alone-can-explain-it',
    ]);
  });
});

describe('[MEA-50] grades, SAE J300 and ISO 3448', () => {
  it.each([
    [9.29, '20'],
    [9.3, '30'],
    [12.49, '30'],
    [12.5, '40'],
    [16.29, '40'],
    [16.3, '50'],
    [26.1, null],
  ])('%s mm²/s at 100 °C is SAE %s', (at100, grade) => {
    expect(saeGrade(at100)).toBe(grade);
  });
  it.each([
    [35.2, 32],
    [38, null],
    [41.4, 46],
    [47, 46],
    [52, null],
    [74.8, 68],
    [80, null],
  ])('%s mm²/s at 40 °C is VG %s', (at40, grade) => {
    expect(isoGrade(at40)).toBe(grade);
  });
});

describe('[MEA-53] drops, 0.05 mL by pharmacists’ convention; four US quarts between the marks', () => {
  it.each([
    [1, 0.05, 60, 3, 5, 1261.8, 75_708.2],
    [10, 0.05, 60, 30, 50, 126.18, 7570.82],
    [30, 0.05, 55, 90, 163.636, 42.0601, 2313.31],
    [60, 0.05, 65, 180, 276.923, 21.0301, 1366.95],
    [30, 0.033, 55, 59.4, 108, 63.7275, 3505.01],
    [30, 0.1, 55, 180, 327.273, 21.0301, 1156.65],
  ])('%s drops a minute of %s mL at %s mph', (drops, ml, mph, perHour, per100, hours, miles) => {
    const found = told(oilDrip(drops, mph, 4, ml));
    expect(found.mlPerHour / perHour).toBeCloseTo(1, 5);
    expect(found.mlPer100Miles / per100).toBeCloseTo(1, 5);
    expect(found.hoursToAdd / hours).toBeCloseTo(1, 5);
    expect(found.milesToAdd / miles).toBeCloseTo(1, 5);
  });
  it('a stream is no drops', () => {
    expect(reasonOf(oilDrip(200, 60, 4))).toBe('a-stream');
  });
});
