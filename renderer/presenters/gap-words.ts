import type { LookedAhead } from '../../shared/planning/index.ts';

/** How far the plan may be from the best possible one, as far as that is proven; empty while nobody has looked ahead. */
export function gapWords(ahead: LookedAhead | null): string {
  if (!ahead) return '';
  const plan = Math.round(Math.min(ahead.act, ...ahead.checks.map(({ cost }) => cost)));
  if (ahead.exact)
    return `Every order of what is left was worked out to the proven cure: the best plan costs about ${plan} minutes on average, and none costs less.`;
  return `Looking ahead to the proven cure, the best plan found costs about ${plan} minutes on average; no plan can cost less than ${Math.round(ahead.bound)}.`;
}
