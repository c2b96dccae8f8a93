import type { Finding } from './finding.ts';
import type { BeliefModel } from './model.ts';
import { explainedBy, openPrior, pairBelief, type FaultPair } from './pairs.ts';
import { posterior } from './posterior.ts';

/** Findings that fit together badly when one cause has to explain all of them. */
export interface Conflict {
  /** log2 of how much less likely the findings are together than they would be apart; positive = they disagree. */
  readonly bits: number;
  /** Ids of the two findings that disagree most. */
  readonly findings: readonly [string, string];
  /** The two causes that explain them best together; null when this coach can have no two. */
  readonly pair: FaultPair | null;
  /** For each of the two findings the cause of the pair that explains it; null = both about as well. */
  readonly explained: readonly [string | null, string | null];
  /** Belief that two things are wrong at once, given that two of the list could be. */
  readonly twoShare: number;
}

/** From this many bits the findings are said to disagree. Judgement. */
const SAID_FROM = 1;

/**
 * Whether the findings disagree, which two most, and what two causes would explain them. Not an error: a wrong answer, a
 * second fault or a cause outside the list all look like this.
 *
 * @param excluded  causes that are out of the question.
 * @returns null while they fit together.
 * @source Conflict measure log2(Π P(eᵢ) / P(e₁…eₙ)), Jensen, Chamberlain, Nordahl & Jensen 1991 (from memory).
 */
export function conflictIn(
  model: BeliefModel,
  findings: readonly Finding[],
  excluded: ReadonlySet<string> = new Set(),
): Conflict | null {
  const counted = posterior(model, findings, excluded).evidence.filter(({ exponent }) => exponent > 0);
  if (counted.length < 2) return null;
  const prior = openPrior(model, excluded);
  const likely = counted.map(({ log, exponent }) => log.map((each) => Math.exp(exponent * each)));
  const bits = -gain(prior, likely);
  if (bits < SAID_FROM) return null;
  let first = 0;
  let second = 1;
  let most = -Infinity;
  for (let i = 0; i < likely.length; i++)
    for (let j = i + 1; j < likely.length; j++) {
      const own = -gain(prior, [likely[i]!, likely[j]!]);
      if (own <= most) continue;
      most = own;
      first = i;
      second = j;
    }
  // Findings that clash only all together have no two to name.
  if (most <= 0) return null;
  const { pairs, twoShare } = pairBelief(model, findings, excluded);
  const pair = pairs[0] ?? null;
  return {
    bits,
    findings: [counted[first]!.finding.id, counted[second]!.finding.id],
    pair,
    explained: pair
      ? [explainedBy(model, counted[first]!, pair), explainedBy(model, counted[second]!, pair)]
      : [null, null],
    twoShare,
  };
}

/** log2 of P(all) / Π P(each). */
function gain(prior: Float64Array, likely: readonly Float64Array[]): number {
  let together = 0;
  for (let c = 0; c < prior.length; c++) together += likely.reduce((p, each) => p * each[c]!, prior[c]!);
  const apart = likely.reduce((bits, each) => bits + Math.log2(each.reduce((sum, p, c) => sum + p * prior[c]!, 0)), 0);
  return Math.log2(together) - apart;
}
