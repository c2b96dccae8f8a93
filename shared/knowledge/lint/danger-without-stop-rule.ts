import type { LintRule } from './rule.ts';

export const dangerWithoutStopRule: LintRule = {
  code: 'danger-without-stop-rule',
  level: 'error',
  looksFor: 'A cause that can hurt people and that no rule stricter than "drive-and-book" guards over.',
  check({ tree }, report) {
    tree.causes.forEach((cause, i) => {
      if (cause.hazard !== 'danger') return;
      if (tree.stopRules.some((rule) => rule.verdict !== 'drive-and-book' && rule.covers.includes(cause.id))) return;
      report(
        cause.id,
        ['causes', i, 'hazard'],
        `"${cause.id}" can hurt people, but no stop rule stricter than drive-and-book covers it. Add a rule, or add it to the "covers" of one.`,
      );
    });
  },
};
