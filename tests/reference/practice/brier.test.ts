import { expect, it } from 'vitest';
import { brierScore, calibration } from '../../../shared/practice/index.ts';

/**
 * Worked example in the article "Brier score" of the English Wikipedia (copy at en-academic.com, read): a forecast of rain, and
 * whether there was rain in the bucket.
 */
it.each([
  [1, true, 0],
  [1, false, 1],
  [0.7, true, 0.09],
  [0.3, true, 0.49],
  [0.5, true, 0.25],
  [0.5, false, 0.25],
])('[PRA-16] said %d, and it %s: %d', (share, right, score) => {
  expect(brierScore([{ share, right }])).toBeCloseTo(score, 12);
});

/**
 * Brier's own table: ten forecasts of rain, P = 0.19 (Monthly Weather Review 78 (1950) 1–3, table 1; from memory). His P sums over
 * rain and no rain, which for two classes is twice the score for one event.
 */
it('[PRA-16] Brier’s ten forecasts', () => {
  const said = [0.7, 0.9, 0.8, 0.4, 0.2, 0, 0, 0, 0, 0.1];
  const rained = [false, true, true, true, false, false, false, false, false, false];
  const score = brierScore(said.map((share, i) => ({ share, right: rained[i]! })))!;
  expect(2 * score).toBeCloseTo(0.19, 12);
});

/** The example of `sklearn.metrics.brier_score_loss` (scikit-learn; figures from memory): 0.0375. */
it('[PRA-16] four forecasts', () => {
  const right = [false, true, true, false];
  const score = brierScore([0.1, 0.9, 0.8, 0.3].map((share, i) => ({ share, right: right[i]! })));
  expect(score).toBeCloseTo(0.0375, 12);
});

it('[PRA-16] no forecast has no score; groups hold each forecast once', () => {
  expect(brierScore([])).toBeNull();
  const forecasts = [0, 0.39, 0.4, 0.6, 0.8, 0.95, 1].map((share, i) => ({ share, right: i % 2 === 0 }));
  const groups = calibration(forecasts);
  expect(groups.reduce((sum, group) => sum + group.forecasts, 0)).toBe(forecasts.length);
  expect(groups.map((group) => group.forecasts)).toEqual([2, 1, 1, 1, 2]);
});
