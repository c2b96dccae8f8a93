import type { Verdict } from '../../knowledge/tree.ts';
import { generalAdvice, stricter } from '../../planning/index.ts';
import type { Meanwhile } from './plan.ts';

/** What a line that no tree stands behind means for driving on. Never milder than the general advice of its verdict. */
export function meanwhileOf(verdict: Verdict, because: string): Meanwhile {
  return { verdict, because, doNow: generalAdvice(verdict) };
}

/** The strictest of several; the first of equals, null of none. */
export function strictestOf(all: readonly Meanwhile[]): Meanwhile | null {
  return all.reduce<Meanwhile | null>(
    (worst, each) =>
      worst === null || (each.verdict !== worst.verdict && stricter(each.verdict, worst.verdict) === each.verdict)
        ? each
        : worst,
    null,
  );
}
