import type { Finding } from './finding.ts';
import { DAMPING, type BeliefModel, type CheckTable } from './model.ts';
import { oddOf } from './odd-one.ts';
import { readBands } from './reading.ts';

/** Weight of the result that somebody leans to when not sure; the others share the rest equally. Judgement. */
export const LEANING = 0.6;

/** What one finding says about the causes. */
export interface Evidence {
  readonly finding: Finding;
  readonly table: CheckTable;
  /** Natural log of P(what was perceived | cause) up to a constant, before damping; one a cause. */
  readonly log: Float64Array;
  /** 1, or `DAMPING` when another finding of its group counts in full; 0 when another site of the same check decides. */
  readonly exponent: number;
}

/**
 * Weights of the declared results for what was perceived (virtual evidence, Pearl 1988): one-hot for a clear result,
 * spread for a reading, tempered for "not sure, looks like …", null when the finding carries no weight.
 *
 * @throws {ReadingError} for a reading that no band expects.
 */
export function resultWeights(table: CheckTable, finding: Finding): readonly number[] | null {
  const { value } = finding;
  const results = table.check.results;
  switch (value.kind) {
    case 'result':
      return results.map(({ id }) => Number(id === value.result));
    case 'reading':
      return readBands(table.check, value.value, value.uncertainty, value.range).weights;
    case 'not-sure': {
      if (value.leaning === undefined) return null;
      const others = (1 - LEANING) / (results.length - 1);
      return results.map(({ id }) => (id === value.leaning ? LEANING : others));
    }
    case 'cant-do':
      return null;
  }
}

/** Natural log of Σ weight·P(result | cause) for each cause. */
export function logOfWeighted(table: CheckTable, weights: readonly number[]): Float64Array {
  const hard = weights.findIndex((weight) => weight === 1);
  if (hard >= 0) return table.logLikelihood[hard]!;
  const n = table.likelihood[0]!.length;
  const log = new Float64Array(n);
  for (let c = 0; c < n; c++) {
    let sum = 0;
    for (let r = 0; r < weights.length; r++) sum += weights[r]! * table.likelihood[r]![c]!;
    log[c] = Math.log(sum);
  }
  return log;
}

/**
 * Findings as evidence, in the order given. Findings of checks that the model does not know, and findings without
 * weight, are left out. Of several sites of one check only the odd one out counts (`oddOf`). Of an evidence group the finding whose check is sharpest counts in full and the others are
 * damped, whichever came first.
 */
export function evidenceOf(model: BeliefModel, findings: readonly Finding[]): Evidence[] {
  const found: { finding: Finding; table: CheckTable; log: Float64Array; expected: number }[] = [];
  for (const finding of findings) {
    const table = model.tables.get(finding.check);
    const weights = table && resultWeights(table, finding);
    if (!table || !weights) continue;
    const expected = weights.reduce((sum, weight, r) => sum + weight * table.expected[r]!, 0);
    found.push({ finding, table, log: logOfWeighted(table, weights), expected });
  }
  const odd = new Map<string, number>();
  const several = new Map<string, number[]>();
  found.forEach(({ finding: { check } }, i) => {
    const first = odd.get(check);
    if (first === undefined) odd.set(check, i);
    else several.set(check, [...(several.get(check) ?? [first]), i]);
  });
  for (const [check, at] of several) odd.set(check, at[oddOf(at.map((i) => found[i]!))]!);
  const leaders = leadersOf([...odd.values()].map((i) => found[i]!.table));
  return found.map(({ finding, table, log }, i) => ({
    finding,
    table,
    log,
    exponent: odd.get(finding.check) !== i ? 0 : table.group < 0 || leaders.get(table.group) === table ? 1 : DAMPING,
  }));
}

/** The sharpest table of each evidence group; ties to the one that comes first in the list. */
export function leadersOf(tables: readonly CheckTable[]): Map<number, CheckTable> {
  const leaders = new Map<number, CheckTable>();
  for (const table of tables) {
    if (table.group < 0) continue;
    const leader = leaders.get(table.group);
    if (!leader || table.sharpness > leader.sharpness) leaders.set(table.group, table);
  }
  return leaders;
}
