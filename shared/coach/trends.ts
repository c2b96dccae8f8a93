import { convert, isUnit, unitOf } from '../units/index.ts';
import type { PastReading } from './past-reading.ts';

/** One reading in the unit of its trend, with the visit it was taken in. */
export interface TrendPoint {
  readonly visit: string;
  readonly at: string;
  readonly value: number;
  /** As typed. */
  readonly typed: { readonly value: number; readonly unit: string };
}

/** Readings of one check at one place over the visits of a coach, oldest first. */
export interface Trend {
  /** Shared checks of several trees count as one. */
  readonly key: string;
  readonly tree: string;
  readonly check: string;
  readonly site: string | null;
  readonly unit: string;
  readonly points: readonly TrendPoint[];
}

/**
 * Readings gathered over visits: the same check at the same place, in units of one quantity (the newest reading's unit). A
 * reading whose unit is not known, or measures something else, is a trend of its own; so is a difference beside an absolute.
 *
 * @param sharedAs  what a check of a tree is known as in other trees; undefined = it is that tree's own.
 */
export function trendsOf(
  visits: readonly { readonly id: string; readonly readings: readonly PastReading[] }[],
  sharedAs: (tree: string, check: string) => string | undefined,
): readonly Trend[] {
  const groups = new Map<string, { readonly visit: string; readonly reading: PastReading; readonly key: string }[]>();
  for (const { id: visit, readings } of visits)
    for (const reading of readings) {
      const shared = sharedAs(reading.tree, reading.check);
      const key = shared ?? `${reading.tree}/${reading.check}`;
      const group = [key, reading.site ?? '', quantityOf(reading.unit)].join('\n');
      groups.set(group, [...(groups.get(group) ?? []), { visit, reading, key }]);
    }
  return [...groups.values()].map((group) => {
    const sorted = [...group].sort((a, b) => order(a.reading, b.reading));
    const newest = sorted.at(-1)!;
    const { unit } = newest.reading;
    return {
      key: newest.key,
      tree: newest.reading.tree,
      check: newest.reading.check,
      site: newest.reading.site,
      unit,
      points: sorted.map(({ visit, reading: { value, unit: typed, at } }) => ({
        visit,
        at,
        value: typed === unit ? value : convert(value, typed, unit),
        typed: { value, unit: typed },
      })),
    };
  });
}

function order(a: PastReading, b: PastReading): number {
  if (a.at !== b.at) return a.at < b.at ? -1 : 1;
  return a.finding < b.finding ? -1 : a.finding > b.finding ? 1 : 0;
}

/** What a unit measures; the unit itself when this program does not know it. */
function quantityOf(unit: string): string {
  return isUnit(unit) ? unitOf(unit).quantity : `unit ${unit}`;
}
