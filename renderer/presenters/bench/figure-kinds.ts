import { convert, formatQuantity, unitOf, type UnitSystem } from '../../../shared/units/index.ts';

/** What a field of the bench holds. Each is computed in one unit and may be typed in others. */
export type FigureKind =
  | 'pressure'
  | 'pressure-rate'
  | 'length'
  | 'temperature'
  | 'temperature-difference'
  | 'speed'
  | 'volume'
  | 'distance'
  | 'seconds'
  | 'minutes'
  | 'rotation'
  | 'frequency'
  | 'torque'
  | 'percent'
  | 'weight'
  | 'feet'
  | 'hours'
  | 'force'
  | 'power'
  | 'fluid'
  | 'fluid-use'
  | 'viscosity'
  | 'angle'
  | 'plain';

interface KindUnits {
  /** The unit that the calculations take. */
  readonly base: string;
  readonly us: string;
  readonly metric: string;
  readonly choices: readonly string[];
}

const KINDS: Readonly<Record<FigureKind, KindUnits>> = {
  pressure: { base: 'psi', us: 'psi', metric: 'kPa', choices: ['psi', 'kPa', 'bar'] },
  'pressure-rate': { base: 'psi/min', us: 'psi/min', metric: 'kPa/min', choices: ['psi/min', 'kPa/min', 'bar/min'] },
  length: { base: 'in', us: 'in', metric: 'mm', choices: ['in', 'mm'] },
  temperature: { base: 'degF', us: 'degF', metric: 'degC', choices: ['degF', 'degC'] },
  'temperature-difference': { base: 'degF-diff', us: 'degF-diff', metric: 'K', choices: ['degF-diff', 'K'] },
  speed: { base: 'mph', us: 'mph', metric: 'km/h', choices: ['mph', 'km/h'] },
  volume: { base: 'in³', us: 'in³', metric: 'L', choices: ['in³', 'L', 'gal'] },
  distance: { base: 'mi', us: 'mi', metric: 'km', choices: ['mi', 'km'] },
  seconds: { base: 's', us: 's', metric: 's', choices: ['s', 'min'] },
  minutes: { base: 'min', us: 'min', metric: 'min', choices: ['min', 's'] },
  torque: { base: 'lb-ft', us: 'lb-ft', metric: 'N·m', choices: ['lb-ft', 'N·m'] },
  rotation: { base: 'rpm', us: 'rpm', metric: 'rpm', choices: ['rpm'] },
  frequency: { base: 'Hz', us: 'Hz', metric: 'Hz', choices: ['Hz'] },
  weight: { base: 'lb', us: 'lb', metric: 'kg', choices: ['lb', 'kg'] },
  feet: { base: 'ft', us: 'ft', metric: 'm', choices: ['ft', 'm'] },
  hours: { base: 'h', us: 'h', metric: 'h', choices: ['h', 'min'] },
  force: { base: 'lbf', us: 'lbf', metric: 'N', choices: ['lbf', 'N'] },
  power: { base: 'kW', us: 'hp', metric: 'kW', choices: ['hp', 'kW'] },
  fluid: { base: 'qt', us: 'qt', metric: 'L', choices: ['qt', 'L', 'gal'] },
  'fluid-use': { base: 'qt/1000mi', us: 'qt/1000mi', metric: 'L/1000km', choices: ['qt/1000mi', 'L/1000km'] },
  viscosity: { base: 'mm²/s', us: 'mm²/s', metric: 'mm²/s', choices: ['mm²/s'] },
  angle: { base: 'deg', us: 'deg', metric: 'deg', choices: ['deg'] },
  percent: { base: '%', us: '%', metric: '%', choices: ['%'] },
  plain: { base: '', us: '', metric: '', choices: [''] },
};

/** Cubic inches in a US gallon, by its definition; kilometres in a mile, by the definition of the inch. */
const IN3_PER_GAL = 231;
const KM_PER_MI = 1.609344;
/** Units that only the bench has, in the base unit of their kind: the pound and the foot by definition, 550 ft·lbf/s. */
const OWN: Readonly<Record<string, number>> = { kg: 1 / 0.45359237, m: 1 / 0.3048, hp: 0.745699872 };
const BARE: readonly string[] = ['', 'in³', 'mi', 'km', '%', 'lb', 'kg', 'ft', 'm', 'hp', 'kW', 'mm²/s'];

/** Units that a field of this kind can be typed in, with what is printed for each. */
export function unitsOfKind(kind: FigureKind): readonly { readonly id: string; readonly label: string }[] {
  return KINDS[kind].choices.map((id) => ({ id, label: labelOf(id) }));
}

/** The unit that a still empty field shows. */
export function preferredOfKind(kind: FigureKind, system: UnitSystem): string {
  return KINDS[kind][system];
}

/** A typed figure in the unit that the calculations take. */
export function toBase(value: number, unit: string, kind: FigureKind): number {
  const { base } = KINDS[kind];
  if (unit === base || kind === 'percent' || kind === 'plain') return value;
  if (kind === 'volume') return (unit === 'gal' ? value : convert(value, 'L', 'gal')) * IN3_PER_GAL;
  if (kind === 'distance') return value / KM_PER_MI;
  const own = OWN[unit];
  if (own !== undefined) return value * own;
  return convert(value, unit, base);
}

/** A computed figure with its unit, as the person reads it. */
export function shown(value: number, kind: FigureKind, system: UnitSystem): string {
  const unit = KINDS[kind][system];
  if (kind === 'volume') {
    return system === 'us' ? `${grouped(value)} in³` : `${convert(value / IN3_PER_GAL, 'gal', 'L').toFixed(1)} L`;
  }
  if (kind === 'distance') return `${grouped(system === 'us' ? value : value * KM_PER_MI)} ${unit}`;
  if (kind === 'percent') return `${digits(value, 1)} %`;
  if (kind === 'plain') return digits(value, 2);
  if (BARE.includes(unit)) {
    const figure = value / (OWN[unit] ?? 1);
    return `${Math.abs(figure) >= 100 ? grouped(figure) : digits(figure, 1)} ${unit}`;
  }
  return formatQuantity(value, KINDS[kind].base, system);
}

/** A figure with at most so many digits behind the point, no zeros at its end. */
export function digits(value: number, most: number): string {
  return String(Number(value.toFixed(most))).replace('-', '−');
}

/** A whole number with its thousands parted: "12,600". */
export function grouped(value: number): string {
  return Math.round(value).toLocaleString('en-US').replace('-', '−');
}

/** Seconds as minutes and seconds: "4 min 40 s". */
export function minutesAndSeconds(seconds: number): string {
  const whole = Math.round(seconds);
  if (whole < 60) return `${whole} s`;
  const rest = whole % 60;
  return `${Math.floor(whole / 60)} min${rest === 0 ? '' : ` ${rest} s`}`;
}

function labelOf(id: string): string {
  if (BARE.includes(id)) return id;
  return unitOf(id).symbol;
}
