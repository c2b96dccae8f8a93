import { inHundred, learnedOdds, OPINION, verifiedCause, type ClosedCase } from '../../shared/inference/index.ts';
import type { Tree } from '../../shared/knowledge/index.ts';
import { causeName } from './presenters.ts';

/** One verified case on the page of cases. */
export interface CaseRow {
  readonly id: string;
  readonly cause: string;
  readonly coach: string;
  readonly takenOut: boolean;
}

/** What the cases of one complaint do to its starting odds. */
export interface LearnedTree {
  readonly title: string;
  /** Opinion : data. */
  readonly ratio: string;
  readonly cases: readonly CaseRow[];
  /** Causes with cases: share before anything is found, by the author and with the cases, in 100. */
  readonly moved: readonly { readonly name: string; readonly authored: string; readonly learned: string }[];
}

/** A closed case with the coach that it was on, for people. */
export interface KnownCase extends ClosedCase {
  readonly coach: string;
}

/**
 * Every tree that has a verified case, with what the cases would do on a coach of which nothing is known.
 *
 * @param takenOut  ids of cases that somebody has taken out.
 */
export function learnedTrees(
  trees: readonly Tree[],
  cases: readonly KnownCase[],
  takenOut: ReadonlySet<string>,
): readonly LearnedTree[] {
  return trees.flatMap((tree) => {
    const mine = cases.filter((each) => each.complaint === tree.id);
    const rows = mine.flatMap((each) => {
      const cause = verifiedCause(each);
      return cause === null
        ? []
        : [{ id: each.id, cause: causeName(tree, cause), coach: each.coach, takenOut: takenOut.has(each.id) }];
    });
    if (rows.length === 0) return [];
    const odds = learnedOdds(tree, {}, mine, { on: true, takenOut });
    return [
      {
        title: tree.title,
        ratio: `${OPINION} : ${odds.data}`,
        cases: rows,
        moved: odds.causes
          .filter((each) => each.cases > 0)
          .map(({ cause, authored, learned }) => ({
            name: causeName(tree, cause),
            authored: inHundred(authored),
            learned: inHundred(learned),
          })),
      },
    ];
  });
}
