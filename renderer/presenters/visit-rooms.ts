import type { Screen } from '../state/app-state.svelte.ts';

/** Rooms of a visit beside the work on one complaint. */
export const VISIT_ROOMS: readonly { readonly screen: Screen; readonly words: string; readonly about: string }[] = [
  { screen: 'plan', words: 'Plan', about: 'what is done, in which order, and what is agreed' },
  { screen: 'parts', words: 'Parts', about: 'one list for the whole visit' },
  { screen: 'proofs', words: 'Proof and reminders', about: 'what is proven, what to look at again, closing the visit' },
  { screen: 'handover', words: 'Hand-over', about: 'the report that the owner keeps: printed, as a file, short' },
  { screen: 'air-test', words: 'Air test and walk-round', about: 'before the coach moves; a failed step holds it' },
  {
    screen: 'road',
    words: 'Road test',
    about: 'one sheet for the passenger; what was noted is offered to every complaint',
  },
  { screen: 'inspection', words: 'Inspection', about: 'wheel ends side by side, hoses, bushings, air springs' },
];
