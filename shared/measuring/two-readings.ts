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
  pairs: readonly { readonly first: number; readonly second: number }[],
  lookUncertainty: number,
): Outcome<WorkedFigure, RepeatRefusal> {
  return meanOfRepeats(
    pairs.map(({ first, second }) => first - second),
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
 * @param hours   between the two looks, 1 h to a third more than `wanted`.
 * @param wanted  hours that the figure is for.
 * @param unit    of the readings, for the message.
 * @returns after fewer hours than wanted scaled up; after more as measured, which is then the most that it can be
 *   (`atMost`). Refused `too-long` beyond a third more, `rose` where the second reading is above the first by more than both
 *   looks explain; `out-of-range`.
 * @source Straight in time upwards alone (judgement): a leak slows as pressure falls (`pressureAfter`), so a short test
 *   scaled up tells too much, a long one scaled down too little. √2·u scaled alike (GUM). A third: judgement.
 */
export function lossOver(
  before: number,
  after: number,
  hours: number,
  wanted: number,
  lookUncertainty: number,
  unit: string,
): Outcome<WorkedFigure & { readonly atMost: boolean }, OutOfRange | 'rose' | 'too-long'> {
  const bad = outOfRange(
    ['first reading', before, 0, 1e4, unit],
    ['second reading', after, 0, 1e4, unit],
    ['time between', hours, 1, 72, 'h'],
    ['time wanted', wanted, 0.1, 72, 'h'],
    ['uncertainty of a look', lookUncertainty, 0, 1e4, unit],
  );
  if (bad) return bad;
  const most = (4 / 3) * wanted;
  if (hours > most)
    return refuse(
      'too-long',
      `${hours} h lie between the readings; the figure is for ${wanted} h, and a leak slows as it goes. Read again after ${wanted} h, ${Math.floor(most)} h at the most.`,
    );
  const own = Math.SQRT2 * lookUncertainty;
  if (after - before > 3 * own + 1e-9)
    return refuse(
      'rose',
      `It rose from ${before} to ${after} ${unit}. Nothing is lost here: look at the readings again.`,
    );
  const scale = Math.max(1, wanted / hours);
  return { ok: true, value: Math.max(0, before - after) * scale, uncertainty: own * scale, atMost: hours > wanted };
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
