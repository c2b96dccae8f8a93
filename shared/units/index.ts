export { convert, convertDifference, isUnit, unitOf, unitsLike, UnitError } from './convert.ts';
export { formatNumber, formatQuantity, preferredUnit, type UnitSystem } from './format.ts';
export { formatOnRule, fractionText, INCH_PARTS, type InchParts } from './fraction.ts';
export { editDistance, nearest } from './nearest.ts';
export { parseNumber } from './parse-number.ts';
export { UNITS, type Quantity, type Unit } from './units.ts';
