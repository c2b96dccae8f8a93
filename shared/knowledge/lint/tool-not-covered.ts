import type { LintRule } from './rule.ts';

export const toolNotCovered: LintRule = {
  code: 'tool-not-covered',
  level: 'error',
  looksFor: 'A tool that no entry of tools.yaml covers for the person who may do the check.',
  check({ tree, vocabulary }, report) {
    tree.checks.forEach((check, i) => {
      for (const tool of check.tools) {
        const kinds = vocabulary.tools.filter(({ covers }) => covers.includes(tool));
        if (kinds.length === 0)
          report(
            check.id,
            ['checks', i, 'id'],
            `"${tool}" of "${check.id}" is in no entry of tools.yaml. Nobody could ever say that it is at hand.`,
          );
        else if (!kinds.some(({ usualFor }) => usualFor.includes('mechanic')))
          report(
            check.id,
            ['checks', i, 'id'],
            `"${tool}" of "${check.id}" is something that not even a mechanic usually has.`,
          );
      }
    });
  },
};
