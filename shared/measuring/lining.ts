import { judge, type Judgement, type Limit } from './limit.ts';
import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';

/** How the lining is made. `drum` where it is not known whether a shoe carries one strip or two pads. */
export type LiningKind = 'drum-one-strip' | 'drum-two-pads' | 'drum' | 'air-disc';

export interface LiningReading {
  readonly axle: 'steering' | 'other';
  readonly kind: LiningKind;
  /** At the shoe centre, thinnest place. */
  readonly thicknessIn: number;
  /** One standard uncertainty: 0.03 in by rule through an opening, 0.01 in with the shoe out (judgement). */
  readonly uncertaintyIn: number;
  /** Soaked in oil, grease or fluid. */
  readonly oily: boolean;
}

export interface LiningJudgement {
  /** What the operating rule asks. */
  readonly rule: Judgement;
  /** What the periodic inspection asks where it asks for more; null where it is the same. */
  readonly advice: Judgement | null;
}

function least(id: string, value: number, source: string): Limit {
  return { id, value, unit: 'in', side: 'at-least', atLimit: 'passes', source, status: 'seen' };
}

const STEER_STRIP = least('lining-steering-one-strip', 3 / 16, '49 CFR 393.47(d)(1), one continuous strip a shoe');
const STEER_PADS = least('lining-steering-two-pads', 1 / 4, '49 CFR 393.47(d)(1), two pads a shoe');
const STEER_YEARLY = least('lining-steering-periodic', 1 / 4, 'Appendix A to Part 396, 1.a(6)(d)');
const OTHER_DRUM = least('lining-other-axle', 1 / 4, '49 CFR 393.47(d)(2); Appendix A to Part 396, 1.a(6)(c)');
const DISC = least('lining-air-disc', 1 / 8, '49 CFR 393.47(d); Appendix A to Part 396, 1.a(6)');

/**
 * A lining or pad thickness held against its limit.
 *
 * @returns refused `oily`: an oil-soaked lining fails at any thickness and no figure mends that; `out-of-range`.
 * @source 49 CFR 393.47(d) and Appendix A to Part 396 (seen). They differ for one strip on a steering axle: 3/16 in by the
 *   operating rule, 1/4 in by the periodic inspection; both are shown.
 */
export function judgeLining(reading: LiningReading): Outcome<LiningJudgement, OutOfRange | 'oily'> {
  if (reading.oily) {
    return refuse(
      'oily',
      'A lining soaked in oil, grease or fluid is defective at any thickness (Appendix A to Part 396, 1.a(6)(b)). Do not drive; find the leak and renew the linings of the whole axle.',
    );
  }
  const bad = outOfRange(
    ['lining thickness', reading.thicknessIn, 0, 1.5, 'in'],
    ['uncertainty', reading.uncertaintyIn, 0, 0.5, 'in'],
  );
  if (bad) return bad;
  const held = (limit: Limit): Judgement => judge(reading.thicknessIn, reading.uncertaintyIn, limit);
  const rule = ruleFor(reading.axle, reading.kind);
  return { ok: true, rule: held(rule), advice: rule === STEER_STRIP ? held(STEER_YEARLY) : null };
}

function ruleFor(axle: LiningReading['axle'], kind: LiningKind): Limit {
  if (kind === 'air-disc') return DISC;
  if (axle === 'other') return OTHER_DRUM;
  return kind === 'drum-one-strip' ? STEER_STRIP : STEER_PADS;
}
