/** The in-cab air test as data: what is done, which figures are read, where it is published. */
import type { Verdict } from '../../knowledge/tree.ts';
import type { LimitStatus } from '../../measuring/index.ts';
import type { AirTestSetup } from './events.ts';

/** A figure that a step asks for. */
export interface AirFigure {
  readonly id: string;
  readonly words: string;
  /** Unit id of `shared/units` in which it is judged. */
  readonly unit: 'psi' | 's';
  /** What one look at the gauge or watch leaves open: one standard uncertainty. Judgement. */
  readonly uncertainty: number;
  /** Taken where nothing was entered. */
  readonly otherwise?: number;
}

export interface AirStep {
  readonly id: string;
  readonly name: string;
  readonly does: readonly string[];
  readonly cautions: readonly string[];
  /** Read in this step; empty = it is answered with right or wrong. */
  readonly figures: readonly AirFigure[];
  /** Seconds the watch runs down, or `up` where the time itself is the figure `seconds`; absent = not timed. */
  readonly timer?: number | 'up';
  /** What right and wrong mean, for a step without a figure. */
  readonly right?: string;
  readonly wrong?: string;
  /** Where the step is published, and how that was read. */
  readonly source: string;
  readonly status: LimitStatus;
  /** What the coach is held to when it fails, and why; judgement on the source. */
  readonly fails: { readonly verdict: Verdict; readonly because: string };
  /** Whether it exists on this coach. */
  applies(setup: AirTestSetup): boolean;
}

const MANUAL = 'model commercial driver’s licence manual, section 5.3';
/** A dash gauge read by eye (judgement; as the instrument "dash air gauge" of the vocabulary). */
const DASH_PSI = 3;
/** A watch in the hand and a moving needle (judgement). */
const WATCH_S = 2;
const psi = (id: string, words: string): AirFigure => ({ id, words, unit: 'psi', uncertainty: DASH_PSI });
const seconds = (id: string, words: string): AirFigure => ({ id, words, unit: 's', uncertainty: WATCH_S });
/** How long the needle was watched: one minute in the manual; longer tells more. */
const WATCHED: AirFigure = { ...seconds('watched', 'watched for'), otherwise: 60 };
const always = (): boolean => true;

const ROLLS =
  'The coach can roll while the parking brake is off: chocks both ways first, nobody beneath or in line with the wheels.';
const RUNS_OUT = 'The pressure goes down in this step: nobody drives off after it before the tanks are full again.';

