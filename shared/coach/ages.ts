import { tyreWeek } from './field-value.ts';
import { inFirstUnit } from './measures.ts';
import type { KnownValue } from './profile.ts';

const DAY_MS = 86_400_000;
const DAYS_A_YEAR = 365.25;
/** Two odometer readings nearer than this say nothing of a year: judgement. */
const LEAST_DAYS = 30;

/** Whole months from one calendar day to another; below 0 when the second is the earlier. */
export function monthsBetween(from: string, to: string): number {
  const [y1, m1, d1] = from.split('-').map(Number) as [number, number, number];
  const [y2, m2, d2] = to.split('-').map(Number) as [number, number, number];
  return (y2 - y1) * 12 + (m2 - m1) - (d2 < d1 ? 1 : 0);
}

/** A span of months in words: "3 years, 2 months". */
export function monthsWords(months: number): string {
  const years = Math.floor(months / 12);
  const rest = months % 12;
  const of = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;
  if (years === 0) return rest === 0 ? 'less than a month' : of(rest, 'month');
  return rest === 0 ? of(years, 'year') : `${of(years, 'year')}, ${of(rest, 'month')}`;
}

/** The day on which the week of a tyre began, counted from 1 January in sevens: good to a week. */
export function tyreDay(code: string): string | null {
  const found = tyreWeek(code);
  if (!found) return null;
  return new Date(Date.UTC(found.year, 0, 1 + 7 * (found.week - 1))).toISOString().slice(0, 10);
}

/**
 * Miles a year, from the first and the last reading of the odometer.
 *
 * @param readings  oldest first.
 * @returns null with less than two readings, less than a month between them, or a reading that runs backwards.
 */
export function distanceAYear(readings: readonly KnownValue[]): number | null {
  const [first, last] = [readings[0], readings.at(-1)];
  if (!first || !last || typeof first.value !== 'number' || typeof last.value !== 'number') return null;
  const days = (Date.parse(last.on) - Date.parse(first.on)) / DAY_MS;
  const from = inFirstUnit('distance', first.value, first.unit);
  const to = inFirstUnit('distance', last.value, last.unit);
  if (days < LEAST_DAYS || from === null || to === null || to < from) return null;
  return ((to - from) / days) * DAYS_A_YEAR;
}
