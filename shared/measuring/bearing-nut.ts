import { refuse, type Outcome } from './outcome.ts';

/** A tag axle may be built like a steer or like a trailer spindle: choose by nut and thread, not by its place. */
export type SpindleKind = 'steer' | 'drive' | 'trailer';

export interface NutSystem {
  readonly spindle: SpindleKind;
  readonly nut: 'single-with-cotter-pin' | 'double';
  readonly threadsPerInch: number;
  /** Across the thread of the nut; decides the lock torque of steer and trailer jam nuts. */
  readonly nutSizeIn?: number;
  /** Between the nuts of a drive spindle. */
  readonly washer?: 'dowel' | 'tang';
}

export interface NutStep {
  readonly what: string;
  /** lb-ft, lowest and highest; one figure twice where the source gives one; null for a turn or a check. */
  readonly torqueLbFt: readonly [least: number, most: number] | null;
  /** Turns of the nut, loosening; null for a torque or a check. */
  readonly backOffTurns: number | null;
}

export interface NutProcedure {
  readonly cautions: readonly string[];
  readonly steps: readonly NutStep[];
  /** How far the last back-off moves the nut along the spindle, in. */
  readonly lastTravelIn: number;
  readonly source: string;
}

export type NutRefusal = 'not-listed' | 'washer-needed' | 'nut-size-needed';

/** Last back-off in turns. @source TMC RP 618 / 618A; the steer double nut with 12 threads in 618A only. */
const LAST_BACK_OFF: Readonly<Record<string, number>> = {
  'steer single-with-cotter-pin 12': 1 / 6,
  'steer single-with-cotter-pin 18': 1 / 4,
  'steer double 12': 1 / 3,
  'steer double 14': 1 / 2,
  'steer double 18': 1 / 2,
  'drive double 12': 1 / 4,
  'drive double 16': 1 / 4,
  'trailer double 12': 1 / 4,
  'trailer double 16': 1 / 4,
};

/**
 * The steps of a manual wheel-bearing adjustment with their figures.
 *
 * @returns refused `not-listed` for a nut and thread that the source does not have, `washer-needed` for a drive spindle,
 *   `nut-size-needed` for a steer or trailer jam nut.
 * @source TMC RP 618 / 618A, conventional single and double nuts (second-hand, four reprints). Jam nuts of 2 5/8 in and
 *   over 300–400 lb-ft: one reprint; two sheets print 300–400 for smaller trailer nuts too, the lower band is kept.
 */
export function nutProcedure(system: NutSystem): Outcome<NutProcedure, NutRefusal> {
  const key = `${system.spindle} ${system.nut} ${system.threadsPerInch}`;
  const lastTurns = LAST_BACK_OFF[key];
  if (lastTurns === undefined) {
    return refuse(
      'not-listed',
      `No procedure is listed for a ${system.spindle} spindle, ${system.nut.replaceAll('-', ' ')}, ${system.threadsPerInch} threads an inch. Listed: ${Object.keys(LAST_BACK_OFF).join('; ')}. Count the threads again, or follow the maker.`,
    );
  }
  const lock = lockTorque(system);
  if (!lock.ok) return lock;
  return {
    ok: true,
    cautions: [
      'Wheel off the ground on stands, the other wheels chocked.',
      'Never an impact wrench on these nuts: it dents the races.',
      'Oil the bearings with the hub’s own lubricant before tightening.',
    ],
    steps: [
      { what: 'Tighten the adjusting nut while turning the wheel', torqueLbFt: [200, 200], backOffTurns: null },
      { what: 'Back the nut off', torqueLbFt: null, backOffTurns: 1 },
      { what: 'Tighten again while turning the wheel', torqueLbFt: [50, 50], backOffTurns: null },
      { what: 'Back the nut off', torqueLbFt: null, backOffTurns: lastTurns },
      lock.torqueLbFt === null
        ? { what: 'Fit the cotter pin', torqueLbFt: null, backOffTurns: null }
        : { what: 'Fit the washer and tighten the jam nut', torqueLbFt: lock.torqueLbFt, backOffTurns: null },
      { what: 'Measure end play by dial indicator: 0.001 to 0.005 in', torqueLbFt: null, backOffTurns: null },
    ],
    lastTravelIn: lastTurns / system.threadsPerInch,
    source: 'TMC RP 618 / 618A, second-hand',
  };
}

function lockTorque(
  system: NutSystem,
): Outcome<{ readonly torqueLbFt: readonly [number, number] | null }, 'washer-needed' | 'nut-size-needed'> {
  if (system.nut === 'single-with-cotter-pin') return { ok: true, torqueLbFt: null };
  if (system.spindle === 'drive') {
    if (!system.washer) {
      return refuse(
        'washer-needed',
        'A drive spindle’s jam nut has 300–400 lb-ft with a dowel washer and 200–275 with a tang washer. Say which it is.',
      );
    }
    return { ok: true, torqueLbFt: system.washer === 'dowel' ? [300, 400] : [200, 275] };
  }
  if (system.nutSizeIn === undefined || !(system.nutSizeIn > 0)) {
    return refuse(
      'nut-size-needed',
      'A jam nut below 2 5/8 in has 200–300 lb-ft, from 2 5/8 in 300–400. Measure the nut’s thread.',
    );
  }
  return { ok: true, torqueLbFt: system.nutSizeIn < 2.625 ? [200, 300] : [300, 400] };
}

/** Where a torque that was used lies against a step's band. */
export function torqueAgainst(
  torqueLbFt: number,
  [least, most]: readonly [least: number, most: number],
): 'below' | 'inside' | 'above' {
  return torqueLbFt < least ? 'below' : torqueLbFt > most ? 'above' : 'inside';
}
