/** What the figures of a profile measure, each with the units it can be typed in; factors exact by definition. */

export type CoachMeasure =
  'weight' | 'length' | 'volume' | 'distance' | 'pressure' | 'rotation' | 'ratio' | 'count' | 'turns' | 'percent';

export interface MeasureUnit {
  readonly id: string;
  /** As printed behind a figure. */
  readonly label: string;
  /** value in the first unit of the measure = value × factor. */
  readonly factor: number;
}

const KG_PER_LB = 0.45359237;
const MM_PER_IN = 25.4;
const IN3_PER_GAL = 231;
const L_PER_GAL = 3.785411784;
const KM_PER_MI = 1.609344;
/** Kilopascal in a pound-force per square inch: 0.45359237 × 9.80665 / 0.0254² / 1000. */
const KPA_PER_PSI = (KG_PER_LB * 9.80665) / (0.0254 * 0.0254) / 1000;

const one = (id: string, label = id): readonly MeasureUnit[] => [{ id, label, factor: 1 }];

/** The first unit is the one in which ranges are given. */
export const MEASURES: Readonly<Record<CoachMeasure, readonly MeasureUnit[]>> = {
  weight: [
    { id: 'lb', label: 'lb', factor: 1 },
    { id: 'kg', label: 'kg', factor: 1 / KG_PER_LB },
  ],
  length: [
    { id: 'in', label: 'in', factor: 1 },
    { id: 'mm', label: 'mm', factor: 1 / MM_PER_IN },
  ],
  volume: [
    { id: 'in³', label: 'in³', factor: 1 },
    { id: 'L', label: 'L', factor: IN3_PER_GAL / L_PER_GAL },
    { id: 'gal', label: 'gal', factor: IN3_PER_GAL },
  ],
  distance: [
    { id: 'mi', label: 'mi', factor: 1 },
    { id: 'km', label: 'km', factor: 1 / KM_PER_MI },
  ],
  pressure: [
    { id: 'psi', label: 'psi', factor: 1 },
    { id: 'kPa', label: 'kPa', factor: 1 / KPA_PER_PSI },
    { id: 'bar', label: 'bar', factor: 100 / KPA_PER_PSI },
  ],
  rotation: one('rpm'),
  ratio: one('to-1', 'to 1'),
  count: one('', ''),
  turns: one('per-mile', 'turns a mile'),
  percent: one('%'),
};

/** A figure in the first unit of its measure; null for a unit that the measure does not have. */
export function inFirstUnit(measure: CoachMeasure, value: number, unit: string | undefined): number | null {
  const units = MEASURES[measure];
  const found = unit === undefined ? units[0] : units.find(({ id }) => id === unit);
  return found ? value * found.factor : null;
}
