import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareTemperatures, judgeEndPlay, judgeHubPair, modifiedScores } from '../../../shared/measuring/index.ts';
import { reasonOf, told } from '../../unit/measuring/told.ts';

const SEED = { seed: 20251129, numRuns: 200 };
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const round = (temperaturesF: readonly number[]) =>
  compareTemperatures({
    readings: temperaturesF.map((temperatureF, i) => ({
      axle: 1 + (i >> 1),
      side: i % 2 === 0 ? ('left' as const) : ('right' as const),
      temperatureF,
    })),
    minutes: 5,
    sameSpot: true,
    emissivity: 0.95,
  });

describe('[MEA-32] robust scores', () => {
  const values = fc.uniqueArray(
    fc.integer({ min: 0, max: 3000 }).map((tenths) => tenths / 10),
    { minLength: 3, maxLength: 12 },
  );
  it('do not care about the zero of the scale, nor about its unit', () => {
    fc.assert(
      fc.property(values, real(-40, 40), real(0.5, 2), (all, shift, k) => {
        const one = told(modifiedScores(all));
        fc.pre(one.medianDeviation > 0.01);
        const other = told(modifiedScores(all.map((each) => each * k + shift)));
        one.scores.forEach((score, i) =>
          expect(other.scores[i]! / (score === 0 ? 1 : score)).toBeCloseTo(score === 0 ? 0 : 1, 5),
        );
      }),
      SEED,
    );
  });
  it('one wild value never lowers its own score: it cannot hide itself', () => {
    fc.assert(
      fc.property(
        fc.array(real(100, 200), { minLength: 4, maxLength: 9 }),
        real(250, 300),
        real(1, 500),
        (all, wild, more) => {
          const score = (value: number) => told(modifiedScores([...all, value], 5)).scores.at(-1)!;
          expect(score(wild + more)).toBeGreaterThanOrEqual(score(wild));
        },
      ),
      SEED,
    );
  });
});

describe('[MEA-32] comparing ends', () => {
  const sound = fc.array(real(140, 165), { minLength: 4, maxLength: 10 });
  it('ends within 25 °F of each other accuse nobody', () => {
    fc.assert(
      fc.property(sound, (all) => {
        expect(told(round(all)).ends.every((end) => end.marked === null)).toBe(true);
      }),
      SEED,
    );
  });
  it('an end 150 °F hotter is found, whichever it is, and is the only one', () => {
    fc.assert(
      fc.property(sound, fc.nat(), (all, pick) => {
        const even = all.length % 2 === 0 ? all : all.slice(1);
        fc.pre(even.length >= 4);
        const hot = pick % even.length;
        const ends = told(round(even.map((each, i) => (i === hot ? each + 150 : each)))).ends;
        expect(ends.map((end) => end.marked)).toEqual(even.map((_, i) => (i === hot ? 'hot' : null)));
      }),
      SEED,
    );
  });
  it('half of the ends hot is refused or shown as no outlier, never as the cold half', () => {
    fc.assert(
      fc.property(real(140, 160), real(50, 200), (base, more) => {
        const found = round([base, base + more, base + 1, base + more + 1]);
        if (found.ok) expect(found.ends.every((end) => end.marked === null)).toBe(true);
        else expect(reasonOf(found)).toBe('too-many-off');
      }),
      SEED,
    );
  });
});

describe('[MEA-30] end play and hubs', () => {
  it('more movement never turns too loose into sound; a hotter hub is never judged milder', () => {
    const rank = { usual: 0, caution: 1, 'inspect-before-driving': 2, 'do-not-drive': 3 };
    fc.assert(
      fc.property(
        real(0.005, 0.2),
        real(0.0001, 0.2),
        real(60, 200),
        real(0, 200),
        real(0, 100),
        fc.boolean(),
        (play, more, cool, up, step, braked) => {
          if (told(judgeEndPlay(play)).redo === 'too-loose')
            expect(told(judgeEndPlay(play + more)).redo).toBe('too-loose');
          const mild = told(judgeHubPair(cool + up, cool, braked)).verdict;
          expect(rank[told(judgeHubPair(cool + up + step, cool, braked)).verdict]).toBeGreaterThanOrEqual(rank[mild]);
        },
      ),
      SEED,
    );
  });
});
