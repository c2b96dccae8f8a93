import { beliefModel } from '../inference/index.ts';
import type { Layout } from '../knowledge/layout.ts';
import { UNLISTED, type Tree } from '../knowledge/tree.ts';

/** How wide the hidden fault is drawn, from narrow to wide. */
export const LEVELS = ['likely', 'listed', 'any'] as const;
export type Level = (typeof LEVELS)[number];

/** Share of the odds of all listed causes that the likely ones hold together, at least. Judgement. */
const LIKELY = 0.6;

/**
 * Odds of each cause to be the hidden one: the starting odds of the tree on this coach, narrowed by the level. They sum to 1
 * within 1e-12, `unlisted` last.
 */
export function hiddenOdds(
  tree: Tree,
  layout: Layout,
  level: Level,
): { readonly causeIds: readonly string[]; readonly odds: readonly number[] } {
  const { causeIds, prior } = beliefModel(tree, layout, { floor: 0 });
  if (level === 'any') return { causeIds, odds: Array.from(prior) };
  const listed = causeIds.map((id, c) => ({ id, c })).filter(({ id }) => id !== UNLISTED);
  const all = listed.reduce((sum, { c }) => sum + prior[c]!, 0);
  const kept = new Set<number>();
  let held = 0;
  for (const { c } of [...listed].sort((a, b) => prior[b.c]! - prior[a.c]! || a.c - b.c)) {
    if (level === 'likely' && held >= LIKELY * all) break;
    kept.add(c);
    held += prior[c]!;
  }
  // A coach on which no listed cause can exist has one that is not in the list.
  if (kept.size === 0) return { causeIds, odds: Array.from(prior) };
  return { causeIds, odds: causeIds.map((_, c) => (kept.has(c) ? prior[c]! / held : 0)) };
}
