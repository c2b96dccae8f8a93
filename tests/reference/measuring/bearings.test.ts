import { describe, expect, it } from 'vitest';
import { bearingRates, taperedRates } from '../../../shared/measuring/index.ts';
import { reasonOf, told } from '../../unit/measuring/told.ts';

describe('[MEA-45] published defect frequencies', () => {
  it('6205 and 6203, table of the bearing data centre of Case Western Reserve University, four digits', () => {
    const drive = told(bearingRates({ rollers: 9, rollerDiameter: 0.3126, pitchDiameter: 1.537, contactAngleDeg: 0 }));
    expect(drive.cage).toBeCloseTo(0.39828, 4);
    expect(drive.outerRace).toBeCloseTo(3.5848, 4);
    expect(drive.innerRace).toBeCloseTo(5.4152, 4);
    // Its "rolling element" is the rate of strikes, twice the spin.
    expect(drive.rollerDefect).toBeCloseTo(4.7135, 3);
    const fan = told(bearingRates({ rollers: 8, rollerDiameter: 0.2656, pitchDiameter: 1.122, contactAngleDeg: 0 }));
    // The table was made from a geometry with more digits than the one printed: equal within 1e-4.
    expect(Math.abs(fan.cage - 0.3817)).toBeLessThan(1e-4);
    expect(fan.outerRace).toBeCloseTo(3.053, 3);
    expect(fan.innerRace).toBeCloseTo(4.9469, 4);
    expect(fan.rollerDefect).toBeCloseTo(3.9874, 3);
  });
  it('insert bearing of the Curtin University test rig, 2012', () => {
    const found = told(bearingRates({ rollers: 9, rollerDiameter: 7.9375, pitchDiameter: 38.5, contactAngleDeg: 0 }));
    expect(found.cage).toBeCloseTo(0.3969, 4);
    expect(found.outerRace).toBeCloseTo(3.572, 3);
    expect(found.innerRace).toBeCloseTo(5.428, 3);
    expect(found.rollerSpin).toBeCloseTo(2.32, 2);
  });
  it('sixteen rollers at 15.17° and 2000 rpm, run-to-failure set of Qiu, Lee & Lin 2006', () => {
    const found = told(
      bearingRates({ rollers: 16, rollerDiameter: 0.331, pitchDiameter: 2.815, contactAngleDeg: 15.17 }),
    );
    const hz = 2000 / 60;
    expect(found.cage * hz).toBeCloseTo(14.775, 3);
    expect(found.outerRace * hz).toBeCloseTo(236.4, 1);
    expect(found.innerRace * hz).toBeCloseTo(296.9, 1);
    expect(found.rollerSpin * hz).toBeCloseTo(139.9, 1);
  });
  it.each([
    [20, 10.5, 14.5, 0.421241, 8.42483, 11.57517],
    [17, 8, 12, 0.400977, 6.81661, 10.18339],
    [23, 12, 16, 0.42997, 9.88932, 13.11068],
    [26, 19, 24, 0.44458, 11.55908, 14.44092],
  ])('tapered, %s rollers, %s°/%s°: computed in two other languages', (n, cone, cup, cage, outer, inner) => {
    const found = told(taperedRates(n, cone, cup));
    expect(found.cage).toBeCloseTo(cage, 6);
    expect(found.outerRace).toBeCloseTo(outer, 5);
    expect(found.innerRace).toBeCloseTo(inner, 5);
  });
  it('rollers that do not fit and angles that cross are refused', () => {
    const geometry = { rollers: 30, rollerDiameter: 12, pitchDiameter: 105, contactAngleDeg: 14 };
    expect(reasonOf(bearingRates(geometry))).toBe('impossible-geometry');
    expect(reasonOf(bearingRates({ ...geometry, rollers: 9.5 }))).toBe('impossible-geometry');
    expect(reasonOf(taperedRates(20, 15, 12))).toBe('angles-crossed');
  });
});
