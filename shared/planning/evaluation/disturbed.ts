import type { Tree } from '../../knowledge/tree.ts';
import type { TableModel } from '../model-problem.ts';

/** Least value of a disturbed number, so that nothing becomes impossible. */
const LEAST = 0.001;

/** A standard normal number from a generator of uniform ones. @source Box & Muller 1958. */
function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** Numbers each multiplied by exp(σ·N(0,1)), then scaled to sum to `total`. */
function shaken(values: readonly number[], sigma: number, random: () => number, total: number): number[] {
  const moved = values.map((value) => Math.max(LEAST, value * Math.exp(sigma * normal(random))));
  const sum = moved.reduce((all, each) => all + each, 0);
  return moved.map((each) => (each / sum) * total);
}

/** A tree whose weights and likelihoods differ from the authored ones as judgement may: what the truth could be. */
export function disturbedTree(tree: Tree, sigma: number, random: () => number): Tree {
  const total = tree.causes.reduce((sum, { weight }) => sum + weight, 0);
  const weights = shaken(
    tree.causes.map(({ weight }) => weight / total),
    sigma,
    random,
    total,
  );
  return {
    ...tree,
    causes: tree.causes.map((cause, c) => ({ ...cause, weight: weights[c]! })),
    checks: tree.checks.map((check) => ({
      ...check,
      likelihood: check.likelihood.map((row) => shaken(row, sigma, random, 1)),
    })),
  };
}

/** The same for a small model. */
export function disturbedModel(model: TableModel, sigma: number, random: () => number): TableModel {
  const priors = shaken(
    model.causes.map(({ prior }) => prior),
    sigma,
    random,
    1,
  );
  return {
    ...model,
    causes: model.causes.map((cause, c) => ({ ...cause, prior: priors[c]! })),
    checks: model.checks.map((check) => ({
      ...check,
      likelihood: Object.fromEntries(
        model.causes.map(({ id }) => {
          const row = shaken(
            check.outcomes.map((outcome) => check.likelihood[id]![outcome]!),
            sigma,
            random,
            1,
          );
          return [id, Object.fromEntries(check.outcomes.map((outcome, o) => [outcome, row[o]!]))];
        }),
      ),
    })),
  };
}

/** A tree with one cause left out of the file; the truth keeps it. */
export function withoutCause(tree: Tree, id: string): Tree {
  const kept = tree.causes.map((cause) => cause.id !== id);
  return {
    ...tree,
    causes: tree.causes.filter((_, c) => kept[c]),
    checks: tree.checks.map((check) => ({
      ...check,
      settles: check.settles.filter((cause) => cause !== id),
      likelihood: check.likelihood.filter((_, c) => kept[c]),
    })),
  };
}
