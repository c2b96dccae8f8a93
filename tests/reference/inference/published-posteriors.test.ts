import { describe, expect, it } from 'vitest';
import { beliefModel, posterior, type Finding } from '../../../shared/inference/index.ts';
import { cause, check, tree } from '../../unit/planning/small-tree.ts';

const found = (id: string, result: string): Finding => ({ id, check: id, value: { kind: 'result', result } });

/** Belief in the first cause of a two-cause tree after findings; `unlisted` holds 1e-15 and does not show. */
function first(prior: number, checks: readonly ReturnType<typeof check>[], findings: readonly Finding[]): number {
  const model = beliefModel(tree([cause('a', prior), cause('b', 1 - prior)], checks), {}, { floor: 0 });
  return posterior(model, findings).probability[0]!;
}

describe('[INF-1] the posterior agrees with published worked examples', () => {
  it('burglary alarm: Pearl, Probabilistic Reasoning in Intelligent Systems, 1988, chapter 2', () => {
    const alarm = check(
      'alarm',
      ['heard', 'silent'],
      [
        [0.95, 0.05],
        [0.01, 0.99],
      ],
    );
    expect(first(1e-4, [alarm], [found('alarm', 'heard')])).toBeCloseTo(0.0094115316, 9);
  });

  it('screening test: Eddy 1982, as told by Gigerenzer & Hoffrage, Psychological Review 102, 1995', () => {
    const test = check(
      'test',
      ['positive', 'negative'],
      [
        [0.8, 0.2],
        [0.096, 0.904],
      ],
    );
    expect(first(0.01, [test], [found('test', 'positive')])).toBeCloseTo(0.0776397516, 9);
  });

  it('used car: Russell & Norvig, Artificial Intelligence: A Modern Approach, exercise on the value of a test', () => {
    const test = check(
      'test',
      ['pass', 'fail'],
      [
        [0.8, 0.2],
        [0.35, 0.65],
      ],
    );
    expect(first(0.7, [test], [found('test', 'pass')])).toBeCloseTo(0.842105, 6);
    expect(first(0.7, [test], [found('test', 'fail')])).toBeCloseTo(0.41791, 6);
  });

  it('two tests of a used car: Jensen & Nielsen, Bayesian Networks and Decision Graphs, 2nd ed. 2007', () => {
    const one = check(
      'one',
      ['none', 'defects', 'unclear'],
      [
        [0.05, 0.75, 0.2],
        [0.8, 0.05, 0.15],
      ],
    );
    const two = check(
      'two',
      ['none', 'defects'],
      [
        [0.25, 0.75],
        [0.8, 0.2],
      ],
    );
    expect(first(0.3, [one, two], [found('one', 'none')])).toBeCloseTo(0.026087, 6);
    expect(first(0.3, [one, two], [found('one', 'defects')])).toBeCloseTo(0.865385, 6);
    expect(first(0.3, [one, two], [found('two', 'defects')])).toBeCloseTo(0.616438, 6);
  });

  it('two findings multiply: equal to an enumeration of the joint distribution written here', () => {
    const one = check(
      'one',
      ['x', 'y'],
      [
        [0.7, 0.3],
        [0.2, 0.8],
        [0.5, 0.5],
      ],
    );
    const two = check(
      'two',
      ['x', 'y'],
      [
        [0.1, 0.9],
        [0.6, 0.4],
        [0.5, 0.5],
      ],
    );
    const model = beliefModel(tree([cause('a', 2), cause('b', 3), cause('c', 5)], [one, two]), {}, { floor: 0 });
    const joint = [0.2 * 0.7 * 0.9, 0.3 * 0.2 * 0.4, 0.5 * 0.5 * 0.5];
    const sum = joint.reduce((total, each) => total + each, 0);
    const { probability } = posterior(model, [found('one', 'x'), found('two', 'y')]);
    joint.forEach((each, c) => expect(probability[c]).toBeCloseTo(each / sum, 12));
  });
});
