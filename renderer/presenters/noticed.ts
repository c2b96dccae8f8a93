import {
  factsIn,
  recalledChecks,
  type Check,
  type RecalledCheck,
  type Result,
  type Tree,
} from '../../shared/knowledge/index.ts';
import type { Assessment } from '../../shared/planning/index.ts';
import type { ComplaintState } from '../../shared/visit/index.ts';

/** What can be confirmed before the first check. */
export interface Noticed {
  /** Results that the owner's words may name. */
  readonly said: readonly { readonly check: Check; readonly result: Result }[];
  /** Where the words say so, for marking. Sorted, none over another. */
  readonly spans: readonly (readonly [number, number])[];
  /** Questions that memory may answer, the most telling first. */
  readonly asked: readonly RecalledCheck[];
}

/** What is left to confirm for a complaint: nothing that has been found, and nothing that this coach has not. */
export function noticedOf(complaint: ComplaintState, tree: Tree, { options }: Assessment): Noticed {
  const looked = tree.stopRules.map(({ id }) => id).filter((id) => complaint.stopAnswers[id] === 'no');
  const found = new Set(complaint.trail.map(({ check }) => check));
  const rank = new Map(options.map(({ check }, i) => [check, i]));
  const apart = new Set(
    options.filter(({ blocked }) => blocked?.kind === 'layout' && blocked.known).map(({ check }) => check),
  );
  const fits = (check: string): boolean => !found.has(check) && !apart.has(check) && rank.has(check);

  const facts = factsIn(complaint.words, tree, looked).filter(({ check }) => fits(check));
  const spans: (readonly [number, number])[] = [];
  for (const { span } of facts) if ((spans.at(-1)?.[1] ?? 0) <= span[0]) spans.push(span);
  const said = facts.flatMap(({ check: id, result: of }) => {
    const check = tree.checks.find((each) => each.id === id);
    const result = check?.results.find((each) => each.id === of);
    return check && result ? [{ check, result }] : [];
  });
  const asked = recalledChecks(tree, looked)
    .filter(({ check }) => fits(check.id) && !said.some((each) => each.check.id === check.id))
    .sort((a, b) => (rank.get(a.check.id) ?? 0) - (rank.get(b.check.id) ?? 0));
  return { said, spans, asked };
}

/** Whether the question comes by itself now: once a complaint, after the safety questions and before the first check. */
export function isNoticedDue(complaint: ComplaintState, { said, asked }: Noticed): boolean {
  return (
    complaint.phase === 'checking.choosing' &&
    !complaint.noticedAsked &&
    complaint.corrections.length === 0 &&
    complaint.trail.every(({ from }) => from !== undefined) &&
    said.length + asked.length > 0
  );
}
