import type { Screen } from '../state/app-state.svelte.ts';

/** Pages of a visit, with what each is for. */
export const VISIT_ROOMS: readonly { readonly screen: Screen; readonly words: string; readonly about: string }[] = [
  { screen: 'exchange', words: 'Exchange and backup', about: 'this visit as one file; take one in' },
];
