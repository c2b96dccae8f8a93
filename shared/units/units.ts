/** Units people read from gauges, with exact factors. `convert.ts` uses them, `format.ts` prints them. */

export type Quantity =
  | 'pressure'
  | 'pressure-rate'
  | 'length'
  | 'temperature'
  | 'temperature-difference'
  | 'torque'
  | 'speed'
  | 'volume'
  | 'consumption'
  | 'angle'
  | 'drop-rate'
  | 'ratio'
  | 'percent'
  | 'voltage'
  | 'resistance'
  | 'rotation'
  | 'frequency'
  | 'flow'
  | 'force'
  | 'time';

export interface Unit {
  readonly id: string;
  /** As printed behind a figure. */
  readonly symbol: string;
  /** As read aloud. */
  readonly spoken: string;
  readonly quantity: Quantity;
  /** value in base unit = value × factor + offset. */
  readonly factor: number;
  readonly offset: number;
  /** Other ways people write it, lower case without blanks. */
  readonly aliases: readonly string[];
  /** Digits after the point when printed. */
  readonly digits: number;
}

// Pounds-force per square inch in kilopascal: 0.45359237 kg × 9.80665 m/s² / (0.0254 m)² / 1000, exact by definition.
// Source: NIST SP 811, appendix B (factors exact by definition of pound, standard gravity and inch).
const PSI_KPA = (0.45359237 * 9.80665) / (0.0254 * 0.0254) / 1000;
const LBFT_NM = 0.45359237 * 9.80665 * 0.3048;
/** Conventional inch of water and of mercury, NIST SP 811 appendix B. */
const INH2O_KPA = 0.24908891;
const INHG_KPA = 3.38638864;
/** Pound-force in newton: 0.45359237 kg × 9.80665 m/s², exact by definition. */
const LBF_N = 0.45359237 * 9.80665;
const QUART_L = 0.946352946;
const MILE_KM = 1.609344;

function unit(
  id: string,
  symbol: string,
  spoken: string,
  quantity: Quantity,
  factor: number,
  digits: number,
  aliases: readonly string[] = [],
  offset = 0,
): Unit {
  return { id, symbol, spoken, quantity, factor, offset, aliases, digits };
}

