import { beliefModel } from '../../inference/index.ts';
import { fitOf, type Layout } from '../../knowledge/layout.ts';
import { UNLISTED, type Tree } from '../../knowledge/tree.ts';
import type { Vocabulary } from '../../knowledge/vocabulary.ts';
import { defaultCosts } from '../costs.ts';
import type { Situation } from '../situation.ts';
import { correctionMinutes, treeProblem } from '../tree-problem.ts';
import { layoutFor } from './coach.ts';
import { informationValue, wrongTurnCost, type Channel } from './information-bound.ts';

/** Costs that no way of working gets below on a tree, over the coaches that `drawCoach` draws. Minutes. */
export interface LeastCost {
  /** Were the cause known beforehand: correction, its access, and its proof. */
  readonly known: number;
  /** With what finding the cause out takes at the least: proven, but not said to be reachable. */
  readonly proven: number;
}

/** Prices of information that are tried; the best of them counts. Minutes per natural unit of information. */
const PRICES = Array.from({ length: 28 }, (_, i) => 4 * 1.2 ** i);

/**
 * A proven lower bound for a mechanic.
 *
 * Any way of working makes some checks, then a first correction (or hands over). What the first correction can know of
 * the cause is at most what the checks tell, and each check tells at most so much for its minutes. So the cost is at least
 * the least, over all ways of telling, of wrong turns plus check minutes; a price λ of information turns that into two
 * problems that are solved apart, and every λ gives a bound. Left out, which can only lower it: access for the checks,
 * prerequisites, and everything after the first wrong correction but the right one.
 *
 * @source Data processing and rate-distortion: Shannon 1948, 1959; the bound from any Lagrange multiplier: weak duality.
 */
export function leastCost(tree: Tree, vocabulary: Vocabulary): LeastCost {
  const all = beliefModel(tree, {}, { floor: 0 });
  const groups = new Map<string, { readonly layout: Layout; readonly share: Float64Array }>();
  all.causeIds.forEach((id, c) => {
    const layout = layoutFor(tree, vocabulary, id);
    const key = JSON.stringify(layout);
    const group = groups.get(key) ?? { layout, share: new Float64Array(all.causeIds.length) };
    group.share[c] = all.prior[c]!;
    groups.set(key, group);
  });
  let known = 0;
  let proven = 0;
  for (const { layout, share } of groups.values()) {
    const mass = share.reduce((sum, p) => sum + p, 0);
    const bound = boundFor(tree, vocabulary, layout, share, mass);
    known += mass * bound.known;
    proven += mass * bound.proven;
  }
  return { known, proven };
}

function boundFor(tree: Tree, vocabulary: Vocabulary, layout: Layout, share: Float64Array, mass: number): LeastCost {
  const costs = defaultCosts('mechanic');
  const all = beliefModel(tree, {}, { floor: 0 });
  const situation: Situation = {
    tree,
    vocabulary,
    who: 'mechanic',
    layout,
    findings: [],
    stopAnswers: {},
    corrections: [],
    access: [],
    costs,
  };
  const problem = treeProblem(situation, () => true);
  const live = all.causeIds.flatMap((id, c) => (share[c]! > 0 ? [{ id, c, p: share[c]! / mass }] : []));
  const whenKnown = live.map(({ id }) =>
    id === UNLISTED ? costs.handOver * 1.5 : problem.whenKnown(problem.model.causeIds.indexOf(id)),
  );
  const minutes = (id: string): number =>
    id === UNLISTED ? costs.handOver / 2 : correctionMinutes(tree.causes.find((cause) => cause.id === id)!);
  /** First step → cost at the least, for each cause: the wrong correction with its proof, then the right one. */
  const turns = live.map(({ id }, i) => [
    ...problem.corrections.map((first) =>
      first.id === id ? whenKnown[i]! : whenKnown[i]! + first.cost + problem.verify.cost + problem.wrongPart,
    ),
    costs.handOver + minutes(id),
  ]);
  const shares = live.map(({ p }) => p);
  const channels = tree.checks
    .filter((check) => fitOf(check.when, layout).fits !== 'no')
    .map((check): Channel => ({
      minutes: check.minutes,
      likelihood: live.map(({ c }) => all.tables.get(check.id)!.likelihood.map((row) => row[c]!)),
    }));
  const known = shares.reduce((sum, p, i) => sum + p * Math.min(...turns[i]!), 0);
  const proven = PRICES.reduce((best, price) => {
    const told = channels.reduce((sum, channel) => sum + informationValue(shares, channel, price), 0);
    return Math.max(best, wrongTurnCost(shares, turns, price) - told);
  }, known);
  return { known, proven };
}
