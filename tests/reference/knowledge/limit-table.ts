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
    // Type 12; 16, 20, 24 standard and long-stroke 12; 30 standard and long-stroke 16, 20, 24; 36; long-stroke 30.
    figures: [1.375, 1.75, 2, 2.25, 2.5],
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
  {
    limits: ['build-up'],
    figures: [85, 100],
    unit: 'psi',
    source: 'US model commercial driver manual, section 5.3 step 7',
    status: 'seen',
  },
  {
    limits: ['build-up'],
    figures: [45],
    unit: 's',
    source: 'US model commercial driver manual, section 5.3 step 7',
    status: 'seen',
  },
  {
    limits: ['air-governor'],
    figures: [100, 125],
    unit: 'psi',
    source: 'US model commercial driver manual, section 5.1',
    status: 'seen',
  },
  {
    limits: ['air-governor-in-a-used-vehicle'],
    figures: [80, 135],
    unit: 'psi',
    source: '49 CFR 570.57 (a)(4)',
    status: 'memory',
  },
  {
    limits: ['low-air-warning-in-use'],
    figures: [50],
    unit: 'psi',
    source: '49 CFR 570.57 (a)(3)',
    status: 'memory',
  },
  {
    limits: ['suspension-must-not-take-air-below', 'opening-band-of-the-protection-valve'],
    figures: [55],
    unit: 'psi',
    source: '49 CFR 393.207 (f)',
    status: 'memory',
  },
  {
    limits: ['lining-thickness-steering-axle-air-drum'],
    figures: [3 / 16, 0.25],
    unit: 'in',
    source: '49 CFR 393.47 (d)(1): one continuous strip, two pads',
    status: 'seen',
  },
  {
    limits: ['ride-height-tolerance', 'ride-height-bands-1-4-and'],
    figures: [0.25],
    unit: 'in',
    source: 'common practice: both sides within about a quarter inch of the target',
    status: 'practice',
  },
  {
    limits: ['pressure-at-which-a-truck-tyre'],
    figures: [80],
    unit: '%',
    source: '29 CFR 1910.177 (f)',
    status: 'memory',
  },
  {
    limits: ['cap-pressure'],
    figures: [7, 15],
    unit: 'psi',
    source: 'common practice',
    status: 'practice',
  },
  {
    limits: ['coolant-temperature-while-judging-smoke'],
    figures: [160, 185],
    unit: '°F',
    source: 'TM 5-3895-347-14P, section 13.2.1, normal range of a two-stroke',
    status: 'seen',
  },
  {
    limits: ['oil-pressure-at-idle'],
    figures: [5, 20],
    unit: 'psi',
    source: 'US model commercial driver manual, figure 2.5',
    status: 'seen',
  },
  {
    limits: ['oil-pressure-working'],
    figures: [35, 75],
    unit: 'psi',
    source: 'US model commercial driver manual, figure 2.5',
    status: 'seen',
  },
  {
    limits: ['two-stroke-minimum-at-governed-speed'],
    figures: [28, 30],
    unit: 'psi',
    source: 'engine service practice',
    status: 'memory',
  },
  {
    limits: ['steering-wheel-lash-power-steering-engine'],
    figures: [4.25, 4.75, 5.25, 5.75],
    unit: 'in',
    source: '49 CFR 393.209 (b)(1), power column, 16, 18, 20 and 22 in wheels',
    status: 'seen',
  },
  {
    limits: ['steering-wheel-lash-older-in-use'],
    figures: [2, 2.25, 2.5, 2.75],
    unit: 'in',
    source: '49 CFR 570.60 Table 2',
    status: 'seen',
  },
  {
    limits: ['front-linkage-free-play-at-the'],
    figures: [0.25, 0.375, 0.5],
    unit: 'in',
    source: '49 CFR 570.60 Table 3',
    status: 'seen',
  },
  {
    limits: ['front-wheel-bearing-movement-at-the'],
    figures: [0.125],
    unit: 'in',
    source: 'common practice: more than that at the tyre, measure the end play',
    status: 'practice',
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
  {
    limits: ['wheel-bearing-end-play-manually-adjusted'],
    figures: [0.01],
    unit: 'in',
    source: 'State of Florida school-bus inspection manual, read for the trees',
    status: 'seen',
  },
  {
    limits: ['build-up'],
    figures: [2],
    unit: 'min',
    source: 'Ontario air brake handbook: 85 to 100 psi at idle',
    status: 'seen',
  },
  {
    limits: ['build-up'],
    figures: [25],
    unit: 's',
    source: '49 CFR 571.121 S5.1.1, in NHTSA interpretation 2947o',
    status: 'seen',
  },
  {
    limits: ['air-reserve'],
    figures: [20],
    unit: '%',
    source: 'Texas Transportation Code 547.406',
    status: 'seen',
  },
  {
    limits: ['suspension-condition'],
    figures: [],
    unit: 'in',
    source: '49 CFR Part 396 Appendix A, 8.c note',
    status: 'memory',
  },
  {
    limits: ['air-governor'],
    figures: [120, 140],
    unit: 'psi',
    source: 'US model commercial driver manual, section 2.1: usual cut-out',
    status: 'seen',
  },
  {
    limits: ['lining-thickness-steering-axle-air-drum'],
    figures: [0.25],
    unit: 'in',
    source: '49 CFR Part 396 Appendix A, 1.a (6)(d): no split by strip and pads',
    status: 'seen',
  },
  {
    limits: ['steering-wheel-lash-power-steering-engine'],
    figures: [4.5],
    unit: 'in',
    source: 'older form of the periodic-inspection appendix, 16 in wheel',
    status: 'second-hand',
  },
  {
    limits: ['steering-wheel-lash-older-in-use'],
    figures: [4.25, 5.75],
    unit: 'in',
    source: '49 CFR 393.209 (b)(1), where 570.60 has no column for power steering',
    status: 'seen',
  },
  {
    limits: ['four-stroke-in-line-engine-hot'],
    figures: [30, 60],
    unit: 'psi',
    source: 'TM 55-1930-209-14P-9-4, instruments page',
    status: 'seen',
  },
  {
    limits: ['oil-pressure-at-idle'],
    figures: [15],
    unit: 'psi',
    source: 'operator’s manual of a truck',
    status: 'second-hand',
  },
  {
    limits: ['radius-rod-gap-and-knuckle-swing'],
    figures: [0.125],
    unit: 'in',
    source: 'common practice: renew above that by a bar with load',
    status: 'practice',
  },
];

