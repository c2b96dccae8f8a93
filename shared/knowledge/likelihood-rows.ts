import { nearestText } from './names.ts';
import type { Path, SourceFile } from './source-file.ts';
import type { Result } from './tree.ts';
import { REST, VERBAL_SCALE } from './verbal-scale.ts';

/** How far a row may be from 1 before it is refused. Rows are never rescaled silently. */
const SUM_TOLERANCE = 1e-9;

export interface RowContext {
  readonly file: SourceFile;
  /** Path of the check. */
  readonly path: Path;
  readonly causeIds: ReadonlySet<string>;
  readonly results: readonly Result[];
  readonly check: string;
}

/**
 * P(result | cause) as written → rows in the order of the causes, columns in the order of the results.
 *
 * Reports unknown and missing causes and results, words that are not on the verbal scale, values outside (0, 1], and
 * rows that do not sum to 1.
 */
export function likelihoodRows(
  written: Readonly<Record<string, Readonly<Record<string, number | string>>>>,
  context: RowContext,
): number[][] {
  const { file, causeIds, results, check } = context;
  const at = (...steps: (string | number)[]): Path => [...context.path, 'likelihood', ...steps];
  for (const cause of Object.keys(written)) {
    if (!causeIds.has(cause))
      file.error('unknown-cause', at(cause), `"${cause}" is not declared.${nearestText(cause, causeIds)}`);
  }
  const resultIds = results.map(({ id }) => id);
  // Two results of one name are reported already; no row can be right under them.
  if (new Set(resultIds).size < resultIds.length) return [...causeIds].map(() => resultIds.map(() => 1));
  return [...causeIds].map((cause) => {
    const row = written[cause];
    if (!row) {
      file.error('missing-likelihood', at(), `Check "${check}" has no likelihoods for cause "${cause}". Add the row.`);
      return resultIds.map(() => 1 / resultIds.length);
    }
    for (const result of Object.keys(row)) {
      if (!resultIds.includes(result))
        file.error(
          'unknown-result',
          at(cause, result),
          `"${result}" is not a result of "${check}". Allowed: ${resultIds.join(', ')}.${nearestText(result, resultIds)}`,
        );
    }
    const faults = file.problems.length;
    let rest = -1;
    const values = resultIds.map((result, i) => {
      const value = row[result];
      if (value === undefined) {
        file.error('missing-likelihood', at(cause), `P(${result} | ${cause}) of check "${check}" is missing. Add it.`);
        return 0;
      }
      if (value === REST && rest < 0) {
        rest = i;
        return 0;
      }
      const number = typeof value === 'number' ? value : VERBAL_SCALE.get(value);
      if (number === undefined) {
        file.error(
          'unknown-likelihood-word',
          at(cause, result),
          `"${value}" is not a likelihood.${nearestText(String(value), VERBAL_SCALE.keys())} Allowed: a number, ${[...VERBAL_SCALE.keys()].join(', ')}, or "rest" once a row.`,
        );
        return 0;
      }
      if (!(number > 0 && number <= 1)) {
        file.error(
          'likelihood-out-of-range',
          at(cause, result),
          `P(${result} | ${cause}) is ${number}, expected above 0, at most 1.${number > 1 && number <= 100 ? ` Write ${number / 100}?` : ''}`,
        );
      }
      return number;
    });
    const sum = values.reduce((total, value) => total + value, 0);
    // A row with a fault of its own is not summed as well.
    if (file.problems.length > faults) return values;
    if (rest >= 0) {
      if (sum >= 1)
        file.error(
          'likelihood-sum',
          at(cause),
          `P(· | ${cause}) of check "${check}" leaves nothing for "rest": the others sum to ${Number(sum.toFixed(6))}. Lower one of them.`,
        );
      values[rest] = 1 - sum;
    } else if (Math.abs(sum - 1) > SUM_TOLERANCE) {
      file.error(
        'likelihood-sum',
        at(cause),
        `P(· | ${cause}) of check "${check}" sums to ${Number(sum.toFixed(6))}, expected 1. Correct the row; it is not rescaled for you.`,
      );
    }
    return values;
  });
}
