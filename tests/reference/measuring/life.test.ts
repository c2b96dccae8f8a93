import { describe, expect, it } from 'vitest';
import {
  bestReplacementAge,
  failedShare,
  failsWithin,
  lifeAtShare,
  meanLife,
  rebuildOrReplace,
  replaceOrWait,
  type NeighbourPart,
} from '../../../shared/measuring/index.ts';
import { reasonOf, told } from '../../unit/measuring/told.ts';

describe('[MEA-52] Weibull, published values', () => {
  it.each([
    ['spreadsheet documentation', 20, 100, 105, 0.929581],
    ['another spreadsheet’s documentation', 0.5, 2, 1.5, 0.57937997],
    ['NIST/SEMATECH e-Handbook 8.1.6.2', 1.5, 5000, 1000, 0.08555936],
  ])('%s: shape %s, scale %s, age %s', (_, shape, scale, age, expected) => {
    expect(told(failedShare({ shape, scale }, age)).probability).toBeCloseTo(expected, 6);
  });
  it.each([
    [0, 1000, 1.5, 5000, 0.08555936],
    [100, 20, 2, 200, 0.10416586],
    [250, 50, 3, 300, 0.34380436],
    [150, 25, 1, 400, 0.06058694],
    [80, 10, 0.8, 120, 0.06894479],
    [300, 12, 3.5, 350, 0.08220986],
  ])('age %s, %s more, shape %s, scale %s: SciPy and R', (age, more, shape, scale, expected) => {
    expect(told(failsWithin({ shape, scale }, age, more)).probability).toBeCloseTo(expected, 8);
  });
  it('mean and ten-per-cent life, SciPy', () => {
    expect(told(meanLife({ shape: 1.5, scale: 5000 })).age).toBeCloseTo(4513.7265, 3);
    expect(told(lifeAtShare({ shape: 1.5, scale: 5000 }, 0.1)).age).toBeCloseTo(1115.3776, 3);
  });
});

describe('[MEA-52] replace now or wait, computed in two other languages', () => {
  const part = (more: Partial<NeighbourPart>): NeighbourPart => ({
    safetyPart: false,
    life: { shape: 3, scale: 300 },
    age: 250,
    horizon: 50,
    partCost: 120,
    openHours: 0.5,
    accessHours: 12,
    ratePerHour: 110,
    roadsideCost: 1500,
    ...more,
  });
  it.each<[Partial<NeighbourPart>, number, number, 'now' | 'wait']>([
    [{}, 188.83, 1029.69, 'now'],
    [{ age: 60 }, 188.83, 121.16, 'wait'],
    [{ partCost: 450, openHours: 3, accessHours: 2, roadsideCost: 0 }, 784.62, 343.8, 'wait'],
    [
      {
        partCost: 60,
        openHours: 0.3,
        accessHours: 18,
        roadsideCost: 2500,
        age: 150,
        horizon: 30,
        life: { shape: 2, scale: 400 },
        ratePerHour: 120,
      },
      122.68,
      285.36,
      'now',
    ],
    [
      {
        partCost: 900,
        openHours: 6,
        accessHours: 4,
        roadsideCost: 1200,
        age: 100,
        horizon: 100,
        life: { shape: 1.2, scale: 600 },
      },
      1911.82,
      448.79,
      'wait',
    ],
  ])('%j', (more, now, wait, cheaper) => {
    const found = told(replaceOrWait(part(more)));
    expect(found.costNow).toBeCloseTo(now, 2);
    expect(found.costWait).toBeCloseTo(wait, 2);
    expect(found.cheaper).toBe(cheaper);
  });
  it('a safety part is never weighed by cost', () => {
    expect(reasonOf(replaceOrWait(part({ safetyPart: true })))).toBe('safety-part');
  });
  it.each([
    [900, 0.12, 1600, 0.03, 1400, 800, 1164, 1666, 0.34818, 'rebuild'],
    [900, 0.12, 1300, 0.03, 1400, 800, 1164, 1366, 0.21182, 'no-clear-winner'],
    [400, 0.05, 700, 0.02, 300, 0, 415, 706, 1.02, 'rebuild'],
    [2500, 0.2, 4200, 0.05, 2500, 1500, 3300, 4400, 0.475, 'rebuild'],
    [650, 0.08, 1050, 0.04, 500, 1500, 810, 1130, 0.24, 'rebuild'],
    [400, 0.5, 900, 0, 2500, 0, 1650, 900, 0.2, 'replace'],
  ])('rebuild %s (%s) or replace %s (%s)', (c1, p1, c2, p2, again, roadside, rebuild, replace, even, cheaper) => {
    const found = told(rebuildOrReplace({ cost: c1, comeback: p1 }, { cost: c2, comeback: p2 }, again, roadside));
    expect(found.rebuildCost).toBeCloseTo(rebuild, 6);
    expect(found.replaceCost).toBeCloseTo(replace, 6);
    expect(found.breakEvenComeback).toBeCloseTo(even, 5);
    expect(found.cheaper).toBe(cheaper);
  });
});

describe('[MEA-52] age replacement, Barlow & Hunter: optimum by SciPy and R, first case a published example', () => {
  it.each([
    [2.5, 1000, 1, 5, 493.047, 0.003462042739],
    [3, 150, 2, 8, 83.12298, 0.03685029],
    [3, 300, 400, 2500, 137.5459, 4.414402],
    [2, 300, 400, 2500, 133.0453, 6.20878],
  ])('shape %s, scale %s, planned %s, failure %s', (shape, scale, planned, failure, age, rate) => {
    const found = told(bestReplacementAge({ shape, scale }, planned, failure));
    expect(found.age / age).toBeCloseTo(1, 4);
    expect(found.costRate / rate).toBeCloseTo(1, 6);
  });
  it('run to failure costs 0.005635302490 in the first case', () => {
    expect(told(bestReplacementAge({ shape: 2.5, scale: 1000 }, 1, 5)).runToFailureRate).toBeCloseTo(0.00563530249, 10);
  });
  it('what fails by chance, or costs no more when it fails, is run to failure', () => {
    expect(reasonOf(bestReplacementAge({ shape: 1, scale: 300 }, 400, 2500))).toBe('run-to-failure');
    expect(reasonOf(bestReplacementAge({ shape: 3, scale: 300 }, 400, 400))).toBe('run-to-failure');
  });
});
