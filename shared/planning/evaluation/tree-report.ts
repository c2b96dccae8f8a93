import type { Role, Tree } from '../../knowledge/tree.ts';
import type { Vocabulary } from '../../knowledge/vocabulary.ts';
import { coachWith, drawTwoFaults, layoutFor } from './coach.ts';
import { disturbedTree, withoutCause } from './disturbed.ts';
import { toldToDrive, type DriveScore } from './drive.ts';
import { scoreWay, type Score } from './score.ts';
import { leastCost, type LeastCost } from './least-cost.ts';
import { SIGMAS } from './model-report.ts';
import { seededRandom } from './random.ts';
import {
  adviceWay,
  everyCheckWay,
  informationWay,
  oneStepWay,
  plannerWay,
  randomWay,
  swapperWay,
  taughtWay,
} from './ways.ts';

/** A score without what only a table of confusions needs. */
export type WayScore = Omit<Score, 'confusion'>;

/** All ways on one tree over the same simulated coaches. */
export interface TreeRow {
  readonly tree: string;
  readonly causes: number;
  readonly checks: number;
  readonly least: LeastCost;
  /** Ours first. */
  readonly ways: readonly WayScore[];
  readonly drive: DriveScore;
  /** This program and the taught order when the truth differs from the file. */
  readonly disturbed: readonly { readonly sigma: number; readonly ours: WayScore; readonly taught: WayScore }[];
  /** The likeliest cause is missing in the file, and each coach has it. */
  readonly removed: { readonly cause: string; readonly ours: WayScore; readonly taught: WayScore };
  readonly twoFaults: { readonly ours: WayScore; readonly taught: WayScore };
}

/** How many coaches: of the ways side by side, and of each trial beside that. */
export interface Counts {
  readonly coaches: number;
  readonly beside: number;
  /** Of looking many steps ahead, which takes seconds a coach; 0 leaves it out. */
  readonly ahead: number;
  readonly seed: number;
  readonly who: Role;
}

/** Everything about one tree; the same counts and seed give the same row. */
export function treeRow(tree: Tree, vocabulary: Vocabulary, { coaches, beside, ahead, seed, who }: Counts): TreeRow {
  const options = { coaches, seed, who };
  const side = { coaches: beside, seed, who };
  const first = adviceWay();
  const ways = [
    first,
    oneStepWay(),
    informationWay(),
    taughtWay(),
    swapperWay(),
    randomWay(seededRandom(seed)),
    everyCheckWay(),
  ];
  const score = (...of: Parameters<typeof scoreWay>): WayScore => {
    // The confusion table is a Map and too long to keep.
    const { confusion: _, ...rest } = scoreWay(...of);
    return rest;
  };
  const likeliest = tree.causes.reduce((a, b) => (b.weight > a.weight ? b : a)).id;
  const file = withoutCause(tree, likeliest);
  const drawn = (truth: Tree, words: Vocabulary, random: () => number) =>
    coachWith(truth, likeliest, layoutFor(truth, words, likeliest), random);
  return {
    tree: tree.id,
    causes: tree.causes.length,
    checks: tree.checks.length,
    least: leastCost(tree, vocabulary),
    ways: [
      ...ways.map((way) => score(way, tree, vocabulary, options)),
      ...(ahead > 0 ? [score(plannerWay(), tree, vocabulary, { ...options, coaches: ahead })] : []),
    ],
    drive: toldToDrive(tree, vocabulary, { coaches: beside * 5, seed }),
    disturbed: SIGMAS.map((sigma) => {
      const truth = disturbedTree(tree, sigma, seededRandom(seed));
      return {
        sigma,
        ours: score(first, tree, vocabulary, { ...side, truth }),
        taught: score(taughtWay(), tree, vocabulary, { ...side, truth }),
      };
    }),
    removed: {
      cause: likeliest,
      ours: score(adviceWay(), file, vocabulary, { ...side, truth: tree, drawn }),
      taught: score(taughtWay(), file, vocabulary, { ...side, truth: tree, drawn }),
    },
    twoFaults: {
      ours: score(first, tree, vocabulary, { ...side, drawn: drawTwoFaults }),
      taught: score(taughtWay(), tree, vocabulary, { ...side, drawn: drawTwoFaults }),
    },
  };
}
