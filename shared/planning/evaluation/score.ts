import type { Role, Tree } from '../../knowledge/tree.ts';
import type { Vocabulary } from '../../knowledge/vocabulary.ts';
import { defaultCosts } from '../costs.ts';
import type { Layout } from '../../knowledge/layout.ts';
import { drawCoach, drawCoachOn, type SimulatedCoach } from './coach.ts';
import { seededRandom } from './random.ts';
import { work, type Outcome, type WayOfWorking } from './session.ts';

/** How one way of working did over many simulated coaches. */
export interface Score {
  readonly way: string;
  readonly coaches: number;
  /** Share in which the first thing corrected was the fault (a hand-over is right when the fault is not in the list). */
  readonly right: number;
  readonly checkMinutes: number;
  readonly cost: number;
  /** Standard error of the mean cost. */
  readonly costError: number;
  readonly checks: number;
  readonly wrongParts: number;
  /** The part of `cost` that is expected, not drawn: proofs that can be wrong. */
  readonly proofRisks: number;
  readonly handedOver: number;
  /** True cause → concluded cause → how often. */
  readonly confusion: ReadonlyMap<string, ReadonlyMap<string, number>>;
}

/** Works through the same simulated coaches in one way. The same seed gives the same coaches to every way. */
export function scoreWay(
  way: WayOfWorking,
  tree: Tree,
  vocabulary: Vocabulary,
  options: {
    readonly coaches: number;
    readonly seed: number;
    readonly who?: Role;
    /** Tree that the coaches are drawn from; the same one when it is left out. */
    readonly truth?: Tree;
    /** Draws a coach; null = this one does not count. */
    readonly drawn?: (truth: Tree, vocabulary: Vocabulary, random: () => number) => SimulatedCoach | null;
    /** All coaches are built like this; left out = each as its fault needs it. */
    readonly layout?: Layout;
    /** Called after each coach with how many are done. */
    readonly tell?: (done: number) => void;
  },
): Score {
  const { who = 'mechanic', layout } = options;
  const drawn = options.drawn ?? (layout ? (truth, _, random) => drawCoachOn(truth, layout, random) : drawCoach);
  const outcomes: (Outcome & { readonly truth: string })[] = [];
  for (let i = 0; i < options.coaches; i++) {
    // One generator a coach, so that the number of looks in one coach does not change the next.
    const coach = drawn(options.truth ?? tree, vocabulary, seededRandom(options.seed * 1_000_003 + i));
    if (!coach) continue;
    outcomes.push({ ...work(coach, way, tree, vocabulary, who, defaultCosts(who)), truth: coach.cause });
    options.tell?.(i + 1);
  }
  const mean = (of: (outcome: Outcome) => number): number =>
    outcomes.reduce((sum, outcome) => sum + of(outcome), 0) / outcomes.length;
  const cost = mean((outcome) => outcome.cost);
  const variance = mean((outcome) => (outcome.cost - cost) ** 2);
  const confusion = new Map<string, Map<string, number>>();
  for (const { truth, concluded } of outcomes) {
    const row = confusion.get(truth) ?? new Map<string, number>();
    row.set(concluded, (row.get(concluded) ?? 0) + 1);
    confusion.set(truth, row);
  }
  return {
    way: way.name,
    coaches: outcomes.length,
    right: mean(({ right }) => Number(right)),
    checkMinutes: mean((outcome) => outcome.checkMinutes),
    cost,
    costError: Math.sqrt(variance / outcomes.length),
    checks: mean((outcome) => outcome.checks),
    wrongParts: mean((outcome) => outcome.wrongParts),
    proofRisks: mean((outcome) => outcome.proofRisks),
    handedOver: mean(({ cured }) => Number(!cured)),
    confusion,
  };
}
