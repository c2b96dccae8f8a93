import { judge, type Judgement, type Limit } from './limit.ts';
import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';

/** Standard gravity in ft/s². */
const GRAVITY = 32.17404855643044;
const FTPS_PER_MPH = 22 / 15;

/** Vehicle classes of 49 CFR 393.52(d); a coach is `coach`. */
export type StoppingClass = 'car-chassis' | 'light-bus' | 'coach' | 'combination';

interface Row {
  readonly forcePercent: number;
  readonly decelerationFtPerS2: number;
  readonly serviceFt: number;
  readonly emergencyFt: number;
}

/**
 * Stops from 20 mph on a hard, level, dry road, any load.
 *
 * @source 49 CFR 393.52(d): text seen, figures seen in a State copy (67 Pa. Code 175, table I; its one misprint left out).
 *   A private motor home may not be under the rule; the figures are a yardstick.
 */
export const STOPPING_TABLE: Readonly<Record<StoppingClass, Row>> = {
  'car-chassis': { forcePercent: 65.2, decelerationFtPerS2: 21, serviceFt: 20, emergencyFt: 54 },
  'light-bus': { forcePercent: 52.8, decelerationFtPerS2: 17, serviceFt: 25, emergencyFt: 66 },
  coach: { forcePercent: 43.5, decelerationFtPerS2: 14, serviceFt: 35, emergencyFt: 85 },
  combination: { forcePercent: 43.5, decelerationFtPerS2: 14, serviceFt: 40, emergencyFt: 90 },
};

/**
 * Distance from a speed at a steady deceleration, with the delay before the brakes bite.
 *
 * @source d = v·t + v²/(2a).
 */
export function stoppingDistanceFt(
  speedMph: number,
  decelerationFtPerS2: number,
  delayS = 0,
): Outcome<{ readonly distanceFt: number }, OutOfRange> {
  const bad = outOfRange(
    ['speed', speedMph, 1, 100, 'mph'],
    ['deceleration', decelerationFtPerS2, 0.5, 40, 'ft/s²'],
    ['delay', delayS, 0, 5, 's'],
  );
  const v = speedMph * FTPS_PER_MPH;
  return bad ?? { ok: true, distanceFt: v * delayS + v ** 2 / (2 * decelerationFtPerS2) };
}

/**
 * Mean deceleration of a stop, from its distance or from its time, and as a share of the weight.
 *
 * @source a = v²/(2d); a = v/t; share = a/g, g = 32.174 ft/s².
 */
export function meanDeceleration(
  speedMph: number,
  over: { readonly distanceFt: number } | { readonly seconds: number },
): Outcome<{ readonly decelerationFtPerS2: number; readonly forcePercent: number }, OutOfRange> {
  const byDistance = 'distanceFt' in over;
  const bad = outOfRange(
    ['speed', speedMph, 1, 100, 'mph'],
    byDistance ? ['distance', over.distanceFt, 1, 3000, 'ft'] : ['time', over.seconds, 0.2, 120, 's'],
  );
  if (bad) return bad;
  const v = speedMph * FTPS_PER_MPH;
  const a = byDistance ? v ** 2 / (2 * over.distanceFt) : v / over.seconds;
  return { ok: true, decelerationFtPerS2: a, forcePercent: (100 * a) / GRAVITY };
}

export interface Stop {
  readonly vehicle: StoppingClass;
  readonly brake: 'service' | 'emergency';
  readonly speedMph: number;
  readonly speedUncertaintyMph: number;
  readonly distanceFt: number;
  readonly distanceUncertaintyFt: number;
  /** Only a hard, level, dry and clean road can be judged. */
  readonly road: 'hard-level-dry' | 'other';
}

/**
 * A road test from about 20 mph, corrected to 20 mph and held against the table. With brakes suspected unsafe there is no
 * road test: the stop rules come first.
 *
 * @returns the distance from 20 mph with one standard uncertainty, and its judgement; refused `wrong-road`, `speed-not-known` (uncertainty above 1 mph: 5 % of speed is 10 % of distance), `out-of-range`.
 * @source `STOPPING_TABLE`; correction d·(20/v)².
 */
export function judgeStop(
  stop: Stop,
): Outcome<
  { readonly correctedFt: number; readonly uncertainty: number; readonly judgement: Judgement },
  OutOfRange | 'wrong-road' | 'speed-not-known'
