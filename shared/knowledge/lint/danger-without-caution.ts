import type { LintRule } from './rule.ts';

export const dangerWithoutCaution: LintRule = {
  code: 'danger-without-caution',
  level: 'error',
  looksFor: 'A check that settles a cause that can hurt people and says no caution.',
  check({ tree }, report) {
    const danger = new Set(tree.causes.filter(({ hazard }) => hazard === 'danger').map(({ id }) => id));
    tree.checks.forEach((check, i) => {
      const settles = check.settles.find((id) => danger.has(id));
      if (settles === undefined || check.cautions.length > 0) return;
      report(
        check.id,
        ['checks', i, 'id'],
        `"${check.id}" settles "${settles}", which can hurt people, and has no caution. Say what can hurt somebody, before the steps.`,
      );
    });
  },
};
