import type { Status } from '../../../shared/knowledge/index.ts';

/** One limit as an outside source gives it, copied by hand and independently of trees/vocabulary/limits.yaml. */
export interface SourcedLimit {
  /** Ids of the limits of the vocabulary that print it. */
  readonly limits: readonly string[];
  readonly figures: readonly number[];
  readonly unit: string;
  readonly source: string;
  /** How the figure was read when this table was made. */
  readonly status: Status;
}

/** The figures themselves. */
export const SOURCED: readonly SourcedLimit[] = [
  {
    limits: ['wheel-bearing-end-play-manually-adjusted'],
    figures: [0.001, 0.005],
    unit: 'in',
    source: 'TMC RP 618 / 618A, in four reprints',
    status: 'second-hand',
  },
  {
    limits: ['stroke-limits-by-chamber-type', 'applied-stroke-limit-clamp-type-chambers'],
    // Types 16, 20, 24 standard; 30 standard and long-stroke 16, 20, 24; 36; long-stroke 30.
    figures: [1.75, 2, 2.25, 2.5],
    unit: 'in',
    source: '49 CFR 393.47 (e), clamp-type chambers, in reference tables',
    status: 'second-hand',
  },
  {
    limits: ['applied-stroke-limit-type-30-with'],
    figures: [2],
    unit: 'in',
    source: '49 CFR 393.47 (e), type 30 standard, in three texts',
    status: 'second-hand',
  },
  {
    limits: ['stroke-test', 'method-for-stroke'],
    figures: [80, 90],
    unit: 'psi',
    source: '49 CFR Part 396 Appendix A, 1.a (5)(a)',
    status: 'seen',
  },
  {
    limits: ['stroke-test-provincial-variant'],
    figures: [90, 100],
    unit: 'psi',
    source: 'CVSA inspection procedure, step 5; Ontario air brake handbook',
    status: 'seen',
  },
  {
    limits: ['unlisted-chamber-types'],
    figures: [80],
    unit: '%',
    source: '49 CFR Part 396 Appendix A, 1.a (5)(b)',
    status: 'seen',
  },
  {
    limits: ['stroke-beyond-the-limit-rejection'],
    figures: [0.25],
    unit: 'in',
    source: 'CVSA criteria; the step of 6.4 mm read in Québec C-24.2 r. 32, section 166 (9)',
    status: 'second-hand',
  },
  {
    limits: ['lining-thickness-non-steering-axle-air'],
    figures: [0.25],
    unit: 'in',
    source: '49 CFR 393.47 (d)(2); Part 396 Appendix A, 1.a (6)(c)',
    status: 'seen',
  },
  {
    limits: ['pad-thickness-non-steering-axle-air'],
    figures: [0.125],
    unit: 'in',
    source: '49 CFR 393.47 (d); Part 396 Appendix A, 1.a (6)',
    status: 'seen',
  },
  {
    limits: ['loss-with-brakes-released-single-vehicle'],
    figures: [2],
    unit: 'psi',
    source: 'US model commercial driver manual, section 5.3',
    status: 'seen',
  },
  {
    limits: ['loss-with-brakes-applied-single-vehicle'],
    figures: [3, 90],
    unit: 'psi',
    source: 'US model commercial driver manual, section 5.3; Ontario daily inspection test 21 kPa (3 psi)',
    status: 'seen',
  },
  {
    limits: ['low-pressure-warning'],
    figures: [60],
    unit: 'psi',
    source: 'US model commercial driver manual, section 5.3; 49 CFR 571.121 S5.1.5',
    status: 'seen',
  },
  {
    limits: ['low-pressure-warning-regulation'],
    figures: [55],
    unit: 'psi',
    source: '49 CFR 393.51 (c)',
    status: 'memory',
  },
  {
    limits: ['spring-brakes-begin-to-apply'],
    figures: [20, 45],
    unit: 'psi',
    source: 'US model commercial driver manual',
    status: 'seen',
  },
  {
    limits: ['crankcase-pressure-limit-one-four-stroke'],
    figures: [5.5],
    unit: 'in of water',
    source: 'TM 5-3820-256-24-5',
    status: 'seen',
  },
  {
    limits: ['slave-piston-clearance'],
    figures: [0.015],
    unit: 'in',
    source: 'service manual of one four-stroke engine',
    status: 'seen',
  },
  {
    limits: ['lowest-engine-speed-at-which-it'],
    figures: [900],
    unit: 'rpm',
    source: 'engine-brake practice: enabled above about 900–1,100 rpm',
    status: 'memory',
  },
  {
    limits: ['conditions-on-one-modern-system'],
    figures: [1100],
    unit: 'rpm',
    source: 'engine-brake practice: enabled above about 900–1,100 rpm',
    status: 'memory',
  },
];

