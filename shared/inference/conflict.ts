import type { Finding } from './finding.ts';
import type { BeliefModel } from './model.ts';
import { posterior } from './posterior.ts';

/** Findings that fit together badly when one cause has to explain all of them. */
export interface Conflict {
  /** log2 of how much less likely the findings are together than they would be apart; positive = they disagree. */
  readonly bits: number;
  /** Ids of the two findings that disagree most. */
  readonly findings: readonly [string, string];
  /** The two causes that explain them best together, each for its finding; null when one cause does as well. */
  readonly pair: readonly [string, string] | null;
  /** Belief that two things are wrong at once, given that two of the list could be. */
  readonly twoShare: number;
}

/** From this many bits the findings are said to disagree. Judgement. */
const SAID_FROM = 1;
/** How often two things are wrong at once, before anything is known. Judgement. */
const TWO_FAULTS = 0.1;

/**
 * Whether the findings disagree, and which two most. Not an error: a wrong answer, a second fault or a cause outside the
 * list all look like this.
 *
 * @returns null while they fit together.
 * @source Conflict measure log2(Π P(eᵢ) / P(e₁…eₙ)), Jensen, Chamberlain, Nordahl & Jensen 1991 (from memory). Of two faults either
 *   may be the one that a check shows, as likely as not (judgement).
 */
export function conflictIn(model: BeliefModel, findings: readonly Finding[]): Conflict | null {
  const { evidence } = posterior(model, findings);
  const counted = evidence.filter(({ exponent }) => exponent > 0);
  if (counted.length < 2) return null;
  const likely = counted.map(({ log, exponent }) => log.map((each) => Math.exp(exponent * each)));
  const bits = -gain(model.prior, likely);
  if (bits < SAID_FROM) return null;
  let first = 0;
  let second = 1;
  let most = -Infinity;
  for (let i = 0; i < likely.length; i++)
    for (let j = i + 1; j < likely.length; j++) {
      const own = -gain(model.prior, [likely[i]!, likely[j]!]);
      if (own <= most) continue;
      most = own;
      first = i;
      second = j;
    }
  // Findings that clash only all together have no two to name.
  if (most <= 0) return null;
  const { pair, share } = bestPair(model, likely, [first, second]);
  return { bits, findings: [counted[first]!.finding.id, counted[second]!.finding.id], pair, twoShare: share };
}

/** log2 of P(all) / Π P(each). */
function gain(prior: Float64Array, likely: readonly Float64Array[]): number {
  let together = 0;
  for (let c = 0; c < prior.length; c++) together += likely.reduce((p, each) => p * each[c]!, prior[c]!);
  const apart = likely.reduce((bits, each) => bits + Math.log2(each.reduce((sum, p, c) => sum + p * prior[c]!, 0)), 0);
  return Math.log2(together) - apart;
}

/** P(result) of two faults together: the mean of what each alone makes it; sums to 1 over the results. */
function shownBy(f: number, g: number): number {
  return (f + g) / 2;
}

/** Weight of all pairs against all single causes, and the likeliest pair. `unlisted` is no part of a pair. */
function bestPair(
  { prior, causeIds }: BeliefModel,
  likely: readonly Float64Array[],
  [first, second]: readonly [number, number],
): { pair: readonly [string, string] | null; share: number } {
  const listed = causeIds.length - 1;
  let single = 0;
  for (let c = 0; c < causeIds.length; c++) single += likely.reduce((p, each) => p * each[c]!, prior[c]!);
  let pairs = 0;
  let weights = 0;
  let best: readonly [number, number] | null = null;
  let most = 0;
  for (let f = 0; f < listed; f++)
    for (let g = f + 1; g < listed; g++) {
      const prior2 = prior[f]! * prior[g]!;
      const weight = likely.reduce((p, each) => p * shownBy(each[f]!, each[g]!), prior2);
      weights += prior2;
      pairs += weight;
      if (weight <= most) continue;
      most = weight;
      best = [f, g];
    }
  if (!best || weights <= 0) return { pair: null, share: 0 };
  const two = (TWO_FAULTS * pairs) / weights;
  const [f, g] = best;
  const ordered =
    likely[first]![f]! / likely[second]![f]! >= likely[first]![g]! / likely[second]![g]! ? [f, g] : [g, f];
  return {
    pair: [causeIds[ordered[0]!]!, causeIds[ordered[1]!]!],
    share: two / (two + (1 - TWO_FAULTS) * single),
  };
}
