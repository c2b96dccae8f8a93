import type { BeliefModel } from '../inference/index.ts';
import { UNLISTED } from '../knowledge/tree.ts';
import type { Move } from '../planning/evaluation/index.ts';
import type { Ranking } from '../planning/next-check.ts';
import { beliefNow } from '../planning/standing.ts';
import type { Situation } from '../planning/situation.ts';
import type { Choice } from './choices.ts';
import { moveOf, rankingIn, safePlanner, safeTaught, workThrough } from './orders.ts';
import { scoreOf } from './score.ts';
import { practiceVerdict, type Session, type Step } from './session.ts';
import { brierScore, type Forecast } from './suspicion.ts';
import { worthOf } from './worth.ts';

/** Something to learn from a step. */
export type Remark =
  /** The two causes that were left are found by this check alike. */
  | { readonly kind: 'could-not-tell'; readonly causes: readonly [string, string] }
  | { readonly kind: 'made-again' }
  /** The best check would have driven, and safety questions were open. */
  | { readonly kind: 'questions-first'; readonly open: number }
  | { readonly kind: 'wrong-part' }
  | { readonly kind: 'proof-skipped' };

/** One choice beside the best one. */
export interface ReckonedStep {
  readonly step: Step;
  /** What the planner would have done at the same belief; null where nothing was to be decided about the fault. */
  readonly best: Move | null;
  /** Expected saving of the own choice and of the best one, minutes; null where it cannot be weighed. */
  readonly own: number | null;
  readonly bestSaves: number | null;
  /** Expected minutes given away, 0 or more. */
  readonly lost: number;
  readonly remarks: readonly Remark[];
  /** Belief in the hidden cause after the step, 0 to 1. */
  readonly belief: number;
  /** The likeliest cause after the step, and its share. */
  readonly lead: { readonly cause: string; readonly share: number };
}

export interface Reckoning {
  readonly session: Session;
  readonly steps: readonly ReckonedStep[];
  /** Belief in the hidden cause before the first step. */
  readonly beliefAtStart: number;
  /** The same fault worked by the planner and by the taught order. */
  readonly planner: Session;
  readonly taught: Session;
  /** 0 to 100; 0 after an unsafe choice. */
  readonly score: number;
  readonly forecasts: readonly Forecast[];
  /** Null when no suspicion was stated. */
  readonly brier: number | null;
  /** The step that gave most away; null when none gave a minute away. */
  readonly dearest: ReckonedStep | null;
}

/** Two results as likely as this under both causes, summed over the results and halved, tell them apart too little. Judgement. */
const TOO_ALIKE = 0.1;
/** From this share of the leading cause a second one counts as still left. Judgement. */
const LEFT = 1 / 4;

/** An exercise that has ended, held against the planner and the taught order on the same drawn results. */
export function reckon(session: Session): Reckoning {
  const { exercise } = session;
  const planner = workThrough(exercise, safePlanner());
  const taught = workThrough(exercise, safeTaught());
  const steps = session.steps.map((step, i) =>
    reckonStep(session, step, session.steps[i + 1]?.before ?? session.situation),
  );
  const forecasts = forecastsOf(session);
  const dearest = steps.reduce<ReckonedStep | null>(
    (most, step) => (step.lost > (most?.lost ?? 1) ? step : most),
    null,
  );
  return {
    session,
    steps,
    beliefAtStart: beliefIn(exercise.cause, session.steps[0]?.before ?? session.situation).hidden,
    planner,
    taught,
    score: scoreOf(session, planner),
    forecasts,
    brier: brierScore(forecasts),
    dearest,
  };
}

/** What was suspected, and whether it was so. */
export function forecastsOf({ steps, exercise }: Pick<Session, 'steps' | 'exercise'>): Forecast[] {
  return steps.flatMap(({ choice }) =>
    choice.kind === 'suspicion.stated' ? [{ share: choice.share, right: choice.cause === exercise.cause }] : [],
  );
}

