/**
 * What a spot on the drip sheet points to. Common practice of the trade, in words; never a finding by itself. Colour
 * alone decides little: fluids are dyed, age and mix, so every point says what would tell it from its neighbours.
 */
import type { DripColour, DripFeel, DripPlace } from './drip-words.ts';

export type DripFluid =
  | 'engine-oil'
  | 'transmission-fluid'
  | 'power-steering-fluid'
  | 'coolant'
  | 'diesel'
  | 'gear-oil'
  | 'hub-oil'
  | 'water'
  | 'tarry-spit'
  | 'air-system-emulsion';

export interface DripPoint {
  readonly fluid: DripFluid;
  readonly words: string;
  /** What would tell it from what it may be taken for. */
  readonly tell: string;
  /** Needs care before anything else. */
  readonly caution?: string;
  /** Colour, feel and place that agree: 1 to 3. More agree, earlier in the list. */
  readonly agree: number;
}

export interface Spot {
  readonly place: DripPlace;
  readonly colour: DripColour;
  readonly feel: DripFeel;
}

/** What the profile of the coach says of its own fluids. */
export interface FluidsKnown {
  readonly coolantColour?: DripColour;
  readonly transmissionColour?: DripColour;
  readonly steeringColour?: DripColour;
}

interface FluidSign {
  readonly fluid: DripFluid;
  readonly words: string;
  readonly tell: string;
  readonly caution?: string;
  readonly colours: readonly DripColour[];
  readonly feels: readonly DripFeel[];
  readonly places: readonly DripPlace[];
  /** Found nowhere else: elsewhere it is not thought of. */
  readonly onlyThere?: boolean;
}

const ENGINE: readonly DripPlace[] = ['engine-middle', 'engine-crank-end', 'engine-gearbox-joint'];
const WHEELS: readonly DripPlace[] = ['wheel-front', 'wheel-drive', 'wheel-tag'];

const SIGNS: readonly FluidSign[] = [
  {
    fluid: 'engine-oil',
    words: 'Engine oil',
    tell: 'Hold the level over a week against the spots. Fresh oil is amber, used oil black.',
    colours: ['black-brown', 'clear-amber'],
    feels: ['slippery'],
    places: ENGINE,
  },
  {
    fluid: 'transmission-fluid',
    words: 'Fluid of an automatic transmission',
    tell: 'Red when fresh, brown and sharp when old. Its cooler lines pass the engine: follow the wet track upward.',
    colours: ['red', 'black-brown'],
    feels: ['slippery'],
    places: ['gearbox', 'engine-gearbox-joint', 'engine-middle', 'radiator'],
  },
  {
    fluid: 'power-steering-fluid',
    words: 'Fluid of the steering or of a hydraulic fan',
    tell: 'Look at the level in its tank, and what the book fills it with: often the same red fluid as the transmission.',
    caution: 'Low fluid can make the steering heavy without notice. Look at the tank before the coach moves.',
    colours: ['red', 'clear-amber'],
    feels: ['slippery'],
    places: ['steering-gear', 'engine-crank-end', 'radiator'],
  },
  {
    fluid: 'coolant',
    words: 'Coolant',
    tell: 'Sweet, and dries to a coloured crust. Look at the level cold.',
    caution: 'Never open a hot cap. Coolant is poison, and sweet: keep children and animals from it.',
    colours: ['green-blue-orange', 'red', 'milky'],
    feels: ['sweet-sticky'],
    places: ['radiator', 'front-heater', ...ENGINE],
  },
  {
    fluid: 'diesel',
    words: 'Diesel fuel',
    tell: 'On water it makes a fast rainbow; on paper it spreads wide and dries.',
    caution: 'No flame, no smoking. Where it can reach the exhaust or a turbocharger, do not run the engine.',
    colours: ['clear-amber', 'red', 'water-clear'],
    feels: ['thin-smells-of-diesel'],
    places: ['fuel-tank', ...ENGINE],
  },
  // Before gear oil: where both agree, the one that can reach the brake is named first.
  {
    fluid: 'hub-oil',
    words: 'Oil of a wheel hub, from its seal',
    tell: 'Look at the window or plug in the middle of the wheel, and at the back of the wheel by lamp.',
    caution:
      'Oil at a wheel can reach the brake lining, and a bearing without oil can fail. Look before the coach moves; the brakes come first.',
    colours: ['black-brown', 'clear-amber', 'red'],
    feels: ['slippery', 'thick-sulphur'],
    places: WHEELS,
    onlyThere: true,
  },
  {
    fluid: 'gear-oil',
    words: 'Gear oil of the axle or of a manual gearbox',
    tell: 'Thicker than engine oil, with a smell of sulphur.',
    colours: ['black-brown', 'clear-amber'],
    feels: ['thick-sulphur', 'slippery'],
    places: ['drive-axle', 'gearbox', 'wheel-drive'],
  },
  {
    fluid: 'water',
    words: 'Plain water: from air conditioning, a drain, or rain',
    tell: 'It dries without a trace. Coolant without its dye dries sticky.',
    colours: ['water-clear'],
    feels: ['watery'],
    places: ['front-heater', 'elsewhere', 'radiator'],
  },
  {
    fluid: 'tarry-spit',
    words: 'Spit from an air-box drain of a two-stroke, or from the exhaust',
    tell: 'A little at a tube of a two-stroke is normal. Much, or with the engine off, is not.',
    colours: ['black-brown'],
    feels: ['tarry'],
    places: ['tube-end', 'engine-middle'],
  },
  {
    fluid: 'air-system-emulsion',
    words: 'Water and oil from the air tanks or the dryer',
    tell: 'It lies below a drain or the dryer’s outlet. Drain every tank into a pan and look.',
    colours: ['milky', 'black-brown', 'water-clear'],
    feels: ['watery', 'slippery', 'tarry'],
    places: ['air-tanks'],
    onlyThere: true,
  },
];

/** Fluids whose colour the profile can know. */
const KNOWN_AS: Readonly<Partial<Record<DripFluid, keyof FluidsKnown>>> = {
  coolant: 'coolantColour',
  'transmission-fluid': 'transmissionColour',
  'power-steering-fluid': 'steeringColour',
};

/**
 * What a spot may be, what agrees most first; ties in the order of the table. Feel and smell that contradict rule a
 * fluid out, colour and place alone do not, but for the oil of a hub and the water of the air tanks: a fluid runs along a frame and darkens with age.
 *
 * @param known  colours from the profile of this coach: they take the place of the usual ones.
 * @returns at most four; empty when nothing agrees in two of the three.
 */
export function dripPoints(spot: Spot, known: FluidsKnown = {}): readonly DripPoint[] {
  return SIGNS.flatMap((sign): DripPoint[] => {
    const felt = spot.feel !== 'not-felt';
    if (felt && !sign.feels.includes(spot.feel)) return [];
    if (sign.onlyThere === true && !sign.places.includes(spot.place)) return [];
    const key = KNOWN_AS[sign.fluid];
    const own = key === undefined ? undefined : known[key];
    const colours = own === undefined ? sign.colours : [own];
    const agree = Number(felt) + Number(colours.includes(spot.colour)) + Number(sign.places.includes(spot.place));
    if (agree < 2) return [];
    const { fluid, words, tell, caution } = sign;
    return [{ fluid, words, tell, agree, ...(caution === undefined ? {} : { caution }) }];
  })
    .sort((a, b) => b.agree - a.agree)
    .slice(0, 4);
}
