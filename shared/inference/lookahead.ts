import { leadersOf } from './evidence.ts';
import { DAMPING, type BeliefModel, type CheckTable } from './model.ts';
import { softmax, type Posterior } from './posterior.ts';

/** What a check not made yet would do to the belief. */
export interface Outlook {
  /** P(result) now, in file order; sums to 1. */
  readonly share: Float64Array;
  /** Posterior after each result, aligned with the causes. */
  readonly after: readonly Float64Array[];
}

/**
 * Belief after each result of a check, as `posterior` would give it with that finding added: when the check belongs to
 * an evidence group that has findings already, the sharpest of them counts in full and the others are damped.
 *
 * P(result) is taken with the undamped table, since damping says how much a result counts, not how often it comes.
 */
export function outlook(model: BeliefModel, now: Posterior, checkId: string): Outlook {
  const table = model.tables.get(checkId)!;
  const base = withoutDampedShare(now, table);
  const exponent = base.exponent;
  const share = new Float64Array(table.likelihood.length);
  const after = table.likelihood.map((row, r) => {
    let p = 0;
    for (let c = 0; c < row.length; c++) p += now.probability[c]! * row[c]!;
    share[r] = p;
    const log = table.logLikelihood[r]!;
    const weight = new Float64Array(row.length);
    for (let c = 0; c < row.length; c++) weight[c] = base.logWeight[c]! + exponent * log[c]!;
    return softmax(weight);
  });
  return { share, after };
}

/** Log weights with the group of a new check re-damped, and the exponent with which the new check counts. */
function withoutDampedShare(now: Posterior, table: CheckTable): { logWeight: Float64Array; exponent: number } {
  const mates =
    table.group < 0 ? [] : now.evidence.filter((each) => each.table.group === table.group && each.exponent > 0);
  if (mates.length === 0) return { logWeight: now.logWeight, exponent: 1 };
  const leader = leadersOf([...mates.map((mate) => mate.table), table]).get(table.group)!;
  if (leader !== table) return { logWeight: now.logWeight, exponent: DAMPING };
  const logWeight = Float64Array.from(now.logWeight);
  for (const mate of mates) {
    if (mate.exponent !== 1) continue;
    for (let c = 0; c < logWeight.length; c++) logWeight[c]! -= (1 - DAMPING) * mate.log[c]!;
  }
  return { logWeight, exponent: 1 };
}