> {
  if (stop.road !== 'hard-level-dry') {
    return refuse('wrong-road', 'The table holds for a hard, level, dry and clean road only. Do the test there.');
  }
  const bad = outOfRange(
    ['speed', stop.speedMph, 17, 23, 'mph'],
    ['speed uncertainty', stop.speedUncertaintyMph, 0, 10, 'mph'],
    ['distance', stop.distanceFt, 5, 300, 'ft'],
    ['distance uncertainty', stop.distanceUncertaintyFt, 0, 50, 'ft'],
  );
  if (bad) return bad;
  if (stop.speedUncertaintyMph > 1) {
    return refuse(
      'speed-not-known',
      `The speed is only known within ${stop.speedUncertaintyMph} mph; 1 mph is the most that can be judged. Take it from a satellite receiver.`,
    );
  }
  const correctedFt = stop.distanceFt * (20 / stop.speedMph) ** 2;
  const uncertainty =
    correctedFt *
    Math.hypot((2 * stop.speedUncertaintyMph) / stop.speedMph, stop.distanceUncertaintyFt / stop.distanceFt);
  const row = STOPPING_TABLE[stop.vehicle];
  const limit: Limit = {
    id: `stopping-${stop.vehicle}-${stop.brake}`,
    value: stop.brake === 'service' ? row.serviceFt : row.emergencyFt,
    unit: 'ft',
    side: 'at-most',
    atLimit: 'passes',
    source: '49 CFR 393.52(d), from 20 mph',
    status: 'second-hand',
  };
  return { ok: true, correctedFt, uncertainty, judgement: judge(correctedFt, uncertainty, limit) };
}

/**
 * Force that the brakes of a vehicle must make together.
 *
 * @param weightLb  gross weight as driven, 1 000…100 000 lb.
 */
export function requiredBrakeForceLbf(
  weightLb: number,
  vehicle: StoppingClass,
): Outcome<{ readonly forceLbf: number }, OutOfRange> {
  const bad = outOfRange(['weight', weightLb, 1000, 100_000, 'lb']);
  return bad ?? { ok: true, forceLbf: (weightLb * STOPPING_TABLE[vehicle].forcePercent) / 100 };
}

/**
 * How brake force is shared, from a roller or plate tester.
 *
 * @param forces  one entry a braked axle, lbf, any order.
 * @returns each axle's share of the whole and the difference of its sides as a share of the stronger, with the judgement
 *   against 25 %.
 * @source Sides within 25 %, 49 CFR 570.59(a)(1) (clause seen, figure from memory).
 */
export function brakeForceShares(forces: readonly { readonly leftLbf: number; readonly rightLbf: number }[]): Outcome<
  {
    readonly axles: readonly {
      readonly sharePercent: number;
      readonly differencePercent: number;
      readonly judgement: Judgement;
    }[];
    readonly totalLbf: number;
  },
  OutOfRange | 'no-force'
> {
  const bad = outOfRange(
    ['number of axles', forces.length, 1, 6, ''],
    ...forces.flatMap((axle, i) => [
      [`left force of axle ${i + 1}`, axle.leftLbf, 0, 20_000, 'lbf'] as const,
      [`right force of axle ${i + 1}`, axle.rightLbf, 0, 20_000, 'lbf'] as const,
    ]),
  );
  if (bad) return bad;
  const dead = forces.findIndex((axle) => Math.max(axle.leftLbf, axle.rightLbf) < 1);
  if (dead >= 0) {
    return refuse('no-force', `Axle ${dead + 1} shows no brake force at all: that is a dead brake, not a share.`);
  }
  const totalLbf = forces.reduce((sum, axle) => sum + axle.leftLbf + axle.rightLbf, 0);
  const axles = forces.map(({ leftLbf, rightLbf }) => {
    const differencePercent = (100 * Math.abs(leftLbf - rightLbf)) / Math.max(leftLbf, rightLbf);
    const judgement = judge(differencePercent, 0, {
      id: 'brake-force-sides',
      value: 25,
      unit: '%',
      side: 'at-most',
      atLimit: 'passes',
      source: '49 CFR 570.59(a)(1)',
      status: 'memory',
    });
    return { sharePercent: (100 * (leftLbf + rightLbf)) / totalLbf, differencePercent, judgement };
  });
  return { ok: true, axles, totalLbf };
}
