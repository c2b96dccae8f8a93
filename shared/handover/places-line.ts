import { UNLISTED } from '../knowledge/tree.ts';
import type { ComplaintCase } from './complaint-case.ts';
import type { Line } from './document.ts';
import type { LogIndex } from './log-index.ts';

/** Where on the coach the cause is to be looked for; null when the findings point to no place. */
export function placesLine({ complaint, cause, standing, places }: ComplaintCase, log: LogIndex): Line | null {
  if (places.length === 0 || cause === UNLISTED) return null;
  const point = standing === 'proven' || standing === 'unproven' ? 'pointed' : 'point';
  return {
    text: `Where the findings ${point}: ${places.join(', ')}.`,
    from: complaint.trail
      .filter(({ site }) => site !== undefined && places.includes(site))
      .flatMap(({ id }) => log.naming(id)),
  };
}
