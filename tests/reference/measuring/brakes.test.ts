import { describe, expect, it } from 'vitest';
import {
  axleMatches,
  brakeForceShares,
  dayAfterMiles,
  defectiveShare,
  DRUM_SIGNS,
  judgeDrum,
  judgeLash,
  judgeLining,
  judgeStop,
  judgeStroke,
  judgeWedgeMovement,
  lashDegrees,
  lashLimit,
  meanDeceleration,
  remainingWear,
  requiredBrakeForceLbf,
  STOPPING_TABLE,
  stoppingDistanceFt,
  strokeLimit,
  type Chamber,
  type ServiceBrake,
  type StrokeClass,
} from '../../../shared/measuring/index.ts';
import { reasonOf, told } from '../../unit/measuring/told.ts';

const clamp = (size: number, strokeClass: StrokeClass = 'standard'): Chamber => ({ kind: 'clamp', size, strokeClass });
const stroke = (chamber: Chamber, strokeIn: number, reservoirPsi = 85) =>
  judgeStroke({ chamber, strokeIn, reservoirPsi });

describe('[MEA-20] pushrod stroke, 49 CFR 393.47(e) and Appendix A to Part 396, 1.a(5)', () => {
  it.each<[Chamber, number, string]>([
    [clamp(30), 2.125, 'beyond'],
    [clamp(30), 2, 'at-limit'],
    [clamp(30), 1.9375, 'within'],
    [clamp(30, 'long'), 2.375, 'within'],
    [clamp(30, 'long'), 2.5625, 'beyond'],
    [clamp(24), 1.75, 'at-limit'],
    [clamp(24), 1.875, 'beyond'],
    [clamp(24, 'long-3-in'), 2.25, 'within'],
    [clamp(20), 1.75, 'at-limit'],
    [clamp(20, 'long'), 2.0625, 'beyond'],
    [clamp(36), 2.25, 'at-limit'],
    [clamp(36), 2.375, 'beyond'],
    [clamp(12), 1.4375, 'beyond'],
    [clamp(9), 1.375, 'at-limit'],
    [clamp(16, 'long'), 2, 'at-limit'],
    [{ kind: 'double-diaphragm' }, 2.1875, 'within'],
    [{ kind: 'rotochamber', size: 30 }, 2.25, 'at-limit'],
    [{ kind: 'rotochamber', size: 30 }, 2.375, 'beyond'],
    [{ kind: 'bolt', size: 'C' }, 1.875, 'beyond'],
    [{ kind: 'unlisted', ratedStrokeIn: 2.5 }, 2, 'at-limit'],
    [{ kind: 'unlisted', ratedStrokeIn: 2.5 }, 2.05, 'beyond'],
    [{ kind: 'unlisted', ratedStrokeIn: 3, markedLimitIn: 2 }, 2.05, 'beyond'],
  ])('%j at %s in', (chamber, strokeIn, comparison) => {
    expect(told(stroke(chamber, strokeIn)).judgement.comparison).toBe(comparison);
  });
  it('an eighth over is told and beyond by an eighth; 44.5 mm on type 24 is too close for a rule', () => {
    const over = told(stroke(clamp(30), 2.125));
    expect(over.beyondIn).toBeCloseTo(0.125, 12);
    expect(over.judgement.decision).toBe('fails');
    const close = told(
      judgeStroke({ chamber: clamp(24), strokeIn: 44.5 / 25.4, uncertaintyIn: 1 / 32, reservoirPsi: 85 }),
    );
    expect(close.judgement.decision).toBe('too-close');
  });
  it('the whole table of 393.47(e), as copied out of the rule', () => {
    const at = (chamber: Chamber) => told(strokeLimit(chamber)).limit.value;
    const clamps = [6, 9, 12, 16, 20, 24, 30, 36].map((size) => at(clamp(size)));
    expect(clamps).toEqual([1.25, 1.375, 1.375, 1.75, 1.75, 1.75, 2, 2.25]);
    expect([12, 16, 20, 24, 30].map((size) => at(clamp(size, 'long')))).toEqual([1.75, 2, 2, 2, 2.5]);
    expect([20, 24].map((size) => at(clamp(size, 'long-3-in')))).toEqual([2.5, 2.5]);
    expect((['A', 'B', 'C', 'D', 'E', 'F', 'G'] as const).map((size) => at({ kind: 'bolt', size }))).toEqual([
      1.375, 1.75, 1.75, 1.25, 1.375, 2.25, 2,
    ]);
    const rotochambers = [9, 12, 16, 20, 24, 30, 36, 50].map((size) => at({ kind: 'rotochamber', size }));
    expect(rotochambers).toEqual([1.5, 1.5, 2, 2, 2, 2.25, 2.75, 3]);
    expect(at({ kind: 'double-diaphragm' })).toBe(2.25);
  });
  it('figures from memory say so', () => {
    const status = (chamber: Chamber) => told(strokeLimit(chamber)).limit.status;
    expect([
      status(clamp(30)),
      status(clamp(6)),
      status(clamp(20, 'long-3-in')),
      status({ kind: 'bolt', size: 'A' }),
    ]).toEqual(['second-hand', 'memory', 'memory', 'memory']);
  });
  it('an unread stroke class takes the shorter limit', () => {
    expect(told(strokeLimit(clamp(24, 'unknown'))).limit.value).toBe(1.75);
  });
  it('what is not in the tables, and a soft application, are refused', () => {
    expect(reasonOf(stroke(clamp(28), 2))).toBe('unknown-chamber');
    expect(reasonOf(stroke(clamp(36, 'long'), 2))).toBe('no-such-class');
    expect(reasonOf(stroke(clamp(30), 2, 60))).toBe('wrong-pressure');
    expect(reasonOf(stroke(clamp(30), NaN))).toBe('out-of-range');
  });
  it('chambers and slack adjusters of an axle are alike, 393.47(b) and (c)', () => {
    const end = (chamberSize: string, slackLengthIn = 5.5) => ({ chamberSize, slackLengthIn });
    expect(told(axleMatches({ left: end('20'), right: end('24') }))).toMatchObject({
      sameChamber: false,
      sameSlack: true,
    });
    expect(told(axleMatches({ left: end('20', 5.5), right: end('20', 6) })).sameSlack).toBe(false);
  });
  it('wedge brake: 3/32 in of movement fails against 1/16, 393.47(f)', () => {
    expect(told(judgeWedgeMovement(3 / 32, 0.01)).judgement.decision).toBe('fails');
  });
});

