import type { LintRule } from './rule.ts';

const NOT_FOR_OWNERS = ['lifts', 'under', 'spring'] as const;

export const ownerInDanger: LintRule = {
  code: 'owner-in-danger',
  level: 'error',
  looksFor: 'A check that lifts, goes under the coach or handles a spring, offered to an owner.',
  check({ tree }, report) {
    tree.checks.forEach((check, i) => {
      if (check.who !== 'owner-no-tools' && check.who !== 'owner-basic-tools') return;
      const hazard = NOT_FOR_OWNERS.find((each) => check.hazards.includes(each));
      if (hazard)
        report(
          check.id,
          ['checks', i, 'who'],
          `"${check.id}" has the hazard ${hazard} and is offered to ${check.who}. Give it to an apprentice or a mechanic.`,
        );
    });
  },
};
