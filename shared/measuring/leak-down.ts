import { ATMOSPHERE_PSI } from './atmosphere.ts';
import { leakLimit, type BrakeState } from './leak-limits.ts';
import { judge, type Judgement } from './limit.ts';
import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';
import { straightLine } from './straight-line.ts';

/** One look at the gauge. */
export interface PressureMark {
  readonly timeS: number;
  /** Gauge pressure. */
  readonly pressurePsi: number;
}

export interface LeakRate {
  /** Positive when the pressure falls. */
  readonly ratePsiPerMin: number;
  readonly uncertaintyPsiPerMin: number;
  /** Degrees of freedom behind the uncertainty; null where the reading uncertainty rules and is taken as well known. */
  readonly degreesOfFreedom: number | null;
  /** False: the drop is lost in the reading uncertainty. Show `belowPsiPerMin` in place of the rate. */
  readonly told: boolean;
  /** Upper end of what the rate can be, one-sided 95 %. */
  readonly belowPsiPerMin: number;
  readonly meanPressurePsi: number;
  readonly durationS: number;
}

export type LeakRefusal =
  OutOfRange | 'too-few-marks' | 'time-not-rising' | 'pressure-rose' | 'still-settling' | 'pressure-too-low';

/** ± 1 psi read by eye is a rectangular distribution: a/√3 (GUM 4.3.7, memory; the ± 1 psi is judgement). */
export const READING_UNCERTAINTY_PSI = 1 / Math.sqrt(3);
const Z95 = 1.6448536269514722;

/**
 * Pressure lost a minute while the system is closed: least-squares slope through the marks.
 *
 * @param marks  two or more, oldest first, `timeS` strictly rising; gauge pressures 20…150 psi (below 20 psi a small leak
 *   is no longer choked and the rate means something else).
 * @param readingUncertaintyPsi  one standard uncertainty of a single look; a constant error of the gauge cancels.
 * @returns the rate with its uncertainty: from the reading uncertainty, or from the scatter about the line where that is
 *   larger (three marks or more). Refused: `too-few-marks`, `time-not-rising`, `pressure-too-low`, `pressure-rose` (the
 *   compressor ran), `still-settling` (the second half lost less than 60 % of the first), `out-of-range`.
 * @source Slope of a straight line, GUM (JCGM 100:2008) type A and B; over a drop of 10 psi or less the line is within 5 %
 *   of the exponential. The 60 % rule is judgement: cooling air imitates a leak that dies away.
 */
export function leakRate(
  marks: readonly PressureMark[],
  readingUncertaintyPsi: number = READING_UNCERTAINTY_PSI,
): Outcome<LeakRate, LeakRefusal> {
  if (marks.length < 2) {
    return refuse('too-few-marks', `A leak rate needs two or more looks at the gauge; found ${marks.length}.`);
  }
  const bad = outOfRange(
    ...marks.flatMap(
      (mark, i) =>
        [
          [`time of mark ${i + 1}`, mark.timeS, 0, 86_400, 's'],
          [`pressure of mark ${i + 1}`, mark.pressurePsi, 0, 150, 'psi'],
        ] as const,
    ),
    ['reading uncertainty', readingUncertaintyPsi, 0.001, 20, 'psi'],
  );
  if (bad) return bad;
  const trouble = notALeak(marks, readingUncertaintyPsi);
  if (trouble) return trouble;
  const line = straightLine(
    marks.map((mark) => mark.timeS / 60),
    marks.map((mark) => mark.pressurePsi),
  );
  if (!line.ok) return refuse('time-not-rising', line.message);
  const known = readingUncertaintyPsi / Math.sqrt(line.sumOfSquares);
  const scattered = line.scatter?.slope ?? 0;
  const ratePsiPerMin = -line.slope;
  const uncertaintyPsiPerMin = Math.max(known, scattered);
  const durationS = marks.at(-1)!.timeS - marks[0]!.timeS;
  return {
    ok: true,
    ratePsiPerMin,
    uncertaintyPsiPerMin,
    degreesOfFreedom: scattered > known ? marks.length - 2 : null,
    told: ratePsiPerMin >= 2 * uncertaintyPsiPerMin,
    belowPsiPerMin: Math.max(0, ratePsiPerMin) + Z95 * uncertaintyPsiPerMin,
    meanPressurePsi: marks.reduce((sum, mark) => sum + mark.pressurePsi, 0) / marks.length,
    durationS,
  };
}

function notALeak(marks: readonly PressureMark[], u: number): Outcome<never, LeakRefusal> | null {
  const late = marks.findIndex((mark, i) => i > 0 && mark.timeS <= marks[i - 1]!.timeS);
  if (late > 0) {
    return refuse(
      'time-not-rising',
      `Mark ${late + 1} is at ${marks[late]!.timeS} s, mark ${late} at ${marks[late - 1]!.timeS} s; times must rise. Delete one or correct its time.`,
    );
  }
  const low = marks.findIndex((mark) => mark.pressurePsi < 20);
  if (low >= 0) {
    return refuse(
      'pressure-too-low',
      `Mark ${low + 1} reads ${marks[low]!.pressurePsi} psi; a leak rate is taken above 20 psi. Charge the system and start again.`,
    );
  }
  // √2·u is the uncertainty of a difference; three of them is no reading slip any more.
  const risen = marks.findIndex(
    (mark, i) => i > 0 && mark.pressurePsi - marks[i - 1]!.pressurePsi > 3 * Math.SQRT2 * u,
  );
  if (risen > 0) {
    return refuse(
      'pressure-rose',
      `The pressure rose from ${marks[risen - 1]!.pressurePsi} to ${marks[risen]!.pressurePsi} psi: air came in during the hold. Stop the engine, close what fills the tanks, and start again.`,
    );
  }
  return stillSettling(marks, u);
}

