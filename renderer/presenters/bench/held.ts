import type { Judgement, Limit } from '../../../shared/measuring/index.ts';
import {
  convertDifference,
  formatNumber,
  formatQuantity,
  isUnit,
  preferredUnit,
  unitOf,
  type UnitSystem,
} from '../../../shared/units/index.ts';
import { digits } from './figure-kinds.ts';

/** A reading held against a limit, in words and as a line to draw. */
export interface HeldView {
  readonly heading: string;
  readonly icon: 'tick' | 'straddle' | 'cross';
  readonly figure: string;
  /** Two standard uncertainties; null for a reading taken as exact. */
  readonly give: string | null;
  /** That the true value keeps the limit: "89 in 100". */
  readonly within: string;
  readonly limit: LimitView;
  /** What has to be read beside the verdict. */
  readonly notes: readonly string[];
  readonly line: LimitLine;
}

export interface LimitView {
  readonly words: string;
  readonly source: string;
  readonly status: string;
  readonly judged: boolean;
}

/** Places along a line of 300 units: the reading with its spread, and the limit with its bad side. */
export interface LimitLine {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly limit: number;
  readonly badSide: 'left' | 'right';
  readonly ends: readonly [string, string];
  readonly spoken: string;
}

const STATUS: Readonly<Record<Limit['status'], string>> = {
  seen: 'read',
  'second-hand': 'second hand',
  memory: 'from memory',
  practice: 'common practice',
  judgement: 'judgement',
};

const HEADINGS = { meets: 'Within the limit', 'too-close': 'Too close to call', fails: 'Beyond the limit' } as const;
const ICONS = { meets: 'tick', 'too-close': 'straddle', fails: 'cross' } as const;

/**
 * The picture of a judgement.
 *
 * @param value, uncertainty  as they were judged: unit of the limit, one standard uncertainty.
 */
export function heldView(value: number, uncertainty: number, judgement: Judgement, system: UnitSystem): HeldView {
  const { limit } = judgement;
  const notes = [
    judgement.comparison === 'at-limit' && limit.atLimit === 'sources-differ'
      ? 'The reading is exactly at the figure, and there the sources differ.'
      : '',
    judgement.decision === 'too-close'
      ? 'It lies too near the limit for this way of measuring. For the advice to drive it counts as failing; for the diagnosis it stays open.'
      : '',
    judgement.decision === 'fails'
      ? 'It counts against driving. Local law and a licensed mechanic have the last word.'
      : '',
    judgement.decision === 'meets'
      ? 'This one figure keeps its limit. It says nothing about the rest of the coach.'
      : '',
  ].filter((note) => note !== '');
  return {
    heading: HEADINGS[judgement.decision],
    icon: ICONS[judgement.decision],
    figure: inUnits(value, limit.unit, system),
    give: uncertainty > 0 ? differenceInUnits(2 * uncertainty, limit.unit, system) : null,
    within: inHundredWords(judgement.probabilityMeets),
    limit: limitView(limit, system),
    notes,
    line: lineOf(value, uncertainty, limit, system),
  };
}

function inHundredWords(share: number): string {
  if (share > 0.99) return 'More than 99 in 100';
  return share < 0.01 ? 'Less than 1 in 100' : `${Math.round(100 * share)} in 100`;
}

/** A limit with where it is from and how that was read. */
export function limitView(limit: Limit, system: UnitSystem): LimitView {
  return {
    words: `${limit.side === 'at-most' ? 'at most' : 'at least'} ${inUnits(limit.value, limit.unit, system)}`,
    source: limit.source,
    status: STATUS[limit.status],
    judged: limit.status === 'judgement',
  };
}

/** How a limit's figure was read, in words. */
export function statusWords(status: Limit['status']): string {
  return STATUS[status];
}

/** A value in a limit's unit, as the person reads it. */
export function inUnits(value: number, unit: string, system: UnitSystem): string {
  if (!isUnit(unit) || unitOf(unit).quantity === 'percent') return `${digits(value, 1)} ${unit}`.trim();
  return formatQuantity(value, unit, system);
}

/** A difference in a limit's unit: a spread of 18 °F is 10 °C, not −8. */
export function differenceInUnits(value: number, unit: string, system: UnitSystem): string {
  if (!isUnit(unit) || unitOf(unit).quantity === 'percent') return `${digits(value, 1)} ${unit}`.trim();
  const to = preferredUnit(unit, system);
  return `${formatNumber(convertDifference(value, unit, to), to)} ${unitOf(to).symbol}`.trim();
}

const LENGTH = 300;

function lineOf(value: number, uncertainty: number, limit: Limit, system: UnitSystem): LimitLine {
  const low = value - 2 * uncertainty;
  const high = value + 2 * uncertainty;
  const least = Math.min(low, limit.value);
  const most = Math.max(high, limit.value);
  const spread = most - least;
  const room = spread > 0 ? 0.25 * spread : Math.max(0.05 * Math.abs(limit.value), 1e-6);
  const from = least - room >= 0 || least < 0 ? least - room : 0;
  const to = most + room;
  const place = (at: number): number => Math.round((10 * LENGTH * (at - from)) / (to - from)) / 10;
  const give = uncertainty > 0 ? `, give or take ${differenceInUnits(2 * uncertainty, limit.unit, system)}` : '';
  return {
    value: place(value),
    low: place(low),
    high: place(high),
    limit: place(limit.value),
    badSide: limit.side === 'at-most' ? 'right' : 'left',
    ends: [inUnits(from, limit.unit, system), inUnits(to, limit.unit, system)],
    spoken: `${inUnits(value, limit.unit, system)}${give}; the limit is ${limitView(limit, system).words}.`,
  };
}
