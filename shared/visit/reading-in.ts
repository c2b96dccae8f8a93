import { convert, isUnit, unitOf } from '../units/index.ts';
import type { Reading } from './reading.ts';

/** A reading in another unit of the same quantity; null when it is none. */
export function readingIn({ value, unit }: Reading, to: string): number | null {
  if (unit === to) return value;
  if (!isUnit(unit) || !isUnit(to) || unitOf(unit).quantity !== unitOf(to).quantity) return null;
  return convert(value, unit, to);
}
