import {
  costMore,
  rankChecks,
  secondBest,
  type DriveVerdict,
  type LookedAhead,
  type Situation,
} from '../../shared/planning/index.ts';

/**
 * How the check in front compares with what else could be done now: how much worse the second best is than the advised
 * one, or how much worse this one is than the advised. Empty when there is nothing to compare with.
 */
export function worseByWords(
  situation: Situation,
  verdict: DriveVerdict,
  check: string,
  nameOf: (id: string) => string | undefined,
  ahead: LookedAhead | null = null,
): string {
  const ranking = rankChecks(situation, verdict);
  const name = (id: string): string => `“${nameOf(id) ?? id}”`;
  const advised = ranking.stop.kind === 'check' ? ranking.stop.option : null;
  if (advised && advised.check !== check) {
    const own = ranking.options.find((option) => option.check === check);
    return own && !own.blocked
      ? `Advised is ${name(advised.check)}; this one ${costWords(costMore(advised, own, ahead))}.`
      : '';
  }
  const second = secondBest(ranking, ahead);
  if (!second) return '';
  if (second.equal)
    return `The next best is ${name(second.check)}, practically as good: hazards, time and the order of the file decided.`;
  return `The next best is ${name(second.check)}, which ${costWords(second.worseBy)}.`;
}

function costWords(minutes: number): string {
  const whole = Math.round(Math.abs(minutes));
  if (whole < 1) return 'is about as good';
  const amount = `costs about ${whole} minute${whole === 1 ? '' : 's'}`;
  return minutes > 0
    ? `${amount} more on average`
    : `${amount} less on average on these odds; being surer is put first`;
}
