import type { Evidence } from './evidence.ts';
import type { BeliefModel } from './model.ts';
import { posterior } from './posterior.ts';
import type { Finding } from './finding.ts';

/** How often two things are wrong at once, before anything is known; .05 to .15 is sensible. Judgement. */
export const TWO_FAULTS = 0.1;
/** From this factor the one of two causes that makes a finding likelier is said to explain it. Judgement: 3 decibans. */
const EXPLAINS = 2;

/** Two causes at once as one hypothesis. */
export interface FaultPair {
  /** Ids, in the order of the file. */
  readonly causes: readonly [string, string];
  /** Belief in just these two, among all single causes and all pairs. */
  readonly share: number;
}

/** What is believed when up to two things may be wrong. */
export interface PairBelief {
  /** Belief that it is one thing, by cause of the model; with all pairs together 1 within 1e-12. */
  readonly single: Float64Array;
  /** Most likely first; ties in the order of the file. */
  readonly pairs: readonly FaultPair[];
  /** Belief that two things of the list are wrong at once. */
  readonly twoShare: number;
}

/**
 * Exact belief over every single cause and every two of the listed ones: n + n(n − 1)/2 hypotheses, with the prior
 * (1 − κ)·p(f) for one and κ·p(f)·p(g)/Σ p·p for two. `unlisted` is no part of a pair: it may be two things already.
 *
 * Of two faults either may be the one that a check shows, as likely as not: P(result | f, g) is the mean of the two rows.
 * The rule of the worse result (noisy-MAX) would need an order of the results by how bad they are, which trees do not declare.
 *
 * @param excluded  causes that are out of the question; so are pairs with them.
 * @throws {ReadingError} for a reading that no band of its check expects.
 * @source Enumeration of the sets of at most two faults (elementary). The mean of the rows is judgement.
 */
export function pairBelief(
  model: BeliefModel,
  findings: readonly Finding[],
  excluded: ReadonlySet<string> = new Set(),
): PairBelief {
  const { causeIds } = model;
  const prior = openPrior(model, excluded);
  const likely = likelihoodsOf(posterior(model, findings, excluded).evidence);
  const single = prior.map((p, c) => (1 - TWO_FAULTS) * likely.reduce((w, each) => w * each.of(c, c), p));
  const listed = causeIds.length - 1;
  const pairs: { causes: readonly [string, string]; share: number }[] = [];
  let before = 0;
  for (let f = 0; f < listed; f++)
    for (let g = f + 1; g < listed; g++) {
      const both = prior[f]! * prior[g]!;
      if (both === 0) continue;
      before += both;
      pairs.push({ causes: [causeIds[f]!, causeIds[g]!], share: likely.reduce((w, each) => w * each.of(f, g), both) });
    }
  for (const pair of pairs) pair.share *= TWO_FAULTS / before;
  const all = single.reduce((sum, w) => sum + w, 0) + pairs.reduce((sum, { share }) => sum + share, 0);
  const shares = pairs.map(({ causes, share }): FaultPair => ({ causes, share: share / all }));
  return {
    single: single.map((w) => w / all),
    pairs: shares.sort((a, b) => b.share - a.share),
    twoShare: shares.reduce((sum, { share }) => sum + share, 0),
  };
}

/** Which of two causes makes a finding clearly likelier; null when both do about equally. */
export function explainedBy({ causeIds }: BeliefModel, { log, exponent }: Evidence, pair: FaultPair): string | null {
  const [f, g] = pair.causes.map((id) => causeIds.indexOf(id));
  const gap = exponent * (log[f!]! - log[g!]!);
  return Math.abs(gap) < Math.log(EXPLAINS) ? null : pair.causes[gap > 0 ? 0 : 1];
}

/** The prior without the causes that are out of the question; sums to 1. */
export function openPrior({ prior, causeIds }: BeliefModel, excluded: ReadonlySet<string>): Float64Array {
  const open = prior.map((p, c) => (excluded.has(causeIds[c]!) ? 0 : p));
  const sum = open.reduce((total, p) => total + p, 0);
  return open.map((p) => p / sum);
}

/** P(what was perceived | one cause, or two of them), up to a constant: `of(c, c)` is the cause alone. */
interface Perceived {
  of(f: number, g: number): number;
}

function likelihoodsOf(evidence: readonly Evidence[]): Perceived[] {
  return evidence
    .filter(({ exponent }) => exponent > 0)
    .map(({ log, exponent }) => {
      const plain = log.map(Math.exp);
      return { of: (f, g) => ((plain[f]! + plain[g]!) / 2) ** exponent };
    });
}
