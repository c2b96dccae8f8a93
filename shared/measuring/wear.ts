import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';

/** Two readings of one lining, drum or tread. `at` is miles or days, the same in both. */
export interface WearReadings {
  readonly first: { readonly at: number; readonly size: number };
  readonly second: { readonly at: number; readonly size: number };
  /** In the unit of the sizes. */
  readonly limit: number;
  /** `thins`: lining or tread; `grows`: drum diameter. */
  readonly direction: 'thins' | 'grows';
  /** One standard uncertainty of each reading, unit of the sizes. */
  readonly uncertainty: number;
}

export interface RemainingWear {
  /** Until the limit, in the unit of `at`, counted from the second reading. */
  readonly remaining: number;
  /** From the readings alone, first order. */
  readonly uncertainty: number;
  /** With 20 % for how differently routes wear (judgement). */
  readonly uncertaintyWithRoute: number;
  /** Fieller interval, 90 %: one in twenty ends before `low`. */
  readonly low: number;
  readonly high: number;
  /** Half of `low` less 20 %: measure again by then (judgement). Never a date to drive to. */
  readonly measureAgainWithin: number;
}

export type WearRefusal = OutOfRange | 'time-not-rising' | 'no-wear' | 'at-limit' | 'too-little-wear';

const Z90 = 1.6448536269514722;
const ROUTE = 0.2;

/**
 * Wear carried on to its limit, with the interval that two readings allow.
 *
 * @returns refused `time-not-rising`, `no-wear` (none, or a new part in between), `at-limit` (replace), `too-little-wear`
 *   (less than about 4.7 reading uncertainties, so that nothing follows), `out-of-range`.
 * @source Interval of a ratio: E. C. Fieller 1954 (memory), confirmed by simulation in the reference values; first-order
 *   width: GUM.
 */
export function remainingWear(readings: WearReadings): Outcome<RemainingWear, WearRefusal> {
  const { first, second, limit, direction, uncertainty: u } = readings;
  const bad = outOfRange(
    ['first size', first.size, 0, 1000, ''],
    ['second size', second.size, 0, 1000, ''],
    ['limit', limit, 0, 1000, ''],
    ['first mileage or day', first.at, 0, 1e7, ''],
    ['second mileage or day', second.at, 0, 1e7, ''],
    ['reading uncertainty', u, 1e-6, 100, ''],
  );
  if (bad) return bad;
  const span = second.at - first.at;
  if (span <= 0) {
    return refuse(
      'time-not-rising',
      `The second reading is at ${second.at}, the first at ${first.at}; the second must be later. Exchange them.`,
    );
  }
  const sign = direction === 'thins' ? 1 : -1;
  const left = sign * (second.size - limit);
  const worn = sign * (first.size - second.size);
  if (left <= 0) {
    return refuse('at-limit', `The reading of ${second.size} is at or past the limit of ${limit}. Replace the part.`);
  }
  if (worn <= 0) {
    return refuse(
      'no-wear',
      `From ${first.size} to ${second.size} nothing wore: a part was renewed in between, or one reading is wrong.`,
    );
  }
  const g = (2 * Z90 ** 2 * u ** 2) / worn ** 2;
  if (g >= 0.25) {
    return refuse(
      'too-little-wear',
      `The wear of ${Number(worn.toPrecision(3))} between the readings is too small against a reading uncertainty of ${u}. Measure again later.`,
    );
  }
  return { ok: true, ...ratio(left, worn, span, u) };
}

/** Remaining = left/worn·span; var left = u², var worn = 2u², covariance −u². */
function ratio(left: number, worn: number, span: number, u: number): RemainingWear {
  const q = left / worn;
  const remaining = q * span;
  const uncertainty = (span / worn) * u * Math.sqrt(1 + 2 * q ** 2 + 2 * q);
  const zz = (Z90 * u) ** 2;
  const a = worn ** 2 - 2 * zz;
  const b = -2 * (left * worn + zz);
  const c = left ** 2 - zz;
  const root = Math.sqrt(Math.max(0, b ** 2 - 4 * a * c));
  const low = Math.max(0, ((-b - root) / (2 * a)) * span);
  return {
    remaining,
    uncertainty,
    uncertaintyWithRoute: Math.hypot(uncertainty, ROUTE * remaining),
    low,
    high: ((-b + root) / (2 * a)) * span,
    measureAgainWithin: 0.5 * low * (1 - ROUTE),
  };
}

/**
 * The calendar day after so many miles at a yearly mileage.
 *
 * @param from  year, month 1…12 and day of the second reading.
 * @returns the day as `YYYY-MM-DD`; refused `no-such-day`, `out-of-range`.
 */
export function dayAfterMiles(
  from: { readonly year: number; readonly month: number; readonly day: number },
  miles: number,
  milesPerYear: number,
): Outcome<{ readonly day: string }, OutOfRange | 'no-such-day'> {
  const bad = outOfRange(
    ['year', from.year, 1930, 2100, ''],
    ['distance', miles, 0, 1e6, 'mi'],
    ['yearly mileage', milesPerYear, 100, 300_000, 'mi'],
  );
  if (bad) return bad;
  const start = Date.UTC(from.year, from.month - 1, from.day);
  const check = new Date(start);
  if (check.getUTCMonth() !== from.month - 1 || check.getUTCDate() !== from.day) {
    return refuse('no-such-day', `${from.year}-${from.month}-${from.day} is no day of the calendar. Correct it.`);
  }
  const days = Math.floor((miles / milesPerYear) * 365.25);
  const end = new Date(start + days * 86_400_000);
  return Number.isFinite(end.getTime()) && end.getUTCFullYear() <= 9999
    ? { ok: true, day: end.toISOString().slice(0, 10) }
    : refuse('out-of-range', 'The day lies too far ahead to mean anything. Look at the miles and the yearly mileage.');
}
