import type { LintRule } from './rule.ts';

/** Smallest ratio of two likelihoods of one result that counts as telling causes apart. Judgement. */
const TELLS = 2;

export const causesAlike: LintRule = {
  code: 'causes-alike',
  level: 'error',
  looksFor: 'Two causes that no check tells apart.',
  check({ tree }, report) {
    tree.causes.forEach((a, i) => {
      for (let j = i + 1; j < tree.causes.length; j++) {
        const apart = tree.checks.some((check) =>
          check.results.some((_, r) => {
            const [x, y] = [check.likelihood[i]![r]!, check.likelihood[j]![r]!];
            return Math.max(x, y) >= TELLS * Math.min(x, y) && Math.max(x, y) >= 0.1;
          }),
        );
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
