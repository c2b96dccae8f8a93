/**
 * What is kept of practice: lines of a learner's log, in kinds of their own. No kind is one of a visit, so that no reader of
 * visits takes them, and this one takes nothing of a visit.
 */
import * as v from 'valibot';
import type { Choice } from './choices.ts';
import { DANGER_IDS } from './dangers.ts';
import { LEARNER_EVENT_VERSION } from './drills/events.ts';
import { LONGEST_FILE } from './exercise-file.ts';

/** What every record carries. */
export interface PracticeHead {
  /** Unique in the log, time-ordered. */
  readonly id: string;
  readonly v: number;
  /** ISO 8601. */
  readonly at: string;
  readonly by: string;
}

/** Where the hidden fault comes from. */
export type ExerciseSource =
  | { readonly from: 'code'; readonly code: string }
  | { readonly from: 'file'; readonly text: string; readonly seed: string };

/** An exercise that has ended, in figures, so that progress needs no replay. */
export interface ExerciseSummary {
  readonly cause: string;
  readonly how: 'proven' | 'unproven' | 'handed-over' | 'given-up' | 'stopped';
  readonly right: boolean;
  /** 0 to 100. */
  readonly score: number;
  readonly clock: number;
  readonly bill: number;
  /** The planner's bill and minutes for the same fault. */
  readonly plannerBill: number;
  readonly plannerClock: number;
  readonly wrongParts: number;
  readonly hints: number;
  readonly checks: readonly string[];
  readonly forecasts: readonly { readonly share: number; readonly right: boolean }[];
}

export type PracticeBody =
  | {
      readonly kind: 'practice.begun';
      readonly exercise: string;
      readonly tree: string;
      readonly treeHash: string;
      readonly source: ExerciseSource;
    }
  | { readonly kind: 'practice.chosen'; readonly exercise: string; readonly choice: Choice }
  | { readonly kind: 'practice.ended'; readonly exercise: string; readonly summary: ExerciseSummary };

export type PracticeRecord = PracticeHead & PracticeBody;

const id = v.pipe(v.string(), v.minLength(1), v.maxLength(120));
const number = v.pipe(v.number(), v.finite());
const share = v.pipe(number, v.minValue(0), v.maxValue(1));
const way = v.picklist(['properly', ...DANGER_IDS]);
const choice = v.variant('kind', [
  v.strictObject({ kind: v.literal('question.asked'), rule: id }),
  v.strictObject({ kind: v.literal('check.made'), check: id, way }),
  v.strictObject({ kind: v.literal('access.changed'), to: id, way }),
  v.strictObject({ kind: v.literal('suspicion.stated'), cause: id, share }),
  v.strictObject({ kind: v.literal('hint.taken') }),
  v.strictObject({ kind: v.literal('correction.made'), cause: id, way }),
  v.strictObject({ kind: v.literal('proof.made') }),
  v.strictObject({ kind: v.literal('proof.skipped') }),
  v.strictObject({ kind: v.literal('handed-over') }),
  v.strictObject({ kind: v.literal('given-up') }),
]);
const head = {
  id,
  v: v.pipe(v.number(), v.maxValue(LEARNER_EVENT_VERSION)),
  at: v.pipe(v.string(), v.maxLength(40)),
  by: v.pipe(v.string(), v.maxLength(80)),
};
const record = v.variant('kind', [
  v.strictObject({
    ...head,
    kind: v.literal('practice.begun'),
    exercise: id,
    tree: id,
    treeHash: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/)),
    source: v.variant('from', [
      v.strictObject({ from: v.literal('code'), code: id }),
      v.strictObject({ from: v.literal('file'), text: v.pipe(v.string(), v.maxLength(LONGEST_FILE)), seed: id }),
    ]),
  }),
  v.strictObject({ ...head, kind: v.literal('practice.chosen'), exercise: id, choice }),
  v.strictObject({
    ...head,
    kind: v.literal('practice.ended'),
    exercise: id,
    summary: v.strictObject({
      cause: id,
      how: v.picklist(['proven', 'unproven', 'handed-over', 'given-up', 'stopped']),
      right: v.boolean(),
      score: v.pipe(number, v.minValue(0), v.maxValue(100)),
      clock: number,
      bill: number,
      plannerBill: number,
      plannerClock: number,
      wrongParts: number,
      hints: number,
      checks: v.array(id),
      forecasts: v.array(v.strictObject({ share, right: v.boolean() })),
    }),
  }),
]);

/** A record as read; null when it is not one that this program knows (of another kind of practice, or none at all). */
export function readPracticeRecord(data: unknown): PracticeRecord | null {
  const parsed = v.safeParse(record, data);
  return parsed.success ? parsed.output : null;
}

/** One exercise as it was worked. */
export interface WorkedExercise {
  readonly exercise: string;
  readonly begun: PracticeRecord & { readonly kind: 'practice.begun' };
  readonly choices: readonly Choice[];
  readonly summary: ExerciseSummary | null;
}

/** The exercises of a log, in the order in which they were begun. Records of an exercise that was never begun are left out. */
export function workedExercises(records: readonly PracticeRecord[]): WorkedExercise[] {
  const sorted = [...records].sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
  return sorted.flatMap((begun): WorkedExercise[] => {
    if (begun.kind !== 'practice.begun') return [];
    const own = sorted.filter(({ exercise }) => exercise === begun.exercise);
    const ended = own.find((each) => each.kind === 'practice.ended');
    return [
      {
        exercise: begun.exercise,
        begun,
        choices: own.flatMap((each) => (each.kind === 'practice.chosen' ? [each.choice] : [])),
        summary: ended?.kind === 'practice.ended' ? ended.summary : null,
      },
    ];
  });
}
