import type { Screen } from '../state/app-state.svelte.ts';

/** Rooms of a visit beside the work on one complaint. */
export const VISIT_ROOMS: readonly { readonly screen: Screen; readonly words: string; readonly about: string }[] = [
  { screen: 'handover', words: 'Hand-over', about: 'the report that the owner keeps: printed, as a file, short' },
];
