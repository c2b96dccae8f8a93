import { describe, expect, it } from 'vitest';
import {
  normalCdf,
  readBands,
  ReadingError,
  wordsForDecibans,
  wordsForShare,
} from '../../../shared/inference/index.ts';
import { VERBAL_SCALE } from '../../../shared/knowledge/index.ts';
import { check } from '../../unit/planning/small-tree.ts';

describe('[INF-2] conformity by JCGM 106:2012, normal measurement and flat prior', () => {
  it.each([
    ['diode example', (-5.4 + 5.47) / 0.05, 0.919243],
    ['container example, lower limit', (509.7 - 490) / 8.6, 0.98901],
    ['speed of decision: z for .95', 1.64485, 0.95],
    ['z for .999', 3.09023, 0.999],
  ])('%s', (_, z, expected) => {
    expect(normalCdf(z)).toBeCloseTo(expected, 5);
  });
  it('oil example: between two limits', () => {
    expect(normalCdf((16.3 - 13.6) / 1.8) - normalCdf((12.5 - 13.6) / 1.8)).toBeCloseTo(0.66263, 6);
  });
});

/** Leak-rate bands with edges 0, 2, 3, 6, 20 psi/min; shares from the same normal integrals by SciPy and R. */
const leak = check('leak', ['a', 'b', 'c', 'd'], [[0.85, 0.1, 0.04, 0.01]], {
  measure: { unit: 'psi/min', of: '', instrument: 'gauge' },
  results: [
    { id: 'a', label: 'a', range: [0, 2] },
    { id: 'b', label: 'b', range: [2, 3] },
    { id: 'c', label: 'c', range: [3, 6] },
    { id: 'd', label: 'd', range: [6, 20] },
  ],
});

describe('[INF-3] a reading is spread over its bands by its uncertainty', () => {
  it.each([
    [2.3, 0.6, [0.30847, 0.56979, 0.12167, 0]],
    [1.9, 0.6, [0.56541, 0.40044, 0.03338, 0]],
    [5, 1, [0.00135, 0.0214, 0.81859, 0.15866]],
  ])('%s with %s', (value, u, raw) => {
    const { shares } = readBands(leak, value, u, [0, 20]);
    const total = raw.reduce((sum, each) => sum + each, 0);
    raw.forEach((each, i) => expect(shares[i]).toBeCloseTo(each / total, 4));
  });
  it('exactly at a limit it says nothing for either side, and says so', () => {
    const { shares, tooClose } = readBands(leak, 2, 0.01, [0, 20]);
    expect(shares[0]).toBeCloseTo(0.5, 9);
    expect(tooClose).toBe(true);
  });
  it('far from every limit it is the band', () => {
    expect(readBands(leak, 2.5, 0.01, [0, 20])).toMatchObject({ result: 'b', tooClose: false });
  });
  it('outside every band it is refused', () => {
    expect(() => readBands(leak, 40, 0.5, [0, 20])).toThrow(ReadingError);
  });
});

describe('[INF-4] words', () => {
  it('decibans: bounds at 1, 3, 7 and 13', () => {
    expect([0.9, 1, 3, 7, 13, -7].map(wordsForDecibans)).toEqual([
      'hardly matters',
      'slightly for',
      'clearly for',
      'strongly for',
      'decisively for',
      'strongly against',
    ]);
  });
  it('shares: approximate probability scale of EFSA, EFSA Journal 16(1), 2018', () => {
    expect([0.995, 0.96, 0.91, 0.7, 0.5, 0.2, 0.07, 0.02, 0.005].map(wordsForShare)).toEqual([
      'almost certain',
      'extremely likely',
      'very likely',
      'likely',
      'about as likely as not',
      'unlikely',
      'very unlikely',
      'extremely unlikely',
      'almost impossible',
    ]);
  });
  it('anchors of Renooij & Witteman, International Journal of Approximate Reasoning 22, 1999; the ends moved off 0 and 1', () => {
    expect([...VERBAL_SCALE.values()]).toEqual([0.01, 0.15, 0.25, 0.5, 0.75, 0.85, 0.99]);
  });
});
