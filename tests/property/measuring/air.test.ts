import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convert, convertDifference } from '../../../shared/units/index.ts';
import {
  allowedBuildUpS,
  equivalentHole,
  freeAirFlow,
  holeFlow,
  judge,
  judgeLeakDown,
  leakLimit,
  leakRate,
  normalCdf,
  normalQuantile,
  pressureAfter,
  rateAtPressure,
  straightLine,
  studentCdf,
  timeToWarningS,
  worstOf,
  type Decision,
  type Limit,
} from '../../../shared/measuring/index.ts';
import { told } from '../../unit/measuring/told.ts';

const SEED = { seed: 20251127, numRuns: 200 };
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anything = fc.oneof(fc.double(), fc.constantFrom(NaN, Infinity, -Infinity, -1, 0, 1e308));
const series = fc
  .record({ start: real(60, 130), rate: real(0, 4), n: fc.integer({ min: 2, max: 9 }), wobble: real(0, 0.3) })
  .map(({ start, rate, n, wobble }) =>
    Array.from({ length: n }, (_, i) => ({
      timeS: 30 * i,
      pressurePsi: start - (rate * i) / 2 + wobble * (i % 2),
    })),
  );
const upper = (value: number): Limit => ({
  id: 'x',
  value,
  unit: 'psi',
  side: 'at-most',
  atLimit: 'passes',
  source: 'none',
  status: 'judgement',
});

describe('[MEA-10] leak rate', () => {
  it('does not care where the clock or the gauge begins', () => {
    fc.assert(
      fc.property(series, real(0, 3000), real(-5, 5), (marks, later, higher) => {
        const moved = marks.map((mark) => ({
          timeS: mark.timeS + later,
          pressurePsi: mark.pressurePsi + higher,
        }));
        expect(told(leakRate(moved)).ratePsiPerMin).toBeCloseTo(told(leakRate(marks)).ratePsiPerMin, 6);
        expect(told(leakRate(moved)).uncertaintyPsiPerMin).toBeCloseTo(told(leakRate(marks)).uncertaintyPsiPerMin, 6);
      }),
      SEED,
    );
  });
  it('twice as slow is half the rate and half the uncertainty', () => {
    fc.assert(
      fc.property(series, (marks) => {
        const slow = told(leakRate(marks.map((mark) => ({ ...mark, timeS: 2 * mark.timeS }))));
        const quick = told(leakRate(marks));
        expect(slow.ratePsiPerMin).toBeCloseTo(quick.ratePsiPerMin / 2, 9);
        expect(slow.uncertaintyPsiPerMin).toBeCloseTo(quick.uncertaintyPsiPerMin / 2, 9);
      }),
      SEED,
    );
  });
  it('[MEA-12] a longer train is never judged harder, a held brake never harder than a released one', () => {
    fc.assert(
      fc.property(series, fc.integer({ min: 0, max: 2 }), (marks, towed) => {
        const meets = (brake: 'held' | 'released', n: number) => {
          const test = judgeLeakDown({ marks, brake, airBrakedTowedUnits: n });
          return test.ok ? test.judgement.probabilityMeets : -1;
        };
        expect(meets('held', towed + 1)).toBeGreaterThanOrEqual(meets('held', towed));
        expect(meets('held', towed)).toBeGreaterThanOrEqual(meets('released', towed));
      }),
      SEED,
    );
  });
  it('[MEA-1] whatever is put in, the answer is finite or a refusal with words', () => {
    fc.assert(
      fc.property(fc.array(fc.record({ timeS: anything, pressurePsi: anything })), anything, (marks, u) => {
        const rate = leakRate(marks, u);
        if (rate.ok)
          expect([rate.ratePsiPerMin, rate.uncertaintyPsiPerMin, rate.belowPsiPerMin].every(Number.isFinite)).toBe(
            true,
          );
        else expect(rate.message.length).toBeGreaterThan(20);
        expect(Number.isFinite(leakLimit('held', u).value)).toBe(true);
      }),
      SEED,
    );
  });
});

describe('[MEA-13] flow', () => {
  it('goes with volume and with rate; the hole gives the flow back', () => {
    fc.assert(
      fc.property(real(500, 20_000), real(0.1, 20), real(1.1, 2), real(30, 130), (volume, rate, k, psi) => {
        const one = told(freeAirFlow(volume, rate)).litresPerMin;
        expect(told(freeAirFlow(volume * k, rate)).litresPerMin / one).toBeCloseTo(k, 9);
        expect(told(freeAirFlow(volume, rate * k)).litresPerMin / one).toBeCloseTo(k, 9);
        const hole = told(equivalentHole(one, psi)).diameterMm;
        expect(told(holeFlow(hole, psi)).litresPerMin / one).toBeCloseTo(1, 9);
        expect(told(equivalentHole(one * k * k, psi)).diameterMm / hole).toBeCloseTo(k, 9);
      }),
      SEED,
    );
  });
  it('is the same in litres and kilopascal', () => {
    fc.assert(
      fc.property(real(500, 20_000), real(0.1, 20), (volume, rate) => {
        const litres = volume * 0.016387064;
        const metric = (litres * convert(rate, 'psi/min', 'kPa/min')) / 101.325;
        expect(told(freeAirFlow(volume, rate)).litresPerMin / metric).toBeCloseTo(1, 9);
      }),
      SEED,
    );
  });
});

