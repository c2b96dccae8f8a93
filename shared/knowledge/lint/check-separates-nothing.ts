import type { LintRule } from './rule.ts';

/** Largest difference between two rows that still counts as the same. Judgement. */
const SAME = 0.02;

export const checkSeparatesNothing: LintRule = {
  code: 'check-separates-nothing',
  level: 'error',
  looksFor: 'A check whose results are equally likely under every cause.',
  check({ tree }, report) {
    tree.checks.forEach((check, i) => {
      const spread = check.results.map((_, r) => {
        const column = check.likelihood.map((row) => row[r]!);
        return Math.max(...column) - Math.min(...column);
      });
      if (tree.causes.length > 1 && Math.max(...spread) <= SAME)
        report(
          check.id,
          ['checks', i, 'likelihood'],
          `"${check.id}" tells no causes apart: its likelihoods differ by ${SAME} at most. Correct them, or take the check out.`,
        );
    });
  },
};
