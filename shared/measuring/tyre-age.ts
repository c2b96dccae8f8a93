import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';

const WEEKS = 52;

/**
 * The most that the age of a tyre can be, from the week and year of its DOT code: made on the first day of that week, and
 * the calendar at the last day of its year.
 *
 * @param week  1…53; null where it cannot be read: then the first week counts.
 * @param year  of the code, four figures. @param now  year of the calendar.
 * @returns years; refused `not-made-yet` for a year after `now`, `not-whole`, `out-of-range`.
 * @source 49 CFR 574.5 (memory): two figures of the week, two of the year, on tyres from 2000 on.
 */
export function oldestTyreAge(
  week: number | null,
  year: number,
  now: number,
): Outcome<{ readonly years: number }, OutOfRange | 'not-whole' | 'not-made-yet'> {
  const bad = outOfRange(
    ['week of the DOT code', week ?? 1, 1, 53, ''],
    ['year of the DOT code', year, 2000, 2100, ''],
    ['year now', now, 2000, 2100, ''],
  );
  if (bad) return bad;
  const part = [week ?? 1, year, now].find((each) => !Number.isInteger(each));
  if (part !== undefined)
    return refuse('not-whole', `Weeks and years are whole; found ${part}. 2318 is week 23 of the year 2018.`);
  if (year > now)
    return refuse('not-made-yet', `The code says ${year}, the calendar ${now}. Read the last four figures again.`);
  return { ok: true, years: now + 1 - year - ((week ?? 1) - 1) / WEEKS };
}
