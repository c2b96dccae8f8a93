import type { Assessment } from './assessment.ts';
import { clearResult } from './clear-result.ts';
import type { Situation } from './situation.ts';

/** Other complaints that a finding points to. A pointer, not a verdict: this complaint stays open. */
export function openDoors({ tree, findings }: Situation): Assessment['doors'] {
  const checks = new Map(tree.checks.map((check) => [check.id, check]));
  return tree.leadsTo.flatMap((door) => {
    const sign = findings.find((finding) => {
      const check = checks.get(finding.check);
      const result = check ? clearResult(check, finding) : null;
      return (
        result !== null && door.firedBy.some((entry) => entry.check === finding.check && entry.results.includes(result))
      );
    });
    return sign ? [{ complaint: door.complaint, when: door.when, finding: sign.id }] : [];
  });
}
