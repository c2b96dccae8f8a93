import { closingCost } from '../planning/access.ts';
import type { Move } from '../planning/evaluation/index.ts';
import type { Ranking } from '../planning/next-check.ts';
import { bestDecision, curedShare, triedCorrection } from '../planning/repair-plan.ts';

/**
 * Expected saving of a move against acting at once on the best plan without further checks, minutes or their money's worth; at
 * most 0 for a correction or a hand-over. Null when the move cannot be weighed there.
 */
export function worthOf(ranking: Ranking, what: Move): number | null {
  const { problem, actNow, options } = ranking;
  const { access, stage, start } = problem;
  const belief = problem.belief(start);
  if (what.kind === 'check') {
    const option = options.find(({ check }) => check === what.check);
    if (!option) return null;
    // Made again it tells nothing new: its minutes are lost.
    return option.blocked?.kind === 'done' ? -(option.minutes + option.accessMinutes) : option.saves;
  }
  if (what.kind === 'hand-over') {
    const cost = bestDecision(problem.decisions, belief, 1).cost + closingCost(access, stage.access);
    return actNow.cost - cost;
  }
  const r = problem.corrections.findIndex(({ id }) => id === what.cause);
  const correction = problem.corrections[r];
  if (!correction || stage.failed & (1 << r)) return null;
  const cured = curedShare(correction, belief);
  const { cost, open } = triedCorrection(problem, correction, stage.access, cured);
  const rest = belief.slice();
  for (const { cause, share } of correction.cures) rest[cause]! *= 1 - share;
  const left = rest.reduce((sum, p) => sum + p, 0);
  const after =
    left > 0
      ? problem.actNow(
          rest.map((p) => p / left),
          { access: open, failed: stage.failed | (1 << r) },
        ).cost
      : 0;
  return actNow.cost - cost - (1 - cured) * after;
}
