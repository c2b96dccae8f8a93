import { describe, expect, it } from 'vitest';
import {
  axleSideLift,
  cornerLoadLb,
  endLift,
  groundLoad,
  judgeSuspensionLeak,
  judgeTread,
  standCheck,
  tyreRefill,
} from '../../../shared/measuring/index.ts';
import { reasonOf, told } from '../../unit/measuring/told.ts';

describe('[MEA-54] lifting, moments computed in two other languages', () => {
  it.each([
    [14_000, 80, 40, 7350, 7000, 8750, 4.375],
    [14_000, 80, 16, 7350, 10_000, 12_500, 6.25],
    [22_000, 72, 20, 11_550, 14_142.86, 17_678.57, 8.839],
    [9000, 80, 28, 4725, 5294.12, 6617.65, 3.309],
  ])('%s lb, track %s in, jack at %s in', (axle, track, jack, corner, load, rating, tons) => {
    expect(told(cornerLoadLb(axle)).loadLb).toBeCloseTo(corner, 6);
    const found = told(axleSideLift(axle, track, jack));
    expect(found.loadLb).toBeCloseTo(load, 2);
    expect(found.ratingLb).toBeCloseTo(rating, 2);
    expect(found.ratingUsTons).toBeCloseTo(tons, 3);
  });
  it('beyond the middle of the axle it tips', () => {
    expect(reasonOf(axleSideLift(14_000, 80, -10))).toBe('tips');
    expect(reasonOf(axleSideLift(14_000, 80, 0))).toBe('tips');
  });
  it.each([
    [0, 12_000],
    [24, 13_103.45],
    [-30, 10_857.14],
    [40, 13_959.18],
    [57, 15_000],
  ])('front end, 12,000 lb, wheelbase 285 in, %s in behind the axle', (behind, load) => {
    expect(told(endLift(12_000, 285, behind)).loadLb).toBeCloseTo(load, 2);
  });
  it('beyond a fifth of the wheelbase only at the maker’s point', () => {
    expect(reasonOf(endLift(12_000, 285, 58))).toBe('past-the-limit');
  });
  it.each([
    [14_000, 10_000, false, 1.4286, 'enough-by-the-numbers'],
    [14_000, 6000, false, 0.8571, 'not-enough'],
    [22_000, 12_000, false, 1.0909, 'not-enough'],
    [14_000, 20_000, true, 1.4286, 'enough-by-the-numbers'],
    [14_000, 10_000, true, 0.7143, 'not-enough'],
  ])('%s lb on two stands of %s lb, for the pair: %s', (load, rating, pair, ratio, verdict) => {
    const found = told(standCheck(load, rating, 2, pair));
    expect(found.ratio).toBeCloseTo(ratio, 4);
    expect(found.verdict).toBe(verdict);
  });
  it('ground: 7,000 lb on 4 × 4 in is 437.5 psi, on 12 × 12 in 48.6; a slope of 2 % pushes 14,000 lb by 279.94 lb', () => {
    expect(told(groundLoad(7000, 4, 4, 0))).toMatchObject({ pressurePsi: 437.5, needsPlate: true });
    expect(told(groundLoad(7000, 12, 12, 0)).pressurePsi).toBeCloseTo(48.6, 1);
    expect(told(groundLoad(7000, 12, 12, 0)).needsPlate).toBe(false);
    expect(told(groundLoad(14_000, 12, 12, 0.02)).sideForceLb).toBeCloseTo(279.94, 2);
    expect(reasonOf(groundLoad(14_000, 12, 12, 0.03))).toBe('tips');
  });
});

describe('[MEA-55] tyres, 29 CFR 1910.177(f): more than 80 % may be filled on the vehicle', () => {
  it.each([
    [78, 100, false],
    [80, 100, false],
    [85, 100, true],
  ])('%s of %s psi', (pressure, recommended, onVehicle) => {
    expect(told(tyreRefill(pressure, recommended)).onVehicle).toBe(onVehicle);
  });
});

describe('[MEA-17] air suspension, 49 CFR 393.207(f): 3 psi in 5 min', () => {
  it.each([
    [110, 107, 5, 'at-limit'],
    [110, 106, 5, 'beyond'],
    [110, 106, 10, 'within'],
  ])('%s → %s psi in %s min', (before, after, minutes, comparison) => {
    expect(told(judgeSuspensionLeak(before, after, minutes, 0.5)).judgement.comparison).toBe(comparison);
  });
  it('rising pressure and a short look are refused', () => {
    expect(reasonOf(judgeSuspensionLeak(100, 104, 5, 0.5))).toBe('out-of-range');
    expect(reasonOf(judgeSuspensionLeak(100, 99, 2, 0.5))).toBe('out-of-range');
  });
});

describe('[MEA-55] tread, 49 CFR 393.75: 4/32 in on the front wheels of a bus, 2/32 in elsewhere', () => {
  it.each([
    [true, 4, false, 'at-limit'],
    [true, 3, false, 'beyond'],
    [false, 3, false, 'within'],
    [false, 2, true, 'at-limit'],
  ])('front %s, %s/32 in', (front, depth32nds, retreaded, comparison) => {
    expect(told(judgeTread({ front, depth32nds, uncertainty32nds: 0.5, retreaded })).judgement.comparison).toBe(
      comparison,
    );
  });
  it('a retread on the front of a bus is forbidden at any depth, 393.75(d)', () => {
    expect(reasonOf(judgeTread({ front: true, depth32nds: 12, uncertainty32nds: 0.5, retreaded: true }))).toBe(
      'retread-in-front',
    );
  });
});
