import type { LintRule } from './rule.ts';

export const measureWithoutLimit: LintRule = {
  code: 'measure-without-limit',
  level: 'error',
  looksFor: 'A measuring check that does not say what its bands rest on.',
  check({ tree }, report) {
    tree.checks.forEach((check, i) => {
      if (check.measure && check.limits.length === 0)
        report(
          check.id,
          ['checks', i, 'id'],
          `"${check.id}" has bands without a source. Name the limits of limits.yaml that they rest on; a band of your own is a limit with the status "judgement".`,
        );
    });
  },
};
