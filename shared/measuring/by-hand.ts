import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';
import { meanOfRepeats, type RepeatRefusal, type WorkedFigure } from './repeats.ts';

/** A start and a stop by thumb, each 0.14 s, one standard uncertainty of the time: judgement. */
export const WATCH_S = 0.2;

/**
 * Drops counted in a time.
 *
 * @param drops  counted, whole number, 0…3000.
 * @source n/t; counting alone gives √n (Poisson), and the count may be one off at either end.
 */
export function dropsPerMinute(drops: number, seconds: number): Outcome<WorkedFigure, OutOfRange | 'not-whole'> {
  const bad = outOfRange(['drops', drops, 0, 3000, ''], ['time counted', seconds, 10, 3600, 's']);
  if (bad) return bad;
  if (!Number.isInteger(drops)) return refuse('not-whole', `Drops are counted one by one; found ${drops}.`);
  const perMinute = 60 / seconds;
  return { ok: true, value: drops * perMinute, uncertainty: Math.sqrt(Math.max(drops, 1)) * perMinute };
}

/**
 * Fluid added over a distance.
 *
 * @param quarts  US quarts, filled to the same mark on level ground both times.
 * @param markUncertaintyQt  how well a mark is read, one standard uncertainty.
 * @returns refused `too-short` where the marks alone leave more open than half a quart in 1,000 miles; `out-of-range`.
 * @source 1000·q/d; both marks read, √2·u (GUM). Half a quart: judgement.
 */
export function perThousandMiles(
  quarts: number,
  miles: number,
  markUncertaintyQt: number,
): Outcome<WorkedFigure, OutOfRange | 'too-short'> {
  const bad = outOfRange(
    ['fluid added', quarts, 0, 200, 'US qt'],
    ['distance', miles, 10, 100_000, 'mi'],
    ['uncertainty of a mark', markUncertaintyQt, 0, 5, 'US qt'],
  );
  if (bad) return bad;
  const uncertainty = (1000 * Math.SQRT2 * markUncertaintyQt) / miles;
  if (2 * uncertainty > Math.max(1, (1000 * quarts) / miles))
    return refuse(
      'too-short',
      `Over ${Math.round(miles)} miles the marks alone leave ${uncertainty.toFixed(1)} quarts in 1,000 miles open. Log more miles.`,
    );
  return { ok: true, value: (1000 * quarts) / miles, uncertainty };
}

/**
 * Times with something on over times with it off.
 *
 * @param on, off  seconds, one or more runs each.
 * @returns refused `too-quick` below 1 s, `too-few`, `out-of-range`.
 * @source Ratio of means; relative uncertainties in squares (GUM), a watch by thumb `WATCH_S`.
 */
export function ratioOfTimes(
  on: readonly number[],
  off: readonly number[],
): Outcome<WorkedFigure, RepeatRefusal | 'too-quick'> {
  const first = meanOfRepeats(on, WATCH_S);
  if (!first.ok) return first;
  const second = meanOfRepeats(off, WATCH_S);
  if (!second.ok) return second;
  const quickest = Math.min(...on, ...off);
  if (quickest < 1)
    return refuse('too-quick', `A run took ${quickest} s; below 1 s the thumb decides. Begin at a higher speed.`);
  const value = first.value / second.value;
  return {
    ok: true,
    value,
    uncertainty: value * Math.hypot(first.uncertainty / first.value, second.uncertainty / second.value),
  };
}

export interface FillMarks {
  readonly fromPsi: number;
  readonly toPsi: number;
  readonly seconds: number;
  /** Of one look at the gauge. */
  readonly lookPsi: number;
  /** Fitted over required; left out where the tanks are not known. */
  readonly tankRatio?: number;
}

/**
 * A time between any two marks near 85 and 100 psi as the time for those 15 psi, on tanks of the required size where their
 * ratio is known.
 *
 * @returns refused `wrong-span` outside 75…110 psi or with less than 8 psi between the marks: near cut-out the compressor
 *   is another one than from empty. `out-of-range`.
 * @source Isothermal ideal gas, t ∝ V·Δp; looks and watch in squares (GUM).
 */
export function buildUpFromMarks(marks: FillMarks): Outcome<WorkedFigure, OutOfRange | 'wrong-span'> {
  const ratio = marks.tankRatio ?? 1;
  const bad = outOfRange(
    ['start pressure', marks.fromPsi, 0, 150, 'psi'],
    ['end pressure', marks.toPsi, 0, 150, 'psi'],
    ['time', marks.seconds, 1, 3600, 's'],
    ['uncertainty of a look', marks.lookPsi, 0, 10, 'psi'],
    ['tanks fitted over required', ratio, 0.2, 10, ''],
  );
  if (bad) return bad;
  const span = marks.toPsi - marks.fromPsi;
  if (marks.fromPsi < 75 || marks.toPsi > 110 || span < 8)
    return refuse(
      'wrong-span',
      `From ${marks.fromPsi} to ${marks.toPsi} psi says nothing about 85 to 100. Take marks between 75 and 110 psi, 8 psi or more apart.`,
    );
  const value = (marks.seconds * 15) / span / ratio;
  return {
    ok: true,
    value,
    uncertainty: value * Math.hypot((Math.SQRT2 * marks.lookPsi) / span, 1 / marks.seconds),
  };
}

/**
 * A beat that follows the road, brought to another road speed.
 *
 * @param speedUncertaintyMph  one standard uncertainty.
 * @source f ∝ v; relative uncertainties in squares (GUM). A beat of the engine in another gear does not follow.
 */
export function beatAtSpeed(
  beat: WorkedFigure,
  speedMph: number,
  speedUncertaintyMph: number,
  wantedMph: number,
): Outcome<WorkedFigure, OutOfRange | 'too-far'> {
  const bad = outOfRange(
    ['beat', beat.value, 0.1, 1000, 'Hz'],
    ['uncertainty of the beat', beat.uncertainty, 0, 100, 'Hz'],
    ['speed', speedMph, 5, 90, 'mph'],
    ['uncertainty of the speed', speedUncertaintyMph, 0, 20, 'mph'],
    ['speed wanted', wantedMph, 5, 90, 'mph'],
  );
  if (bad) return bad;
  if (speedMph < wantedMph / 2)
    return refuse(
      'too-far',
      `A beat at ${Math.round(speedMph)} mph says little about ${wantedMph}. Take it at ${Math.round(0.75 * wantedMph)} mph or more.`,
    );
  const value = (beat.value * wantedMph) / speedMph;
  // At the very speed that is asked for the speed still has to be known.
  return {
    ok: true,
    value,
    uncertainty: value * Math.hypot(beat.uncertainty / beat.value, speedUncertaintyMph / speedMph),
  };
}

/**
 * Lash at the rim of a wheel of any size as that of a 20 in wheel: the same angle.
 *
 * @param readings  inches along the rim; the largest counts.
 * @source s ∝ D at one angle.
 */
export function lashOn20In(
  readings: readonly number[],
  wheelIn: number,
  lookIn: number,
): Outcome<WorkedFigure, RepeatRefusal> {
  const bad = outOfRange(
    ['steering wheel diameter', wheelIn, 12, 30, 'in'],
    ...readings.map((each, i) => [`lash ${i + 1}`, each, 0, 20, 'in'] as const),
  );
  if (bad) return bad;
  const most = meanOfRepeats(readings.length === 0 ? [] : [Math.max(...readings)], lookIn);
  if (!most.ok) return most;
  const scale = 20 / wheelIn;
  return { ok: true, value: most.value * scale, uncertainty: most.uncertainty * scale };
}