describe('[MEA-21] share of defective brakes', () => {
  const good: ServiceBrake = { steeringAxle: false, beyondIn: 0, inoperative: false };
  const dead = { ...good, inoperative: true };
  const by = (beyondIn: number): ServiceBrake => ({ ...good, beyondIn });
  it.each<[string, ServiceBrake[], number, number, boolean]>([
    ['1 of 4 dead', [dead, good, good, good], 1, 25, true],
    ['1 of 6 dead', [dead, good, good, good, good, good], 1, 16.6667, false],
    ['2 of 6 an eighth beyond', [by(0.125), by(0.125), good, good, good, good], 1, 16.6667, false],
    ['2 of 6 a quarter beyond', [by(0.25), by(0.25), good, good, good, good], 2, 33.3333, true],
    ['2 1/4 and 2 1/8 on type 30, 2 good', [by(0.25), by(0.125), good, good], 1.5, 37.5, true],
    ['1 of 5 dead is 20 %', [dead, good, good, good, good], 1, 20, true],
  ])('%s', (_, brakes, defective, share, tooMany) => {
    const found = told(defectiveShare(brakes));
    expect(found).toMatchObject({ defective, tooMany, doNotDrive: tooMany });
    expect(found.sharePercent).toBeCloseTo(share, 4);
  });
  it('from the rule on the pushrods to the share: 2 1/4, 2 1/8, 1 3/4, 1 3/4 in on type 30', () => {
    const brakes = [2.25, 2.125, 1.75, 1.75].map((strokeIn) => by(told(stroke(clamp(30), strokeIn)).beyondIn));
    expect(told(defectiveShare(brakes))).toMatchObject({ defective: 1.5, sharePercent: 37.5, doNotDrive: true });
  });
  it('a dead brake on a steering axle is enough alone', () => {
    const six = [{ ...dead, steeringAxle: true }, good, good, good, good, good];
    expect(told(defectiveShare(six))).toMatchObject({ tooMany: false, steeringOut: true, doNotDrive: true });
  });
});

