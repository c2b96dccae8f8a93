import type { LintRule } from './rule.ts';

export const teachingOrder: LintRule = {
  code: 'teaching-order',
  level: 'error',
  looksFor: 'A teaching order that leaves a check out, names one twice, or puts one before what it requires.',
  check({ tree }, report) {
    const place = new Map(tree.teaching.map(({ check }, i) => [check, i]));
    tree.checks.forEach((check, i) => {
      const times = tree.teaching.filter((step) => step.check === check.id).length;
      if (times !== 1)
        report(
          check.id,
          ['checks', i, 'id'],
          `"${check.id}" stands ${times} times in the teaching order, expected once.`,
        );
      const earliest = Math.min(...check.requires.map((entry) => place.get(entry.check) ?? Infinity));
      if (check.requires.length > 0 && (place.get(check.id) ?? Infinity) < earliest)
        report(
          check.id,
          ['teaching', place.get(check.id)!, 'check'],
          `"${check.id}" is taught before anything that it requires. Move it down.`,
        );
    });
  },
};
