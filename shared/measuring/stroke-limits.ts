import type { Limit, LimitStatus } from './limit.ts';
import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';

/** Stroke class of a clamp chamber; `unknown` where the marks cannot be read: the shorter limit then holds. */
export type StrokeClass = 'standard' | 'long' | 'long-3-in' | 'unknown';

export type BoltSize = 'A' | 'B' | 'C' | 'D' | 'E' | 'F' | 'G';

/** A brake chamber as it is read off the coach. */
export type Chamber =
  | { readonly kind: 'clamp'; readonly size: number; readonly strokeClass: StrokeClass }
  | { readonly kind: 'bolt'; readonly size: BoltSize }
  /** Rolling diaphragm. */
  | { readonly kind: 'rotochamber'; readonly size: number }
  /** Double diaphragm with roller-lock parking, on older coaches; type 30 only. */
  | { readonly kind: 'double-diaphragm' }
  /** In none of the tables; the rated stroke is marked on it, a readjustment limit of the maker may be. */
  | { readonly kind: 'unlisted'; readonly ratedStrokeIn: number; readonly markedLimitIn?: number };

interface Row {
  readonly standard: number;
  readonly long?: number;
  readonly long3?: number;
  readonly status: LimitStatus;
}

const CLAMP: Readonly<Record<number, Row>> = {
  6: { standard: 1.25, status: 'memory' },
  9: { standard: 1.375, status: 'memory' },
  12: { standard: 1.375, long: 1.75, status: 'second-hand' },
  16: { standard: 1.75, long: 2, status: 'second-hand' },
  20: { standard: 1.75, long: 2, long3: 2.5, status: 'second-hand' },
  24: { standard: 1.75, long: 2, long3: 2.5, status: 'second-hand' },
  30: { standard: 2, long: 2.5, status: 'second-hand' },
  36: { standard: 2.25, status: 'second-hand' },
};
const BOLT: Readonly<Record<BoltSize, number>> = { A: 1.375, B: 1.75, C: 1.75, D: 1.25, E: 1.375, F: 2.25, G: 2 };
const ROTO: Readonly<Record<number, number>> = { 9: 1.5, 12: 1.5, 16: 2, 20: 2, 24: 2, 30: 2.25, 36: 2.75, 50: 3 };

const SOURCE = '49 CFR 393.47(e) and Appendix A to Part 396, 1.a(5)';

/**
 * The readjustment limit of a chamber's pushrod stroke, in inches. A stroke at the limit passes ("must not be greater").
 *
 * @returns refused `unknown-chamber` for a size that the table does not have, `no-such-class` for a stroke class that the
 *   size is not made in, `out-of-range`.
 * @source 49 CFR 393.47(e): words seen; clamp table second-hand in the sizes marked so, the rest from memory. Unlisted:
 *   80 % of the rated stroke and never above the maker's mark, Appendix A 1.a(5)(b) (seen).
 */
export function strokeLimit(
  chamber: Chamber,
): Outcome<{ readonly limit: Limit }, OutOfRange | 'unknown-chamber' | 'no-such-class'> {
  switch (chamber.kind) {
    case 'clamp':
      return clampLimit(chamber.size, chamber.strokeClass);
    case 'bolt':
      return { ok: true, limit: limitOf(`stroke-bolt-${chamber.size}`, BOLT[chamber.size], 'memory') };
    case 'rotochamber': {
      const value = ROTO[chamber.size];
      return value === undefined
        ? unknown('rotochamber', chamber.size, ROTO)
        : { ok: true, limit: limitOf(`stroke-rotochamber-${chamber.size}`, value, 'memory') };
    }
    case 'double-diaphragm':
      return { ok: true, limit: limitOf('stroke-double-diaphragm-30', 2.25, 'memory') };
    case 'unlisted': {
      const bad = outOfRange(
        ['rated stroke', chamber.ratedStrokeIn, 1, 5, 'in'],
        ['readjustment limit marked', chamber.markedLimitIn ?? 1, 0.5, 5, 'in'],
      );
      const value = Math.min(0.8 * chamber.ratedStrokeIn, chamber.markedLimitIn ?? Infinity);
      return bad ?? { ok: true, limit: limitOf('stroke-unlisted', value, 'seen') };
    }
  }
}

function clampLimit(
  size: number,
  strokeClass: StrokeClass,
): Outcome<{ readonly limit: Limit }, 'unknown-chamber' | 'no-such-class'> {
  const row = CLAMP[size];
  if (!row) return unknown('clamp', size, CLAMP);
  const value = { standard: row.standard, unknown: row.standard, long: row.long, 'long-3-in': row.long3 }[strokeClass];
  if (value === undefined) {
    return refuse(
      'no-such-class',
      `No ${strokeClass === 'long' ? 'long-stroke' : 'three-inch-stroke'} limit is listed for clamp type ${size}. Read the marks again, or choose "unknown" for the shorter limit.`,
    );
  }
  // The three-inch figure of type 20 alone was not found in any copy.
  const status = size === 20 && strokeClass === 'long-3-in' ? 'memory' : row.status;
  return { ok: true, limit: limitOf(`stroke-clamp-${size}-${strokeClass}`, value, status) };
}

function unknown(kind: string, size: number, table: object): ReturnType<typeof refuse<'unknown-chamber'>> {
  return refuse(
    'unknown-chamber',
    `No ${kind} chamber of type ${size} is listed; known are ${Object.keys(table).join(', ')}. Measure its diameter, or enter it as unlisted with the stroke marked on it.`,
  );
}

function limitOf(id: string, value: number, status: LimitStatus): Limit {
  return { id, value, unit: 'in', side: 'at-most', atLimit: 'passes', source: SOURCE, status };
}
