import type { Screen } from '../state/screens.ts';

/** The rooms of a visit beside the walks of its complaints, in the order of the job. */
export const VISIT_ROOMS: readonly { readonly screen: Screen; readonly words: string; readonly about: string }[] = [
  { screen: 'arrival', words: 'Arrival', about: 'what the owner says, what was done lately, the trip, the drip sheet' },
  { screen: 'air-test', words: 'Air test and walk-round', about: 'before the coach moves; a failed step holds it' },
  {
    screen: 'road',
    words: 'Road test',
    about: 'one sheet for the passenger; what was noted is offered to every complaint',
  },
  { screen: 'inspection', words: 'Inspection', about: 'wheel ends side by side, hoses, bushings, air springs' },
  { screen: 'plan', words: 'Plan', about: 'what is done, in which order, and what is agreed' },
  { screen: 'parts', words: 'Parts', about: 'one list for the whole visit' },
  { screen: 'proofs', words: 'Proof and reminders', about: 'what is proven, what to look at again, closing the visit' },
  { screen: 'handover', words: 'Hand-over', about: 'the report that the owner keeps: printed, as a file, short' },
  { screen: 'intake', words: 'Another complaint', about: 'one more, looked into by itself' },
  { screen: 'coach', words: 'How this coach is built', about: 'as the complaint in front asks for it' },
  { screen: 'person', words: 'Who works, with what', about: 'decides which checks are offered' },
  { screen: 'exchange', words: 'Exchange and backup', about: 'this visit as one file; take one in' },
];
