import { judge, type Judgement } from './limit.ts';
import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';
import { strokeLimit, type Chamber } from './stroke-limits.ts';

/** Chalk mark and rule read to about 1/16 in: one standard uncertainty (judgement). */
export const STROKE_UNCERTAINTY_IN = 1 / 16;

export interface StrokeReading {
  readonly chamber: Chamber;
  /** Movement of the pushrod from released to fully applied. */
  readonly strokeIn: number;
  readonly uncertaintyIn?: number;
  /** Tank pressure during the full application, engine off. */
  readonly reservoirPsi: number;
}

export interface StrokeJudgement {
  readonly judgement: Judgement;
  /** Beyond the limit, 0 when not. */
  readonly beyondIn: number;
}

/**
 * A pushrod stroke held against its readjustment limit.
 *
 * @returns refused `wrong-pressure` outside 80–100 psi (a soft application shows a stroke that is too short), and as
 *   `strokeLimit`.
 * @source 80–90 psi in Appendix A 1.a(5)(a) (seen), 90–100 psi in the common roadside procedure (seen): both accepted.
 *   An automatic adjuster over the limit is not cured by hand adjustment: find what is worn or failed (practice).
 */
export function judgeStroke(
  reading: StrokeReading,
): Outcome<StrokeJudgement, OutOfRange | 'unknown-chamber' | 'no-such-class' | 'wrong-pressure'> {
  const uncertainty = reading.uncertaintyIn ?? STROKE_UNCERTAINTY_IN;
  const bad = outOfRange(
    ['stroke', reading.strokeIn, 0, 5, 'in'],
    ['uncertainty', uncertainty, 0, 1, 'in'],
    ['tank pressure', reading.reservoirPsi, 0, 150, 'psi'],
  );
  if (bad) return bad;
  if (reading.reservoirPsi < 80 || reading.reservoirPsi > 100) {
    return refuse(
      'wrong-pressure',
      `The stroke was taken at ${reading.reservoirPsi} psi; the limits hold for a full application at 80 to 100 psi with the engine off. Bring the tanks there and measure again.`,
    );
  }
  const found = strokeLimit(reading.chamber);
  if (!found.ok) return found;
  const judgement = judge(reading.strokeIn, uncertainty, found.limit);
  return { ok: true, judgement, beyondIn: judgement.comparison === 'beyond' ? -judgement.margin : 0 };
}

/** Both ends of an axle must carry chambers of one size and slack adjusters of one effective length. */
export interface AxlePair {
  readonly left: { readonly chamberSize: string; readonly slackLengthIn: number };
  readonly right: { readonly chamberSize: string; readonly slackLengthIn: number };
}

/**
 * Whether an axle's two brakes are built alike.
 *
 * @param toleranceIn  by which two slack lengths may be read differently, 0…0.25 in; holes are half an inch apart or so.
 * @source 49 CFR 393.47(b) and (c) (seen).
 */
export function axleMatches(
  axle: AxlePair,
  toleranceIn = 1 / 8,
): Outcome<{ readonly sameChamber: boolean; readonly sameSlack: boolean }, OutOfRange> {
  const bad = outOfRange(
    ['slack adjuster length, left', axle.left.slackLengthIn, 3, 10, 'in'],
    ['slack adjuster length, right', axle.right.slackLengthIn, 3, 10, 'in'],
    ['tolerance', toleranceIn, 0, 0.25, 'in'],
  );
  return (
    bad ?? {
      ok: true,
      sameChamber: axle.left.chamberSize === axle.right.chamberSize,
      sameSlack: Math.abs(axle.left.slackLengthIn - axle.right.slackLengthIn) <= toleranceIn,
    }
  );
}

/**
 * Movement of a scribe mark on the lining edge of a wedge brake when applied.
 *
 * @param uncertaintyIn  one standard uncertainty, in.
 * @source At most 1/16 in, 49 CFR 393.47(f) (memory).
 */
export function judgeWedgeMovement(
  movementIn: number,
  uncertaintyIn: number,
): Outcome<{ readonly judgement: Judgement }, OutOfRange> {
  const bad = outOfRange(['lining movement', movementIn, 0, 2, 'in'], ['uncertainty', uncertaintyIn, 0, 1, 'in']);
  return (
    bad ?? {
      ok: true,
      judgement: judge(movementIn, uncertaintyIn, {
        id: 'wedge-lining-movement',
        value: 1 / 16,
        unit: 'in',
        side: 'at-most',
        atLimit: 'passes',
        source: '49 CFR 393.47(f)',
        status: 'memory',
      }),
    }
  );
}
