import type { LintRule } from './rule.ts';

/** A result that is at least so likely under every cause comes out again and again. Judgement. */
const ALWAYS = 0.97;

export const variesInVain: LintRule = {
  code: 'varies-in-vain',
  level: 'error',
  looksFor: 'A check that is said to vary and comes out the same all the time, whatever the cause.',
  check({ tree }, report) {
    tree.checks.forEach((check, i) => {
      if (check.varies === undefined || check.likelihood.some((row) => Math.max(...row) < ALWAYS)) return;
      report(
        check.id,
        ['checks', i, 'likelihood'],
        `"${check.id}" is said to vary (${check.varies}), but under every cause one result is at least ${ALWAYS} likely. Lower it where the check can come out otherwise, or take \`varies\` out.`,
      );
    });
  },
};
