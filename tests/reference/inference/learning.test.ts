/** Expected values: Dirichlet update of the same invented priors by another program (posterior vectors, "dirichlet"). */
import { describe, expect, it } from 'vitest';
import { learnedOdds, type ClosedCase } from '../../../shared/inference/index.ts';
import { referenceTree } from './slow-air.ts';

const { tree } = referenceTree('m5-slow-air-imperfect.json');
const COUNTS = { purge_valve: 6, chamber_leak: 2, compressor: 0, governor: 3, gauge: 1, other: 0 };
const MEAN = {
  purge_valve: 0.3625,
  chamber_leak: 0.23125,
  compressor: 0.075,
  governor: 0.175,
  gauge: 0.10625,
  other: 0.05,
};

describe('[INF-15] starting odds from verified cases', () => {
  const cases = Object.entries(COUNTS).flatMap(([cause, n]) =>
    Array.from({ length: n }, (_, i): ClosedCase => ({
      id: `${cause}-${i}`,
      complaint: tree.id,
      layout: {},
      corrections: [{ cause, partSeen: 'bad', proof: 'gone' }],
    })),
  );
  const { causes, opinion, data } = learnedOdds(tree, {}, cases, { on: true, opinion: 20 });
  it.each(Object.entries(MEAN))('%s', (cause, mean) => {
    expect(causes.find((each) => each.cause === cause)!.learned).toBeCloseTo(mean, 9);
  });
  it('opinion : data is 20 : 12; the first share has a standard deviation of .08368', () => {
    expect([opinion, data]).toEqual([20, 12]);
    expect(causes[0]!.deviation).toBeCloseTo(0.08368, 5);
  });
});
