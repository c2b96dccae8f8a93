import { VERDICT_SAID, type Verdict } from '../../shared/knowledge/index.ts';

/** A drive verdict on screen: the words, its short form, its sign and the class of its frame. */
export const VERDICT_WORDS: Readonly<
  Record<Verdict, { readonly words: string; readonly short: string; readonly icon: string; readonly look: string }>
> = {
  'stay-put': { words: VERDICT_SAID['stay-put'], short: 'Stay put', icon: 'stay', look: 'stay' },
  'creep-to-safe-place': { words: VERDICT_SAID['creep-to-safe-place'], short: 'Creep', icon: 'creep', look: 'creep' },
  'drive-and-book': { words: VERDICT_SAID['drive-and-book'], short: 'Drive and book', icon: 'drive', look: 'drive' },
};
