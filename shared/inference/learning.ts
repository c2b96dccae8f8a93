import { fitOf, type Layout } from '../knowledge/layout.ts';
import { UNLISTED, type Tree } from '../knowledge/tree.ts';
import { beliefModel } from './model.ts';

/** A complaint that was closed, as far as it teaches something about how frequent causes are. */
export interface ClosedCase {
  readonly id: string;
  /** Tree id. */
  readonly complaint: string;
  readonly layout: Layout;
  /** In the order in which they were done. */
  readonly corrections: readonly {
    readonly cause: string;
    readonly partSeen: 'bad' | 'good' | 'unknown';
    readonly proof: 'pending' | 'gone' | 'still-there';
  }[];
}

export interface LearningOptions {
  /** Off unless the owner of the data has switched it on. */
  readonly on?: boolean;
  /** Ids of cases that somebody has taken out. */
  readonly takenOut?: ReadonlySet<string>;
  /** How many cases the author's opinion is worth; above 0. */
  readonly opinion?: number;
}

/** The author's opinion weighs as much as this many cases; 10 to 30 is sensible. Judgement. */
export const OPINION = 20;

export interface LearnedOdds {
  readonly on: boolean;
  /** Opinion : data, as s : N. N is 0 while learning is off. */
  readonly opinion: number;
  readonly data: number;
  /** Causes that can exist on this coach in the order of the file, then `unlisted`. */
  readonly causes: readonly LearnedShare[];
  /** Cases that do not count, and why. */
  readonly leftOut: readonly { readonly id: string; readonly why: LeftOut }[];
}

export interface LearnedShare {
  readonly cause: string;
  /** Share before any finding: by the author, and with the cases. Each column sums to 1. */
  readonly authored: number;
  readonly learned: number;
  /** One standard deviation of the learned share. */
  readonly deviation: number;
  readonly cases: number;
}

export type LeftOut =
  | 'taken-out'
  | 'other-complaint'
  /** Not proven, cured by luck, or more than one part was bad. */
  | 'not-verified'
  /** The cause cannot exist on this coach. */
  | 'cause-elsewhere'
  /** That coach could not have had every cause that this one can have: it would teach against those. */
  | 'built-otherwise';

/**
 * Starting odds of a complaint with what verified cases add: Dirichlet with α = s · authored share.
 *
 * @throws {RangeError} when `opinion` is not a number above 0.
 * @source Posterior mean (α + n)/(s + N), variance m(1 − m)/(s + N + 1): the Dirichlet–multinomial model, textbook result.
 */
export function learnedOdds(
  tree: Tree,
  layout: Layout,
  cases: readonly ClosedCase[],
  { on = false, takenOut = new Set(), opinion = OPINION }: LearningOptions = {},
): LearnedOdds {
  if (!(opinion > 0 && Number.isFinite(opinion)))
    throw new RangeError(
      `The author’s opinion cannot be worth ${opinion} cases; give a number above 0, usually 10 to 30.`,
    );
  const { causeIds, prior } = beliefModel(tree, layout);
  const counts = new Map<string, number>();
  const leftOut: { id: string; why: LeftOut }[] = [];
  for (const each of on ? cases : []) {
    const cause = verifiedCause(each);
    const why = takenOut.has(each.id)
      ? 'taken-out'
      : each.complaint !== tree.id
        ? 'other-complaint'
        : cause === null
          ? 'not-verified'
          : !causeIds.includes(cause)
            ? 'cause-elsewhere'
            : couldHaveAll(tree, causeIds, each.layout)
              ? null
              : 'built-otherwise';
    if (why !== null) leftOut.push({ id: each.id, why });
    else if (cause !== null) counts.set(cause, (counts.get(cause) ?? 0) + 1);
  }
  let data = 0;
  for (const count of counts.values()) data += count;
  return {
    on,
    opinion,
    data,
    leftOut,
    causes: causeIds.map((cause, c) => {
      const authored = prior[c]!;
      const n = counts.get(cause) ?? 0;
      // Nothing learned leaves the author's number as it is, to the last digit.
      const learned = data === 0 ? authored : (opinion * authored + n) / (opinion + data);
      return {
        cause,
        authored,
        learned,
        deviation: Math.sqrt((learned * (1 - learned)) / (opinion + data + 1)),
        cases: n,
      };
    }),
  };
}

/**
 * The cause that a closed case proves: the complaint was gone after exactly one correction whose part was not seen to be
 * good, or after several of which only the last one's part was seen to be bad. Null when it proves none.
 */
export function verifiedCause({ corrections }: ClosedCase): string | null {
  const last = corrections.at(-1);
  if (!last || last.proof !== 'gone' || last.partSeen === 'good') return null;
  if (corrections.length === 1) return last.cause;
  const bad = corrections.filter(({ partSeen }) => partSeen === 'bad');
  return bad.length === 1 && bad[0] === last ? last.cause : null;
}

function couldHaveAll(tree: Tree, causeIds: readonly string[], layout: Layout): boolean {
  return causeIds.every((id) => {
    const cause = tree.causes.find((each) => each.id === id);
    return cause === undefined || fitOf(cause.when, layout).fits !== 'no';
  });
}

/**
 * The tree with learned odds in place of the author's, for one kind of coach: its belief model starts from them. Causes
 * that cannot exist on that coach keep their weight, which does not matter there. The authored tree is not changed.
 */
export function withOdds(tree: Tree, { causes, data }: LearnedOdds): Tree {
  if (data === 0) return tree;
  const shares = new Map(causes.map(({ cause, learned }) => [cause, learned]));
  return {
    ...tree,
    unlistedShare: shares.get(UNLISTED) ?? tree.unlistedShare,
    // Learned for this coach: what the author says of coaches built otherwise does not come into it.
    causes: tree.causes.map((cause) => ({ ...cause, weight: shares.get(cause.id) ?? cause.weight, weightIf: [] })),
  };
}
