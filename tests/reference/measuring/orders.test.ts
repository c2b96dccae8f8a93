import { describe, expect, it } from 'vitest';
import {
  afterGearChangeHz,
  BEHAVIOUR,
  cardanJoint,
  cautionFor,
  matchBeat,
  rollingRadiusIn,
  rotatingLines,
  separatingManoeuvres,
  tyreRevsPerMile,
  type RoadState,
  type RotatingGroup,
} from '../../../shared/measuring/index.ts';
import { reasonOf, told } from '../../unit/measuring/told.ts';

const road = (speedMph: number, tyre: number, axleRatio: number, gearRatio: number, more: Partial<RoadState> = {}) => ({
  speedMph,
  speedUncertaintyMph: 0.5 / Math.sqrt(3),
  tyreRevsPerMile: tyre,
  tyreUncertaintyRevsPerMile: 10 / Math.sqrt(3),
  axleRatio,
  gearRatio,
  lockedUp: true,
  engineRpm: null,
  engineUncertaintyRpm: 25 / Math.sqrt(3),
  engine: null,
  accessories: [],
  ...more,
});
const hz = (state: RoadState, group: RotatingGroup, order: number) =>
  told(rotatingLines(state)).lines.find((line) => line.group === group && line.order === order)?.frequencyHz;

describe('[MEA-40] kinematics of the drive, computed in two other languages', () => {
  it.each([
    [60, 500, 4.11, 1, 8.3333, 34.25, 34.25, 2055],
    [65, 484, 3.73, 1, 8.7389, 32.5961, 32.5961, 1955.76],
    [70, 486, 3.36, 0.74, 9.45, 31.752, 23.4965, 1409.79],
    [45, 520, 4.33, 1, 6.5, 28.145, 28.145, 1688.7],
    [62.5, 476, 3.7, 1, 8.2639, 30.5764, 30.5764, 1834.58],
    [45, 500, 4.11, 1.35, 6.25, 25.6875, 34.6781, 2080.69],
  ])('%s mph, %s rev/mile, axle %s, gear %s', (mph, tyre, axle, gear, wheel, shaft, engine, rpm) => {
    const state = road(mph, tyre, axle, gear);
    expect(hz(state, 'wheel-and-tyre', 1)).toBeCloseTo(wheel, 4);
    expect(hz(state, 'wheel-and-tyre', 3)).toBeCloseTo(3 * wheel, 3);
    expect(hz(state, 'propeller-shaft', 1)).toBeCloseTo(shaft, 4);
    expect(hz(state, 'propeller-shaft', 2)).toBeCloseTo(2 * shaft, 3);
    expect(hz(state, 'engine', 1)).toBeCloseTo(engine, 4);
    expect(told(rotatingLines(state)).engineRpm).toBeCloseTo(rpm, 2);
  });
  it('100 km/h on a rolling radius of 0.510 m is 8.6686 Hz', () => {
    const turns = told(tyreRevsPerMile(510 / 25.4)).revsPerMile;
    expect(hz(road(100 / 1.609344, turns, 4, 1), 'wheel-and-tyre', 1)).toBeCloseTo(8.6686, 4);
  });
  it('above any governor it is refused', () => {
    expect(reasonOf(rotatingLines(road(55, 501, 4.625, 1.38)))).toBe('engine-speed-implausible');
  });
  it.each([
    [2100, 8, 2, 280],
    [2100, 6, 2, 210],
    [1800, 6, 4, 90],
    [1500, 8, 4, 100],
    [600, 8, 2, 80],
  ] as const)('%s rpm, %s cylinders, %s-stroke fires at %s Hz', (engineRpm, cylinders, strokes, firing) => {
    const lines = told(rotatingLines(road(30, 500, 4, 1, { engineRpm, engine: { cylinders, strokes } }))).lines;
    expect(lines.find((line) => line.name === 'firing')?.frequencyHz).toBeCloseTo(firing, 9);
  });
  it('a slipping converter cuts the engine off from the road, and says so', () => {
    const slipping = told(rotatingLines(road(60, 500, 4.11, 1, { lockedUp: false })));
    expect(slipping.lines.some((line) => line.group === 'engine')).toBe(false);
    expect(slipping.missing.join()).toMatch(/converter slips/);
    const tacho = told(rotatingLines(road(60, 500, 4.11, 1, { lockedUp: false, engineRpm: 2100 })));
    expect(tacho.engineRpm).toBeCloseTo(2100, 9);
  });
  it('accessories follow the crankshaft by their ratio', () => {
    const fan = road(60, 500, 4.11, 1, { accessories: [{ name: 'fan', ratio: 1.2 }] });
    expect(hz(fan, 'accessory', 1)).toBeCloseTo(1.2 * 34.25, 9);
  });
  it('without the axle ratio nothing is said of the shaft', () => {
    const state = { ...road(60, 500, 4, 1), axleRatio: null };
    expect(told(rotatingLines(state)).lines.map((line) => line.group)).toEqual(Array(3).fill('wheel-and-tyre'));
  });
});

