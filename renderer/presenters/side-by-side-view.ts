import { sideBySide, type SideBySide, type SideBySideLine } from '../../shared/inference/index.ts';
import { beliefNow, type Situation } from '../../shared/planning/index.ts';

/** A weight of evidence with its words. */
export type Weighed = SideBySideLine['first'];

/** Causes that can be weighed against each other now, likeliest first. */
export function weighable(situation: Situation): readonly string[] {
  const { model, excluded, now } = beliefNow(situation);
  return model.causeIds
    .map((id, i) => ({ id, share: now.probability[i]! }))
    .filter(({ id }) => !excluded.has(id))
    .sort((a, b) => b.share - a.share)
    .map(({ id }) => id);
}

/** What each finding says about two causes, with the odds before and after, decibans. */
export function weighedAgainst(situation: Situation, first: string, second: string): SideBySide {
  const { model, findings, excluded } = beliefNow(situation);
  return sideBySide(model, findings, first, second, excluded);
}

/** Odds in decibans as people say them: "about 4 to 1 for the first". */
export function oddsWords(decibans: number): string {
  const odds = 10 ** (Math.abs(decibans) / 10);
  if (odds < 1.1) return 'even';
  const figure = odds < 10 ? Number(odds.toFixed(1)) : odds < 1000 ? Math.round(odds) : 'over 1000';
  return `${figure} to 1 for the ${decibans > 0 ? 'first' : 'second'}`;
}
