import { readBands, type Finding } from '../inference/index.ts';
import type { Check, Prerequisite } from '../knowledge/tree.ts';

/** Share of the firing band from which a reading near a limit counts as past it, for the advice to drive. Judgement. */
const DOUBT = 0.05;

/** The result a finding stands for: as recorded, or the likeliest band of a reading; null for "not sure" and "can't do". */
export function clearResult(check: Check, finding: Finding): string | null {
  if (finding.value.kind === 'result') return finding.value.result;
  if (finding.value.kind === 'reading')
    return readBands(check, finding.value.value, finding.value.uncertainty, finding.value.range).result;
  return null;
}

/** Results a finding may stand for: all bands with a share of at least .05. For rules that guard people. */
export function possibleResults(check: Check, finding: Finding): readonly string[] {
  if (finding.value.kind === 'result') return [finding.value.result];
  if (finding.value.kind === 'reading') {
    const { shares } = readBands(check, finding.value.value, finding.value.uncertainty, finding.value.range);
    return check.results.filter((_, i) => shares[i]! >= DOUBT).map(({ id }) => id);
  }
  return finding.value.kind === 'not-sure' && finding.value.leaning !== undefined ? [finding.value.leaning] : [];
}

/** Whether any of the findings meets any of the prerequisites; true when there are none. */
export function isMet(
  requires: readonly Prerequisite[],
  checks: ReadonlyMap<string, Check>,
  findings: readonly Finding[],
): boolean {
  if (requires.length === 0) return true;
  return requires.some(({ check, results }) =>
    findings.some((finding) => {
      const known = finding.check === check ? checks.get(check) : undefined;
      const result = known ? clearResult(known, finding) : null;
      return result !== null && results.includes(result);
    }),
  );
}
