/**
 * What can be noted on a road test with one touch: the words of the sheet. Ids are never reused; what a note says about a
 * complaint stands in `trees/vocabulary/road.yaml`.
 */

/** One thing that can be noted, with the ways it can come out. */
export interface RoadRow {
  readonly id: string;
  readonly panel: RoadPanel;
  readonly words: string;
  /** How to do it or what it means, where that is not plain. */
  readonly about?: string;
  readonly choices: readonly RoadChoice[];
}

export interface RoadChoice {
  readonly id: string;
  readonly words: string;
}

/** A gauge read from the second seat; `marks` are the figures that one touch notes, in its unit. */
export interface RoadGauge {
  readonly id: string;
  readonly words: string;
  /** Unit id of `shared/units`; empty for a plain number, such as a gear. */
  readonly unit: string;
  readonly marks: readonly number[];
}

export const ROAD_PANELS = ['noise', 'shake', 'steering', 'shifts', 'engine', 'engine-brake', 'at-the-stop'] as const;
export type RoadPanel = (typeof ROAD_PANELS)[number];

export const ROAD_PANEL_WORDS: Readonly<Record<RoadPanel, string>> = {
  noise: 'Noise',
  shake: 'Shake',
  steering: 'Pull and steering',
  shifts: 'Shifts',
  engine: 'Engine',
  'engine-brake': 'Engine brake',
  'at-the-stop': 'At the stop',
};

/** The figures of a dash that is read while driving; steps are what an eye can read from the second seat (judgement). */
export const ROAD_GAUGES: readonly RoadGauge[] = [
  { id: 'speed', words: 'Road speed', unit: 'mph', marks: [0, 10, 20, 30, 35, 40, 45, 50, 55, 60, 65, 70] },
  {
    id: 'engine-speed',
    words: 'Engine speed',
    unit: 'rpm',
    marks: [600, 900, 1200, 1400, 1500, 1600, 1700, 1800, 1900, 2000, 2100, 2200],
  },
  { id: 'gear', words: 'Gear', unit: '', marks: [0, 1, 2, 3, 4, 5, 6] },
  { id: 'oil', words: 'Oil pressure', unit: 'psi', marks: [0, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70] },
  {
    id: 'coolant',
    words: 'Coolant',
    unit: 'degF',
    marks: [100, 120, 140, 160, 170, 180, 190, 200, 205, 210, 215, 220],
  },
  {
    id: 'air',
    words: 'Air, the lower needle',
    unit: 'psi',
    marks: [50, 60, 70, 80, 85, 90, 95, 100, 105, 110, 120, 130],
  },
];

const pick = (...pairs: readonly (readonly [string, string])[]): RoadChoice[] =>
  pairs.map(([id, words]) => ({ id, words }));
const MORE_LESS: readonly (readonly [string, string])[] = [
  ['more', 'more'],
  ['less', 'less, or gone'],
  ['same', 'no change'],
];
const noise = (id: string, words: string, about?: string): RoadRow => ({
  id: `noise-${id}`,
  panel: 'noise',
  words,
  ...(about === undefined ? {} : { about }),
  choices: pick(...MORE_LESS),
});
const shake = (id: string, words: string, about?: string): RoadRow => ({
  id: `shake-${id}`,
  panel: 'shake',
  words,
  ...(about === undefined ? {} : { about }),
  choices: pick(...MORE_LESS),
});
const STANDING = 'Only standing, brake on: a coach is never rolled in neutral.';