function stillSettling(marks: readonly PressureMark[], u: number): Outcome<never, LeakRefusal> | null {
  if (marks.length < 3) return null;
  const first = marks[0]!;
  const last = marks.at(-1)!;
  const half = pressureAt(marks, (first.timeS + last.timeS) / 2);
  const early = first.pressurePsi - half;
  const later = half - last.pressurePsi;
  // The middle reading enters twice, so the difference of the two drops has variance 6u².
  const clear = early - later > 2 * Math.sqrt(6) * u;
  if (!clear || later >= 0.6 * early) return null;
  return refuse(
    'still-settling',
    `The first half of the hold lost ${early.toFixed(1)} psi, the second ${later.toFixed(1)} psi: the tanks are still cooling or the valves settling. Wait ten minutes and measure again.`,
  );
}

function pressureAt(marks: readonly PressureMark[], timeS: number): number {
  const next = Math.max(
    1,
    marks.findIndex((mark) => mark.timeS >= timeS),
  );
  const a = marks[next - 1]!;
  const b = marks[next]!;
  return a.pressurePsi + ((b.pressurePsi - a.pressurePsi) * (timeS - a.timeS)) / (b.timeS - a.timeS);
}

export interface LeakDown {
  readonly marks: readonly PressureMark[];
  readonly brake: BrakeState;
  /** Towed units with air brakes of their own; a car on a tow bar counts 0. */
  readonly airBrakedTowedUnits: number;
  readonly readingUncertaintyPsi?: number;
}

/**
 * A leak-down test held against the limit for this brake state and combination.
 *
 * @returns the rate and its judgement; refused as `leakRate`, and `pressure-too-low` when the test began below 80 psi.
 * @source Limits: `leakLimit`. Start between 80 psi and full charge: Ontario daily inspection test, 80–145 psi (seen).
 */
export function judgeLeakDown(
  test: LeakDown,
): Outcome<{ readonly rate: LeakRate; readonly judgement: Judgement }, LeakRefusal> {
  const rate = leakRate(test.marks, test.readingUncertaintyPsi);
  if (!rate.ok) return rate;
  const bad = outOfRange(['number of air-braked towed units', test.airBrakedTowedUnits, 0, 3, '']);
  if (bad) return bad;
  const start = test.marks[0]!.pressurePsi;
  if (start < 80) {
    return refuse(
      'pressure-too-low',
      `The test began at ${start} psi; the limits are for a charged system, 80 psi or more. Charge it and start again.`,
    );
  }
  return {
    ok: true,
    rate,
    judgement: judge(
      rate.ratePsiPerMin,
      rate.uncertaintyPsiPerMin,
      leakLimit(test.brake, test.airBrakedTowedUnits),
      rate.degreesOfFreedom ?? undefined,
    ),
  };
}

/**
 * How long to watch the gauge so that a rate can be told from a limit with one-sided 95 %.
 *
 * @returns minutes, at least; refused `too-near` when the expected rate equals the limit, `out-of-range`.
 * @source t ≥ z·√2·u/|rate − limit|, GUM error propagation for two readings.
 */
export function holdTimeMin(
  expectedPsiPerMin: number,
  limitPsiPerMin: number,
  readingUncertaintyPsi: number = READING_UNCERTAINTY_PSI,
): Outcome<{ readonly holdMin: number }, OutOfRange | 'too-near'> {
  const bad = outOfRange(
    ['expected rate', expectedPsiPerMin, 0, 200, 'psi/min'],
    ['limit', limitPsiPerMin, 0, 200, 'psi/min'],
    ['reading uncertainty', readingUncertaintyPsi, 0.001, 20, 'psi'],
  );
  if (bad) return bad;
  const gap = Math.abs(expectedPsiPerMin - limitPsiPerMin);
  if (gap < 1e-6) {
    return refuse('too-near', 'The expected rate is the limit itself; no time of watching tells them apart.');
  }
  return { ok: true, holdMin: (Z95 * Math.SQRT2 * readingUncertaintyPsi) / gap };
}

/**
 * Pressure lost by cooling alone in a closed tank; it looks like a leak.
 *
 * @param pressurePsi   gauge, 0…150.
 * @param temperatureK  absolute, 200…400.
 * @param coolingK      how much colder the air gets, 0…100.
 * @source Ideal gas at constant volume, Δp = p·ΔT/T with absolute pressure.
 */
export function coolingDropPsi(
  pressurePsi: number,
  temperatureK: number,
  coolingK: number,
): Outcome<{ readonly dropPsi: number }, OutOfRange> {
  const bad = outOfRange(
    ['pressure', pressurePsi, 0, 150, 'psi'],
    ['temperature', temperatureK, 200, 400, 'K'],
    ['cooling', coolingK, 0, 100, 'K'],
  );
  return bad ?? { ok: true, dropPsi: ((pressurePsi + ATMOSPHERE_PSI) * coolingK) / temperatureK };
}