describe('[MEA-22] linings, 49 CFR 393.47(d) and Appendix A to Part 396', () => {
  const lining = { uncertaintyIn: 0.005, oily: false } as const;
  it('steering, one strip, 3/16 in: passes at the limit of the one, fails the other', () => {
    const found = told(judgeLining({ ...lining, axle: 'steering', kind: 'drum-one-strip', thicknessIn: 3 / 16 }));
    expect([found.rule.comparison, found.advice?.comparison]).toEqual(['at-limit', 'beyond']);
  });
  it.each([
    ['steering', 'drum-two-pads', 3 / 16, 'beyond'],
    ['steering', 'drum', 3 / 16, 'beyond'],
    ['other', 'drum', 1 / 4, 'at-limit'],
    ['other', 'drum-one-strip', 7 / 32, 'beyond'],
    ['steering', 'air-disc', 1 / 8, 'at-limit'],
  ] as const)('%s, %s, %s in', (axle, kind, thicknessIn, comparison) => {
    const found = told(judgeLining({ ...lining, axle, kind, thicknessIn }));
    expect(found.rule.comparison).toBe(comparison);
    expect(found.advice).toBeNull();
  });
  it('oil fails at any thickness', () => {
    expect(reasonOf(judgeLining({ ...lining, axle: 'other', kind: 'drum', thicknessIn: 0.7, oily: true }))).toBe(
      'oily',
    );
  });
});

describe('[MEA-23] drums', () => {
  const drum = { nominalIn: 16.5, uncertaintyIn: 0.003, castMaximumIn: null, justTurned: false };
  it.each([
    [16.61, false, 'within', 16.62],
    [16.625, false, 'beyond', 16.62],
    [16.59, true, 'beyond', 16.58],
  ])(
    '%s in, unmarked, turned %s: usual + 0.120 and + 0.080 in (common practice)',
    (diameterIn, justTurned, is, value) => {
      const found = told(judgeDrum({ ...drum, diameterIn, justTurned }));
      expect(found).toMatchObject({
        byCastFigure: false,
        judgement: { comparison: is, limit: { status: 'practice' } },
      });
      expect(found.judgement.limit.value).toBeCloseTo(value, 12);
    },
  );
  it.each([
    [12, false, 12.09],
    [12, true, 12.06],
    [14, false, 14.12],
    [14, true, 14.08],
  ])('usual figures of a drum of %s in, turned %s: %s in (common practice)', (nominalIn, justTurned, value) => {
    const found = told(judgeDrum({ ...drum, nominalIn, diameterIn: nominalIn, justTurned }));
    expect(found.judgement.limit.value).toBeCloseTo(value, 12);
  });
  it('a turned drum must leave 0.040 in of wear below the figure cast on it', () => {
    const found = told(judgeDrum({ ...drum, castMaximumIn: 16.6, diameterIn: 16.55, justTurned: true }));
    expect(found.judgement.limit.value).toBeCloseTo(16.56, 12);
  });
  it('the figure cast on it rules, 49 CFR 570.59(b)', () => {
    const found = told(judgeDrum({ ...drum, castMaximumIn: 16.6, diameterIn: 16.61 }));
    expect(found).toMatchObject({ byCastFigure: true, judgement: { comparison: 'beyond', decision: 'fails' } });
  });
  it('a crack that opens or goes through stops the coach; every sign names where it is from', () => {
    expect(DRUM_SIGNS['crack-opens-when-applied'].verdict).toBe('do-not-drive');
    expect(DRUM_SIGNS['fine-checks-all-over'].verdict).toBe('may-stay');
    for (const sign of Object.values(DRUM_SIGNS)) expect(sign.source.length).toBeGreaterThan(5);
  });
});

