/**
 * Figures that a check makes of raw observations. Values and uncertainties were worked out in Python 3.11 with its math
 * module, formula by formula from JCGM 100:2008 (GUM, from memory) as each line shows it; rows of other sheets name them.
 */
import { describe, expect, test } from 'vitest';
import {
  againstBook,
  beatAtSpeed,
  buildUpFromMarks,
  differenceOfPairs,
  dropsPerMinute,
  lashDegrees,
  lashOn20In,
  lossOver,
  meanOfRepeats,
  perThousandMiles,
  ratioOfTimes,
  sideToSide,
  widestSpread,
} from '../../../shared/measuring/index.ts';
import { reasonOf } from '../../unit/measuring/told.ts';

const worked = (found: { ok: true; value: number; uncertainty: number } | { ok: false; message: string }) => {
  if (!found.ok) throw new Error(found.message);
  return [found.value, found.uncertainty] as const;
};

describe('[MEA-60] a figure from observations, with its give or take', () => {
  // The standard deviation of 3, 5, 7 is 2.
  test.each([
    ['scatter over the look: 2/√3', [3, 5, 7], 0.1, 0, 5, 1.1547],
    ['the look where the readings agree: 0.6/√4', [4, 4, 4, 4], 0.6, 0, 4, 0.3],
    ['the gauge’s own share stays: √(0.3² + 0.4²)', [4, 4, 4, 4], 0.6, 0.4, 4, 0.5],
    ['a single reading has the look alone', [118], 0.5774, 0, 118, 0.5774],
  ])('%s', (_, readings, look, shared, value, u) => {
    const [mean, uncertainty] = worked(meanOfRepeats(readings, look, shared));
    expect(mean).toBeCloseTo(value, 9);
    expect(uncertainty).toBeCloseTo(u, 4);
  });

  test.each([
    // 15 psi at the rate of 13 psi in 41 s: 47.3077 s; √(2/3)/13 and 1/41 of it, in squares: 3.1874 s.
    ['85 to 98 psi in 41 s', { fromPsi: 85, toPsi: 98, seconds: 41, lookPsi: 1 / Math.sqrt(3) }, 47.3077, 3.1874],
    // Half as large again as required (V-49 of the limits: 25 s there, 37.5 s here): 45 s are 30 s on required tanks.
    ['tanks 1.5 times the required', { fromPsi: 85, toPsi: 100, seconds: 45, lookPsi: 0, tankRatio: 1.5 }, 30, 0.6667],
  ])('build-up: %s', (_, marks, value, u) => {
    const found = worked(buildUpFromMarks(marks));
    expect(found[0]).toBeCloseTo(value, 3);
    expect(found[1]).toBeCloseTo(u, 3);
  });

  test('a loss of 38 psi in 11 h is 41.4545 psi in 12 h, give or take 1.7814', () => {
    const found = worked(lossOver(118, 80, 11, 12, 1 / Math.sqrt(3), 'psi'));
    expect(found[0]).toBeCloseTo(41.4545, 4);
    expect(2 * found[1]).toBeCloseTo(1.7814, 4);
    const rose = lossOver(80, 118, 11, 12, 1, 'psi');
    expect(!rose.ok && [rose.reason, rose.message]).toEqual([
      'rose',
      expect.stringContaining('It rose from 80 to 118 psi') as unknown,
    ]);
  });

  test('a loss is never told smaller than it is: after more hours than wanted as measured, after a day not at all', () => {
    // 120 to 5 psi in 24 h by dp/dt = −k·p with absolute pressure, 14.6959 psi of air: in the first 12 h 83.189 psi went
    // (Python), straight in time would say 57.5.
    const half = 120 - (134.6959 * Math.sqrt(19.6959 / 134.6959) - 14.6959);
    expect(half).toBeCloseTo(83.189, 3);
    expect(reasonOf(lossOver(120, 5, 24, 12, 1, 'psi'))).toBe('too-long');
    const found = lossOver(120, 37, 14, 12, 1, 'psi');
    expect(found).toMatchObject({ value: 83, atMost: true });
    expect(lossOver(120, 60, 12, 12, 1, 'psi')).toMatchObject({ value: 60, atMost: false });
    expect(lossOver(120, 60, 16, 12, 1, 'psi')).toMatchObject({ value: 60, atMost: true });
    expect(reasonOf(lossOver(120, 60, 16.1, 12, 1, 'psi'))).toBe('too-long');
  });

  test('V-106 of the limits: dash 8, master gauge 42 psi: 34 apart', () => {
    expect(worked(differenceOfPairs([{ first: 42, second: 8 }], 1))).toEqual([34, Math.SQRT2]);
  });

  test('per cent of the book: 485 of 525 psi is 92.381 %, 7.619 below, −7.619 off', () => {
    expect(worked(againstBook([485], 525, 5, 'share'))[0]).toBeCloseTo(92.381, 3);
    expect(worked(againstBook([485], 525, 5, 'below'))[0]).toBeCloseTo(7.619, 3);
    expect(worked(againstBook([485], 525, 5, 'off'))[0]).toBeCloseTo(-7.619, 3);
    expect(worked(againstBook([485], 525, 5, 'share'))[1]).toBeCloseTo(0.9524, 4);
  });

  test('left 6,000, right 6,600 lb: 4.7619 % of the axle, give or take 0.649 with a scale of 50 lb', () => {
    const found = worked(sideToSide(6000, 6600, 50 / Math.sqrt(3)));
    expect(found[0]).toBeCloseTo(4.7619, 4);
    // 200·28.8675·√(6000² + 6600²)/12600²
    expect(2 * found[1]).toBeCloseTo(0.6488, 3);
  });

  test('24 drops in 120 s: 12 a minute, √24 of them left open', () => {
    expect(worked(dropsPerMinute(24, 120))).toEqual([12, Math.sqrt(24) / 2]);
    expect(reasonOf(dropsPerMinute(2.5, 60))).toBe('not-whole');
  });

  test('3 quarts in 900 miles are 3.3333 in 1,000; over 60 miles the marks decide', () => {
    const found = worked(perThousandMiles(3, 900, 0.1443));
    expect(found[0]).toBeCloseTo(3.3333, 4);
    expect(found[1]).toBeCloseTo(0.2267, 4);
    expect(reasonOf(perThousandMiles(0.1, 60, 0.1443))).toBe('too-short');
  });

  test('3.95 s over 5.2 s is 0.7596; below a second it is refused', () => {
    const [ratio] = worked(ratioOfTimes([3.9, 4], [5.1, 5.3]));
    expect(ratio).toBeCloseTo(0.7596, 4);
    expect(reasonOf(ratioOfTimes([0.4], [6]))).toBe('too-quick');
  });

  test('a wheel order at 45 mph of 6.25 Hz is 8.3333 Hz at 60 (row A of the orders); below half of it nothing is said', () => {
    expect(worked(beatAtSpeed({ value: 6.25, uncertainty: 0 }, 45, 0, 60))[0]).toBeCloseTo(8.3333, 4);
    expect(worked(beatAtSpeed({ value: 8, uncertainty: 0.1 }, 60, 0.3, 60))[1]).toBeCloseTo(0.1077, 4);
    expect(reasonOf(beatAtSpeed({ value: 6, uncertainty: 0 }, 29, 0, 60))).toBe('too-far');
  });

  test('the limits of 49 CFR 393.209 for 18 and 20 in are one angle: 4.75 in of 18 are 5.2778 of 20', () => {
    expect(worked(lashOn20In([3, 4.75, 4], 18, 0.1))[0]).toBeCloseTo(5.2778, 4);
    const [of20] = worked(lashOn20In([4.75], 18, 0));
    const angles = [lashDegrees(4.75, 18), lashDegrees(of20, 20)].map((each) => (each.ok ? each.degrees : NaN));
    expect(angles[0]).toBeCloseTo(30.2394, 4);
    expect(angles[1]).toBeCloseTo(angles[0]!, 9);
  });

  test('run-out is the largest less the smallest; two places tell nothing', () => {
    expect(worked(widestSpread([0.01, 0.03, 0.02], 0.001))[0]).toBeCloseTo(0.02, 12);
    expect(reasonOf(widestSpread([0.01, 0.03], 0.001))).toBe('too-few');
  });

  test.each([
    ['near cut-out', () => buildUpFromMarks({ fromPsi: 100, toPsi: 118, seconds: 20, lookPsi: 1 }), 'wrong-span'],
    ['reversed marks', () => buildUpFromMarks({ fromPsi: 100, toPsi: 85, seconds: 20, lookPsi: 1 }), 'wrong-span'],
    ['no time', () => dropsPerMinute(10, 0), 'out-of-range'],
    ['a time that runs back', () => lossOver(100, 90, -3, 12, 1, 'psi'), 'out-of-range'],
    ['no reading', () => meanOfRepeats([], 1), 'too-few'],
    ['a figure of the book of 0', () => againstBook([1], 0, 1, 'share'), 'out-of-range'],
    ['NaN', () => meanOfRepeats([NaN], 1), 'out-of-range'],
    ['an endless distance', () => perThousandMiles(1, Infinity, 0.1), 'out-of-range'],
  ])('refused: %s', (_, run, reason) => {
    expect(reasonOf(run())).toBe(reason);
  });
});
