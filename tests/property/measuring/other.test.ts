import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  axleSideLift,
  bestReplacementAge,
  cylinderShare,
  effectiveMassKg,
  endLift,
  failedShare,
  failsWithin,
  lifeAtShare,
  oilDrip,
  replaceOrWait,
  retardingPower,
  roadLoad,
  standCheck,
  viscosityAt,
  viscosityIndex,
} from '../../../shared/measuring/index.ts';
import { told } from '../../unit/measuring/told.ts';

const SEED = { seed: 20251202, numRuns: 200 };
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const points = fc
  .record({ at100: real(5, 19), more: real(3, 9) })
  .map(({ at100, more }) => ({ at100, at40: at100 * more }));
const life = fc.record({ shape: real(0.5, 4), scale: real(50, 900) });

describe('[MEA-50] viscosity', () => {
  it('goes through its two points and falls with heat', () => {
    fc.assert(
      fc.property(points, real(-10, 140), real(0.5, 9), (oil, temperature, warmer) => {
        expect(told(viscosityAt(oil, 40)).viscosity / oil.at40).toBeCloseTo(1, 5);
        expect(told(viscosityAt(oil, 100)).viscosity / oil.at100).toBeCloseTo(1, 5);
        expect(told(viscosityAt(oil, temperature + warmer)).viscosity).toBeLessThan(
          told(viscosityAt(oil, temperature)).viscosity,
        );
      }),
      SEED,
    );
  });
  it('the more an oil thins, the lower its index', () => {
    fc.assert(
      fc.property(points, real(1.01, 1.5), ({ at40, at100 }, k) => {
        expect(told(viscosityIndex(at40 * k, at100)).index).toBeLessThan(told(viscosityIndex(at40, at100)).index);
      }),
      SEED,
    );
  });
});

describe('[MEA-51] engine brake', () => {
  const run = fc.record({
    effectiveMassKg: real(10_000, 25_000),
    massUncertaintyKg: real(0, 300),
    fromMph: real(54, 60),
    toMph: real(40, 46),
    speedUncertaintyMph: real(0, 0.1),
    brakeOnS: real(5, 15),
    timeUncertaintyS: real(0, 0.1),
  });
  it('power goes with mass; a downgrade on which the coach gains speed shows more than one on which it holds', () => {
    fc.assert(
      fc.property(run, real(20, 60), (each, seconds) => {
        const at = (brakeOff: Parameters<typeof retardingPower>[0]['brakeOff'], k = 1) =>
          told(
            retardingPower({
              ...each,
              effectiveMassKg: k * each.effectiveMassKg,
              massUncertaintyKg: k * each.massUncertaintyKg,
              brakeOff,
            }),
          ).powerKw;
        const held = at({ way: 'holds' });
        expect(at({ way: 'down', seconds })).toBeLessThan(held);
        expect(at({ way: 'up', seconds })).toBeGreaterThan(held);
        expect(at({ way: 'holds' }, 2) / held).toBeCloseTo(2, 9);
      }),
      SEED,
    );
  });
  it('shares of cylinders sum to 1; a heavier coach has more to slow; uphill asks more', () => {
    fc.assert(
      fc.property(
        real(1, 250),
        real(2, 30),
        real(5000, 20_000),
        real(0, 0.1),
        (powerKw, uncertaintyKw, massKg, grade) => {
          const found = told(cylinderShare({ powerKw, uncertaintyKw }, 200, 20, 6, [0, 2, 4, 6]));
          expect(found.shares.reduce((sum, share) => sum + share.probability, 0)).toBeCloseTo(1, 10);
          const mass = { massKg, tyresOnRoad: 6, engineInertiaKgM2: 3, overallRatio: 4, rollingRadiusM: 0.5 };
          expect(told(effectiveMassKg(mass)).massKg).toBeGreaterThan(massKg);
          const load = { massKg, rollingCoefficient: 0.01, dragAreaM2: 4, speedMph: 40 };
          expect(told(roadLoad({ ...load, grade })).forceN).toBeGreaterThanOrEqual(
            told(roadLoad({ ...load, grade: -grade })).forceN,
          );
        },
      ),
      SEED,
    );
  });
});

