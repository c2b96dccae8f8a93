import { createEmptyCard, fsrs, Rating, type Card as MemoryCard, type Grade, type State } from 'ts-fsrs';
import type { Outcome } from './card.ts';

/** Recall at which a card comes back: nine times in ten it would be known. The scheduler's own usual value. */
const RETENTION = 0.9;

/** What is remembered of a card, by the model of memory. Times in milliseconds since 1970, UTC. */
export interface Memory {
  readonly due: number;
  readonly last: number;
  /** Days after which nine in ten would still know it. */
  readonly stabilityDays: number;
  /** 1 to 10; the model's own scale. */
  readonly difficulty: number;
  readonly state: State;
  readonly scheduledDays: number;
  readonly step: number;
  readonly answers: number;
  /** How often it was forgotten after having been learned. */
  readonly lapses: number;
}

/** How an answer counts: wrong = again, half right or with help = hard, right = good. Nobody is timed. */
export const GRADES = ['again', 'hard', 'good', 'easy'] as const;
export type DrillGrade = (typeof GRADES)[number];

const RATING: Readonly<Record<DrillGrade, Grade>> = {
  again: Rating.Again,
  hard: Rating.Hard,
  good: Rating.Good,
  easy: Rating.Easy,
};

/** @param helped  the drawing was put into words. */
export function gradeOf(outcome: Outcome, helped: boolean): DrillGrade {
  if (outcome === 'wrong') return 'again';
  return outcome === 'nearly' || helped ? 'hard' : 'good';
}

/** Without chance: the same answers at the same times give the same plan on every machine. */
const scheduler = fsrs({ request_retention: RETENTION, enable_fuzz: false });

/**
 * The memory of a card after one more answer.
 *
 * @param before  null for a card that was never asked.
 * @param at      milliseconds since 1970; a time before the last answer (two machines, one clock wrong) counts as that one.
 * @source FSRS-6 with its published default parameters, by ts-fsrs.
 */
export function afterAnswer(before: Memory | null, grade: DrillGrade, at: number): Memory {
  const now = before ? Math.max(at, before.last) : at;
  const { card } = scheduler.next(
    before ? toCard(before) : createEmptyCard(new Date(now)),
    new Date(now),
    RATING[grade],
  );
  return {
    due: card.due.getTime(),
    last: now,
    stabilityDays: card.stability,
    difficulty: card.difficulty,
    state: card.state,
    scheduledDays: card.scheduled_days,
    step: card.learning_steps,
    answers: card.reps,
    lapses: card.lapses,
  };
}

/** Share of times that the card would be known at this moment, 0 to 1, by the model of memory. */
export function recallAt(memory: Memory, at: number): number {
  return scheduler.get_retrievability(toCard(memory), new Date(Math.max(at, memory.last)), false);
}

function toCard(memory: Memory): MemoryCard {
  return {
    ...createEmptyCard(new Date(memory.due)),
    last_review: new Date(memory.last),
    stability: memory.stabilityDays,
    difficulty: memory.difficulty,
    state: memory.state,
    scheduled_days: memory.scheduledDays,
    learning_steps: memory.step,
    reps: memory.answers,
    lapses: memory.lapses,
  };
}
