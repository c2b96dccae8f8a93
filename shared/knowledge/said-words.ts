import type { Verdict } from './tree.ts';
import type { Status } from './vocabulary.ts';

/** A drive verdict in words. */
export const VERDICT_SAID: Readonly<Record<Verdict, string>> = {
  'stay-put': 'Stay put',
  'creep-to-safe-place': 'Creep to a safe place',
  'drive-and-book': 'Drive and book a repair',
};

/** How a figure or statement came to be, in words behind its source. */
export const STATUS_SAID: Readonly<Record<Status, string>> = {
  seen: 'read',
  'second-hand': 'second hand',
  memory: 'from memory',
  practice: 'common practice',
  judgement: 'judgement',
};
