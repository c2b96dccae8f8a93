import { describe, expect, it } from 'vitest';
import { decibansOf, meansForShare, normalCdf, shareInWords, wordsForShare } from '../../../shared/inference/index.ts';

describe('[INF-8] decibans: Good, Probability and the Weighing of Evidence, 1950', () => {
  it.each([
    [1, 1.26],
    [2, 1.58],
    [3, 2],
    [5, 3.16],
    [7, 5.01],
    [10, 10],
    [13, 19.95],
    [15, 31.6],
    [20, 100],
    [30, 1000],
  ])('%s dB are odds of %s', (decibans, odds) => {
    // The printed odds are rounded to three figures: half a unit of the last is at most .05 dB.
    expect(Math.abs(decibansOf(odds / (1 + odds)) - decibans)).toBeLessThan(0.05);
  });
});

describe('[INF-4] bounds of the approximate probability scale: EFSA Journal 16(1), 2018', () => {
  it.each([
    [0.99, 'almost certain', 'extremely likely'],
    [0.95, 'extremely likely', 'very likely'],
    [0.9, 'very likely', 'likely'],
    [0.66, 'likely', 'about as likely as not'],
    [0.33, 'about as likely as not', 'unlikely'],
    [0.1, 'unlikely', 'very unlikely'],
    [0.05, 'very unlikely', 'extremely unlikely'],
    [0.01, 'extremely unlikely', 'almost impossible'],
  ])('%s', (bound, above, below) => {
    expect(wordsForShare(bound + 1e-6)).toBe(above);
    expect(wordsForShare(bound - 1e-6)).toBe(below);
  });
});

describe('[INF-21] what a share means to an owner', () => {
  it.each([
    [0.02, 'more likely something else than this'],
    [0.35, 'more likely something else than this'],
    // Shown as 49 and as 50 in 100: words and figure agree.
    [0.494, 'more likely something else than this'],
    [0.496, 'as likely something else as this'],
    [0.504, 'as likely something else as this'],
    [0.506, 'more likely this than something else'],
    [0.659, 'more likely this than something else'],
    [0.66, 'likely'],
    [0.97, 'extremely likely'],
  ])('%s', (share, means) => {
    expect(meansForShare(share)).toBe(means);
  });

  it('keeps the word of the scale in front while that word alone would mislead', () => {
    expect(shareInWords(0.35)).toBe('about as likely as not, so more likely something else than this');
    expect(shareInWords(0.2, 'something in the list')).toBe('unlikely, so more likely something in the list than this');
    expect(shareInWords(0.7)).toBe('likely');
  });
});

describe('[INF-2] share within a limit: JCGM 106:2012, normal measurement and flat prior; values by SciPy', () => {
  it.each([
    ['1.6 with .5, at most 2', (2 - 1.6) / 0.5, 0.788145],
    ['2.3 with .6, at most 2', (2 - 2.3) / 0.6, 0.308538],
    ['3.4 with .71, at most 3', (3 - 3.4) / 0.71, 0.286588],
    ['96 with 2, at least 100', (96 - 100) / 2, 0.02275],
    ['11.5 with .5, at most 12', (12 - 11.5) / 0.5, 0.841345],
    ['.6 of an uncertainty past the limit', 0.6, 0.7257468822],
  ])('%s', (_, z, expected) => {
    expect(normalCdf(z)).toBeCloseTo(expected, 6);
  });
});
