import { move } from './access.ts';
import type { ActNow, Problem, Stage } from './problem.ts';

/** What the one-step rule says in a state. */
export interface OneStep {
  readonly actNow: ActNow;
  /** Every open check: expected cost when it is made now and no other after it. */
  readonly checks: readonly { readonly check: number; readonly cost: number; readonly saves: number }[];
  /** Index into `checks` of the best one that costs less than acting now; −1 = act now. */
  readonly best: number;
}

/**
 * One-step look-ahead: make the check with the least expected cost if that is less than the best plan without checks.
 *
 * @source Heckerman, Breese & Rommelse 1995 (opening pages read): ECO(k) = c_k + access + Σ P(o)·ECR(after o).
 */
export function oneStep<K>(problem: Problem<K>, knowledge: K, stage: Stage): OneStep {
  const belief = problem.belief(knowledge);
  const actNow = problem.actNow(belief, stage);
  let best = -1;
  let least = actNow.cost - 1e-12;
  const checks = problem.openChecks(knowledge).map((check, i) => {
    const cost = checkCost(problem, knowledge, stage, check);
    if (cost < least) {
      least = cost - 1e-12;
      best = i;
    }
    return { check, cost, saves: actNow.cost - cost };
  });
  return { actNow, checks, best };
}

/** Expected cost of making one check now and then following the best plan without checks. */
export function checkCost<K>(problem: Problem<K>, knowledge: K, stage: Stage, check: number): number {
  const action = problem.checks[check]!;
  const there = move(problem.access, stage.access, action.need);
  const then = { access: there.state, failed: stage.failed };
  const { share, after } = problem.outlook(knowledge, check);
  let cost = action.cost + there.cost;
  for (let r = 0; r < after.length; r++)
    if (share[r]! > 1e-15) cost += share[r]! * problem.actNow(after[r]!, then).cost;
  return cost;
}

/**
 * A check may cost so many times its share of the open question of what knowing the cause would save. Above 1, because tables are
 * judgement and a wrong part is worse than its minutes. Judgement, measured (SPEC.md).
 */
const CAUTION = 2;
/** Weight of the share of knowing in the worth of a check; the rest is what it saves alone. Judgement, measured (SPEC.md). */
const OF_KNOWING = 1 / 3;

/**
 * What a check is worth (PLA-39), more than 0 when it pays. It pays when it saves though none is made after it, or when it costs
 * less than `CAUTION` times its share of the open question of what knowing the cause would save; never more than knowing everything.
 *
 * @param of.bits     what the check tells about the causes on average.
 * @param of.open     bits that are missing for certainty.
 * @param of.knowing  what knowing the cause for certain would save.
 * @param of.cost     of the check with its access.
 */
export function worthOfCheck(
  savesAlone: number,
  of: { readonly bits: number; readonly open: number; readonly knowing: number; readonly cost: number },
): number {
  const share = of.open > 0 ? Math.min(1, CAUTION * (of.bits / of.open)) : 0;
  const ofKnowing = share * of.knowing - of.cost;
  if (savesAlone <= 0 && ofKnowing <= 0) return Math.max(savesAlone, ofKnowing);
  return (1 - OF_KNOWING) * Math.max(0, savesAlone) + OF_KNOWING * Math.max(0, ofKnowing);
}
