import { outOfRange, type Outcome, type OutOfRange } from './outcome.ts';

/** One service brake of the vehicle. */
export interface ServiceBrake {
  readonly steeringAxle: boolean;
  /** How far the stroke is beyond its limit, in; 0 when it is not. */
  readonly beyondIn: number;
  /** Does not act, or parts are missing or broken, or the lining is soaked in oil or grease. */
  readonly inoperative: boolean;
}

export interface DefectiveShare {
  /** Whole and half brakes. */
  readonly defective: number;
  readonly sharePercent: number;
  /** 20 % or more of the service brakes. */
  readonly tooMany: boolean;
  /** A brake on a steering axle does not act: out of service alone. */
  readonly steeringOut: boolean;
  /** A stop rule: either of the two. */
  readonly doNotDrive: boolean;
}

/**
 * Counts defective brakes the way roadside inspection does.
 *
 * @param brakes  every service brake of the vehicle, 2…16, also the good ones.
 * @source One brake 1/4 in or more beyond its limit counts 1, less than that 1/2 (Québec C-24.2 r.32 s.166(9) for the
 *   6.4 mm step, seen; the half from memory); 20 % of the brakes (the same regulation, and widely reprinted, second-hand);
 *   a dead brake on a steering axle alone (memory). Below the share each defect is still a violation.
 */
export function defectiveShare(brakes: readonly ServiceBrake[]): Outcome<DefectiveShare, OutOfRange> {
  const bad = outOfRange(
    ['number of brakes', brakes.length, 2, 16, ''],
    ...brakes.map((brake, i) => [`stroke beyond its limit, brake ${i + 1}`, brake.beyondIn, 0, 5, 'in'] as const),
  );
  if (bad) return bad;
  const defective = brakes.reduce((sum, brake) => sum + countOf(brake), 0);
  const sharePercent = (100 * defective) / brakes.length;
  // Halves over small counts: a share of 20 % is met exactly by 1 of 5, so no tolerance but the last digit is needed.
  const tooMany = sharePercent >= 20 - 1e-9;
  const steeringOut = brakes.some((brake) => brake.steeringAxle && brake.inoperative);
  return { ok: true, defective, sharePercent, tooMany, steeringOut, doNotDrive: tooMany || steeringOut };
}

function countOf(brake: ServiceBrake): number {
  if (brake.inoperative) return 1;
  if (brake.beyondIn >= 0.25 - 1e-9) return 1;
  return brake.beyondIn > 1e-9 ? 0.5 : 0;
}
