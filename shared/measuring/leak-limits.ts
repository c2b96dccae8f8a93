import type { Limit } from './limit.ts';

/** Whether the brake pedal is held down while the gauge is watched: other parts leak, and other limits hold. */
export type BrakeState = 'held' | 'released';

const MANUAL = 'model commercial driver’s licence manual, section 5.3, final air brake check';

/**
 * The leak-down limit for a coach and what it tows.
 *
 * @param airBrakedTowedUnits  towed units that have air brakes themselves, whole, 0 or more; a car on a tow bar counts 0.
 *   Values below 0 or broken ones are taken as the stricter whole number below, at least 0.
 * @returns psi/min, at most: released 2 and brake held 3 for a single vehicle, 1 more for every air-braked towed unit.
 * @source Section 5.3 of the model manual, as reprinted by the States (seen). Released: the manual says "less than 2",
 *   49 CFR 570.57 "not more than 2" (memory), so a reading at the figure is where the sources differ.
 */
export function leakLimit(brake: BrakeState, airBrakedTowedUnits: number): Limit {
  const towed = Number.isFinite(airBrakedTowedUnits) ? Math.max(0, Math.floor(airBrakedTowedUnits)) : 0;
  return brake === 'released'
    ? {
        id: 'air-leak-brake-released',
        value: 2 + towed,
        unit: 'psi/min',
        side: 'at-most',
        atLimit: 'sources-differ',
        source: `${MANUAL} (less than); 49 CFR 570.57(a)(5) (not more than, from memory)`,
        status: 'seen',
      }
    : {
        id: 'air-leak-brake-held',
        value: 3 + towed,
        unit: 'psi/min',
        side: 'at-most',
        atLimit: 'passes',
        source: `${MANUAL}; 49 CFR 570.57(a)(6) (from memory)`,
        status: 'seen',
      };
}
