import fc from 'fast-check';
import type { Finding } from '../../../shared/inference/index.ts';
import { cause, check, tree } from '../../unit/planning/small-tree.ts';

/** Any tree with 2 to 6 causes and 2 to 5 checks of three results x, y, z. */
export const anySmallTree = fc.integer({ min: 2, max: 6 }).chain((causes) => {
  const row = fc
    .array(fc.integer({ min: 1, max: 50 }), { minLength: 3, maxLength: 3 })
    .map((parts) => parts.map((each) => each / parts.reduce((sum, part) => sum + part, 0)));
  return fc
    .record({
      weights: fc.array(fc.integer({ min: 1, max: 60 }), { minLength: causes, maxLength: causes }),
      tables: fc.array(fc.array(row, { minLength: causes, maxLength: causes }), { minLength: 2, maxLength: 5 }),
    })
    .map(({ weights, tables }) =>
      tree(
        weights.map((weight, c) => cause(`c${c}`, weight)),
        tables.map((likelihood, k) => check(`k${k}`, ['x', 'y', 'z'], likelihood)),
        { unlistedShare: 0.05 },
      ),
    );
});

/** A tree with a finding, clear or leaning, at each of some of its checks. */
export const treeWithFindings = anySmallTree.chain((each) =>
  fc
    .array(fc.tuple(fc.constantFrom('x', 'y', 'z'), fc.constantFrom('clear', 'leaning', 'none')), {
      minLength: each.checks.length,
      maxLength: each.checks.length,
    })
    .map((answers) => ({
      tree: each,
      findings: answers.flatMap(([result, how], k): Finding[] =>
        how === 'none'
          ? []
          : [
              {
                id: `f${k}`,
                check: `k${k}`,
                value: how === 'clear' ? { kind: 'result', result } : { kind: 'not-sure', leaning: result },
              },
            ],
      ),
    })),
);
