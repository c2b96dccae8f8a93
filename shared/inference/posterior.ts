import { evidenceOf, type Evidence } from './evidence.ts';
import type { Finding } from './finding.ts';
import type { BeliefModel } from './model.ts';

export interface Posterior {
  /** Aligned with `BeliefModel.causeIds`; sums to 1 within 1e-12. */
  readonly probability: Float64Array;
  /** ln prior + Σ exponent·ln likelihood, not normalised. */
  readonly logWeight: Float64Array;
  /** In the order in which the findings were made. */
  readonly evidence: readonly Evidence[];
}

/**
 * Exact posterior over the causes given the findings, one fault at a time.
 *
 * @param findings  oldest first; the order does not matter for the result.
 * @param excluded  causes that are out of the question (corrected and proven not to be it); their probability is 0.
 * @throws {ReadingError} for a reading that no band of its check expects.
 * @example posterior(beliefModel(tree, {}), []).probability // the prior
 */
export function posterior(
  model: BeliefModel,
  findings: readonly Finding[],
  excluded: ReadonlySet<string> = NONE,
): Posterior {
  const evidence = evidenceOf(model, findings);
  const logWeight = model.prior.map((share, c) => (excluded.has(model.causeIds[c]!) ? -Infinity : Math.log(share)));
  for (const { log, exponent } of evidence) {
    if (exponent === 0) continue;
    for (let c = 0; c < logWeight.length; c++) logWeight[c]! += exponent * log[c]!;
  }
  return { probability: softmax(logWeight), logWeight, evidence };
}

const NONE: ReadonlySet<string> = new Set();

/** Probabilities from log weights; the largest is taken out first so that nothing overflows. */
export function softmax(logWeight: Float64Array): Float64Array {
  let max = -Infinity;
  for (const each of logWeight) if (each > max) max = each;
  const out = new Float64Array(logWeight.length);
  let sum = 0;
  for (let c = 0; c < logWeight.length; c++) {
    out[c] = Math.exp(logWeight[c]! - max);
    sum += out[c]!;
  }
  for (let c = 0; c < out.length; c++) out[c]! /= sum;
  return out;
}
