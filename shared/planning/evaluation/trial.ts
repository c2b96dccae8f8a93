import { UNLISTED, type Tree } from '../../knowledge/tree.ts';
import type { Vocabulary } from '../../knowledge/vocabulary.ts';
import { drawCoach } from './coach.ts';
import { ownerIsToldToDrive } from './drive.ts';
import { scoreWay } from './score.ts';
import { seededRandom } from './random.ts';
import { adviceWay } from './ways.ts';

/** How a tree did on simulated coaches, as plain data. It says how well the tables are used, not how true they are. */
export interface Trial {
  readonly coaches: number;
  /** Share in which the first thing corrected was the fault. */
  readonly right: number;
  /** One row a true cause that was drawn, in the order of the tree, `unlisted` last. */
  readonly rows: readonly TrialRow[];
  /** An owner without tools, every safety question answered with no. */
  readonly owner: {
    /** Coaches whose fault hurts nobody, `unlisted` left out; and how many of them could be told to drive and book. */
    readonly harmless: number;
    readonly ruledOut: number;
    /** Coaches whose fault can hurt people; and how many of them were told to drive and book all the same. */
    readonly danger: number;
    readonly missed: number;
  };
}

export interface TrialRow {
  readonly truth: string;
  readonly coaches: number;
  /** What it was taken for, most often first. */
  readonly taken: readonly { readonly cause: string; readonly coaches: number }[];
}

/**
 * Works through simulated coaches as a mechanic with the program's advice, then as an owner without tools.
 *
 * @param options.tell  called after each coach with how many are done, of twice `coaches`.
 */
export function tryTree(
  tree: Tree,
  vocabulary: Vocabulary,
  options: { readonly coaches: number; readonly seed: number; readonly tell?: (done: number) => void },
): Trial {
  const { coaches, seed, tell = () => undefined } = options;
  const score = scoreWay(adviceWay(), tree, vocabulary, { coaches, seed, tell });
  const rows = [...tree.causes.map(({ id }) => id), UNLISTED].flatMap((truth): TrialRow[] => {
    const row = score.confusion.get(truth);
    if (!row) return [];
    const taken = [...row].map(([cause, count]) => ({ cause, coaches: count })).sort((a, b) => b.coaches - a.coaches);
    return [{ truth, coaches: taken.reduce((sum, each) => sum + each.coaches, 0), taken }];
  });
  const told = ownerIsToldToDrive(tree, vocabulary);
  const owner = { harmless: 0, ruledOut: 0, danger: 0, missed: 0 };
  for (let i = 0; i < coaches; i++) {
    const coach = drawCoach(tree, vocabulary, seededRandom(seed * 1_000_003 + i));
    const cause = tree.causes.find(({ id }) => id === coach.cause);
    if (cause) {
      const drives = Number(told(coach));
      if (cause.hazard === 'danger') {
        owner.danger += 1;
        owner.missed += drives;
      } else {
        owner.harmless += 1;
        owner.ruledOut += drives;
      }
    }
    tell(coaches + i + 1);
  }
  return { coaches, right: score.right, rows, owner };
}
