import type { LintRule } from './rule.ts';

export const bandGap: LintRule = {
  code: 'band-gap',
  level: 'error',
  looksFor: 'Bands of a measuring check that overlap, leave a gap, or do not reach from end to end.',
  check({ tree }, report) {
    tree.checks.forEach((check, i) => {
      if (!check.measure) return;
      const bands = check.results.flatMap(({ id, range }) =>
        range ? [{ id, low: range[0] ?? -Infinity, high: range[1] ?? Infinity }] : [],
      );
      const sorted = [...bands].sort((a, b) => a.low - b.low);
      const fault = (what: string): void =>
        report(
          check.id,
          ['checks', i, 'results'],
          `The bands of "${check.id}" ${what}. Low is included, high is not; a null end is open.`,
        );
      if (sorted.length === 0) return fault('are missing');
      if (sorted[0]!.low !== -Infinity || sorted.at(-1)!.high !== Infinity) fault('do not reach from end to end');
      sorted.slice(1).forEach((band, k) => {
        if (band.low !== sorted[k]!.high)
          fault(
            `${band.low > sorted[k]!.high ? 'leave a gap' : 'overlap'} between "${sorted[k]!.id}" and "${band.id}"`,
          );
      });
    });
  },
};
