import type { Verdict } from '../../shared/knowledge/index.ts';

/** A drive verdict on screen: the words, its short form, its sign and the class of its frame. */
export const VERDICT_WORDS: Readonly<
  Record<Verdict, { readonly words: string; readonly short: string; readonly icon: string; readonly look: string }>
> = {
  'stay-put': { words: 'Stay put', short: 'Stay put', icon: 'stay', look: 'stay' },
  'creep-to-safe-place': { words: 'Creep to a safe place', short: 'Creep', icon: 'creep', look: 'creep' },
  'drive-and-book': { words: 'Drive and book a repair', short: 'Drive and book', icon: 'drive', look: 'drive' },
};
