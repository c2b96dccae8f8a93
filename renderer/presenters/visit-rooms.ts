import type { Screen } from '../state/app-state.svelte.ts';

/** Rooms of a visit: pages that belong to the visit as a whole and not to one complaint. */
export const VISIT_ROOMS: readonly { readonly screen: Screen; readonly words: string; readonly about: string }[] = [
  { screen: 'air-test', words: 'Air test and walk-round', about: 'before the coach moves; a failed step holds it' },
  {
    screen: 'road',
    words: 'Road test',
    about: 'one sheet for the passenger; what was noted is offered to every complaint',
  },
  { screen: 'inspection', words: 'Inspection', about: 'wheel ends side by side, hoses, bushings, air springs' },
];
