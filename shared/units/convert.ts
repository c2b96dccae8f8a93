import { nearest } from './nearest.ts';
import { UNITS, type Unit } from './units.ts';

/** A unit that is not known, or two that do not measure the same thing. The message is for the user. */
export class UnitError extends Error {
  readonly code: 'unknown-unit' | 'different-quantities';
  constructor(code: 'unknown-unit' | 'different-quantities', message: string) {
    super(message);
    this.name = 'UnitError';
    this.code = code;
  }
}

const byName = new Map<string, Unit>();
for (const unit of UNITS) {
  byName.set(unit.id, unit);
  for (const name of [unit.id.toLowerCase(), ...unit.aliases]) if (!byName.has(name)) byName.set(name, unit);
}

/**
 * The unit meant by an id or by what people write ("ft-lb", "°F", "kpa/min").
 *
 * @throws {UnitError} `unknown-unit`, naming the nearest known one.
 */
export function unitOf(name: string): Unit {
  const found = byName.get(name) ?? byName.get(name.toLowerCase().replace(/\s+/g, ''));
  if (found) return found;
  const near = nearest(
    name,
    UNITS.map((unit) => unit.id),
  );
  throw new UnitError('unknown-unit', `"${name}" is not a known unit.${near ? ` Nearest: "${near}".` : ''}`);
}

/** Whether a text names a unit. */
export function isUnit(name: string): boolean {
  return byName.has(name) || byName.has(name.toLowerCase().replace(/\s+/g, ''));
}

/** Units that measure the same quantity, in the order of the table. */
export function unitsLike(name: string): readonly Unit[] {
  const { quantity } = unitOf(name);
  return UNITS.filter((unit) => unit.quantity === quantity);
}

/**
 * A value in another unit of the same quantity. Absolute temperatures carry their offset; differences have units of
 * their own (`degF-diff`, `K`), so that the offset of 32 never creeps into a difference.
 *
 * @throws {UnitError} `unknown-unit`; `different-quantities` when the two do not measure the same thing.
 * @example convert(100, 'psi', 'kPa') // 689.4757293168361
 */
export function convert(value: number, from: string, to: string): number {
  const source = unitOf(from);
  const target = unitOf(to);
  if (source.id === target.id) return value;
  if (source.quantity !== target.quantity) {
    const allowed = unitsLike(target.id).map((unit) => unit.id);
    throw new UnitError(
      'different-quantities',
      `"${from}" measures ${source.quantity.replace('-', ' ')}, but ${target.quantity.replace('-', ' ')} is wanted. Allowed: ${allowed.join(', ')}.`,
    );
  }
  return (value * source.factor + source.offset - target.offset) / target.factor;
}

/**
 * A width, such as an uncertainty, in another unit: no offset.
 *
 * @throws {UnitError} as `convert`.
 */
export function convertDifference(value: number, from: string, to: string): number {
  return convert(value, from, to) - convert(0, from, to);
}