describe('[MEA-40] rolling radius: one-third rule against catalogue turns', () => {
  it.each([
    [41.4, 19.3, 522.49, 498.39, 501],
    [42.7, 19.9, 506.74, 483.26, 486],
    [43.5, 20.3, 496.75, 474.17, 476],
  ])('free %s in, static %s in', (free, loaded, byStatic, byRule, catalogue) => {
    expect(told(tyreRevsPerMile(loaded)).revsPerMile).toBeCloseTo(byStatic, 2);
    const turns = told(tyreRevsPerMile(told(rollingRadiusIn(free, loaded)).radiusIn)).revsPerMile;
    expect(turns).toBeCloseTo(byRule, 2);
    expect(Math.abs(turns / catalogue - 1)).toBeLessThan(0.01);
  });
});

describe('[MEA-40] universal joint at 2000 rpm, peak acceleration by dense evaluation with NumPy', () => {
  it.each([
    [1, 0.00030463, 13.363],
    [2, 0.00121872, 53.459],
    [3, 0.00274281, 120.313],
    [6, 0.01098638, 481.931],
    [10, 0.03061886, 1343.408],
  ])('%s°', (angle, ripple, peak) => {
    const joint = told(cardanJoint(angle, 2000));
    expect(joint.ripple).toBeCloseTo(ripple, 8);
    expect(joint.peakRadPerS2).toBeCloseTo(peak, 3);
  });
});

