/** What a calculation that a check may name gives, and what the check may settle beforehand. */
export interface CalculationFacts {
  /** Unit of its figure. A check that names it measures the same quantity. */
  readonly unit: string;
  /** What a check may fix, with the values allowed; each is a choice of the calculation's sheet. */
  readonly settings: Readonly<Record<string, readonly string[]>>;
  /** What it is, for who writes a tree. */
  readonly means: string;
}

/**
 * The calculations that a check of a tree may name: raw observations in, the figure of the check out. Each has a sheet
 * in the window; this list is what the knowledge files and the window hold each other to.
 */
export const CALCULATIONS = {
  'leak-down': {
    unit: 'psi/min',
    settings: { brake: ['released', 'held'] },
    means: 'pressure marks over time to a leak rate by least squares',
  },
  'build-up': { unit: 's', settings: {}, means: 'gauge marks and a watch to the time from 85 to 100 psi' },
  'pressure-overnight': {
    unit: 'psi',
    settings: {},
    means: 'pressure at night and in the morning to the loss in 12 h',
  },
  'gauge-against-gauge': {
    unit: 'psi',
    settings: { as: ['first-over-second', 'either-way'] },
    means: 'pairs of readings of two gauges to their difference',
  },
  'pushrod-stroke': { unit: 'in', settings: {}, means: 'strokes of the wheel ends to the worst against its limit' },
  'end-play': { unit: 'in', settings: {}, means: 'repeated movements of the dial to the end play' },
  'wheel-ends-compared': {
    unit: 'degF-diff',
    settings: {},
    means: 'temperatures of all wheel ends to the largest difference between the ends of an axle, and the place',
  },
  'steering-lash': { unit: 'in', settings: {}, means: 'movement at the rim to that of a 20 in wheel' },
  'height-overnight': {
    unit: 'in',
    settings: {},
    means: 'heights at night and in the morning to the worst drop in 12 h',
  },
  'run-out': { unit: 'in', settings: {}, means: 'readings round the wheel to the largest minus the smallest' },
  beat: { unit: 'Hz', settings: {}, means: 'beats tapped or read at a speed to the beat at 60 mph' },
  'drip-count': { unit: 'drops/min', settings: {}, means: 'drops counted in a time to drops a minute' },
  'fluid-use': { unit: 'qt/1000mi', settings: {}, means: 'fluid added over a distance to quarts in 1,000 miles' },
  'run-down': { unit: 'ratio', settings: {}, means: 'run-down times with the engine brake on and off to their ratio' },
  'oil-pressure': {
    unit: 'psi',
    settings: { at: ['hot-idle', 'hot-governed', 'cold'] },
    means: 'gauge readings at a stated engine speed and oil temperature to the pressure there',
  },
  'temperature-difference': { unit: 'degF-diff', settings: {}, means: 'pairs of temperatures to their difference' },
  'against-book': {
    unit: 'percent',
    settings: { as: ['share', 'off', 'below'] },
    means: 'readings and the figure of the book to a share, a departure or a shortfall in per cent',
  },
  'side-to-side': {
    unit: 'percent',
    settings: {},
    means: 'left and right of each axle to the largest difference in per cent of both together',
  },
} as const satisfies Readonly<Record<string, CalculationFacts>>;

export type CalculationId = keyof typeof CALCULATIONS;

export const CALCULATION_IDS = Object.keys(CALCULATIONS) as readonly CalculationId[];
