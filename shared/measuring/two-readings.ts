import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';
import { meanOfRepeats, type RepeatRefusal, type WorkedFigure } from './repeats.ts';

/**
 * First minus second, over as many pairs as were read: two gauges, two thermometers.
 *
 * @param lookUncertainty  one standard uncertainty of one look at one of the two.
 * @returns refused `too-few` without a whole pair; `out-of-range`.
 * @source Differences in pairs, √2·u each (GUM); the mean of the pairs as `meanOfRepeats`.
 */
export function differenceOfPairs(
  pairs: readonly (readonly [first: number, second: number])[],
  lookUncertainty: number,
): Outcome<WorkedFigure, RepeatRefusal> {
  return meanOfRepeats(
    pairs.map(([first, second]) => first - second),
    Math.SQRT2 * lookUncertainty,
  );
}

/** How a reading is told against a figure of the book. */
export type BookForm =
  /** 100 = the book's figure. */
  | 'share'
  /** Above the book is positive, below negative. */
  | 'off'
  /** Below the book is positive. */
  | 'below';

/**
 * The mean of readings in per cent of the book's figure, of which the uncertainty is not known and not counted.
 *
 * @param lookUncertainty  one standard uncertainty of a look, unit of the readings.
 * @source 100·r/b, r/b − 1 or 1 − r/b; relative uncertainty as the reading's (GUM).
 */
export function againstBook(
  readings: readonly number[],
  book: number,
  lookUncertainty: number,
  form: BookForm,
): Outcome<WorkedFigure, RepeatRefusal> {
  const bad = outOfRange(['figure of the book', book, 1e-6, 1e6, '']);
  if (bad) return bad;
  const mean = meanOfRepeats(readings, lookUncertainty);
  if (!mean.ok) return mean;
  const share = (100 * mean.value) / book;
  const uncertainty = (100 * mean.uncertainty) / book;
  return { ok: true, value: form === 'share' ? share : form === 'off' ? share - 100 : 100 - share, uncertainty };
}

/**
 * What is lost over hours, brought to another number of hours: pressure or height overnight.
 *
 * @param hours  between the two looks, 1…72.
 * @param wanted  hours that the figure is for.
 * @returns refused `rose` where the second reading is above the first by more than both looks explain; `out-of-range`.
 * @source Straight in time (judgement: a loss slows as pressure falls, so a short test scaled up is on the careful side);
 *   √2·u scaled alike (GUM).
 */
export function lossOver(
  before: number,
  after: number,
  hours: number,
  wanted: number,
  lookUncertainty: number,
): Outcome<WorkedFigure, OutOfRange | 'rose'> {
  const bad = outOfRange(
    ['first reading', before, 0, 1e4, ''],
    ['second reading', after, 0, 1e4, ''],
    ['time between', hours, 1, 72, 'h'],
    ['time wanted', wanted, 0.1, 72, 'h'],
    ['uncertainty of a look', lookUncertainty, 0, 1e4, ''],
  );
  if (bad) return bad;
  const own = Math.SQRT2 * lookUncertainty;
  if (after - before > 3 * own + 1e-9)
    return refuse('rose', `It rose from ${before} to ${after}. Nothing is lost here: look at the readings again.`);
  return { ok: true, value: (Math.max(0, before - after) * wanted) / hours, uncertainty: (own * wanted) / hours };
}

/**
 * Left against right of one axle in per cent of both together.
 *
 * @param lookUncertainty  one standard uncertainty of a weight or reading.
 * @source 100·|l − r|/(l + r); first order (GUM).
 */
export function sideToSide(left: number, right: number, lookUncertainty: number): Outcome<WorkedFigure, OutOfRange> {
  const bad = outOfRange(
    ['left', left, 1e-3, 1e6, ''],
    ['right', right, 1e-3, 1e6, ''],
    ['uncertainty of a look', lookUncertainty, 0, 1e6, ''],
  );
  if (bad) return bad;
  const sum = left + right;
  return {
    ok: true,
    value: (100 * Math.abs(left - right)) / sum,
    uncertainty: (200 * lookUncertainty * Math.hypot(left, right)) / sum ** 2,
  };
}
