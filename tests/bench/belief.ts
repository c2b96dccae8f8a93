/**
 * Belief in all causes of the slow-air model after three findings, here and with bayesjs: both on the same model, made once,
 * and both for every cause. Theirs is the fastest of what it offers, the junction tree with its answer already worked out
 * for these findings included; ours starts from the findings each time.
 */
import bayes, { type INetwork } from 'bayesjs';
import { posterior } from '../../shared/inference/index.ts';
import { found, referenceTree } from '../reference/inference/slow-air.ts';

/** Microseconds for all causes. */
export interface BeliefTimes {
  readonly own: number;
  readonly theirs: number;
  /** Which of their ways was the fastest. */
  readonly way: string;
}

/** @throws {Error} when the two do not agree: then there is nothing to compare. */
export function beliefTimes(): BeliefTimes {
  const { model, table } = referenceTree('m5-slow-air-imperfect.json');
  const network: INetwork = {
    cause: {
      id: 'cause',
      states: table.causes.map(({ id }) => id),
      parents: [],
      cpt: Object.fromEntries(table.causes.map(({ id, prior }) => [id, prior])),
    },
    ...Object.fromEntries(
      table.checks.map(({ id, outcomes, likelihood }) => [
        id,
        {
          id,
          states: [...outcomes],
          parents: ['cause'],
          cpt: table.causes.map((each) => ({ when: { cause: each.id }, then: { ...likelihood[each.id]! } })),
        },
      ]),
    ),
  };
  const looked = table.checks.slice(0, 3).map(({ id, outcomes }) => ({ id, result: outcomes[0]! }));
  const seen = looked.map(({ id, result }) => found(id, result));
  const given = Object.fromEntries(looked.map(({ id, result }) => [id, result]));
  const { enumeration, junctionTree, variableElimination } = bayes.inferences;
  // The junction tree keeps what it worked out for an object of findings; a copy of it makes it work anew.
  const ways = {
    enumeration: () => table.causes.map(({ id }) => enumeration.infer(network, { cause: id }, given)),
    'variable elimination': () =>
      table.causes.map(({ id }) => variableElimination.infer(network, { cause: id }, given)),
    'junction tree, worked out before': () =>
      table.causes.map(({ id }) => junctionTree.infer(network, { cause: id }, given)),
    'junction tree': () => {
      const anew = { ...given };
      return table.causes.map(({ id }) => junctionTree.infer(network, { cause: id }, anew));
    },
  };
  const own = (): Float64Array => posterior(model, seen).probability;
  for (const [way, run] of Object.entries(ways))
    run().forEach((share, c) => {
      if (Math.abs(share - own()[c]!) > 1e-9) throw new Error(`${way} and this program disagree about cause ${c}.`);
    });
  const timed = Object.entries(ways).map(([way, run]) => ({ way, us: medianUs(run) }));
  const fastest = timed.reduce((a, b) => (b.us < a.us ? b : a));
  return { own: medianUs(own), theirs: fastest.us, way: fastest.way };
}

/** Median of eleven batches, each long enough for the clock. */
function medianUs(run: () => unknown): number {
  for (const from = performance.now(); performance.now() - from < 50;) run();
  const batches = Array.from({ length: 11 }, () => {
    const from = performance.now();
    let runs = 0;
    do {
      run();
      runs++;
    } while (performance.now() - from < 15);
    return ((performance.now() - from) * 1000) / runs;
  });
  return batches.sort((a, b) => a - b)[5]!;
}