describe('[MEA-24] wear: first order by GUM, interval by Fieller, confirmed by 2 million random draws', () => {
  it.each([
    [100_000, 0.6, 130_000, 0.48, 0.25, 0.01, 57_500, 8_725, 14_435, 45_430, 75_231],
    [0, 0.75, 60_000, 0.45, 0.25, 0.015, 40_000, 5_385, 9_644, 31_990, 49_930],
    [200_000, 19, 230_000, 15.5, 6.4, 0.3, 78_000, 11_419, 19_333, 62_300, 101_401],
    [50_000, 16.5, 90_000, 16.56, 16.62, 0.003, 40_000, 4_472, 9_165, 33_371, 48_275],
  ])('%s: %s, %s: %s to %s ± %s', (m1, x1, m2, x2, limit, uncertainty, r, u, route, low, high) => {
    const found = told(
      remainingWear({
        first: { at: m1, size: x1 },
        second: { at: m2, size: x2 },
        limit,
        direction: x2 > x1 ? 'grows' : 'thins',
        uncertainty,
      }),
    );
    const close = (value: number, expected: number) => expect(value / expected).toBeCloseTo(1, 3);
    close(found.remaining, r);
    close(found.uncertainty, u);
    close(found.uncertaintyWithRoute, route);
    close(found.low, low);
    close(found.high, high);
    // Half of the low end less a fifth: the project's own judgement.
    expect(found.measureAgainWithin / found.low).toBeCloseTo(0.4, 12);
  });
  const readings = (x1: number, x2: number, m2 = 20_000) => ({
    first: { at: 0, size: x1 },
    second: { at: m2, size: x2 },
    limit: 0.25,
    direction: 'thins' as const,
    uncertainty: 0.02,
  });
  it.each([
    ['wear that may be reading error', readings(0.75, 0.71), 'too-little-wear'],
    ['thicker than before', readings(0.6, 0.7), 'no-wear'],
    ['at the limit', readings(0.6, 0.25), 'at-limit'],
    ['a mileage below zero', readings(0.6, 0.5, -1), 'out-of-range'],
    ['one time', readings(0.6, 0.5, 0), 'time-not-rising'],
  ])('%s is refused', (_, input, reason) => {
    expect(reasonOf(remainingWear(input))).toBe(reason);
  });
  it('miles become a day of the calendar, over a leap day too', () => {
    expect(told(dayAfterMiles({ year: 2024, month: 2, day: 1 }, 10_000, 120_000)).day).toBe('2024-03-02');
    expect(reasonOf(dayAfterMiles({ year: 2023, month: 2, day: 29 }, 100, 10_000))).toBe('no-such-day');
  });
});

