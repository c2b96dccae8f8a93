import { convert } from './convert.ts';
import { formatQuantity, preferredUnit, type UnitSystem } from './format.ts';

/** Into how many parts a rule, a tape or a chalk mark divides the inch. */
export const INCH_PARTS = [2, 4, 8, 16, 32, 64] as const;
export type InchParts = (typeof INCH_PARTS)[number];

/**
 * The nearest mark of a rule that is divided in fractions, in lowest terms, without unit. Half-way is the longer mark.
 *
 * @param parts  marks to the inch.
 * @example fractionText(1.36, 16) // '1 3/8'
 */
export function fractionText(value: number, parts: InchParts = 16): string {
  const marks = Math.round(Math.abs(value) * parts);
  const whole = Math.floor(marks / parts);
  let [top, bottom] = [marks % parts, parts as number];
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  const sign = value < 0 && marks > 0 ? '−' : '';
  if (top === 0) return `${sign}${whole}`;
  return `${sign}${whole > 0 ? `${whole} ` : ''}${top}/${bottom}`;
}

/**
 * A length as printed where it was read from a rule: the decimal, and beside it the nearest mark, "about" where the
 * value is not on it. Printed as `formatQuantity` does where the reader has millimetres or the value is whole inches.
 *
 * @param unitId  any unit of length.
 * @param parts  marks to the inch of the rule.
 * @param system  left out = printed in the unit given.
 * @throws {UnitError} for a unit that is not known, or is no length.
 * @example formatOnRule(1.375, 'in', 16) // '1.375 in (1 3/8 in)'
 * @example formatOnRule(1.36, 'in', 16) // '1.36 in (about 1 3/8 in)'
 */
export function formatOnRule(value: number, unitId: string, parts: InchParts, system?: UnitSystem): string {
  const inches = convert(value, unitId, 'in');
  const plain = formatQuantity(value, unitId, system);
  if ((system === undefined ? unitId : preferredUnit(unitId, system)) !== 'in') return plain;
  const onMark = Math.abs(inches * parts - Math.round(inches * parts)) < 1e-6;
  const fraction = fractionText(inches, parts);
  if (onMark && !fraction.includes('/')) return plain;
  return `${plain} (${onMark ? '' : 'about '}${fraction} in)`;
}