/** Every unit the program knows. The first of a quantity is its base. */
export const UNITS: readonly Unit[] = [
  unit('kPa', 'kPa', 'kilopascal', 'pressure', 1, 0, ['kilopascal', 'kilopascals']),
  unit('psi', 'psi', 'pounds per square inch', 'pressure', PSI_KPA, 0, [
    'psig',
    'lb/in2',
    'lbs/in2',
    'pounds',
    'lbf/in2',
  ]),
  unit('bar', 'bar', 'bar', 'pressure', 100, 2, ['bars']),
  unit('inH2O', 'in of water', 'inches of water', 'pressure', INH2O_KPA, 1, [
    'inh20',
    'inwater',
    'inchesofwater',
    'inofwater',
    'inwc',
    '"h2o',
  ]),
  unit('inHg', 'in of mercury', 'inches of mercury', 'pressure', INHG_KPA, 1, ['inchesofmercury', 'inofmercury']),
  unit('kPa/min', 'kPa/min', 'kilopascal per minute', 'pressure-rate', 1, 1, ['kpaperminute', 'kpa/minute']),
  unit('psi/min', 'psi/min', 'psi per minute', 'pressure-rate', PSI_KPA, 1, [
    'psiperminute',
    'psi/minute',
    'psipermin',
  ]),
  unit('bar/min', 'bar/min', 'bar per minute', 'pressure-rate', 100, 3, ['barperminute', 'bar/minute']),
  unit('mm', 'mm', 'millimetres', 'length', 1, 1, ['millimetre', 'millimeter', 'millimetres', 'millimeters']),
  unit('in', 'in', 'inches', 'length', 25.4, 3, ['inch', 'inches', '"', '″', 'in.']),
  unit('degC', '°C', 'degrees Celsius', 'temperature', 1, 0, ['c', '°c', 'celsius', 'degc']),
  unit('degF', '°F', 'degrees Fahrenheit', 'temperature', 5 / 9, 0, ['f', '°f', 'fahrenheit', 'degf'], (-32 * 5) / 9),
  unit('K', 'K', 'kelvin difference', 'temperature-difference', 1, 0, ['kelvin', 'degc-diff', 'cdiff']),
  unit('degF-diff', '°F', 'degrees Fahrenheit difference', 'temperature-difference', 5 / 9, 0, [
    'fdiff',
    '°fdifference',
    'degfdiff',
  ]),
  unit('N·m', 'N·m', 'newton metres', 'torque', 1, 0, ['nm', 'n.m', 'n*m', 'newtonmetre', 'newtonmeter']),
  unit('lb-ft', 'lb-ft', 'pound-feet', 'torque', LBFT_NM, 0, [
    'ft-lb',
    'ftlb',
    'lbft',
    'ft-lbs',
    'ft·lbf',
    'lbf·ft',
    'footpounds',
  ]),
  unit('km/h', 'km/h', 'kilometres per hour', 'speed', 1, 0, ['kmh', 'kph', 'kmph']),
  unit('mph', 'mph', 'miles per hour', 'speed', MILE_KM, 0, ['mi/h', 'milesperhour']),
  unit('L', 'L', 'litres', 'volume', 1, 1, ['l', 'litre', 'liter', 'litres', 'liters']),
  unit('qt', 'qt', 'US quarts', 'volume', QUART_L, 1, ['quart', 'quarts', 'usqt']),
  unit('gal', 'gal', 'US gallons', 'volume', 4 * QUART_L, 1, ['gallon', 'gallons', 'usgal']),
  unit('L/1000km', 'L per 1,000 km', 'litres per thousand kilometres', 'consumption', 1, 1, [
    'l/1000km',
    'litresper1000km',
  ]),
  unit('qt/1000mi', 'qt per 1,000 mi', 'quarts per thousand miles', 'consumption', QUART_L / MILE_KM, 1, [
    'quartsper1000miles',
    'qtper1000mi',
    'qt/1000miles',
    'quarts/1000miles',
  ]),
  unit('deg', '°', 'degrees of angle', 'angle', 1, 1, ['°', 'degree', 'degrees']),
  unit('drops/min', 'drops/min', 'drops per minute', 'drop-rate', 1, 0, ['drops/minute', 'dropsperminute', 'dpm']),
  unit('ratio', '', 'as a ratio', 'ratio', 1, 2, ['', '1', 'times', 'x']),
  unit('percent', '%', 'per cent', 'percent', 1, 0, ['%', 'percent', 'per cent', 'pct']),
  unit('V', 'V', 'volts', 'voltage', 1, 1, ['volt', 'volts']),
  unit('ohm', 'ohm', 'ohms', 'resistance', 1, 1, ['ohms', 'ω', 'Ω']),
  unit('rpm', 'rpm', 'revolutions per minute', 'rotation', 1, 0, ['r/min', '1/min', 'min-1', 'revs']),
  unit('Hz', 'Hz', 'beats per second', 'frequency', 1, 1, ['hertz', '1/s', 'beatspersecond']),
  unit('L/min', 'L/min', 'litres per minute', 'flow', 1, 1, ['l/minute', 'litresperminute', 'litersperminute', 'lpm']),
  unit('gal/min', 'gal/min', 'US gallons per minute', 'flow', 4 * QUART_L, 1, [
    'gallonsperminute',
    'gal/minute',
    'gpm',
  ]),
  unit('N', 'N', 'newton', 'force', 1, 0, ['newton', 'newtons']),
  unit('lbf', 'lbf', 'pounds-force', 'force', LBF_N, 0, ['lbs', 'lb', 'poundsforce', 'poundforce']),
  unit('s', 's', 'seconds', 'time', 1, 0, ['sec', 'second', 'seconds']),
  unit('min', 'min', 'minutes', 'time', 60, 1, ['minute', 'minutes']),
  unit('h', 'h', 'hours', 'time', 3600, 1, ['hour', 'hours', 'hrs']),
];
