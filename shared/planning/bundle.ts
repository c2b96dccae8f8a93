import { move } from './access.ts';
import type { Ranking } from './next-check.ts';
import { checkCost } from './one-step.ts';

/** A check worth doing in one go with another, while what it needs is open. */
export interface AlsoOpen {
  readonly check: string;
  readonly minutes: number;
  /** Minutes of opening and closing that it would need on its own. */
  readonly spares: number;
}

/** So many are offered, and only from so many minutes that each brings on average. Judgement. */
const MOST = 2;
const LEAST_GAIN = 2;

/**
 * Checks to do as well while the coach is opened for the advised one: they need what is open then, and on average over
 * what the advised check may show they save more than their own minutes.
 *
 * @returns best first; empty when the advised check opens nothing.
 */
export function whileOpen({ problem, stop, options }: Ranking): readonly AlsoOpen[] {
  if (stop.kind !== 'check' || stop.option.accessMinutes === 0) return [];
  const { access, stage, checks, checksOf, start } = problem;
  const advised = checksOf.findIndex(({ id }) => id === stop.option.check);
  const open = move(access, stage.access, checks[advised]!.need).state;
  const { share } = problem.outlook(start, advised);
  const now = { access: open, failed: stage.failed };
  // Learnt as one finding more, so that what hangs together with the advised check counts for no more than it will.
  const then = Array.from(share, (likely, r) => {
    if (likely <= 1e-9) return [];
    const knowledge = problem.learn(start, advised, r);
    return [{ likely, knowledge, act: problem.actNow(problem.belief(knowledge), now).cost }];
  }).flat();
  return options
    .flatMap((option): (AlsoOpen & { readonly gain: number })[] => {
      const k = checksOf.findIndex(({ id }) => id === option.check);
      if (option.blocked || k === advised || option.accessMinutes === 0) return [];
      // Only what is reached without opening or closing anything more.
      if (move(access, open, checks[k]!.need).cost > 0) return [];
      const spares = option.accessMinutes;
      const gain = then.reduce(
        (sum, { likely, knowledge, act }) => sum + likely * Math.max(0, act - checkCost(problem, knowledge, now, k)),
        0,
      );
      return gain >= LEAST_GAIN ? [{ check: option.check, minutes: option.minutes, spares, gain }] : [];
    })
    .sort((a, b) => b.gain - a.gain)
    .slice(0, MOST)
    .map(({ check, minutes, spares }) => ({ check, minutes, spares }));
}
