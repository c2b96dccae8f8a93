import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  afterGearChangeHz,
  BEHAVIOUR,
  cardanJoint,
  MANOEUVRES,
  matchBeat,
  rotatingLines,
  separatingManoeuvres,
  tyreRevsPerMile,
  type RotatingGroup,
} from '../../../shared/measuring/index.ts';
import { told } from '../../unit/measuring/told.ts';

const SEED = { seed: 20251130, numRuns: 200 };
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const state = fc.record({
  speedMph: real(20, 70),
  speedUncertaintyMph: real(0.1, 3),
  tyreRevsPerMile: real(450, 550),
  tyreUncertaintyRevsPerMile: real(0.1, 10),
  axleRatio: real(3, 5),
  gearRatio: real(0.6, 1),
  lockedUp: fc.constant(true),
  engineRpm: fc.constant(null),
  engineUncertaintyRpm: fc.constant(10),
  engine: fc.constant({ cylinders: 6, strokes: 4 as const }),
  accessories: fc.constant([{ name: 'fan', ratio: 1.3 }]),
});
const group = fc.constantFrom<RotatingGroup>('wheel-and-tyre', 'propeller-shaft', 'engine', 'accessory');

describe('[MEA-40] lines', () => {
  it('all go with the speed, and with the tyre; the shaft is the axle ratio above the wheel', () => {
    fc.assert(
      fc.property(state, real(0.7, 1), (road, k) => {
        const one = told(rotatingLines(road)).lines;
        const slow = told(rotatingLines({ ...road, speedMph: road.speedMph * k })).lines;
        const large = told(rotatingLines({ ...road, tyreRevsPerMile: road.tyreRevsPerMile * Math.max(k, 0.8) })).lines;
        one.forEach((line, i) => {
          expect(slow[i]!.frequencyHz).toBeCloseTo(k * line.frequencyHz, 7);
          expect(large[i]!.frequencyHz).toBeCloseTo(Math.max(k, 0.8) * line.frequencyHz, 7);
          expect(line.uncertaintyHz).toBeGreaterThan(0);
        });
        const at = (name: RotatingGroup) => one.find((line) => line.group === name && line.order === 1)!.frequencyHz;
        expect(at('propeller-shaft') / at('wheel-and-tyre')).toBeCloseTo(road.axleRatio, 9);
        expect(at('engine') / at('propeller-shaft')).toBeCloseTo(road.gearRatio, 9);
      }),
      SEED,
    );
  });
  it('a larger tyre turns less; a steeper joint never ripples less', () => {
    fc.assert(
      fc.property(
        real(15, 25),
        real(0.1, 4),
        real(0, 40),
        real(0, 5),
        real(100, 3000),
        (radius, more, angle, up, rpm) => {
          expect(told(tyreRevsPerMile(radius + more)).revsPerMile).toBeLessThan(
            told(tyreRevsPerMile(radius)).revsPerMile,
          );
          const flat = told(cardanJoint(angle, rpm));
          const steep = told(cardanJoint(angle + up, rpm));
          expect(steep.ripple).toBeGreaterThanOrEqual(flat.ripple);
          expect(steep.peakRadPerS2).toBeGreaterThanOrEqual(flat.peakRadPerS2);
          expect(told(cardanJoint(angle, rpm / 2)).peakRadPerS2 * 4).toBeCloseTo(flat.peakRadPerS2, 6);
        },
      ),
      SEED,
    );
  });
});

describe('[MEA-41] matching', () => {
  it('shares and "none" sum to 1, whatever the beat; the order of the lines does not matter', () => {
    fc.assert(
      fc.property(state, real(3, 200), real(0.05, 2), fc.boolean(), (road, frequencyHz, binHz, interpolated) => {
        const { lines } = told(rotatingLines(road));
        const beat = { frequencyHz, binHz, interpolated, speedDrift: 0.005 };
        const found = told(matchBeat(beat, lines, { lowHz: 2, highHz: 250 }));
        const sum = found.none + found.lines.reduce((total, match) => total + match.posterior, 0);
        expect(sum).toBeCloseTo(1, 10);
        expect([...found.groups.values()].every((share) => share >= 0 && share <= 1 + 1e-12)).toBe(true);
        const turned = told(matchBeat(beat, [...lines].reverse(), { lowHz: 2, highHz: 250 }));
        expect(turned.none).toBeCloseTo(found.none, 10);
        expect(turned.verdict).toBe(found.verdict);
      }),
      SEED,
    );
  });
  it('a beat on the line of a group always has that group among those that fit', () => {
    fc.assert(
      fc.property(state, fc.nat(), (road, pick) => {
        const { lines } = told(rotatingLines(road));
        const line = lines[pick % lines.length]!;
        fc.pre(line.frequencyHz >= 3);
        const beat = { frequencyHz: line.frequencyHz, binHz: 0.25, interpolated: true, speedDrift: 0 };
        const found = told(matchBeat(beat, lines, { lowHz: 2, highHz: 400 }));
        expect(found.fitting).toContain(line.group);
        expect(found.verdict === 'one-group').toBe(found.fitting.length === 1);
        if (found.verdict === 'cannot-be-separated') {
          const onlyAlike = new Set(found.fitting.map((each) => (each === 'accessory' ? 'engine' : each))).size === 1;
          expect(found.separateBy.length > 0 || onlyAlike || found.fitting.includes('accessory')).toBe(true);
        }
      }),
      SEED,
    );
  });
});

describe('[MEA-42] manoeuvres', () => {
  it('changing gear and back leaves every beat where it was', () => {
    fc.assert(
      fc.property(group, real(3, 300), real(0.5, 5), real(0.5, 5), (each, hz, from, to) => {
        const there = told(afterGearChangeHz(each, hz, from, to)).frequencyHz;
        expect(told(afterGearChangeHz(each, there, to, from)).frequencyHz).toBeCloseTo(hz, 8);
      }),
      SEED,
    );
  });
  it('separating is symmetric, and is only named where the behaviour differs', () => {
    fc.assert(
      fc.property(group, group, (a, b) => {
        expect(separatingManoeuvres(a, b)).toEqual(separatingManoeuvres(b, a));
        const differing = MANOEUVRES.filter(
          (each) =>
            BEHAVIOUR[each][a].frequency !== BEHAVIOUR[each][b].frequency ||
            BEHAVIOUR[each][a].loudness !== BEHAVIOUR[each][b].loudness,
        );
        expect([...separatingManoeuvres(a, b)].sort()).toEqual([...differing].sort());
      }),
      SEED,
    );
  });
});