describe('[MEA-52] life', () => {
  it('share and age undo each other; failing in two stretches is failing in one', () => {
    fc.assert(
      fc.property(life, real(0.01, 0.9), real(1, 300), real(1, 100), (model, share, age, more) => {
        const at = told(lifeAtShare(model, share)).age;
        expect(told(failedShare(model, at)).probability).toBeCloseTo(share, 9);
        const first = told(failsWithin(model, age, more)).probability;
        const second = told(failsWithin(model, age + more, more)).probability;
        const both = told(failsWithin(model, age, 2 * more)).probability;
        expect(1 - (1 - first) * (1 - second)).toBeCloseTo(both, 9);
      }),
      SEED,
    );
  });
  it('dearer access never speaks for waiting', () => {
    fc.assert(
      fc.property(life, real(1, 300), real(1, 100), real(0, 20), real(0, 20), (model, age, horizon, hours, more) => {
        const gain = (accessHours: number) => {
          const found = told(
            replaceOrWait({
              safetyPart: false,
              life: { ...model, shape: Math.max(1, model.shape) },
              age,
              horizon,
              partCost: 100,
              openHours: 1,
              accessHours,
              ratePerHour: 100,
              roadsideCost: 0,
            }),
          );
          return found.costWait - found.costNow;
        };
        expect(gain(hours + more)).toBeGreaterThanOrEqual(gain(hours) - 1e-9);
      }),
      SEED,
    );
  });
});

describe('[MEA-52] age replacement', () => {
  it('beats running to failure; a dearer failure asks for an earlier one; money has no unit', () => {
    fc.assert(
      fc.property(
        real(1.5, 4),
        real(50, 900),
        real(1, 100),
        real(3, 30),
        real(1.1, 3),
        (shape, scale, planned, k, more) => {
          const one = told(bestReplacementAge({ shape, scale }, planned, k * planned));
          expect(one.costRate).toBeLessThanOrEqual(one.runToFailureRate * (1 + 1e-9));
          const dearer = told(bestReplacementAge({ shape, scale }, planned, more * k * planned));
          expect(dearer.age).toBeLessThan(one.age);
          const cents = told(bestReplacementAge({ shape, scale }, 100 * planned, 100 * k * planned));
          expect(cents.age / one.age).toBeCloseTo(1, 5);
        },
      ),
      { ...SEED, numRuns: 60 },
    );
  });
});

describe('[MEA-53] drops', () => {
  it('go with their number, and lie inside their own range', () => {
    fc.assert(
      fc.property(real(1, 70), real(20, 70), (drops, mph) => {
        const one = told(oilDrip(drops, mph, 4));
        expect(told(oilDrip(2 * drops, mph, 4)).hoursToAdd).toBeCloseTo(one.hoursToAdd / 2, 6);
        expect(one.lowMlPerHour).toBeLessThanOrEqual(one.mlPerHour);
        expect(one.highMlPerHour).toBeGreaterThanOrEqual(one.mlPerHour);
        expect(one.mlPer100Miles * mph).toBeCloseTo(100 * one.mlPerHour, 6);
      }),
      SEED,
    );
  });
});

describe('[MEA-54] lifting', () => {
  it('a jack nearer the middle carries more, and never less than half the axle nor more than all of it', () => {
    fc.assert(
      fc.property(
        real(2000, 30_000),
        real(60, 100),
        real(0.02, 0.48),
        real(0.01, 0.4),
        (axle, track, place, inward) => {
          const outer = told(axleSideLift(axle, track, place * track)).loadLb;
          const inner = told(axleSideLift(axle, track, place * track * (1 - inward))).loadLb;
          expect(inner).toBeGreaterThan(outer);
          expect(outer).toBeGreaterThanOrEqual(axle / 2 - 1e-9);
          expect(inner).toBeLessThanOrEqual(axle);
        },
      ),
      SEED,
    );
  });
  it('further inside carries more; a heavier load is never carried by stands that failed a lighter one', () => {
    fc.assert(
      fc.property(real(5000, 20_000), real(0, 40), real(0.1, 10), real(2000, 20_000), (load, behind, more, rating) => {
        expect(told(endLift(load, 285, behind + more)).loadLb).toBeGreaterThan(told(endLift(load, 285, behind)).loadLb);
        if (told(standCheck(load, rating, 2, false)).verdict === 'not-enough') {
          expect(told(standCheck(load * 1.1, rating, 2, false)).verdict).toBe('not-enough');
        }
      }),
      SEED,
    );
  });
});
