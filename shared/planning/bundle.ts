import { move } from './access.ts';
import type { Ranking } from './next-check.ts';

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
  const { share, after } = problem.outlook(start, advised);
  const now = { access: open, failed: stage.failed };
  return options
    .flatMap((option): (AlsoOpen & { readonly gain: number })[] => {
      const k = checksOf.findIndex(({ id }) => id === option.check);
      if (option.blocked || k === advised || option.accessMinutes === 0) return [];
      // Only what is reached without opening or closing anything more.
      if (move(access, open, checks[k]!.need).cost > 0) return [];
      const spares = option.accessMinutes;
      let gain = 0;
      after.forEach((belief, r) => {
        if (share[r]! > 1e-9) gain += share[r]! * Math.max(0, worthOf(k, belief, now));
      });
      return gain >= LEAST_GAIN ? [{ check: option.check, minutes: option.minutes, spares, gain }] : [];
    })
    .sort((a, b) => b.gain - a.gain)
    .slice(0, MOST)
    .map(({ check, minutes, spares }) => ({ check, minutes, spares }));

  /** What a check saves from a belief, everything it needs being open. Findings of its own group are left as they are. */
  function worthOf(k: number, belief: Float64Array, from: typeof now): number {
    const act = problem.actNow(belief, from).cost;
    const { likelihood } = problem.model.tables.get(checksOf[k]!.id)!;
    let cost = checks[k]!.cost;
    for (const row of likelihood) {
      const joint = belief.map((p, c) => p * row[c]!);
      const sum = joint.reduce((all, p) => all + p, 0);
      if (sum > 1e-9)
        cost +=
          sum *
          problem.actNow(
            joint.map((p) => p / sum),
            from,
          ).cost;
    }
    return act - cost;
  }
}
