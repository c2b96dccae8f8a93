import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  brakeForceShares,
  defectiveShare,
  judgeStroke,
  lashDegrees,
  lashLimit,
  meanDeceleration,
  remainingWear,
  stoppingDistanceFt,
  type Chamber,
  type ServiceBrake,
} from '../../../shared/measuring/index.ts';
import { told } from '../../unit/measuring/told.ts';

const SEED = { seed: 20251128, numRuns: 200 };
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const chamber = fc.oneof(
  fc.constantFrom(12, 16, 20, 24, 30).map((size): Chamber => ({ kind: 'clamp', size, strokeClass: 'standard' })),
  fc.constantFrom(9, 12, 16, 20, 24, 30, 36, 50).map((size): Chamber => ({ kind: 'rotochamber', size })),
  real(1.5, 4).map((ratedStrokeIn): Chamber => ({ kind: 'unlisted', ratedStrokeIn })),
);
const brake: fc.Arbitrary<ServiceBrake> = fc.record({
  steeringAxle: fc.boolean(),
  beyondIn: real(0, 1),
  inoperative: fc.boolean(),
});

describe('[MEA-20] stroke', () => {
  it('a longer stroke is never judged better; a long-stroke chamber never has the shorter limit', () => {
    fc.assert(
      fc.property(chamber, real(0.5, 4), real(0, 0.9), (each, strokeIn, more) => {
        const one = told(judgeStroke({ chamber: each, strokeIn, reservoirPsi: 90 }));
        const longer = told(judgeStroke({ chamber: each, strokeIn: strokeIn + more, reservoirPsi: 90 }));
        expect(longer.judgement.probabilityMeets).toBeLessThanOrEqual(one.judgement.probabilityMeets + 1e-12);
        expect(longer.beyondIn).toBeGreaterThanOrEqual(one.beyondIn - 1e-12);
        if (each.kind === 'clamp') {
          const long: Chamber = { ...each, strokeClass: 'long' };
          const other = told(judgeStroke({ chamber: long, strokeIn, reservoirPsi: 90 }));
          expect(other.judgement.limit.value).toBeGreaterThan(one.judgement.limit.value);
        }
      }),
      SEED,
    );
  });
});

describe('[MEA-21] defective brakes', () => {
  it('order does not matter, a worse brake never helps, a share stays in 0…100', () => {
    fc.assert(
      fc.property(fc.array(brake, { minLength: 2, maxLength: 8 }), (brakes) => {
        const one = told(defectiveShare(brakes));
        expect(told(defectiveShare([...brakes].reverse()))).toEqual(one);
        const worse = told(defectiveShare([{ ...brakes[0]!, inoperative: true }, ...brakes.slice(1)]));
        expect(worse.defective).toBeGreaterThanOrEqual(one.defective);
        expect(one.doNotDrive && !worse.doNotDrive).toBe(false);
        expect(one.sharePercent).toBeGreaterThanOrEqual(0);
        expect(one.sharePercent).toBeLessThanOrEqual(100);
      }),
      SEED,
    );
  });
});

describe('[MEA-24] wear', () => {
  const worn = fc.record({ left: real(0.1, 1), worn: real(0.3, 1), span: real(1000, 90_000), u: real(0.001, 0.03) });
  it('the interval holds the value; a growing drum mirrors a thinning lining; miles scale', () => {
    fc.assert(
      fc.property(worn, real(1.1, 5), ({ left, worn: lost, span, u }, k) => {
        const base = { limit: 5, uncertainty: u };
        const at = (factor: number, sign: 1 | -1) =>
          told(
            remainingWear({
              ...base,
              direction: sign === 1 ? 'thins' : 'grows',
              first: { at: 0, size: 5 + sign * (left + lost) },
              second: { at: span * factor, size: 5 + sign * left },
            }),
          );
        const one = at(1, 1);
        expect(one.low).toBeLessThanOrEqual(one.remaining);
        expect(one.high).toBeGreaterThanOrEqual(one.remaining);
        expect(at(1, -1).remaining / one.remaining).toBeCloseTo(1, 6);
        expect(at(1, -1).high / one.high).toBeCloseTo(1, 6);
        expect(at(k, 1).remaining / (k * one.remaining)).toBeCloseTo(1, 6);
        expect(at(k, 1).uncertainty / (k * one.uncertainty)).toBeCloseTo(1, 6);
      }),
      SEED,
    );
  });
  it('a finer tool never widens the interval', () => {
    fc.assert(
      fc.property(worn, ({ left, worn: lost, span, u }) => {
        const at = (uncertainty: number) =>
          told(
            remainingWear({
              limit: 5,
              direction: 'thins',
              uncertainty,
              first: { at: 0, size: 5 + left + lost },
              second: { at: span, size: 5 + left },
            }),
          );
        expect(at(u / 2).high - at(u / 2).low).toBeLessThan(at(u).high - at(u).low);
      }),
      SEED,
    );
  });
});

describe('[MEA-25] stopping and steering', () => {
  it('distance and deceleration undo each other; twice the speed is four times the way', () => {
    fc.assert(
      fc.property(real(5, 50), real(2, 20), (mph, a) => {
        const { distanceFt } = told(stoppingDistanceFt(mph, a));
        expect(told(stoppingDistanceFt(2 * mph, a)).distanceFt / distanceFt).toBeCloseTo(4, 9);
        fc.pre(distanceFt > 1 && distanceFt < 3000);
        expect(told(meanDeceleration(mph, { distanceFt })).decelerationFtPerS2).toBeCloseTo(a, 9);
      }),
      SEED,
    );
  });
  it('shares add up to the whole and the sides may be exchanged', () => {
    const axle = fc.record({ leftLbf: real(10, 9000), rightLbf: real(10, 9000) });
    fc.assert(
      fc.property(fc.array(axle, { minLength: 1, maxLength: 3 }), (axles) => {
        const one = told(brakeForceShares(axles));
        expect(one.axles.reduce((sum, each) => sum + each.sharePercent, 0)).toBeCloseTo(100, 8);
        const turned = axles.map(({ leftLbf, rightLbf }) => ({ leftLbf: rightLbf, rightLbf: leftLbf }));
        told(brakeForceShares(turned)).axles.forEach((each, i) => {
          expect(each.sharePercent).toBeCloseTo(one.axles[i]!.sharePercent, 9);
          expect(each.differencePercent).toBe(one.axles[i]!.differencePercent);
        });
      }),
      SEED,
    );
  });
  it('by angle the limit is 14° or 30° of any wheel outside the table', () => {
    fc.assert(
      fc.property(real(22.1, 30), (wheel) => {
        expect(told(lashDegrees(told(lashLimit(wheel, true)).limit.value, wheel)).degrees).toBeCloseTo(30, 9);
        expect(told(lashDegrees(told(lashLimit(wheel, false)).limit.value, wheel)).degrees).toBeCloseTo(14, 9);
      }),
      SEED,
    );
  });
});