/** In the order in which it is done; the manual leaves the order free. */
export const AIR_STEPS: readonly AirStep[] = [
  {
    id: 'chocks',
    name: 'Level ground, wheels chocked both ways',
    does: [
      'Level ground. Chocks before and behind one wheel that stays down.',
      'Nobody under the coach for the whole test.',
    ],
    cautions: [],
    figures: [],
    right: 'chocked both ways',
    wrong: 'cannot be chocked here',
    source: MANUAL,
    status: 'seen',
    fails: {
      verdict: 'stay-put',
      because: 'The wheels cannot be chocked here, so the brakes cannot be released for a test',
    },
    applies: always,
  },
  {
    id: 'governor-cut-out',
    name: 'Cut-out and cut-in of the compressor',
    does: [
      'Engine at fast idle until the needles stop rising: note the pressure.',
      'Idle. Press and release the pedal until the compressor takes up again: note that pressure.',
    ],
    cautions: ['Engine in the open air or with its exhaust led out.'],
    figures: [psi('cut-out', 'stops rising at'), psi('cut-in', 'takes up again at')],
    source: `${MANUAL}, steps on governor cut-out and cut-in; bands: 49 CFR 571.121 S5.1.1.1 and 570.57(a)(4)`,
    status: 'seen',
    fails: { verdict: 'creep-to-safe-place', because: 'The compressor is not governed as it should be' },
    applies: always,
  },
  {
    id: 'released-leak',
    name: 'Loss with the foot off',
    does: [
      'Tanks full, engine stopped, key as for driving.',
      'Chocked: parking brake released, foot off. Let the needles come to rest.',
      'Note the lower needle, start the watch, one minute, note it again.',
    ],
    cautions: [ROLLS],
    figures: [psi('start', 'at the start'), psi('end', 'at the end'), WATCHED],
    timer: 60,
    source: `${MANUAL}, air leakage rate, released`,
    status: 'seen',
    fails: { verdict: 'stay-put', because: 'With the foot off the air goes down faster than the published limit' },
    applies: always,
  },
  {
    id: 'applied-leak',
    name: 'Loss with the pedal held',
    does: [
      'As before, engine stopped. Press until 90 psi or more stand at the brakes and hold without moving the foot.',
      'Let the first drop pass. Note the lower needle, start the watch, one minute, note it again.',
    ],
    cautions: [ROLLS],
    figures: [psi('start', 'after the first drop'), psi('end', 'at the end'), WATCHED],
    timer: 60,
    source: `${MANUAL}, air leakage rate, 90 psi or more held`,
    status: 'seen',
    fails: { verdict: 'stay-put', because: 'With the pedal held the air goes down faster than the published limit' },
    applies: always,
  },
  {
    id: 'low-air-warning',
    name: 'Low-air warning',
    does: [
      'Key on, engine stopped. Press and release the pedal, pressure goes down.',
      'Note the lower needle when lamp or buzzer comes on.',
    ],
    cautions: [ROLLS, RUNS_OUT],
    figures: [psi('came-on', 'warning came on at')],
    source: `${MANUAL}, low-pressure warning; older coaches: 49 CFR 393.51(c)`,
    status: 'seen',
    fails: { verdict: 'stay-put', because: 'The low-air warning comes too late' },
    applies: always,
  },
  {
    id: 'parking-valve',
    name: 'Parking knob comes out by itself',
    does: ['Go on pressing and releasing.', 'Note the pressure at which the parking knob pops out.'],
    cautions: [
      ROLLS,
      RUNS_OUT,
      'When it pops out the spring brakes come on at once: hands out of the brake gear everywhere.',
    ],
    figures: [psi('popped', 'knob came out at')],
    source: `${MANUAL}, spring brakes come on automatically: 20 to 45 psi`,
    status: 'seen',
    fails: {
      verdict: 'creep-to-safe-place',
      because: 'The parking knob comes out outside the published band',
    },
    applies: ({ springBrakes }) => springBrakes,
  },
  {
    id: 'build-up-dual',
    name: 'Build-up, 85 to 100 psi',
    does: ['Engine at operating speed.', 'Watch from 85 to 100 psi.'],
    cautions: ['Engine in the open air or with its exhaust led out.'],
    figures: [seconds('seconds', 'from 85 to 100 psi')],
    timer: 'up',
    source: `${MANUAL}, rate of build-up, dual system: within 45 s`,
    status: 'seen',
    fails: { verdict: 'stay-put', because: 'The air builds up slower than the published time' },
    applies: ({ system }) => system === 'dual',
  },
  {
    id: 'build-up-single',
    name: 'Build-up, 50 to 90 psi',
    does: ['Engine idling, 600 to 900 rpm.', 'Watch from 50 to 90 psi.'],
    cautions: ['Engine in the open air or with its exhaust led out.'],
    figures: [seconds('seconds', 'from 50 to 90 psi')],
    timer: 'up',
    source: `${MANUAL}, rate of build-up, single system built before 1975: within 3 min`,
    status: 'seen',
    fails: { verdict: 'stay-put', because: 'The air builds up slower than the published time' },
    applies: ({ system }) => system === 'single',
  },
  {
    id: 'parking-tug',
    name: 'Pull against the parking brake',
    does: [
      'Air up. Parking brake on, chocks away from the way, nobody before or behind the coach.',
      'Low gear, gentle pull.',
    ],
    cautions: ['The coach moves if the brake does not hold: clear ground ahead, foot over the pedal.'],
    figures: [],
    right: 'holds',
    wrong: 'moves',
    source: `${MANUAL}, test parking brake, as the States reprint it`,
    status: 'second-hand',
    fails: { verdict: 'stay-put', because: 'The parking brake does not hold against a gentle pull' },
    applies: always,
  },
  {
    id: 'service-tug',
    name: 'Service brake at walking pace',
    does: [
      'Pressure at its usual figure, parking brake off, clear ground: about 5 mph.',
      'Press firmly: no pull to a side, no unusual feel, no delay.',
    ],
    cautions: ['Nobody stands or walks in the coach. Clear ground all round.'],
    figures: [],
    right: 'straight, at once, as usual',
    wrong: 'pulls, late, or feels wrong',
    source: `${MANUAL}, test service brakes, as the States reprint it`,
    status: 'second-hand',
    fails: { verdict: 'stay-put', because: 'The service brake pulls, comes late or feels wrong at walking pace' },
    applies: always,
  },
];

/** A step by its id. */
export function airStep(id: string): AirStep | undefined {
  return AIR_STEPS.find((step) => step.id === id);
}
