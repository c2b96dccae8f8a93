import { indexOfMax, inHundred, outlook } from '../../shared/inference/index.ts';
import { beliefNow, inSentence, type Situation } from '../../shared/planning/index.ts';
import { causeName, sentence } from './presenters.ts';

/** One result of a check not made yet: how often it would come, and what would lead then. */
export interface WouldMean {
  readonly label: string;
  readonly share: string;
  readonly then: string;
}

/** What each result of a check would mean, in file order. */
export function whatItWouldMean(situation: Situation, checkId: string): WouldMean[] {
  const { model, now } = beliefNow(situation);
  const { share, after } = outlook(model, now, checkId);
  const check = situation.tree.checks.find(({ id }) => id === checkId);
  return (check?.results ?? []).map((result, r) => {
    const belief = after[r]!;
    const lead = indexOfMax(belief);
    const name = inSentence(causeName(situation.tree, model.causeIds[lead]!));
    return {
      label: sentence(result.label),
      share: inHundred(share[r]!),
      then: `${inHundred(belief[lead]!)} for ${name}`,
    };
  });
}
