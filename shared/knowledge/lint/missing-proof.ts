import type { LintRule } from './rule.ts';

export const missingProof: LintRule = {
  code: 'missing-proof',
  level: 'error',
  looksFor: 'A cause whose correction has no proof.',
  check({ tree }, report) {
    if (tree.proofs.some(({ after }) => after === '*')) return;
    tree.causes.forEach((cause, i) => {
      if (!tree.proofs.some(({ after }) => after === cause.id))
        report(
          cause.id,
          ['causes', i, 'id'],
          `Nothing proves that "${cause.id}" is cured. Add a proof after "*", or after this cause.`,
        );
    });
  },
};
