import { trendsOf, type Trend } from '../../shared/coach/index.ts';
import type { PastVisit } from '../../shared/host/host-api.ts';
import type { Check } from '../../shared/knowledge/index.ts';
import { convert, formatQuantity, isUnit, unitOf, type UnitSystem } from '../../shared/units/index.ts';

/** A line across the plot: where one result of the check ends and the next begins. */
interface Edge {
  readonly y: number;
  readonly words: string;
}

export interface TrendView {
  readonly id: string;
  readonly title: string;
  readonly place: string;
  readonly rows: readonly {
    readonly visit: string;
    readonly day: string;
    readonly value: string;
    readonly typed: string;
  }[];
  /** Null with fewer than two readings: there is nothing to draw. */
  readonly plot: {
    readonly width: number;
    readonly height: number;
    readonly points: readonly { readonly x: number; readonly y: number }[];
    readonly line: string;
    readonly edges: readonly Edge[];
    readonly low: string;
    readonly high: string;
    readonly from: string;
    readonly to: string;
    readonly spoken: string;
  } | null;
}

export const PLOT = { width: 328, height: 200, left: 8, right: 250, top: 18, bottom: 168 } as const;

/** The check behind a trend; null when its tree was not read. */
export type CheckOf = (tree: string, check: string) => Check | null;

/**
 * Trends of a coach for the page, those with most readings first.
 *
 * @param checkOf  also says under which name other trees know the check, and where its results part.
 */
export function trendViews(
  visits: readonly PastVisit[],
  checkOf: CheckOf,
  nameOf: (tree: string, check: string) => string | undefined,
  system: UnitSystem,
): readonly TrendView[] {
  return trendsOf(visits, (tree, check) => checkOf(tree, check)?.sharedAs)
    .map((trend) => view(trend, checkOf(trend.tree, trend.check), nameOf(trend.tree, trend.check), system))
    .sort((a, b) => b.rows.length - a.rows.length || (a.title < b.title ? -1 : a.title > b.title ? 1 : 0));
}

function view(trend: Trend, check: Check | null, name: string | undefined, system: UnitSystem): TrendView {
  const words = (value: number, unit = trend.unit): string =>
    isUnit(unit) ? formatQuantity(value, unit, system) : `${value} ${unit}`;
  const of = check?.measure?.of ?? '';
  return {
    id: [trend.key, trend.site ?? '', trend.unit].join(' '),
    title: name ?? trend.check.replaceAll('-', ' '),
    place: [trend.site ?? '', of].filter((text) => text !== '').join(', '),
    rows: trend.points.map(({ visit, at, value, typed }) => ({
      visit,
      day: at.slice(0, 10),
      value: words(value),
      typed: isUnit(typed.unit) ? formatQuantity(typed.value, typed.unit) : `${typed.value} ${typed.unit}`,
    })),
    plot: plotOf(trend, check, words),
  };
}

function plotOf(trend: Trend, check: Check | null, words: (value: number) => string): TrendView['plot'] {
  const { points } = trend;
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last || points.length < 2) return null;
  const bounds = edgesOf(trend.unit, check);
  const values = points.map(({ value }) => value);
  const shown = bounds.map(({ value }) => value).filter((value) => near(value, values));
  const low = Math.min(...values, ...shown);
  const high = Math.max(...values, ...shown);
  const span = high - low || Math.abs(high) || 1;
  const times = points.map(({ at }) => Date.parse(at));
  const [from, to] = [Math.min(...times), Math.max(...times)];
  const x = (time: number, i: number): number =>
    PLOT.left +
    10 +
    ((PLOT.right - PLOT.left - 20) * (to > from ? time - from : i)) / (to > from ? to - from : points.length - 1);
  const y = (value: number): number => PLOT.bottom - 10 - ((PLOT.bottom - PLOT.top - 20) * (value - low)) / span;
  const drawn = points.map(({ value }, i) => ({ x: round(x(times[i]!, i)), y: round(y(value)) }));
  return {
    width: PLOT.width,
    height: PLOT.height,
    points: drawn,
    line: `M${drawn.map((point) => `${point.x} ${point.y}`).join('L')}`,
    edges: bounds
      .filter(({ value }) => shown.includes(value))
      .map(({ value, above }) => ({ y: round(y(value)), words: `${words(value)}: ${above}` })),
    low: words(low),
    high: words(high),
    from: first.at.slice(0, 10),
    to: last.at.slice(0, 10),
    spoken: `${points.length} readings from ${first.at.slice(0, 10)} to ${last.at.slice(0, 10)}: first ${words(first.value)}, last ${words(last.value)}. The table below has them all.`,
  };
}

/** Where a result begins, in the unit of the trend, with its words. */
function edgesOf(unit: string, check: Check | null): readonly { readonly value: number; readonly above: string }[] {
  const own = check?.measure?.unit;
  if (own === undefined || !isUnit(unit) || unitOf(own).quantity !== unitOf(unit).quantity) return [];
  return check!.results.flatMap(({ label, range }) =>
    range && range[0] !== null ? [{ value: convert(range[0], own, unit), above: label }] : [],
  );
}

/** Edges far from every reading would flatten the plot: those within one span of the readings are drawn. */
function near(value: number, values: readonly number[]): boolean {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const reach = Math.max(high - low, Math.abs(high) / 2, 1e-9);
  return value >= low - reach && value <= high + reach;
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
