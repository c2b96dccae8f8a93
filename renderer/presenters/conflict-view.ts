import { conflictIn, inHundred } from '../../shared/inference/index.ts';
import { beliefNow, shortName, type CheckOption, type Situation } from '../../shared/planning/index.ts';

/** Two findings that one cause does not explain, in words. */
export interface ConflictView {
  /** Ids of the two findings. */
  readonly findings: readonly [string, string];
  readonly pair: string;
  /** The cheaper of the two to look at again. */
  readonly again: { readonly check: string; readonly name: string; readonly minutes: number };
}

/**
 * @param options  of the same situation; what a check costs from here.
 * @returns null while the findings fit together.
 */
export function conflictView(situation: Situation, options: readonly CheckOption[]): ConflictView | null {
  const { model, findings } = beliefNow(situation);
  const conflict = conflictIn(model, findings);
  if (!conflict) return null;
  const checkOf = (finding: string) => {
    const id = findings.find((each) => each.id === finding)!.check;
    return situation.tree.checks.find((check) => check.id === id)!;
  };
  const costs = conflict.findings.map((finding) => {
    const check = checkOf(finding);
    const option = options.find((each) => each.check === check.id);
    return { check: check.id, name: check.name, minutes: check.minutes + (option?.accessMinutes ?? 0) };
  });
  const again = costs[0]!.minutes <= costs[1]!.minutes ? costs[0]! : costs[1]!;
  const name = (id: string): string => `“${shortName(situation.tree.causes.find((cause) => cause.id === id)!.name)}”`;
  const pair = conflict.pair
    ? `If two things are wrong at once, ${name(conflict.pair[0])} and ${name(conflict.pair[1])} fit best together: about ${inHundred(conflict.twoShare)} in 100 by judged odds.`
    : '';
  return { findings: conflict.findings, pair, again };
}
