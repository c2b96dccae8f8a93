import type { Screen } from '../state/app-state.svelte.ts';

/** The rooms of a visit beside the walks of its complaints, in the order of the job. */
export const VISIT_ROOMS: readonly { readonly screen: Screen; readonly words: string; readonly about: string }[] = [
  { screen: 'arrival', words: 'Arrival', about: 'what the owner says, what was done lately, the trip, the drip sheet' },
  { screen: 'intake', words: 'Another complaint', about: 'one more, looked into by itself' },
  { screen: 'coach', words: 'How this coach is built', about: 'as the complaint in front asks for it' },
  { screen: 'person', words: 'Who works, with what', about: 'decides which checks are offered' },
];
