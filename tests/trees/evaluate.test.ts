import { describe, expect, it } from 'vitest';
import { beliefModel, indexOfMax, posterior, type Finding } from '../../shared/inference/index.ts';
import { layoutFor, adviceWay, scoreWay, swapperWay, taughtWay } from '../../shared/planning/evaluation/index.ts';
import { shippedTrees } from '../shipped-trees.ts';

const { trees, vocabulary } = await shippedTrees();
const shipped = [...trees.values()].flatMap(({ value }) => value ?? []);

describe.each(shipped.map((tree) => [tree.id, tree] as const))('%s', (_, tree) => {
  it('[EVA-1] the planner costs less than the taught order and than swapping the likeliest part', () => {
    const options = { coaches: 30, seed: 7 };
    const [ours, taught, swapped] = [adviceWay(), taughtWay(), swapperWay()].map(
      (way) => scoreWay(way, tree, vocabulary!, options).cost,
    );
    // One check can be taken in one order alone.
    if (tree.checks.length === 1) expect(ours).toBe(taught);
    else expect(ours).toBeLessThan(taught!);
    expect(ours).toBeLessThan(swapped!);
  });
  it('[EVA-2] every cause can be reached as the conclusion by checks that a mechanic can do', () => {
    const missed = tree.causes.filter((cause) => {
      const model = beliefModel(tree, layoutFor(tree, vocabulary!, cause.id));
      const column = tree.causes.indexOf(cause);
      const findings = tree.checks.map((check): Finding => ({
        id: check.id,
        check: check.id,
        value: { kind: 'result', result: check.results[indexOfMax(check.likelihood[column]!)]!.id },
      }));
      const { probability } = posterior(model, findings);
      return model.causeIds[indexOfMax(probability)] !== cause.id;
    });
    expect(missed.map(({ id }) => id)).toEqual([]);
  });
});
