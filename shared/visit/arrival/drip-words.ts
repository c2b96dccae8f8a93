/**
 * The words of the overnight drip sheet: a large card or sheet of paper under the parked coach, read in the morning.
 * Common practice of the trade; no published source.
 */

/** A row of a table of words. */
export interface WordRow<I extends string> {
  readonly id: I;
  readonly words: string;
}

export type DripPlace =
  | 'engine-middle'
  | 'engine-crank-end'
  | 'engine-gearbox-joint'
  | 'gearbox'
  | 'tube-end'
  | 'drive-axle'
  | 'wheel-front'
  | 'wheel-drive'
  | 'wheel-tag'
  | 'steering-gear'
  | 'front-heater'
  | 'radiator'
  | 'fuel-tank'
  | 'air-tanks'
  | 'elsewhere';

/** Where under the coach a spot lies: below what, by the part that hangs above it. */
export const DRIP_PLACES: readonly WordRow<DripPlace>[] = [
  { id: 'engine-middle', words: 'Under the middle of the engine: pan, filter or cooler side' },
  { id: 'engine-crank-end', words: 'Under the damper or fan end of the engine' },
  { id: 'engine-gearbox-joint', words: 'Under the joint of engine and transmission' },
  { id: 'gearbox', words: 'Under the transmission' },
  { id: 'tube-end', words: 'Under an open tube end' },
  { id: 'radiator', words: 'Under the radiator or its hoses' },
  { id: 'drive-axle', words: 'Under the middle of the drive axle' },
  { id: 'wheel-drive', words: 'Behind a wheel of the drive axle' },
  { id: 'wheel-tag', words: 'Behind a wheel of the tag axle' },
  { id: 'wheel-front', words: 'Behind a front wheel' },
  { id: 'steering-gear', words: 'Under the steering gear or its hoses' },
  { id: 'front-heater', words: 'Under the heater or a hose at the front' },
  { id: 'fuel-tank', words: 'Under a fuel tank or its lines' },
  { id: 'air-tanks', words: 'Under the air tanks or the air dryer' },
  { id: 'elsewhere', words: 'Somewhere else' },
];

export type DripColour = 'black-brown' | 'red' | 'clear-amber' | 'green-blue-orange' | 'water-clear' | 'milky';

/** Colour on white paper, by daylight. */
export const DRIP_COLOURS: readonly WordRow<DripColour>[] = [
  { id: 'black-brown', words: 'Black or dark brown' },
  { id: 'red', words: 'Red or pink' },
  { id: 'clear-amber', words: 'Clear amber, like honey' },
  { id: 'green-blue-orange', words: 'Green, blue, yellow or orange like dye' },
  { id: 'water-clear', words: 'Clear as water' },
  { id: 'milky', words: 'Grey, milky or like coffee with cream' },
];

export type DripFeel =
  'slippery' | 'thin-smells-of-diesel' | 'sweet-sticky' | 'watery' | 'tarry' | 'thick-sulphur' | 'not-felt';

/** Feel between gloved fingers, and smell from a hand’s distance. */
export const DRIP_FEELS: readonly WordRow<DripFeel>[] = [
  { id: 'slippery', words: 'Slippery, like oil' },
  { id: 'thin-smells-of-diesel', words: 'Thin, spreads on the paper, smells of diesel' },
  { id: 'sweet-sticky', words: 'Slippery, dries sticky, smells sweet' },
  { id: 'watery', words: 'Like water, no smell' },
  { id: 'tarry', words: 'Thick black spit, like tar' },
  { id: 'thick-sulphur', words: 'Thick, smells of sulphur' },
  { id: 'not-felt', words: 'Not felt or smelt' },
];

export type DripSize = 'coin' | 'hand' | 'plate' | 'larger';

export const DRIP_SIZES: readonly WordRow<DripSize>[] = [
  { id: 'coin', words: 'A coin or smaller' },
  { id: 'hand', words: 'Up to a hand' },
  { id: 'plate', words: 'Up to a dinner plate' },
  { id: 'larger', words: 'Larger' },
];

/** The words of an id; the id itself when it is of a newer program. */
export function wordsOf<I extends string>(table: readonly WordRow<I>[], id: I): string {
  return table.find((row) => row.id === id)?.words ?? id;
}
