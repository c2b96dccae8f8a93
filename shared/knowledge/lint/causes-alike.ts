import { separates, TELLS } from '../separates.ts';
import type { LintRule } from './rule.ts';

export const causesAlike: LintRule = {
  code: 'causes-alike',
  level: 'error',
  looksFor: 'Two causes that no check tells apart.',
  check({ tree }, report) {
    tree.causes.forEach((a, i) => {
      for (let j = i + 1; j < tree.causes.length; j++) {
        const apart = tree.checks.some((check) => separates(check, i, j));
        const b = tree.causes[j]!;
        if (!apart)
          report(
            `${a.id}/${b.id}`,
            ['causes', j, 'id'],
            `No check tells "${b.id}" from "${a.id}": no result is ${TELLS} times likelier under one of them. Add a check, or merge the causes.`,
          );
      }
    });
  },
};