describe('[MEA-14] decay', () => {
  it('the time to a pressure and the pressure after that time agree; waiting in two parts is waiting once', () => {
    fc.assert(
      fc.property(real(90, 140), real(20, 80), real(0.2, 5), real(60, 140), (start, warning, rate, at) => {
        const { seconds } = told(timeToWarningS(start, warning, rate, at));
        fc.pre(seconds < 1e6);
        expect(told(pressureAfter(start, seconds, rate, at)).pressurePsi).toBeCloseTo(warning, 6);
        const half = told(pressureAfter(start, seconds / 2, rate, at)).pressurePsi;
        expect(told(pressureAfter(half, seconds / 2, rate, at)).pressurePsi).toBeCloseTo(warning, 6);
        const there = told(rateAtPressure(rate, at, 100)).ratePsiPerMin;
        expect(told(rateAtPressure(there, 100, at)).ratePsiPerMin).toBeCloseTo(rate, 9);
      }),
      SEED,
    );
  });
  it('[MEA-15] allowed build-up goes with the tanks', () => {
    fc.assert(
      fc.property(real(1000, 9000), real(1000, 9000), real(1, 4), (actual, required, k) => {
        expect(told(allowedBuildUpS(actual * k, required)).seconds).toBeCloseTo(
          k * told(allowedBuildUpS(actual, required)).seconds,
          6,
        );
      }),
      SEED,
    );
  });
});

describe('[MEA-2] judging', () => {
  it('is more willing the further inside, mirrors between upper and lower limits, and never leaves 0…1', () => {
    fc.assert(
      fc.property(real(-50, 50), real(0, 20), real(0.01, 5), real(0, 10), (value, edge, u, step) => {
        const far = judge(value - step, u, upper(edge));
        const near = judge(value, u, upper(edge));
        expect(far.probabilityMeets).toBeGreaterThanOrEqual(near.probabilityMeets - 1e-12);
        expect(near.probabilityMeets).toBeGreaterThanOrEqual(0);
        expect(near.probabilityMeets).toBeLessThanOrEqual(1);
        const mirrored = judge(-value, u, { ...upper(-edge), side: 'at-least' });
        expect(mirrored.probabilityMeets).toBeCloseTo(near.probabilityMeets, 12);
        expect(near.againstDriving).toBe(near.decision !== 'meets');
      }),
      SEED,
    );
  });
  it('says the same in inches and millimetres, in psi and kilopascal', () => {
    fc.assert(
      fc.property(
        real(0, 5),
        real(0.001, 1),
        real(0.5, 4),
        fc.constantFrom(['in', 'mm'], ['psi', 'kPa']),
        (value, u, edge, [us, si]) => {
          const one = judge(value, u, { ...upper(edge), unit: us });
          const other = judge(convert(value, us, si), convertDifference(u, us, si), {
            ...upper(convert(edge, us, si)),
            unit: si,
          });
          expect(other.probabilityMeets).toBeCloseTo(one.probabilityMeets, 9);
          expect(convert(other.margin, si, us)).toBeCloseTo(one.margin, 9);
          expect(other.comparison).toBe(one.comparison);
        },
      ),
      SEED,
    );
  });
  it('several verdicts are as bad as the worst', () => {
    const any = fc.constantFrom<Decision>('meets', 'too-close', 'fails');
    const rank = { meets: 0, 'too-close': 1, fails: 2 };
    fc.assert(
      fc.property(fc.array(any, { minLength: 1 }), (all) => {
        expect(rank[worstOf(all)]).toBe(Math.max(...all.map((each) => rank[each])));
      }),
      SEED,
    );
  });
});

describe('[MEA-4] distributions', () => {
  it('quantile and distribution undo each other; Student is symmetric and nears the normal', () => {
    fc.assert(
      fc.property(real(0.001, 0.999), real(-6, 6), fc.integer({ min: 1, max: 40 }), (p, t, dof) => {
        expect(normalCdf(told(normalQuantile(p)).z)).toBeCloseTo(p, 10);
        expect(studentCdf(t, dof) + studentCdf(-t, dof)).toBeCloseTo(1, 12);
        expect(studentCdf(t, 4000)).toBeCloseTo(normalCdf(t), 3);
      }),
      SEED,
    );
  });
  it('a line through exact points has no scatter and gives slope and intercept back', () => {
    const points = fc.uniqueArray(fc.integer({ min: -500, max: 500 }), { minLength: 3, maxLength: 20 });
    fc.assert(
      fc.property(points, real(-9, 9), real(-99, 99), (x, slope, intercept) => {
        const line = told(
          straightLine(
            x,
            x.map((each) => intercept + slope * each),
          ),
        );
        expect(line.slope).toBeCloseTo(slope, 8);
        expect(line.intercept).toBeCloseTo(intercept, 7);
        expect(line.scatter?.residual).toBeLessThan(1e-9);
      }),
      SEED,
    );
  });
});
