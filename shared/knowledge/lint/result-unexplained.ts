import type { LintRule } from './rule.ts';

/** Likelihood that the best cause has to reach for a result to be explained. Judgement. */
const EXPLAINED = 0.08;

export const resultUnexplained: LintRule = {
  code: 'result-unexplained',
  level: 'warning',
  looksFor: 'A result that no cause makes likely and that no stop rule, door or prerequisite uses.',
  check({ tree }, report) {
    const used = [...tree.stopRules, ...tree.leadsTo]
      .flatMap(({ firedBy }) => firedBy)
      .concat(tree.checks.flatMap(({ requires }) => requires));
    tree.checks.forEach((check, i) => {
      check.results.forEach((result, r) => {
        if (check.likelihood.some((row) => row[r]! >= EXPLAINED)) return;
        if (used.some((entry) => entry.check === check.id && entry.results.includes(result.id))) return;
        report(
          `${check.id}/${result.id}`,
          ['checks', i, 'results', r, 'id'],
          `No cause makes "${result.id}" of "${check.id}" likelier than ${EXPLAINED}, and no rule or door uses it. What would somebody have who finds it?`,
        );
      });
    });
  },
};
