import type { BeliefModel, CheckTable } from '../../inference/index.ts';

/**
 * Weight of evidence to be expected of a check between two causes, in decibans: the mean of what it would bring for the
 * first when the first is true, and for the second when the second is. Both count the same, since nobody knows which it is.
 *
 * @param a, b  columns of the model.
 * @returns 0 or more; 0 = the check shows the same under both.
 * @source Expected weight of evidence, Good 1950 (from memory); the sum of both directions is the divergence J of Jeffreys.
 */
export function expectedDecibans({ likelihood }: CheckTable, a: number, b: number): number {
  let sum = 0;
  for (const row of likelihood) sum += (row[a]! - row[b]!) * Math.log10(row[a]! / row[b]!);
  return 5 * sum;
}

/**
 * How far all checks together keep two causes apart: minus the logarithm of the overlap of what they show. Of checks that
 * look at the same thing only the sharpest counts.
 *
 * @param tables  checks that can be done.
 * @source Bhattacharyya's coefficient; the share of cases in which one of two is taken for the other is at most
 *   √(p·q)·e^(−distance), Kailath 1967 (from memory).
 */
export function distanceBetween(tables: readonly CheckTable[], a: number, b: number): number {
  let alone = 0;
  const groups = new Map<number, number>();
  for (const { likelihood, group } of tables) {
    let overlap = 0;
    for (const row of likelihood) overlap += Math.sqrt(row[a]! * row[b]!);
    const distance = -Math.log(overlap);
    if (group < 0) alone += distance;
    else groups.set(group, Math.max(groups.get(group) ?? 0, distance));
  }
  return [...groups.values()].reduce((sum, distance) => sum + distance, alone);
}

/** Upper bound of the share of coaches on which one of the two causes is taken for the other, all checks done. */
export function confusionBound(model: BeliefModel, tables: readonly CheckTable[], a: number, b: number): number {
  return Math.sqrt(model.prior[a]! * model.prior[b]!) * Math.exp(-distanceBetween(tables, a, b));
}
