import { beliefModel, type BeliefModel } from '../../inference/index.ts';
import type { Layout } from '../../knowledge/layout.ts';
import { UNLISTED, type LayoutValue, type Tree } from '../../knowledge/tree.ts';
import type { Vocabulary } from '../../knowledge/vocabulary.ts';
import { draw } from './random.ts';

/** A coach with one hidden fault: what the fault is, how the coach is built, and what each check would find. */
export interface SimulatedCoach {
  readonly cause: string;
  /** A second fault that is there at the same time. */
  readonly also?: string;
  readonly layout: Layout;
  /**
   * Result id of a check, drawn from the tree's likelihoods the first time it is asked and the same after that, until a
   * fault is corrected.
   */
  look(check: string, corrected?: ReadonlySet<string>): string;
}

/**
 * Draws a coach from a tree: the fault by the prior (`unlisted` too), the layout so that the fault can exist, results
 * from the likelihoods as authored. It says how well the tables are used, not how true they are.
 */
export function drawCoach(tree: Tree, vocabulary: Vocabulary, random: () => number): SimulatedCoach {
  const all = beliefModel(tree, {}, { floor: 0 });
  const cause = all.causeIds[draw(all.prior, random)]!;
  const layout = layoutFor(tree, vocabulary, cause);
  return coachWith(tree, cause, layout, random);
}

/** Draws a coach of a given build: the fault by the prior of the causes that can exist on it. */
export function drawCoachOn(tree: Tree, layout: Layout, random: () => number): SimulatedCoach {
  const { causeIds, prior } = beliefModel(tree, layout, { floor: 0 });
  return coachWith(tree, causeIds[draw(prior, random)]!, layout, random, layout);
}

/** A coach with a given fault. @param known  what the tables may take as known of the coach. */
export function coachWith(
  tree: Tree,
  cause: string,
  layout: Layout,
  random: () => number,
  known: Layout = {},
): SimulatedCoach {
  const truth: BeliefModel = beliefModel(tree, known, { floor: 0 });
  const column = truth.causeIds.indexOf(cause);
  // Drawn beforehand, in the order of the file: in whatever order a way of working looks, the coach is the same.
  const found = new Map(
    [...truth.tables].map(
      ([
        check,
        {
          likelihood,
          check: { results },
        },
      ]) => [
        check,
        results[
          draw(
            likelihood.map((row) => row[column]!),
            random,
          )
        ]!.id,
      ],
    ),
  );
  return {
    cause,
    layout,
    look: (check) => found.get(check)!,
  };
}

/**
 * A coach with two faults of one complaint, both by the prior and both able to exist on it; null when the second drawn
 * does not fit. Of what either fault alone would show, the less usual result is seen (judgement: faults do not hide each
 * other). Once one is corrected the coach looks as the other alone makes it look.
 */
export function drawTwoFaults(tree: Tree, vocabulary: Vocabulary, random: () => number): SimulatedCoach | null {
  const first = drawCoach(tree, vocabulary, random);
  const truth = beliefModel(tree, first.layout, { floor: 0 });
  const second = coachWith(tree, truth.causeIds[draw(truth.prior, random)]!, first.layout, random);
  if ([first.cause, second.cause].includes(UNLISTED) || first.cause === second.cause) return null;
  return {
    cause: first.cause,
    also: second.cause,
    layout: first.layout,
    look(check, corrected = new Set()) {
      if (corrected.has(first.cause)) return second.look(check);
      if (corrected.has(second.cause)) return first.look(check);
      const { check: known, likelihood } = truth.tables.get(check)!;
      const usual = (result: string): number =>
        likelihood[known.results.findIndex(({ id }) => id === result)]!.reduce(
          (sum, p, c) => sum + p * truth.prior[c]!,
          0,
        );
      const [a, b] = [first.look(check), second.look(check)];
      return usual(a) <= usual(b) ? a : b;
    },
  };
}

/** A usual coach on which the cause can exist: its own features first, then what is usual, then the first value listed. */
export function layoutFor(tree: Tree, vocabulary: Vocabulary, cause: string): Layout {
  const own = cause === UNLISTED ? {} : tree.causes.find(({ id }) => id === cause)!.when;
  const used = new Set([tree, ...tree.causes, ...tree.checks].flatMap(({ when }) => Object.keys(when)));
  const layout: Record<string, LayoutValue> = {};
  for (const feature of vocabulary.layout) {
    if (!used.has(feature.id)) continue;
    const wanted = own[feature.id] ?? tree.when[feature.id];
    layout[feature.id] = wanted?.[0] ?? feature.usual ?? feature.values[0]!.value;
  }
  return layout;
}
