import { defaultCosts } from '../planning/costs.ts';
import { scoreWay, taughtWay, work, type Outcome, type WayOfWorking } from '../planning/evaluation/index.ts';
import { coachOf, drawExercise } from './exercise.ts';
import { usualLayout } from './layouts.ts';
import { workThrough } from './orders.ts';
import { PRACTICE_ROLE } from './session.ts';
import { SEEDS, type PracticeTree } from './setting.ts';

/** A mean with its standard error, minutes and their money's worth. */
export interface Mean {
  readonly mean: number;
  readonly error: number;
}

/** A way of working playing exercises against the same way in the evaluation, costs alone. */
export interface Agreement {
  readonly exercises: number;
  /** Bill of the way in practice. */
  readonly practice: Mean;
  /** Its cost in the evaluation, over coaches drawn independently. */
  readonly evaluation: Mean;
  /** Largest difference between bill and evaluated cost on the very same coach, minutes. */
  readonly largestGap: number;
  /** Difference of the two means over its standard error. */
  readonly z: number;
  /** What the taught order costs more than the way, exercise by exercise. */
  readonly taughtMore: Mean;
}

/**
 * Plays exercises of the widest level on the usual coach: each is drawn and worked choice by choice as a person would work
 * it, nothing of it is shared between two exercises but what the way remembers of situations that it has met. The evaluation
 * knows neither safety questions nor rules, so the tree is played without them.
 */
export function agreementOf(
  pinned: PracticeTree,
  way: WayOfWorking,
  options: { readonly exercises: number; readonly coaches: number; readonly seed: number },
): Agreement {
  const { vocabulary } = pinned;
  const tree = { ...pinned.tree, stopRules: [] };
  const layout = usualLayout(tree, vocabulary);
  const taught = taughtWay();
  const costs = defaultCosts(PRACTICE_ROLE);
  const bills: number[] = [];
  const more: number[] = [];
  let largestGap = 0;
  for (let i = 0; i < options.exercises; i++) {
    const exercise = drawExercise(
      { ...pinned, tree },
      { level: 'any', seed: (options.seed * 10_007 + i) % SEEDS, layout },
    );
    const { bill } = workThrough(exercise, way);
    const coach = coachOf(exercise);
    largestGap = Math.max(
      largestGap,
      Math.abs(bill - truthful(work(coach, way, tree, vocabulary, PRACTICE_ROLE, costs))),
    );
    bills.push(bill);
    more.push(truthful(work(coach, taught, tree, vocabulary, PRACTICE_ROLE, costs)) - bill);
  }
  const practice = meanOf(bills);
  const { cost, proofRisks, costError } = scoreWay(way, tree, vocabulary, {
    coaches: options.coaches,
    seed: options.seed,
    who: PRACTICE_ROLE,
    layout,
  });
  return {
    exercises: options.exercises,
    practice,
    evaluation: { mean: cost - proofRisks, error: costError },
    largestGap,
    z: (practice.mean - cost + proofRisks) / Math.hypot(practice.error, costError),
    taughtMore: meanOf(more),
  };
}

/** A proof in practice tells the truth: what the evaluation charges because one may not is left out. */
function truthful({ cost, proofRisks }: Outcome): number {
  return cost - proofRisks;
}

function meanOf(values: readonly number[]): Mean {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
  return { mean, error: Math.sqrt(variance / values.length) };
}
