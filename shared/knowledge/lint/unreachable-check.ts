import type { LintRule } from './rule.ts';

export const unreachableCheck: LintRule = {
  code: 'unreachable-check',
  level: 'error',
  looksFor: 'A check whose prerequisites can never be met because they wait for each other.',
  check({ tree }, report) {
    const reachable = new Set(tree.checks.filter(({ requires }) => requires.length === 0).map(({ id }) => id));
    for (let before = -1; before !== reachable.size;) {
      before = reachable.size;
      for (const check of tree.checks)
        if (check.requires.some((entry) => reachable.has(entry.check))) reachable.add(check.id);
    }
    tree.checks.forEach((check, i) => {
      if (!reachable.has(check.id))
        report(
          check.id,
          ['checks', i, 'requires'],
          `"${check.id}" can never be asked: every check that it requires waits for it in turn. Break the circle.`,
        );
    });
  },
};
