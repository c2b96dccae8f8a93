import { fitOf, weightOn, type Layout } from '../knowledge/layout.ts';
import { UNLISTED, type Check, type Tree } from '../knowledge/tree.ts';

/**
 * Share of a uniform distribution mixed into every likelihood: P' = (1 − λ)·P + λ/|results|.
 *
 * No cause is ever excluded by one answer, and one wrong answer can be recovered from: with λ = .02 a yes/no answer moves
 * the odds by at most 19.96 dB. The value is judgement.
 */
export const FLOOR = 0.02;

/** Later findings of an evidence group count with their likelihoods to this power. Judgement. */
export const DAMPING = 0.5;

/** A check as inference sees it. */
export interface CheckTable {
  readonly check: Check;
  /** P(result | cause), floored; rows = results in file order, columns = causes of the model. */
  readonly likelihood: readonly Float64Array[];
  /** Natural logarithms of the same. */
  readonly logLikelihood: readonly Float64Array[];
  /** P(result) before anything is known; sums to 1. */
  readonly expected: Float64Array;
  /** Index of its evidence group, or −1. */
  readonly group: number;
  /** Information its result carries about the causes before anything is known, bits. Decides which finding of a group counts in full. */
  readonly sharpness: number;
}

/** Causes that can exist on this coach, with prior and likelihood tables. */
export interface BeliefModel {
  /** Applicable causes in file order, then `unlisted`. */
  readonly causeIds: readonly string[];
  /** As authored for this coach, in the same order but for `unlisted`, which has none. */
  readonly weights: readonly number[];
  /** Sums to 1. */
  readonly prior: Float64Array;
  readonly tables: ReadonlyMap<string, CheckTable>;
  readonly groupCount: number;
}

export interface ModelOptions {
  /** Replaces `FLOOR`; 0 takes the tables as they are, which needs tables without zeros. */
  readonly floor?: number;
}

/**
 * The belief model of a tree on one coach. Causes that the known layout contradicts are left out; unknown layout leaves
 * them in. The prior is weight on that coach / sum of weights, scaled to what `unlisted` leaves. The row of `unlisted` is half uniform
 * and half the prior-weighted mean of the other rows (judgement): a cause that is not in the list behaves somewhat like
 * those that are.
 */
export function beliefModel(tree: Tree, layout: Layout, options: ModelOptions = {}): BeliefModel {
  const floor = options.floor ?? FLOOR;
  const kept = tree.causes
    .map((cause) => (fitOf(cause.when, layout).fits === 'no' ? 'n' : weightOn(cause, layout)))
    .join();
  const key = `${floor} ${kept}`;
  const models = made.get(tree) ?? new Map<string, BeliefModel>();
  made.set(tree, models);
  const known = models.get(key);
  if (known) return known;
  const model = buildModel(tree, layout, floor);
  models.set(key, model);
  return model;
}

/** Models made before: the same tree on the same kind of coach gives the same tables. */
const made = new WeakMap<Tree, Map<string, BeliefModel>>();

function buildModel(tree: Tree, layout: Layout, floor: number): BeliefModel {
  const kept = tree.causes
    .map((cause, i) => ({ cause, i }))
    .filter(({ cause }) => fitOf(cause.when, layout).fits !== 'no');
  const causeIds = [...kept.map(({ cause }) => cause.id), UNLISTED];
  const n = causeIds.length;
  const prior = new Float64Array(n);
  const weights = kept.map(({ cause }) => weightOn(cause, layout));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  weights.forEach((weight, c) => (prior[c] = (weight / total) * (1 - tree.unlistedShare)));
  prior[n - 1] = kept.length > 0 ? tree.unlistedShare : 1;

  const groups = new Map<string, number>();
  const tables = new Map<string, CheckTable>();
  for (const check of tree.checks) {
    const results = check.results.length;
    const likelihood = check.results.map(() => new Float64Array(n));
    for (let r = 0; r < results; r++) {
      const row = likelihood[r]!;
      let mean = 0;
      for (let c = 0; c < n - 1; c++) {
        const value = check.likelihood[kept[c]!.i]![r]!;
        row[c] = (1 - floor) * value + floor / results;
        mean += prior[c]! * row[c]!;
      }
      const known = 1 - prior[n - 1]!;
      row[n - 1] = 0.5 / results + 0.5 * (known > 0 ? mean / known : 1 / results);
    }
    let group = -1;
    if (check.group !== undefined) {
      group = groups.get(check.group) ?? groups.size;
      groups.set(check.group, group);
    }
    tables.set(check.id, {
      check,
      likelihood,
      logLikelihood: likelihood.map((row) => row.map(Math.log)),
      expected: Float64Array.from(likelihood, (row) => row.reduce((sum, p, c) => sum + p * prior[c]!, 0)),
      group,
      sharpness: mutualInformation(prior, likelihood),
    });
  }
  return { causeIds, weights, prior, tables, groupCount: groups.size };
}

/**
 * Information that a result carries about the cause, in bits: Σ_c Σ_r b(c)·P(r|c)·log2(P(r|c)/P(r)).
 *
 * @param belief      sums to 1.
 * @param likelihood  rows = results, columns = causes.
 * @source Mutual information of two discrete variables, Shannon 1948.
 */
export function mutualInformation(belief: Float64Array, likelihood: readonly Float64Array[]): number {
  let bits = 0;
  for (const row of likelihood) {
    let share = 0;
    for (let c = 0; c < belief.length; c++) share += belief[c]! * row[c]!;
    if (share <= 0) continue;
    for (let c = 0; c < belief.length; c++) {
      const joint = belief[c]! * row[c]!;
      if (joint > 0) bits += joint * Math.log2(row[c]! / share);
    }
  }
  return Math.max(0, bits);
}

/** Uncertainty about the cause, bits. @source Shannon 1948. */
export function entropyOf(belief: Float64Array): number {
  let bits = 0;
  for (const p of belief) if (p > 0) bits -= p * Math.log2(p);
  return bits;
}
