import type { CoachProfile } from '../../shared/coach/index.ts';
import {
  DRIP_COLOURS,
  DRIP_FEELS,
  DRIP_PLACES,
  DRIP_SIZES,
  dripPoints,
  wordsOf,
  type DripColour,
  type DripPlace,
  type DripPoint,
  type FluidsKnown,
  type SpotSeen,
} from '../../shared/visit/index.ts';

/** What the owner says, parted into complaints: a line each, and a sentence each within a line. */
export function saidPieces(words: string): readonly string[] {
  return words
    .split(/\n|[.;!?](?=\s|$)/u)
    .map((piece) => piece.trim())
    .filter((piece) => piece !== '');
}

/** Colours of the fluids of this coach, where its profile knows them. */
export function fluidsOf(profile: CoachProfile | null): FluidsKnown {
  const colour = (field: string): DripColour | undefined => {
    const value = profile?.values[field]?.value;
    return DRIP_COLOURS.find(({ id }) => id === value)?.id;
  };
  const [coolantColour, transmissionColour, steeringColour] = [
    colour('fluid.coolant-colour'),
    colour('fluid.transmission-colour'),
    colour('fluid.steering-colour'),
  ];
  return {
    ...(coolantColour ? { coolantColour } : {}),
    ...(transmissionColour ? { transmissionColour } : {}),
    ...(steeringColour ? { steeringColour } : {}),
  };
}

/** Where a place lies in the drawing of the coach from above: front on top, 200 by 420. */
const AT: Readonly<Record<DripPlace, readonly [x: number, y: number]>> = {
  'front-heater': [100, 40],
  'steering-gear': [62, 66],
  'wheel-front': [40, 96],
  'fuel-tank': [100, 150],
  'air-tanks': [136, 190],
  'drive-axle': [100, 286],
  'wheel-drive': [40, 286],
  'wheel-tag': [40, 326],
  gearbox: [100, 318],
  'engine-gearbox-joint': [100, 340],
  'engine-middle': [100, 366],
  'engine-crank-end': [100, 392],
  'tube-end': [132, 366],
  radiator: [150, 388],
  elsewhere: [100, 220],
};

export interface SpotView {
  readonly number: number;
  readonly event: string;
  readonly photo: string | null;
  readonly place: string;
  readonly seen: string;
  readonly note: string;
  readonly points: readonly DripPoint[];
  readonly x: number;
  readonly y: number;
}

/** The spots of the sheet, numbered, each with what it points to. */
export function spotViews(spots: readonly SpotSeen[], known: FluidsKnown): readonly SpotView[] {
  return spots.map((spot, i) => {
    const before = spots.slice(0, i).filter(({ place }) => place === spot.place).length;
    const [x, y] = AT[spot.place];
    return {
      number: i + 1,
      event: spot.id,
      photo: spot.photo ?? null,
      place: wordsOf(DRIP_PLACES, spot.place),
      seen: [wordsOf(DRIP_COLOURS, spot.colour), wordsOf(DRIP_FEELS, spot.feel), wordsOf(DRIP_SIZES, spot.size)]
        .join('; ')
        .toLowerCase(),
      note: spot.note,
      points: dripPoints(spot, known),
      // Spots at one place stand beside each other.
      x: x + 22 * before,
      y,
    };
  });
}
