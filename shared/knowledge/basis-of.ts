import type { Check, Tree } from './tree.ts';
import type { Instrument, Limit, Vocabulary } from './vocabulary.ts';

/** What a tree rests on: everything with a source, and how much of it is judgement. */
export interface Basis {
  /** Limits that its bands rest on, each with the checks that use it. */
  readonly limits: readonly { readonly limit: Limit; readonly checks: readonly Check[] }[];
  readonly instruments: readonly { readonly instrument: Instrument; readonly checks: readonly Check[] }[];
  /** Measuring checks whose bands name no limit. */
  readonly withoutLimit: readonly Check[];
  /** Numbers that somebody judged, counted. */
  readonly judged: {
    readonly weights: number;
    readonly likelihoods: number;
    readonly minutes: number;
    readonly hours: number;
  };
}

/** Every source and every judgement of a tree, in the order of the vocabulary and of the file. */
export function basisOf(tree: Tree, vocabulary: Vocabulary): Basis {
  const { checks, causes } = tree;
  const limits = [...vocabulary.limits.values()]
    .map((limit) => ({ limit, checks: checks.filter((check) => check.limits.includes(limit.id)) }))
    .filter((each) => each.checks.length > 0);
  const instruments = [...vocabulary.instruments.values()]
    .map((instrument) => ({
      instrument,
      checks: checks.filter(({ measure }) => measure?.instrument === instrument.id),
    }))
    .filter((each) => each.checks.length > 0);
  return {
    limits,
    instruments,
    withoutLimit: checks.filter(({ measure, limits: own }) => measure && own.length === 0),
    judged: {
      // The share of what is not in the list is one more.
      weights: causes.length + 1,
      likelihoods: checks.reduce((sum, { results }) => sum + results.length * causes.length, 0),
      minutes: checks.length,
      hours: causes.length,
    },
  };
}
