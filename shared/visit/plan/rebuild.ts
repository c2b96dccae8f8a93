import { rebuildOrReplace } from '../../measuring/index.ts';
import type { Input, RebuildChoice } from './plan.ts';
import type { Figures } from './state.ts';

/** Proposal under which the figures of a line's own part are set. */
export const REBUILD = 'rebuild';

/** Closer than this share of the larger, neither is cheaper. Judgement, as for renewing while open. */
const CLOSE = 0.2;

const INPUTS = [
  ['rebuild-cost', 'rebuilding it costs', ''],
  ['rebuild-comeback', 'a rebuild comes back, of 100', 'of 100'],
  ['replace-cost', 'replacing it costs', ''],
  ['replace-comeback', 'a new one comes back, of 100', 'of 100'],
  ['again-cost', 'doing it over costs', ''],
] as const;

/**
 * Rebuild or replace, as the trade says it, and by expected cost where the person gave the figures. A part whose failure can
 * hurt people is not decided by cost.
 */
export function rebuildChoice(
  words: string,
  danger: boolean,
  figures: Figures,
  roadside: number | undefined,
): RebuildChoice {
  if (danger) return { words, inputs: [], missing: 'This part can hurt people: the rule decides, not the cost.' };
  const inputs: Input[] = [
    ...INPUTS.map(([id, say, unit]): Input => ({ id, words: say, value: figures[id] ?? null, unit, from: 'given' })),
    { id: 'roadside', words: 'tow and what comes with it', value: roadside ?? null, unit: '', from: 'given' },
  ];
  const lacking = inputs.filter(({ value }) => value === null).map(({ words: each }) => each);
  if (lacking.length > 0) return { words, inputs, missing: `To weigh it: ${lacking.join(', ')}.` };
  const [rebuild, rebuildBack, replace, replaceBack, again, tow] = inputs.map(({ value }) => value!);
  const found = rebuildOrReplace(
    { cost: rebuild!, comeback: rebuildBack! / 100 },
    { cost: replace!, comeback: replaceBack! / 100 },
    again!,
    tow!,
  );
  if (!found.ok) return { words, inputs, missing: found.message };
  const { rebuildCost, replaceCost, breakEvenComeback } = found;
  const close = Math.abs(rebuildCost - replaceCost) < CLOSE * Math.max(rebuildCost, replaceCost);
  const cheaper = close ? 'no-clear-winner' : rebuildCost < replaceCost ? 'rebuild' : 'replace';
  return { words, inputs, result: { rebuildCost, replaceCost, breakEvenComeback, cheaper } };
}