/** Where sources disagree: what the other one says. The limit has to name both. */
export const DISAGREEING: readonly SourcedLimit[] = [
  {
    limits: ['loss-with-brakes-released-single-vehicle'],
    figures: [2],
    unit: 'psi',
    source: '49 CFR 570.57: not more than 2, where the manuals say less than 2',
    status: 'memory',
  },
  {
    limits: ['loss-with-brakes-applied-single-vehicle'],
    figures: [5.8],
    unit: 'psi',
    source: 'Québec C-24.2 r. 32, section 166 (5)',
    status: 'seen',
  },
  { limits: ['low-pressure-warning'], figures: [55], unit: 'psi', source: '49 CFR 393.51', status: 'memory' },
  {
    limits: ['spring-brakes-begin-to-apply'],
    figures: [20, 40],
    unit: 'psi',
    source: 'manuals of several US states',
    status: 'second-hand',
  },
  {
    limits: ['free-stroke'],
    figures: [0.5, 0.75],
    unit: 'in',
    source: 'air-brake handbooks, type 30',
    status: 'second-hand',
  },
  {
    limits: ['stroke-test', 'method-for-stroke'],
    figures: [90, 100],
    unit: 'psi',
    source: 'CVSA inspection procedure and many guides',
    status: 'seen',
  },
  {
    limits: ['stroke-limits-by-chamber-type', 'applied-stroke-limit-clamp-type-chambers'],
    figures: [],
    unit: 'in',
    source: 'older 393.47 (e) and several guides: at or beyond the limit is out of adjustment',
    status: 'second-hand',
  },
  {
    limits: ['stroke-beyond-the-limit-rejection'],
    figures: [],
    unit: 'in',
    source: 'school-bus out-of-service list of one state: any one brake past its limit',
    status: 'second-hand',
  },
  {
    limits: ['lining-thickness-non-steering-axle-air'],
    figures: [1 / 32, 1 / 16],
    unit: 'in',
    source: '49 CFR 570.59 (c)',
    status: 'seen',
  },
  {
    limits: ['crankcase-pressure-limit-one-four-stroke'],
    figures: [0.5, 1, 2, 3],
    unit: 'in of water',
    source: 'two-stroke practice',
    status: 'memory',
  },
  {
    limits: ['slave-piston-clearance'],
    figures: [0.02],
    unit: 'in',
    source: 'TM 9-2320-363-34-1',
    status: 'seen',
  },
  {
    limits: ['conditions-on-one-modern-system'],
    figures: [100, 140],
    unit: '°F',
    source: 'engine-brake practice',
    status: 'memory',
  },
];

/** Limits that checks use and whose source was read for the trees alone: nothing in this table to hold them against. */
export const NOT_IN_THIS_TABLE: readonly string[] = [
  'compression-against-the-book',
  'housing-pressure-needed',
  'joint-operating-angle',
  'parallel-angle-driveline',
  'pressure-to-release-the-parking-brake',
  'regulator-of-the-parking-supply-coaches',
  'slip-spline-movement',
  'spread-allowed-around-that-figure',
  'universal-joint-movement-at-the-cup',
  'any-free-play-in-a-universal',
];

/** A worked reading: what was measured, and how the source judges it. */
export interface Worked {
  readonly check: string;
  readonly reading: number;
  readonly unit: string;
  /** The band that the reading must fall in. */
  readonly band: string;
  readonly because: string;
}

