import { convert, unitOf } from './convert.ts';
import { UNITS } from './units.ts';

export type UnitSystem = 'us' | 'metric';

const PREFERRED: Readonly<Record<UnitSystem, readonly string[]>> = {
  us: ['psi', 'psi/min', 'in', 'degF', 'degF-diff', 'lb-ft', 'mph', 'qt', 'qt/1000mi', 'gal/min', 'lbf'],
  metric: ['kPa', 'kPa/min', 'mm', 'degC', 'K', 'N·m', 'km/h', 'L', 'L/1000km', 'L/min', 'N'],
};

/** The unit of the same quantity that people of a system read; the same unit where there is no choice. Water and mercury columns stay: the instrument decides. */
export function preferredUnit(unitId: string, system: UnitSystem): string {
  const unit = unitOf(unitId);
  if (unit.id === 'inH2O' || unit.id === 'inHg') return unit.id;
  const preferred = PREFERRED[system].find((id) => unitOf(id).quantity === unit.quantity);
  return preferred ?? unit.id;
}

/** Digits worth printing after a conversion: as fine as the source figure's own unit, not finer. */
function digitsFor(value: number, unitId: string): number {
  const unit = unitOf(unitId);
  if (unit.id === 'in') return Math.abs(value) < 0.1 ? 4 : 3;
  if (unit.id === 'mm' && Math.abs(value) < 1) return 3;
  return unit.digits;
}

/** A figure without unit, no more digits than the unit deserves, no trailing zeros after the point. */
export function formatNumber(value: number, unitId: string): string {
  const digits = digitsFor(value, unitId);
  // Halves go up although the conversion left 44.449999999999996: 1 3/4 in is 44.5 mm, as regulations print it.
  const steps = Math.round(Number((Math.abs(value) * 10 ** digits).toPrecision(12)));
  const text = ((Math.sign(value) * steps) / 10 ** digits).toFixed(digits);
  const plain = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return plain === '-0' ? '0' : plain.replace('-', '−');
}

/**
 * A value with its unit as printed on screen, converted to what the user reads.
 *
 * @param system  left out = printed in the unit given.
 * @example formatQuantity(100, 'psi', 'metric') // '689 kPa'
 */
export function formatQuantity(value: number, unitId: string, system?: UnitSystem): string {
  const target = system === undefined ? unitOf(unitId).id : preferredUnit(unitId, system);
  const unit = UNITS.find((each) => each.id === target)!;
  const figure = formatNumber(convert(value, unitId, target), target);
  if (unit.symbol === '') return figure;
  return /^[°%]/.test(unit.symbol) && unit.symbol !== '°F' && unit.symbol !== '°C'
    ? `${figure}${unit.symbol}`
    : `${figure} ${unit.symbol}`;
}
