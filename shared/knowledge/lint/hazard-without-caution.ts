import type { LintRule } from './rule.ts';

export const hazardWithoutCaution: LintRule = {
  code: 'hazard-without-caution',
  level: 'error',
  looksFor: 'A check with a hazard and no caution.',
  check({ tree }, report) {
    tree.checks.forEach((check, i) => {
      if (check.hazards.length > 0 && check.cautions.length === 0)
        report(
          check.id,
          ['checks', i, 'id'],
          `"${check.id}" has the hazard ${check.hazards.join(', ')} and no caution. Say what can hurt somebody, before the steps.`,
        );
    });
  },
};
