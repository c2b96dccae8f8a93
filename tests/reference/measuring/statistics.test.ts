import { describe, expect, it } from 'vitest';
import {
  conformityProbability,
  guardBand,
  judge,
  normalQuantile,
  straightLine,
  studentCdf,
  type Limit,
} from '../../../shared/measuring/index.ts';
import { reasonOf, told } from '../../unit/measuring/told.ts';
import { NORRIS } from './norris.ts';

describe('[MEA-4] straight line', () => {
  it('NIST StRD Norris: certified estimates and standard deviations, 9 digits', () => {
    const line = told(
      straightLine(
        NORRIS.map(([, x]) => x),
        NORRIS.map(([y]) => y),
      ),
    );
    expect(line.slope).toBeCloseTo(1.00211681802045, 11);
    expect(line.intercept).toBeCloseTo(-0.262323073774029, 9);
    expect(line.scatter?.slope).toBeCloseTo(0.429796848199937e-3, 12);
    expect(line.scatter?.intercept).toBeCloseTo(0.232818234301152, 9);
    expect(line.scatter?.residual).toBeCloseTo(0.884796396144373, 9);
  });
  it('two points have no scatter; equal places and single points are refused', () => {
    expect(told(straightLine([0, 2], [1, 5]))).toMatchObject({ slope: 2, intercept: 1, scatter: null });
    expect(reasonOf(straightLine([3, 3], [1, 5]))).toBe('all-at-one-place');
    expect(reasonOf(straightLine([3], [1]))).toBe('too-few-points');
    expect(reasonOf(straightLine([3, NaN], [1, 2]))).toBe('out-of-range');
  });
});

describe('[MEA-4] Student’s t, SciPy 1.17.1 scipy.stats.t.cdf', () => {
  it.each([
    [1.2, 1, 0.7788579383763045],
    [-0.5, 2, 0.33333333333333337],
    [2, 5, 0.9490302605850708],
    [1.3, 8, 0.8850981875407373],
    [-2.5, 11, 0.014753187043682081],
  ])('t %s with %s degrees of freedom', (t, dof, expected) => {
    expect(studentCdf(t, dof)).toBeCloseTo(expected, 12);
  });
});

describe('[MEA-2] conformity by JCGM 106:2012: worked examples of the document, digits by SciPy and R', () => {
  it.each([
    ['diode, upper limit', -5.47, 0.05, null, -5.4, 0.919243],
    ['container, lower limit', 509.7, 8.6, 490, null, 0.98901],
    ['oil of grade 40, two limits', 13.6, 1.8, 12.5, 16.3, 0.66263],
    ['speed of a leak under its limit', 1.6, 0.5, null, 2, 0.788145],
    ['speed of a leak over its limit', 2.3, 0.6, null, 2, 0.308538],
    ['below a lower limit', 96, 2, 100, null, 0.02275],
    ['between limits', 11.5, 0.5, 8, 12, 0.841345],
  ])('%s', (_, value, u, least, most, expected) => {
    expect(told(conformityProbability(value, u, least, most)).probability).toBeCloseTo(expected, 6);
  });
  it.each([
    [0.8, 0.84162],
    [0.9, 1.28155],
    [0.95, 1.64485],
    [0.99, 2.32635],
    [0.999, 3.09023],
  ])('quantile for %s, table 1', (p, z) => {
    expect(told(normalQuantile(p)).z).toBeCloseTo(z, 5);
  });
  it('guard band, SciPy', () => {
    const band = told(guardBand(2, 0.5, 0.95));
    expect(band.acceptAtMost).toBeCloseTo(1.177573, 6);
    expect(band.rejectAtLeast).toBeCloseTo(2.822427, 6);
  });
  const limit: Limit = {
    id: 'test',
    value: 2,
    unit: 'psi/min',
    side: 'at-most',
    atLimit: 'sources-differ',
    source: 'none',
    status: 'judgement',
  };
  it('three readings of mean 1.7 and s 0.3: Student with 2 degrees of freedom, SciPy and R', () => {
    expect(judge(1.7, 0.3 / Math.sqrt(3), limit, 2).probabilityMeets).toBeCloseTo(0.887298, 6);
  });
  it('crossed limits are refused', () => {
    expect(reasonOf(conformityProbability(1, 1, 3, 2))).toBe('limits-crossed');
  });
  it('[MEA-3] exact readings: the limit says what holds at the figure', () => {
    expect(judge(2, 0, limit)).toMatchObject({ comparison: 'at-limit', decision: 'too-close', againstDriving: true });
    expect(judge(2, 0, { ...limit, atLimit: 'passes' }).decision).toBe('meets');
    expect(judge(2, 0, { ...limit, atLimit: 'fails' }).decision).toBe('fails');
    expect(judge(2.5, 0, limit)).toMatchObject({ comparison: 'beyond', decision: 'fails', margin: -0.5 });
    expect(judge(1.5, 0, limit)).toMatchObject({ comparison: 'within', decision: 'meets', againstDriving: false });
  });
});