/** A limit that checks use and that this table has no outside figure for. */
export interface Unplaced {
  readonly limit: string;
  readonly why: string;
}

/** Limits that rest on the source they name alone: nothing in this table to hold them against, and why. */
export const NOT_IN_THIS_TABLE: readonly Unplaced[] = [
  { limit: 'any-free-play-in-a-universal', why: 'a rejection without a figure; regulation of one US state' },
  {
    limit: 'compression-against-the-book',
    why: 'common practice in per cent of the engine book, no figure of its own',
  },
  { limit: 'housing-pressure-needed', why: 'remembered from engine-brake practice; no second source found' },
  { limit: 'joint-operating-angle', why: 'driveline trade guide; no second source found' },
  { limit: 'parallel-angle-driveline', why: 'military manual of one truck; no second source found' },
  { limit: 'pressure-to-release-the-parking-brake', why: 'operator’s manuals of two makers; each coach has its own' },
  { limit: 'regulator-of-the-parking-supply-coaches', why: 'service information of one coach maker' },
  { limit: 'slip-spline-movement', why: 'military manual of one truck; no second source found' },
  {
    limit: 'spread-allowed-around-that-figure',
    why: 'setting table of one engine family; goes with the plate on the housing',
  },
  { limit: 'universal-joint-movement-at-the-cup', why: 'service manual of one shaft maker; no second source found' },
  { limit: 'pressure-test-of-a-cooling-system', why: 'workshop texts; the cap and the coach’s own book decide' },
  { limit: 'radius-rod-check-method', why: 'a method, by bar and not by hand; no figure' },
  { limit: 'the-85-100-psi-requirement', why: 'what a time covers; no figure' },
  { limit: 'battery-while-cranking', why: 'remembered from the battery trade; no second source found' },
  { limit: 'cranking-circuit-loss-12-v', why: 'military manual of one engine; no second source found' },
  { limit: 'cranking-circuit-loss-rule-of-thumb', why: 'military manual of one lift truck; no second source found' },
  { limit: 'fuel-pump-suction', why: 'remembered from two-stroke practice; no second source found' },
  {
    limit: 'air-inlet-restriction',
    why: 'military manual of one engine, and a trade figure beside it; the engine’s own limit decides',
  },
  { limit: 'stall-speed-tolerance', why: 'service text of one transmission maker' },
  {
    limit: 'longest-full-throttle-stall',
    why: 'driver manual and service text of one transmission; a time, not a reading',
  },
  { limit: 'cool-down-after-stall', why: 'procedure of one transmission maker; a time, not a reading' },
  { limit: 'transmission-fluid-too-hot', why: 'driver manual of one chassis maker' },
  { limit: 'transmission-fluid-to-cooler', why: 'driver manual of one chassis maker' },
  {
    limit: 'four-stroke-in-line-engine-hot',
    why: 'test standard of one engine; the other engine’s figures stand under the disagreements',
  },
  { limit: 'oil-temperature-in-the-sump', why: 'common knowledge; no source found' },
  { limit: 'lugging-and-height', why: 'says which way it goes; no figure' },
  { limit: 'radiator-face', why: 'one trade article on one bus' },
  { limit: 'coolant-mixture', why: 'military specification; equal parts, no figure' },
  { limit: 'flow-loss-when-loaded-to-700', why: 'military manual of one light truck; no second source found' },
  { limit: 'steering-load-valve-closed', why: 'two military manuals; a time for safety, not a reading' },
  { limit: 'steering-back-pressure-idle', why: 'military manual of one light truck; no second source found' },
  { limit: 'coach-tyre-turns-per-mile', why: 'tyre data books by memory; follows from the size of the tyre' },
  {
    limit: 'assembly-run-out-over-the-road',
    why: 'recommended practice in two reprints; the practice itself was not read',
  },
  { limit: 'wheel-run-out', why: 'recommended practice in a reprint; the practice itself was not read' },
  { limit: 'propshaft-tube-run-out', why: 'shop figure by memory; no source found' },
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
  { check: 'applied-stroke', reading: 2.25 - 2.5, unit: 'in', band: 'near', because: 'type 24 of 3 in, 2 1/4: pass' },
  { check: 'applied-stroke', reading: 2.0625 - 2, unit: 'in', band: 'over', because: 'long-stroke 20, 2 1/16: fail' },
  { check: 'applied-stroke', reading: 1.4375 - 1.375, unit: 'in', band: 'over', because: 'type 12, 1 7/16: fail' },
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
  // Model driver manual 5.3 step 7: 85 to 100 psi within 45 s. A build of exactly 45 s counts as too slow here.
  { check: 'build-time', reading: 44, unit: 's', band: 'to-fortyfive', because: '85 → 100 psi in 44 s: pass' },
  { check: 'build-time', reading: 60, unit: 's', band: 'to-ninety', because: '85 → 100 psi in 60 s: fail' },
  { check: 'build-time', reading: 1, unit: 'min', band: 'to-ninety', because: 'the same in minutes' },
  // Model driver manual 5.3 and 49 CFR 571.121: the low-air warning comes before 60 psi; 570.57: not under 50 psi.
  { check: 'low-air-warning', reading: 62, unit: 'psi', band: 'sixty-and-more', because: 'on at 62 psi: pass' },
  { check: 'low-air-warning', reading: 58, unit: 'psi', band: 'fifty-to-sixty', because: 'on at 58 psi: fail' },
  {
    check: 'low-air-warning',
    reading: 54,
    unit: 'psi',
    band: 'fifty-to-sixty',
    because: '54 psi: in order only before the 60 psi rule, late here',
  },
  {
    check: 'low-air-warning',
    reading: 45,
    unit: 'psi',
    band: 'under-fifty',
    because: 'under the 50 psi of the in-use model',
  },
  // Model driver manual 5.1: cut-out about 125 psi; 570.57: not over 135 psi.
  { check: 'cut-out-pressure', reading: 128, unit: 'psi', band: 'to-onethirtyfive', because: '128 psi: typical' },
  {
    check: 'cut-out-pressure',
    reading: 140,
    unit: 'psi',
    band: 'onethirtyfive-and-more',
    because: 'over the 135 psi of the in-use model',
  },
  // 49 CFR 393.207 (f): no air to the suspension before the brakes have 55 psi.
  {
    check: 'protection-opening',
    reading: 45,
    unit: 'psi',
    band: 'below-fifty-five',
    because: 'suspension rises at 45 psi: opens too early',
  },
  {
    check: 'protection-opening',
    reading: 52,
    unit: 'psi',
    band: 'below-fifty-five',
    because: '52 psi: still under 55',
  },
  { check: 'protection-opening', reading: 65, unit: 'psi', band: 'fifty-five-to-eighty', because: '65 psi: as usual' },
  // 29 CFR 1910.177 (f): 80 % of the figure or less counts as run flat; the check enters the shortfall.
  {
    check: 'tyre-pressure-cold',
    reading: 100 - 78,
    unit: '%',
    band: 'run-flat',
    because: '78 % of the figure: not to be filled on the vehicle',
  },
  { check: 'tyre-pressure-cold', reading: 100 - 85, unit: '%', band: 'very-low', because: '85 %: may be filled' },
  // 49 CFR 393.47 (d): drum lining of a drive axle not under 1/4 in.
  { check: 'lining-thickness', reading: 0.25, unit: 'in', band: 'low', because: '1/4 in: pass, at the limit' },
  { check: 'lining-thickness', reading: 7 / 32, unit: 'in', band: 'under-limit', because: '7/32 in: fail' },
  {
    check: 'lining-thickness',
    reading: 3 / 16,
    unit: 'in',
    band: 'under-limit',
    because: 'steer axle, 3/16 in: short of the appendix',
  },
  // 49 CFR 393.209 (b)(1) and 570.60 Table 2, wheel of 20 in.
  { check: 'rim-free-play', reading: 5, unit: 'in', band: 'large', because: 'power steering, 5 in: pass' },
  { check: 'rim-free-play', reading: 5.5, unit: 'in', band: 'over-limit', because: 'power steering, 5 1/2 in: fail' },
  {
    check: 'rim-free-play',
    reading: 3,
    unit: 'in',
    band: 'large',
    because: '3 in: over the 2 1/2 in for steering without power',
  },
  // 49 CFR 570.60 Table 3, tyre bead over 18 in: 1/2 in at the tread.
  { check: 'rock-3-9', reading: 7 / 16, unit: 'in', band: 'slack', because: 'bead 22.5 in, 7/16 in: pass' },
  { check: 'rock-3-9', reading: 9 / 16, unit: 'in', band: 'over-limit', because: '9/16 in: fail' },
  {
    check: 'rock-3-9',
    reading: 1 / 16,
    unit: 'in',
    band: 'tight',
    because: 'under the 1/8 in at which the bearing is measured',
  },
  // Model driver manual, figure 2.5: idle 5–20 psi, working 35–75 psi; a two-stroke at governed speed at least 28–30 psi.
  {
    check: 'direct-hot-idle',
    reading: 12,
    unit: 'psi',
    band: 'ten-to-twenty',
    because: '12 psi at hot idle: inside 5–20',
  },
  { check: 'direct-hot-idle', reading: 4, unit: 'psi', band: 'under-five', because: '4 psi: below it' },
  {
    check: 'direct-hot-governed',
    reading: 45,
    unit: 'psi',
    band: 'thirtyfive-to-fifty',
    because: '45 psi at governed speed: inside 35–75',
  },
  {
    check: 'direct-hot-governed',
    reading: 28,
    unit: 'psi',
    band: 'twentyfive-to-thirtyfive',
    because: '28 psi: below it, at the least of a two-stroke',
  },
  {
    check: 'cold-start-pressure',
    reading: 30,
    unit: 'psi',
    band: 'twentyfive-to-fortyfive',
    because: 'cold oil and yet under 35 psi',
  },
  {
    check: 'direct-gauge-difference',
    reading: 42 - 8,
    unit: 'psi',
    band: 'ten-and-more',
    because: 'dash 8, master gauge 42 psi: sender or gauge',
  },
  // Normal range of a two-stroke, 160–185 °F: below it smoke is not judged.
  { check: 'warm-up-watch', reading: 170, unit: '°F', band: 'warm', because: '170 °F: inside it' },
  { check: 'warm-up-watch', reading: 150, unit: '°F', band: 'cool', because: '150 °F: below it' },
  { check: 'warm-up-watch', reading: 77, unit: '°C', band: 'warm', because: '77 °C is 170.6 °F' },
  // Trade journals on automatic adjusters: 3/8 to 5/8 in by bar.
  { check: 'free-stroke', reading: 0.5, unit: 'in', band: 'normal', because: '1/2 in: inside it' },
  { check: 'free-stroke', reading: 0.75, unit: 'in', band: 'long', because: '3/4 in: over it' },
  // Manuals of a heavy truck and a coach: at least 70 psi, 95 psi. Between the two it depends on the coach.
  { check: 'hold-off-pressure', reading: 95, unit: 'psi', band: 'full', because: '95 psi: enough by both' },
  { check: 'hold-off-pressure', reading: 69, unit: 'psi', band: 'marginal', because: '69 psi: not enough by either' },
  { check: 'gauge-before', reading: 95, unit: 'psi', band: 'good', because: '95 psi: enough by both' },
  { check: 'gauge-before', reading: 69, unit: 'psi', band: 'middling', because: '69 psi: not enough by either' },
  // Coach maker’s workshop manual: ± 1/4 in at the measuring point.
  { check: 'ride-height', reading: 3 / 16, unit: 'in', band: 'right', because: '3/16 in off: within' },
  { check: 'ride-height', reading: 5 / 16, unit: 'in', band: 'off', because: '5/16 in off: outside' },
  // Light-vehicle text: no more than 2 psi in 2 minutes; the check waits ten, at the same rate 10 psi.
  {
    check: 'pressure-hold',
    reading: 10,
    unit: 'psi',
    band: 'fast',
    because: '2 psi in 2 minutes for ten minutes: a leak here all the same',
  },
  { check: 'pressure-hold', reading: 0, unit: 'psi', band: 'holds', because: 'no loss' },
  // Shaft maker: less than 0.006 in at the cup, before greasing.
  { check: 'shaft-play', reading: 0.005, unit: 'in', band: 'tight', because: '0.005 in: pass' },
  { check: 'shaft-play', reading: 0.006, unit: 'in', band: 'some', because: '0.006 in: no longer less than that' },
  { check: 'shaft-play', reading: 0.2, unit: 'mm', band: 'some', because: '0.2 mm is 0.0079 in, over 0.15 mm' },
  // Driveline guide: joint angles equal within 1 degree.
  { check: 'joint-angles', reading: 0.5, unit: 'degrees', band: 'equal', because: 'half a degree apart: pass' },
  { check: 'joint-angles', reading: 2, unit: 'degrees', band: 'unequal', because: '2 degrees apart: fail' },
  { check: 'driveline-angles', reading: 0.5, unit: 'degrees', band: 'equal', because: 'half a degree apart: pass' },
  { check: 'driveline-angles', reading: 2, unit: 'degrees', band: 'unequal', because: '2 degrees apart: fail' },
  // TM 5-3820-256-24-4: 0.5 V on the supply side and 0.2 V on the ground side, together 0.7 V.
  { check: 'cable-drop', reading: 0.4 + 0.15, unit: 'V', band: 'good', because: '0.4 and 0.15 V: pass on both sides' },
  { check: 'cable-drop', reading: 0.6 + 0.3, unit: 'V', band: 'some', because: '0.6 and 0.3 V: over on both sides' },
  // TM 5-3805-258-24-1: 30 in of water at most, a general figure of 20 to 25.
  { check: 'restriction-gauge', reading: 12, unit: 'in of water', band: 'free', because: '12 in: under both' },
  { check: 'restriction-gauge', reading: 31, unit: 'in of water', band: 'choked', because: '31 in: over both' },
  { check: 'restriction-gauge', reading: 7.5, unit: 'kPa', band: 'choked', because: '7.5 kPa is 30.1 in of water' },
  // TM 5-3820-256-24-5: 5.5 in of water at high idle, breather clear. This program’s upper band begins at 6.
  { check: 'crankcase-psi', reading: 2, unit: 'in of water', band: 'normal', because: '2 in: well under it' },
  { check: 'crankcase-psi', reading: 7, unit: 'in of water', band: 'high', because: '7 in: over it' },
  // Transmission maker: stall speed within 150 rpm of the published figure.
  { check: 'stall-speed', reading: -100, unit: 'rpm', band: 'right', because: '100 rpm under: pass' },
  { check: 'stall-speed', reading: -200, unit: 'rpm', band: 'down-a-lot', because: '200 rpm under: engine weak' },
  { check: 'stall-speed', reading: 200, unit: 'rpm', band: 'up', because: '200 rpm over: something slips' },
  // Chassis maker: over 250 °F in the sump, over 300 °F to the cooler.
  { check: 'fluid-temp-run', reading: 200, unit: '°F', band: 'normal', because: '200 °F: usual' },
  { check: 'fluid-temp-run', reading: 255, unit: '°F', band: 'too-hot', because: '255 °F in the sump: over it' },
  {
    check: 'lock-up-and-fluid-on-grade',
    reading: 305,
    unit: '°F',
    band: 'twosixty-and-more',
    because: '305 °F to the cooler: over it',
  },
  // Trade article: a face blocked by 30 % ran at 220 °F on grades.
  {
    check: 'core-face-light',
    reading: 30,
    unit: '%',
    band: 'thirty-and-more',
    because: '30 % blocked: enough to overheat',
  },
  // TM 9-2320-289-34: a pump that loses a gallon per minute or more is repaired; above 150 psi a restriction is looked for.
  { check: 'flow-drop', reading: 0.5, unit: 'gal/min', band: 'little', because: 'half a gallon: pass' },
  { check: 'flow-drop', reading: 1, unit: 'gal/min', band: 'some', because: '1 gallon: repair' },
  {
    check: 'back-pressure',
    reading: 140,
    unit: 'psi',
    band: 'raised',
    because: '140 psi: not yet a restriction by the manual',
  },
  { check: 'back-pressure', reading: 160, unit: 'psi', band: 'high', because: '160 psi: look for a restriction' },
  // Service manual of one four-stroke: the engine brake works above 131 °F of oil.
  { check: 'oil-temp', reading: 120, unit: '°F', band: 'cold', because: '120 °F: too cold for it' },
  { check: 'oil-temp', reading: 135, unit: '°F', band: 'warming', because: '135 °F: works' },
  // Setting table of one engine family: ± 0.003 in about the plate.
  { check: 'slave-clearance', reading: 0.002, unit: 'in', band: 'in-range', because: '0.002 in over: pass' },
  {
    check: 'slave-clearance',
    reading: 0.02 - 0.015,
    unit: 'in',
    band: 'wide',
    because: '0.020 in where the plate says 0.015: wrong for that engine',
  },
  // Recommended run-out in reprints: assembly 0.095 in steer, 0.125 in drive; steel disc wheel 0.070 in.
  { check: 'tyre-runout', reading: 0.09, unit: 'in', band: 'good', because: '0.090 in: pass on either axle' },
  {
    check: 'tyre-runout',
    reading: 0.11,
    unit: 'in',
    band: 'over-steer-limit',
    because: '0.110 in: over on the steer axle, pass on the drive axle',
  },
  { check: 'tyre-runout', reading: 0.13, unit: 'in', band: 'over-drive-limit', because: '0.130 in: over on either' },
  { check: 'rim-runout', reading: 0.075, unit: 'in', band: 'over', because: '0.075 in: over for either kind of wheel' },
  // Service information of a coach maker: the parking supply of roller-locking chambers is regulated to about 85 psi.
  { check: 'regulator-psi', reading: 85, unit: 'psi', band: 'set', because: '85 psi: as intended' },
  { check: 'regulator-psi', reading: 120, unit: 'psi', band: 'high', because: '120 psi, as without it: too high' },
];