describe('[MEA-25] stopping, table of 49 CFR 393.52(d)', () => {
  const stop = { speedMph: 20, speedUncertaintyMph: 0.3, distanceUncertaintyFt: 0.5, road: 'hard-level-dry' } as const;
  it.each([
    ['coach', 'service', 40, 'beyond'],
    ['coach', 'service', 35, 'at-limit'],
    ['coach', 'emergency', 90, 'beyond'],
    ['combination', 'service', 38, 'within'],
  ] as const)('%s, %s, %s ft', (vehicle, brake, distanceFt, comparison) => {
    expect(told(judgeStop({ ...stop, vehicle, brake, distanceFt })).judgement.comparison).toBe(comparison);
  });
  it.each([
    [21, 34, 30.839],
    [19, 30, 33.241],
  ])('%s mph in %s ft corrected to 20 mph: %s ft', (speedMph, distanceFt, corrected) => {
    const found = told(judgeStop({ ...stop, vehicle: 'coach', brake: 'service', speedMph, distanceFt }));
    expect(found.correctedFt).toBeCloseTo(corrected, 3);
  });
  it('the table’s own deceleration gives its distances within the delay of the air', () => {
    expect(told(stoppingDistanceFt(20, 21)).distanceFt).toBeCloseTo(20.4868, 4);
    expect(told(stoppingDistanceFt(20, 17)).distanceFt).toBeCloseTo(25.3072, 4);
    expect(told(stoppingDistanceFt(20, 14)).distanceFt).toBeCloseTo(30.7302, 4);
    expect(told(stoppingDistanceFt(20, 14, 0.1456)).distanceFt).toBeCloseTo(35, 2);
  });
  it.each([
    [40, 140.52],
    [55, 256.6],
    [60, 302.97],
  ])('from %s mph at 14 ft/s² with 0.3 s: textbook kinematics', (mph, ft) => {
    expect(told(stoppingDistanceFt(mph, 14, 0.3)).distanceFt).toBeCloseTo(ft, 2);
  });
  it('deceleration from distance and from time; 14 ft/s² is 43.5 % of weight', () => {
    expect(told(meanDeceleration(20, { distanceFt: 31 })).decelerationFtPerS2).toBeCloseTo(13.878, 3);
    expect(told(meanDeceleration(20, { distanceFt: 38 })).decelerationFtPerS2).toBeCloseTo(11.322, 3);
    expect(told(meanDeceleration(20, { seconds: 2.1 }))).toMatchObject({ ok: true });
    expect(told(meanDeceleration(20, { seconds: 2.1 })).forcePercent).toBeCloseTo(43.41, 2);
    expect(told(meanDeceleration(20, { seconds: 1.8 })).forcePercent).toBeCloseTo(50.65, 2);
  });
  it('the table itself: force and deceleration are one figure by standard gravity, NIST SP 811', () => {
    for (const row of Object.values(STOPPING_TABLE)) {
      expect(Math.abs((100 * row.decelerationFtPerS2) / 32.17405 - row.forcePercent)).toBeLessThan(0.1);
    }
    expect(Object.values(STOPPING_TABLE).map((row) => [row.serviceFt, row.emergencyFt])).toEqual([
      [20, 54],
      [25, 66],
      [35, 85],
      [40, 90],
    ]);
  });
  it('38,000 lb need 16,530 lbf', () => {
    expect(told(requiredBrakeForceLbf(38_000, 'coach')).forceLbf).toBeCloseTo(16_530, 6);
  });
  it('an unknown speed and a wrong road are refused', () => {
    const input = { ...stop, vehicle: 'coach', brake: 'service', distanceFt: 33 } as const;
    expect(reasonOf(judgeStop({ ...input, speedUncertaintyMph: 2 }))).toBe('speed-not-known');
    expect(reasonOf(judgeStop({ ...input, road: 'other' }))).toBe('wrong-road');
  });
  it('sides of an axle within 25 %, 49 CFR 570.59(a)(1)', () => {
    const found = told(
      brakeForceShares([
        { leftLbf: 2000, rightLbf: 1500 },
        { leftLbf: 3000, rightLbf: 1500 },
      ]),
    );
    expect(found.axles.map((axle) => axle.sharePercent)).toEqual([43.75, 56.25]);
    expect(found.axles.map((axle) => axle.judgement.comparison)).toEqual(['at-limit', 'beyond']);
    expect(reasonOf(brakeForceShares([{ leftLbf: 0, rightLbf: 0 }]))).toBe('no-force');
  });
});

describe('[MEA-25] steering lash, 49 CFR 393.209(b)', () => {
  it.each([
    [20, true, 5, 'within'],
    [20, true, 5.5, 'beyond'],
    [20, false, 3, 'beyond'],
  ])('%s in wheel, power %s, %s in', (wheel, power, lash, comparison) => {
    expect(told(judgeLash(lash, 0.05, wheel, power)).judgement.comparison).toBe(comparison);
  });
  it('the table of 393.209(b)(1)', () => {
    const sizes = [14, 16, 18, 19, 20, 21, 22];
    expect(sizes.map((size) => told(lashLimit(size, false)).limit.value)).toEqual([
      2, 2, 2.25, 2.375, 2.5, 2.625, 2.75,
    ]);
    expect(sizes.map((size) => told(lashLimit(size, true)).limit.value)).toEqual([
      4.25, 4.25, 4.75, 5, 5.25, 5.5, 5.75,
    ]);
  });
  it('sizes outside the table go by angle: 24 in is 6.28 and 2.93 in', () => {
    expect(told(lashLimit(17, true)).limit.value).toBeCloseTo((17 * Math.PI) / 12, 9);
    expect(told(lashLimit(24, true)).limit.value).toBeCloseTo(6.283, 3);
    expect(told(lashLimit(24, false)).limit.value).toBeCloseTo(2.932, 3);
  });
  it.each([
    [2.5, 20, 14.3239],
    [2.25, 18, 14.3239],
    [5.25, 20, 30.0803],
    [4.75, 18, 30.2394],
    [2, 20, 11.4592],
  ])('%s in on %s in is %s°', (lash, wheel, degrees) => {
    expect(told(lashDegrees(lash, wheel)).degrees).toBeCloseTo(degrees, 4);
  });
});