export const WORKED: readonly Worked[] = [
  // Model driver manual 5.3: less than 2 psi a minute released, not more than 3 applied. At the limit the bands are strict.
  {
    check: 'static-leak-rate',
    reading: 1,
    unit: 'psi/min',
    band: 'one-to-two',
    because: '120 → 119 psi in 60 s: pass',
  },
  {
    check: 'static-leak-rate',
    reading: 2,
    unit: 'psi/min',
    band: 'two-to-five',
    because: '100 → 98 psi: at the limit',
  },
  {
    check: 'static-leak-rate',
    reading: 1 / 0.5,
    unit: 'psi/min',
    band: 'two-to-five',
    because: '120 → 119 psi in 30 s',
  },
  { check: 'static-leak-rate', reading: 2.5, unit: 'psi/min', band: 'two-to-five', because: '100 → 97.5 psi: fail' },
  { check: 'applied-leak-rate', reading: 2.9, unit: 'psi/min', band: 'within', because: 'under 3 psi: pass' },
  { check: 'applied-leak-rate', reading: 3, unit: 'psi/min', band: 'over', because: '120 → 117 psi: at the limit' },
  { check: 'applied-leak-rate', reading: 4, unit: 'psi/min', band: 'over', because: '120 → 116 psi in 60 s: fail' },
  // 49 CFR 393.47 (e): type, limit and stroke in inches; the check enters stroke less limit.
  { check: 'applied-stroke', reading: 2.125 - 2, unit: 'in', band: 'over', because: 'type 30, 2 1/8: over by 1/8' },
  {
    check: 'applied-stroke',
    reading: 2 - 2,
    unit: 'in',
    band: 'over',
    because: 'type 30, 2: at the limit, strict here',
  },
  { check: 'applied-stroke', reading: 1.9375 - 2, unit: 'in', band: 'near', because: 'type 30, 1 15/16: pass' },
  { check: 'applied-stroke', reading: 2.375 - 2.5, unit: 'in', band: 'near', because: 'long-stroke 30, 2 3/8: pass' },
  { check: 'applied-stroke', reading: 2.5625 - 2.5, unit: 'in', band: 'over', because: 'long-stroke 30, 2 9/16: fail' },
  { check: 'applied-stroke', reading: 1.875 - 1.75, unit: 'in', band: 'over', because: 'type 24, 1 7/8: over by 1/8' },
  { check: 'applied-stroke', reading: 2.375 - 2.25, unit: 'in', band: 'over', because: 'type 36, 2 3/8: fail' },
  {
    check: 'applied-stroke',
    reading: 2.25 - 2,
    unit: 'in',
    band: 'far-over',
    because: 'type 30, 2 1/4: a full defect',
  },
  { check: 'applied-stroke', reading: 54 / 25.4 - 2, unit: 'in', band: 'over', because: 'type 30, 54.0 mm' },
  // TMC RP 618: 0.001 to 0.005 in by dial gauge; zero is not a pass.
  { check: 'end-play', reading: 0, unit: 'in', band: 'none', because: '0.000: preload unknown, redo' },
  { check: 'end-play', reading: 0.003, unit: 'in', band: 'in-range', because: '0.003: pass' },
  { check: 'end-play', reading: 0.001, unit: 'in', band: 'in-range', because: '0.001: pass' },
  { check: 'end-play', reading: 0.006, unit: 'in', band: 'loose', because: '0.006: too loose' },
  { check: 'end-play', reading: 0.0762, unit: 'mm', band: 'in-range', because: '0.003 in, read in millimetres' },
  // Left against right of one axle (judgement): 5 °F is normal, 40 °F a caution.
  { check: 'hub-heat', reading: 5, unit: 'degF-diff', band: 'even', because: '150 and 155 °F' },
  { check: 'hub-heat', reading: 40, unit: 'degF-diff', band: 'warmer', because: '150 and 190 °F' },
  { check: 'hub-heat', reading: 40 / 1.8, unit: 'K', band: 'warmer', because: 'the same in kelvin' },
];