/** Every row of the sheet, in the order of the page. */
export const ROAD_ROWS: readonly RoadRow[] = [
  {
    id: 'noise-where',
    panel: 'noise',
    words: 'Loudest',
    choices: pick(
      ['front', 'at the front'],
      ['drive-axle', 'over the drive or tag axle'],
      ['engine-end', 'at the engine'],
      ['everywhere', 'cannot be placed'],
    ),
  },
  {
    id: 'noise-loud',
    panel: 'noise',
    words: 'How loud',
    choices: pick(
      ['talk', 'one can talk over it'],
      ['raised', 'voices must be raised'],
      ['shouting', 'one must shout'],
      ['grind', 'grinding or knocking in it'],
    ),
  },
  {
    id: 'noise-speed',
    panel: 'noise',
    words: 'With road speed',
    choices: pick(
      ['rises', 'climbs evenly'],
      ['one-band', 'only in one band of speed'],
      ['beats', 'thumps once a wheel turn'],
      ['walking-pace', 'grinds at walking pace'],
    ),
  },
  noise('pull', 'Pulling'),
  noise('lift', 'Foot lifted'),
  {
    id: 'noise-lower-gear',
    panel: 'noise',
    words: 'One gear lower, same road speed',
    choices: pick(['same', 'same pitch'], ['jumps', 'pitch jumps'], ['some', 'some of each']),
  },
  noise('lean-left', 'Leaning left', 'A gentle bend to the right leans it left. No passenger reaches for a hold.'),
  noise('lean-right', 'Leaning right', 'A gentle bend to the left leans it right.'),
  noise('brake', 'Brake, lightly'),
  noise('engine-brake', 'Engine brake on'),
  noise('neutral', 'Standing in neutral, same engine speed', STANDING),
  noise('smooth-road', 'Smoother road, same speed'),
  {
    id: 'shake-where',
    panel: 'shake',
    words: 'Felt most',
    choices: pick(
      ['wheel', 'steering wheel, front floor'],
      ['rear-floor', 'rear floor or bed'],
      ['whole', 'whole coach, a buzz'],
      ['corner', 'one corner or side'],
    ),
  },
  shake('speed', 'Faster'),
  shake('pull', 'Pulling'),
  shake('lift', 'Foot lifted'),
  shake('lower-gear', 'One gear lower, same road speed'),
  shake('lean-left', 'Leaning left'),
  shake('lean-right', 'Leaning right'),
  {
    id: 'shake-brake',
    panel: 'shake',
    words: 'Brake, lightly',
    choices: pick(['hammers', 'hammers with the wheel'], ['less', 'eases'], ['same', 'no change']),
  },
  shake('engine-brake', 'Engine brake on'),
  shake('neutral', 'Standing in neutral, same engine speed', STANDING),
  {
    id: 'shake-smooth-road',
    panel: 'shake',
    words: 'Another road, same speed',
    choices: pick(['less', 'gone there'], ['same', 'there as before']),
  },
  {
    id: 'pull',
    panel: 'steering',
    words: 'Pull to a side',
    choices: pick(
      ['straight', 'runs and brakes straight'],
      ['braking', 'only while braking'],
      ['always', 'without the brake too'],
      ['after-release', 'after letting the brake go'],
    ),
  },
  {
    id: 'road-line',
    panel: 'steering',
    words: 'On a smooth road',
    choices: pick(
      ['holds', 'holds its line'],
      ['wanders', 'needs steady correction'],
      ['floats', 'floats and nods over swells'],
    ),
  },
  {
    id: 'bumps',
    panel: 'steering',
    words: 'Over bumps',
    choices: pick(['quiet', 'no knocks'], ['knocks', 'knocks or clunks']),
  },
  {
    id: 'steering-return',
    panel: 'steering',
    words: 'Out of a bend the wheel',
    choices: pick(
      ['returns', 'comes back nearly to centre'],
      ['partial', 'part of the way'],
      ['stays', 'stays where it was'],
    ),
  },
  {
    id: 'stance',
    panel: 'steering',
    words: 'How it stands under way',
    choices: pick(
      ['level', 'level'],
      ['leans', 'leans as it does at rest'],
      ['comes-and-goes', 'crooked for minutes, then level'],
      ['rolls', 'rolls far'],
    ),
  },
  {
    id: 'shift',
    panel: 'shifts',
    words: 'Which change is wrong',
    choices: pick(
      ['engagement', 'only from neutral into gear'],
      ['all-late', 'all upshifts late'],
      ['one', 'one change, others fine'],
      ['lock-up', 'at lock-up'],
      ['slack', 'clunk on and off the throttle'],
    ),
  },
  {
    id: 'lock-up',
    panel: 'shifts',
    words: 'Lock-up',
    choices: pick(
      ['clean', 'soft step, at its speed'],
      ['never', 'no step'],
      ['jolt', 'jolt or shudder'],
      ['hunts', 'in and out'],
      ['lets-go', 'lets go on the climb'],
    ),
  },
  {
    id: 'held-gear',
    panel: 'shifts',
    words: 'Pull in a held gear',
    choices: pick(
      ['as-before', 'pulls as it used to'],
      ['weak', 'weak, revs rise slowly'],
      ['runs-ahead', 'revs run ahead'],
    ),
  },
  {
    id: 'smoke',
    panel: 'engine',
    words: 'Smoke, engine hot',
    choices: pick(
      ['clear', 'clear'],
      ['black', 'black under load'],
      ['blue', 'blue'],
      ['white', 'white or grey with a miss'],
      ['steam', 'white and sweet, all the time'],
    ),
  },
  {
    id: 'heat',
    panel: 'engine',
    words: 'The coolant needle climbs',
    choices: pick(
      ['grade-only', 'on the grade, back in 3–5 min'],
      ['flat-too', 'on the flat at speed too'],
      ['idle', 'at idle or in traffic'],
      ['jump', 'in a sudden jump'],
      ['erratic', 'without reason'],
    ),
  },
  {
    id: 'oil-needle',
    panel: 'engine',
    words: 'The oil needle is low',
    choices: pick(
      ['idle', 'at hot idle only'],
      ['hot', 'at all speeds, hot'],
      ['always', 'at all speeds, cold as well'],
      ['swings', 'swings in bends and braking'],
      ['jumps', 'jumps or sticks'],
    ),
  },
  {
    id: 'strength',
    panel: 'engine-brake',
    words: 'Strength, engine turning fast',
    choices: pick(['strong', 'strong'], ['weak', 'comes on, but weak'], ['none', 'nothing']),
  },
  {
    id: 'bark',
    panel: 'engine-brake',
    words: 'The exhaust',
    choices: pick(
      ['full', 'full and even'],
      ['half', 'half, or uneven'],
      ['soft', 'even but soft'],
      ['silent', 'no change of sound'],
    ),
  },
  {
    id: 'steps',
    panel: 'engine-brake',
    words: 'Low against high',
    choices: pick(['step', 'clear step'], ['no-step', 'no step, or one only'], ['neither', 'neither works']),
  },
  {
    id: 'coupled',
    panel: 'engine-brake',
    words: 'Engine speed while it holds',
    choices: pick(
      ['stays', 'falls with the road'],
      ['drops', 'falls at once toward idle'],
      ['varies', 'one range so, another not'],
    ),
  },
  {
    id: 'brake-oil',
    panel: 'engine-brake',
    words: 'Oil pressure while it is weak',
    choices: pick(['usual', 'as usual'], ['lower', 'lower, no warning'], ['warning', 'warning, or near zero']),
  },
  {
    id: 'lets-go',
    panel: 'engine-brake',
    words: 'When it is taken off',
    choices: pick(['at-once', 'ends at once'], ['hangs', 'hangs on, or engine stumbles']),
  },
  {
    id: 'wheels-by-hand',
    panel: 'at-the-stop',
    words: 'Wheels by the back of the hand',
    about: 'Within five minutes, brake set, both sides. The hand goes near first: a drum can burn at once.',
    choices: pick(
      ['alike', 'all about alike'],
      ['one-hot', 'one hotter than its mate'],
      ['one-cold', 'one colder than all'],
      ['pair-hot', 'both of one axle hotter'],
    ),
  },
];

/** Signs at which the drive ends where it can safely stop. */
export const ROAD_SIGNS: readonly (RoadChoice & { readonly because: string })[] = [
  {
    id: 'wobble',
    words: 'Wobble or a new clunk',
    because: 'A wobble or a new clunk came up on the road; a loose wheel or steering part begins so',
  },
  { id: 'smell', words: 'Burning smell or smoke', because: 'Something smelt of burning, or smoked, on the road' },
  { id: 'low-air', words: 'Low-air warning', because: 'The low-air warning came on while driving' },
  { id: 'low-oil', words: 'Oil pressure falls', because: 'Oil pressure fell, and the gauge is not disproved yet' },
  { id: 'too-hot', words: 'Engine too hot', because: 'The engine went over its highest temperature' },
  { id: 'brake', words: 'Brake weak or late', because: 'The service brake came weakly or late on the road' },
];
