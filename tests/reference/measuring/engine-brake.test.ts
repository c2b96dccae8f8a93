import { describe, expect, it } from 'vitest';
import {
  cylinderShare,
  effectiveMassKg,
  retardingPower,
  roadLoad,
  type CoastDown,
} from '../../../shared/measuring/index.ts';
import { reasonOf, told } from '../../unit/measuring/told.ts';

const run = (more: Partial<CoastDown>): CoastDown => ({
  effectiveMassKg: 18_648.434,
  massUncertaintyKg: 0,
  fromMph: 52,
  toMph: 48,
  speedUncertaintyMph: 0,
  brakeOnS: 10,
  brakeOff: { way: 'down', seconds: 20 },
  timeUncertaintyS: 0,
  ...more,
});

describe('[MEA-51] effective mass', () => {
  it.each([
    [18_000, 8, 0, 0, 18_453.6],
    [18_000, 8, 3, 4.11, 18_648.434],
    [18_000, 8, 3, 8.22, 19_232.936],
    [16_000, 6, 0, 0, 16_340.2],
  ])('%s kg on %s tyres', (massKg, tyresOnRoad, engineInertiaKgM2, overallRatio, expected) => {
    const mass = { massKg, tyresOnRoad, engineInertiaKgM2, overallRatio, rollingRadiusM: 0.51 };
    expect(told(effectiveMassKg(mass)).massKg).toBeCloseTo(expected, 2);
  });
  it('example of 40 CFR 1037.528: 16,108 kg on 18 tyres is 17,129 kg', () => {
    const mass = { massKg: 16_108, tyresOnRoad: 18, engineInertiaKgM2: 0, overallRatio: 0, rollingRadiusM: 0.5 };
    expect(Math.round(told(effectiveMassKg(mass)).massKg)).toBe(17_129);
  });
});

describe('[MEA-51] power recovered from runs simulated with scipy solve_ivp, true power known beforehand', () => {
  it.each<[CoastDown, number, number]>([
    [run({ fromMph: 55, toMph: 45, brakeOnS: 7.46111, brakeOff: { way: 'down', seconds: 18.64888 } }), 149.828, 150],
    [
      run({
        effectiveMassKg: 14_535.034,
        fromMph: 47,
        toMph: 43,
        brakeOnS: 7.50648,
        brakeOff: { way: 'down', seconds: 26.66477 },
      }),
      50.045,
      50,
    ],
    [
      run({
        effectiveMassKg: 20_648.434,
        fromMph: 63,
        toMph: 57,
        brakeOnS: 3.89989,
        brakeOff: { way: 'down', seconds: 8.20836 },
      }),
      199.939,
      200,
    ],
    [run({ brakeOnS: 14.13843, brakeOff: { way: 'up', seconds: 7.68416 } }), 149.718, 150],
    [run({ fromMph: 55, toMph: 45, brakeOnS: 36.20645, brakeOff: { way: 'up', seconds: 19.26153 } }), 148.208, 150],
  ])('%#', (each, formula, truth) => {
    const { powerKw } = told(retardingPower(each));
    expect(Math.abs(powerKw / formula - 1)).toBeLessThan(1e-5);
    expect(Math.abs(powerKw / truth - 1)).toBeLessThan(0.013);
  });
  it.each([
    [18_650, 0.05, 55, 45, 0.3, 9, 25, 0.3, 132.5193, 11.1476],
    [18_650, 0.05, 52, 48, 0.3, 3.5, 10, 0.3, 138.4353, 24.5379],
    [18_650, 0.03, 55, 45, 0.1, 9, 25, 0.1, 132.5193, 4.9734],
    [14_500, 0.05, 50, 40, 0.3, 8, 18, 0.3, 90.5547, 8.6176],
    [18_650, 0.05, 55, 45, 0.3, 18, 25, 0.3, 28.9886, 2.7214],
  ])('uncertainty by the Python package uncertainties 3.1.6: %s kg', (m, um, from, to, uv, on, off, ut, power, u) => {
    const found = told(
      retardingPower(
        run({
          effectiveMassKg: m,
          massUncertaintyKg: um * m,
          fromMph: from,
          toMph: to,
          speedUncertaintyMph: uv,
          brakeOnS: on,
          brakeOff: { way: 'down', seconds: off },
          timeUncertaintyS: ut,
        }),
      ),
    );
    expect(found.powerKw).toBeCloseTo(power, 3);
    expect(found.uncertaintyKw).toBeCloseTo(u, 3);
  });
  it('refused: too quick, no brake at all, too uncertain', () => {
    expect(reasonOf(retardingPower(run({ brakeOnS: 2 })))).toBe('too-quick');
    expect(reasonOf(retardingPower(run({ brakeOnS: 20 })))).toBe('not-a-brake');
    expect(reasonOf(retardingPower(run({ brakeOnS: 15, speedUncertaintyMph: 2 })))).toBe('too-uncertain');
    expect(told(retardingPower(run({ brakeOff: { way: 'holds' } }))).powerKw).toBeGreaterThan(
      told(retardingPower(run({}))).powerKw,
    );
  });
});

describe('[MEA-51] share of cylinders, scipy.stats.norm; expected 200 ± 20 kW', () => {
  it.each<[number, number, number, number[], Record<number, number>, boolean]>([
    [98, 9, 6, [0, 1, 2, 3, 4, 5, 6], { 2: 0.022, 3: 0.9082, 4: 0.0688, 5: 0.0009 }, true],
    [130, 12, 6, [0, 1, 2, 3, 4, 5, 6], { 3: 0.1345, 4: 0.7278, 5: 0.1314, 6: 0.0063 }, false],
    [195, 18, 8, [0, 1, 2, 3, 4, 5, 6, 7, 8], { 5: 0.0038, 6: 0.093, 7: 0.3997, 8: 0.5034 }, false],
    [66, 8, 6, [0, 2, 4, 6], { 2: 0.9999, 4: 0.0001 }, true],
    [98, 9, 8, [0, 4, 8], { 4: 1 }, true],
  ])('%s ± %s kW of %s cylinders', (powerKw, uncertaintyKw, cylinders, acting, expected, decided) => {
    const found = told(cylinderShare({ powerKw, uncertaintyKw }, 200, 20, cylinders, acting));
    for (const [count, probability] of Object.entries(expected)) {
      expect(found.shares.find((share) => share.acting === Number(count))?.probability).toBeCloseTo(probability, 3);
    }
    expect(found.decided).toBe(decided);
  });
  it('counts that no engine has are refused', () => {
    expect(reasonOf(cylinderShare({ powerKw: 98, uncertaintyKw: 9 }, 200, 20, 6, [0, 7]))).toBe('impossible-count');
  });
});

describe('[MEA-51] road load, computed in two other languages', () => {
  it.each([
    [16_000, 0.008, 4, 60, 0, 2981.91, 79.982],
    [18_000, 0.0097, 4.74, 60, 0, 3758.33, 100.807],
    [18_000, 0.0129, 4.74, 60, 0, 4323.19, 115.958],
    [18_000, 0.0097, 4.74, 40, -0.06, -7953.63, -142.224],
    [14_000, 0.012, 4.55, 50, 0.03, 7127.66, 159.317],
  ])('%s kg, %s, %s m², %s mph, %s', (massKg, rollingCoefficient, dragAreaM2, speedMph, grade, force, power) => {
    const found = told(roadLoad({ massKg, rollingCoefficient, dragAreaM2, speedMph, grade }));
    expect(found.forceN / force).toBeCloseTo(1, 5);
    expect(found.powerKw / power).toBeCloseTo(1, 5);
  });
});
