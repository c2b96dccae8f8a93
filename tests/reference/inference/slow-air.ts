import { readFileSync } from 'node:fs';
import { beliefModel, type BeliefModel, type Finding } from '../../../shared/inference/index.ts';
import type { Tree } from '../../../shared/knowledge/index.ts';
import { cause, check, tree } from '../../unit/planning/small-tree.ts';

/** Models written down as tables of causes, priors, checks and likelihoods. */
interface Table {
  readonly causes: readonly { readonly id: string; readonly prior: number }[];
  readonly checks: readonly {
    readonly id: string;
    readonly outcomes: readonly string[];
    readonly likelihood: Readonly<Record<string, Readonly<Record<string, number>>>>;
  }[];
  readonly decisions: readonly { readonly id: string; readonly loss: Readonly<Record<string, number>> }[];
}

/** A reference model as a tree and its belief model: no floor, and nothing worth mentioning for `unlisted`. */
export function referenceTree(file: string): { tree: Tree; model: BeliefModel; table: Table } {
  // The files are ours and every field of `Table` is read below or by a test.
  const table = JSON.parse(
    readFileSync(new URL(`../../../shared/planning/evaluation/models/${file}`, import.meta.url), 'utf8'),
  ) as Table;
  const made = tree(
    table.causes.map(({ id, prior }) => cause(id, prior)),
    table.checks.map(({ id, outcomes, likelihood }) =>
      check(
        id,
        outcomes,
        table.causes.map((each) => outcomes.map((outcome) => likelihood[each.id]![outcome]!)),
      ),
    ),
  );
  return { tree: made, model: beliefModel(made, {}, { floor: 0 }), table };
}

export function found(check: string, result: string): Finding {
  return { id: check, check, value: { kind: 'result', result } };
}
