import { seededRandom } from '../../shared/planning/evaluation/index.ts';
import { statesAtMost } from '../../shared/planning/ahead/exact.ts';
import type { Tree } from '../../shared/knowledge/index.ts';
import { cause, check, tree } from '../unit/planning/small-tree.ts';

const CAUSES = 5;
const CHECKS = 6;

/** A complaint about as large as one that is still worked out to the end; its numbers are drawn. States that can follow: 23,328. */
export function smallComplaint(seed: number): { readonly small: Tree; readonly states: number } {
  const random = seededRandom(seed);
  const causes = Array.from({ length: CAUSES }, (_, c) => cause(`cause-${c}`, 10 + 10 * c));
  const checks = Array.from({ length: CHECKS }, (_, k) => {
    const rows = causes.map(() => 0.1 + 0.8 * random());
    return check(
      `check-${k}`,
      ['x', 'y'],
      rows.map((hit) => [hit, 1 - hit]),
      { minutes: 5 + 5 * k, access: k % 3 === 2 ? 'wheel-off' : 'parked' },
    );
  });
  const states = statesAtMost(
    checks.map(({ results }) => results.length),
    CAUSES,
  );
  return { small: tree(causes, checks, { unlistedShare: 0.03 }), states };
}