function reckonStep(session: Session, step: Step, then: Situation): ReckonedStep {
  const { hidden, lead } = beliefIn(session.exercise.cause, then);
  const after = { step, belief: hidden, lead };
  const move = moveIn(step.choice);
  const remarks = [...ownRemarks(step)];
  if (!move) return { ...after, best: null, own: null, bestSaves: null, lost: 0, remarks };
  const ranking = rankingIn(step.before);
  const best = moveOf(ranking);
  const bestSaves = worthOf(ranking, best);
  const own = worthOf(ranking, move);
  if (move.kind === 'check') remarks.push(...checkRemarks(ranking, step.before, move.check));
  const open = questionsBefore(step.before, best);
  if (open > 0) remarks.push({ kind: 'questions-first', open });
  return {
    ...after,
    best,
    own,
    bestSaves,
    lost: own === null || bestSaves === null || same(move, best) ? 0 : Math.max(0, bestSaves - own),
    remarks,
  };
}

/** A choice as a decision about the fault; null for all others. */
function moveIn(choice: Choice): Move | null {
  switch (choice.kind) {
    case 'check.made':
      return { kind: 'check', check: choice.check };
    case 'correction.made':
      return { kind: 'correct', cause: choice.cause };
    case 'handed-over':
    case 'given-up':
      return { kind: 'hand-over' };
    default:
      return null;
  }
}

function same(a: Move, b: Move): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

function ownRemarks({ choice, told, before }: Step): readonly Remark[] {
  if (choice.kind === 'proof.skipped') return [{ kind: 'proof-skipped' }];
  if (told.kind === 'proof' && !told.gone) return [{ kind: 'wrong-part' }];
  if (choice.kind === 'check.made' && before.findings.some(({ check }) => check === choice.check))
    return [{ kind: 'made-again' }];
  return [];
}

/** Whether the two causes that were left would have shown the same in a check. */
function checkRemarks(ranking: Ranking, before: Situation, check: string): readonly Remark[] {
  const { model, start } = ranking.problem;
  if (before.findings.some((finding) => finding.check === check)) return [];
  const [first, second] = twoLeft(model, ranking.problem.belief(start));
  const rows = model.tables.get(check)?.likelihood;
  if (first === undefined || second === undefined || !rows) return [];
  const apart = rows.reduce((sum, row) => sum + Math.abs(row[first]! - row[second]!), 0) / 2;
  return apart < TOO_ALIKE
    ? [{ kind: 'could-not-tell', causes: [model.causeIds[first]!, model.causeIds[second]!] }]
    : [];
}

/** The two likeliest listed causes, while the second is still worth naming. */
function twoLeft({ causeIds }: BeliefModel, belief: Float64Array): readonly number[] {
  const [first, second] = causeIds
    .map((id, c) => ({ id, c }))
    .filter(({ id }) => id !== UNLISTED)
    .sort((a, b) => belief[b.c]! - belief[a.c]! || a.c - b.c);
  return first && second && belief[second.c]! >= LEFT * belief[first.c]! ? [first.c, second.c] : [];
}

/** Safety questions that had to be asked before the best check could be made. */
function questionsBefore(situation: Situation, best: Move): number {
  if (best.kind !== 'check') return 0;
  const check = situation.tree.checks.find(({ id }) => id === best.check)!;
  const moves = situation.vocabulary.access.find(({ id }) => id === check.access)?.moves ?? false;
  return moves ? practiceVerdict({ situation }).openQuestions.length : 0;
}

function beliefIn(
  hidden: string,
  situation: Situation,
): { readonly hidden: number; readonly lead: { readonly cause: string; readonly share: number } } {
  const { model, now } = beliefNow(situation);
  let lead = 0;
  now.probability.forEach((p, c) => {
    if (p > now.probability[lead]!) lead = c;
  });
  return {
    hidden: now.probability[model.causeIds.indexOf(hidden)] ?? 0,
    lead: { cause: model.causeIds[lead]!, share: now.probability[lead]! },
  };
}