describe('[MEA-41] matching a beat: vehicle of 60 mph, 500 rev/mile, axle 4.11, two-stroke of eight, computed in another language', () => {
  const search = { lowHz: 2, highHz: 200 };
  const lines = told(
    rotatingLines(road(60, 500, 4.11, 1, { engineRpm: 2055, engine: { cylinders: 8, strokes: 2 } })),
  ).lines;
  const beat = (frequencyHz: number, binHz = 0.5, interpolated = false) =>
    told(matchBeat({ frequencyHz, binHz, interpolated, speedDrift: 0 }, lines, search));
  const of = (found: ReturnType<typeof beat>, group: RotatingGroup, order: number) =>
    found.lines.find((match) => match.line.group === group && match.line.order === order)?.posterior;
  it('34.0 Hz: shaft and engine turn alike in direct drive and cannot be separated', () => {
    const found = beat(34);
    expect(of(found, 'propeller-shaft', 1)).toBeCloseTo(0.4407, 3);
    expect(of(found, 'engine', 1)).toBeCloseTo(0.5564, 3);
    expect(found.none).toBeCloseTo(0.0029, 3);
    expect(found.verdict).toBe('cannot-be-separated');
    expect(found.separateBy[0]).toBe('standing-same-engine-speed');
    expect(found.separateBy).toContain('next-gear-same-speed');
  });
  it('25.2 Hz: third of the tyre', () => {
    const found = beat(25.2);
    expect(of(found, 'wheel-and-tyre', 3)).toBeCloseTo(0.9949, 3);
    expect(found).toMatchObject({ verdict: 'one-group', fitting: ['wheel-and-tyre'] });
  });
  it('8.4 Hz: the wheel', () => {
    expect(of(beat(8.4, 0.25), 'wheel-and-tyre', 1)).toBeCloseTo(0.9982, 3);
  });
  it('68.7 Hz refined: joint and engine second order', () => {
    const found = beat(68.7, 0.5, true);
    expect(of(found, 'propeller-shaft', 2)).toBeCloseTo(0.3724, 3);
    expect(of(found, 'engine', 2)).toBeCloseTo(0.6234, 3);
    expect(found.verdict).toBe('cannot-be-separated');
  });
  it('50 Hz: none of them', () => {
    const found = beat(50);
    expect(found.none).toBeCloseTo(1, 4);
    expect(found.verdict).toBe('none-fits');
  });
  it('25.7 Hz at 45 mph in a gear of 1.35: the gear change has separated the shaft', () => {
    const other = told(
      rotatingLines(road(45, 500, 4.11, 1.35, { engineRpm: 2080.7, engine: { cylinders: 8, strokes: 2 } })),
    ).lines;
    const found = told(matchBeat({ frequencyHz: 25.7, binHz: 0.5, interpolated: false, speedDrift: 0 }, other, search));
    expect(found.groups.get('propeller-shaft')).toBeCloseTo(0.9954, 3);
    expect(found.verdict).toBe('one-group');
  });
  it('what cannot be matched is refused', () => {
    const any = { frequencyHz: 34, binHz: 0.5, interpolated: false, speedDrift: 0 };
    expect(reasonOf(matchBeat({ ...any, frequencyHz: 2.5 }, lines, search))).toBe('outside-search');
    expect(reasonOf(matchBeat({ ...any, speedDrift: 0.03 }, lines, search))).toBe('speed-not-steady');
    expect(reasonOf(matchBeat(any, [], search))).toBe('no-lines');
  });
});

describe('[MEA-42] manoeuvres', () => {
  it('gear change at 45 mph: engine from 25.6875 to 34.6781 Hz, shaft and wheel stay', () => {
    expect(told(afterGearChangeHz('engine', 25.6875, 1, 1.35)).frequencyHz).toBeCloseTo(34.6781, 4);
    expect(told(afterGearChangeHz('propeller-shaft', 25.6875, 1, 1.35)).frequencyHz).toBe(25.6875);
    expect(told(afterGearChangeHz('wheel-and-tyre', 6.25, 1, 1.35)).frequencyHz).toBe(6.25);
  });
  it('leaning changes the loudness of a wheel end only; standing silences what rolls', () => {
    expect(BEHAVIOUR['lean-left-then-right']['wheel-and-tyre'].loudness).toBe('follows-loaded-side');
    expect(BEHAVIOUR['lean-left-then-right'].engine).toEqual({ frequency: 'same', loudness: 'same' });
    expect(BEHAVIOUR['standing-same-engine-speed']['propeller-shaft'].frequency).toBe('gone');
    expect(BEHAVIOUR['coast-in-neutral'].engine.frequency).toBe('falls-to-idle');
  });
  it('coasting comes last and carries its caution', () => {
    expect(separatingManoeuvres('propeller-shaft', 'engine').at(-1)).toBe('coast-in-neutral');
    expect(cautionFor('coast-in-neutral')).toMatch(/downgrade/);
    expect(separatingManoeuvres('wheel-and-tyre', 'propeller-shaft')).toEqual([
      'overrun-in-gear',
      'lean-left-then-right',
      'light-braking',
      'coast-in-neutral',
    ]);
  });
});
