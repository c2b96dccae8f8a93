import type { WordRow } from './drip-words.ts';

export type WorkArea =
  | 'wheel-or-tyre'
  | 'brake-or-hub'
  | 'driveline'
  | 'steering-or-suspension'
  | 'air-system'
  | 'oil-or-filter'
  | 'engine'
  | 'fuel'
  | 'gearbox'
  | 'cooling'
  | 'belts-or-fan'
  | 'electrical'
  | 'other';

/** What was worked on lately, by part of the coach. */
export const WORK_AREAS: readonly WordRow<WorkArea>[] = [
  { id: 'wheel-or-tyre', words: 'A wheel or tyre was off' },
  { id: 'brake-or-hub', words: 'A brake or hub was apart' },
  { id: 'driveline', words: 'Propeller shaft, axle or mounts' },
  { id: 'steering-or-suspension', words: 'Steering, alignment, air bags, shocks' },
  { id: 'air-system', words: 'Air lines, valves, dryer, compressor' },
  { id: 'oil-or-filter', words: 'Oil or oil-filter change' },
  { id: 'engine', words: 'Engine: covers, injectors, valves, turbocharger' },
  { id: 'fuel', words: 'Fuel filters, lines or tank' },
  { id: 'gearbox', words: 'Transmission or its fluid' },
  { id: 'cooling', words: 'Coolant, hoses, radiator, cap' },
  { id: 'belts-or-fan', words: 'Belts or fan' },
  { id: 'electrical', words: 'Batteries, starter, wiring' },
  { id: 'other', words: 'Something else' },
];

export type TripTrait = 'long-grades' | 'heat' | 'frost' | 'towing' | 'night';

/** What the trip ahead asks of the coach. */
export const TRIP_TRAITS: readonly WordRow<TripTrait>[] = [
  { id: 'long-grades', words: 'Long grades, up or down' },
  { id: 'heat', words: 'Great heat' },
  { id: 'frost', words: 'Frost or snow' },
  { id: 'towing', words: 'Something is towed' },
  { id: 'night', words: 'Driving by night' },
];
