import type { LintRule } from './rule.ts';

const FEWEST = 8;

export const fewPhrases: LintRule = {
  code: 'few-phrases',
  level: 'error',
  looksFor: 'Too few ways in which owners say it.',
  check({ tree }, report) {
    if (tree.phrases.length < FEWEST)
      report(
        tree.id,
        ['phrases'],
        `${tree.phrases.length} phrases, at least ${FEWEST} are wanted: the search lives on them.`,
      );
  },
};
