import { VERDICTS, type Verdict } from '../knowledge/tree.ts';
import type { Hold } from '../planning/situation.ts';

/** One thing on a sheet of the visit that holds the coach. */
export interface SheetHold extends Hold {
  /** Step, item or entry. */
  readonly of: string;
}

/** What holds the coach, with what to do now. @param again  what lifts it: "do the step again". */
export function sheetHold(of: string, verdict: Verdict, because: string, again: string): SheetHold {
  return { of, verdict, because, doNow: doNow(verdict, again) };
}

function doNow(verdict: Verdict, again: string): string {
  if (verdict === 'stay-put')
    return `Leave the coach where it stands: parking brake on, wheels chocked. Have it put right and ${again} before it moves.`;
  if (verdict === 'creep-to-safe-place')
    return `Go slowly to the nearest place off the road, no farther. Have it put right there and ${again}.`;
  return '';
}

/** Strictest first, equals in their order. */
export function strictestFirst<H extends Hold>(holds: readonly H[]): H[] {
  return [...holds].sort((a, b) => VERDICTS.indexOf(a.verdict) - VERDICTS.indexOf(b.verdict));
}
