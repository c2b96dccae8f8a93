import { beliefModel, type BeliefModel, type CheckTable } from '../../inference/index.ts';
import { ROLES, type Role, type Tree, type When } from '../../knowledge/index.ts';

/** A tree as cards are made from it: on a coach of which nothing is known. */
export interface Askable {
  readonly tree: Tree;
  readonly model: BeliefModel;
  /** Checks that the person may do alone and that do not wait for another one. */
  readonly tables: readonly CheckTable[];
}

/** The tree for this person. */
export function askable(tree: Tree, who: Role): Askable {
  const model = beliefModel(tree, {});
  const rank = ROLES.indexOf(who);
  const tables = tree.checks
    .filter((check) => ROLES.indexOf(check.who) <= rank && check.requires.length === 0)
    .map(({ id }) => model.tables.get(id)!);
  return { tree, model, tables };
}

/** Whether there can be a coach that all of them apply to: no feature is wanted in two ways that exclude each other. */
export function canMeet(...whens: readonly When[]): boolean {
  const features = new Set(whens.flatMap((when) => Object.keys(when)));
  return [...features].every((feature) => {
    const wanted = whens.flatMap((when) => (when[feature] ? [when[feature]] : []));
    return (wanted[0] ?? []).some((value) => wanted.every((values) => values.includes(value)));
  });
}
