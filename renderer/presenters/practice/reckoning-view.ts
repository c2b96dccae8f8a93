import { inHundred } from '../../../shared/inference/index.ts';
import { inSentence, shortName } from '../../../shared/planning/index.ts';
import {
  brierWords,
  type ReckonedStep,
  type Reckoning,
  type Remark,
  type Session,
  type Step,
} from '../../../shared/practice/index.ts';
import { causeName, minutesWords } from '../presenters.ts';
import { choiceWords, hiddenName, moveWords, toldWords } from './words.ts';

/** One step beside the best one, in words. */
export interface StepLine {
  readonly what: string;
  readonly told: string;
  readonly cost: string;
  /** What would have been best there; empty when the own choice was, or nothing was to be decided. */
  readonly best: string;
  readonly remarks: readonly string[];
  readonly belief: string;
}

/** A piece of an order on its cord: from and to in minutes. */
export interface CordPiece {
  readonly kind: 'move' | 'work';
  readonly from: number;
  readonly to: number;
  readonly what: string;
  readonly told: string;
}

export interface Cord {
  readonly pieces: readonly CordPiece[];
  readonly minutes: number;
}

/** How it ended, as a heading. */
export function endHeading({ session }: Reckoning): string {
  const { end, exercise } = session;
  const name = hiddenName(exercise.tree, exercise.cause);
  switch (end?.how) {
    case 'stopped':
      return 'Stopped: somebody could have been killed';
    case 'proven':
      return `Found and proven: ${name}`;
    case 'unproven':
      return end.right ? `Corrected, not proven: ${name}` : `It was ${name}`;
    case 'handed-over':
      return end.right ? `Rightly handed over: it was ${name}` : `Handed over: it was ${name}`;
    default:
      return `It was ${name}`;
  }
}

/** The one sentence that is worth taking away. */
export function endSentence(reckoning: Reckoning): string {
  const { session, planner, taught, dearest } = reckoning;
  const { end, exercise } = session;
  if (end?.danger)
    return `Everything else about this exercise counts for nothing. It was ${hiddenName(exercise.tree, exercise.cause)}.`;
  const compared = `Your bill is ${minutesWords(session.bill)}, Droplight’s for the same fault ${minutesWords(planner.bill)}, the taught order’s ${minutesWords(taught.bill)}.`;
  if (!dearest) return `You gave no minute away that could be foreseen. ${compared}`;
  const what = inSentence(choiceWords(dearest.step.choice, exercise.tree, exercise.vocabulary));
  return `What gave most away was “${what}”: about ${minutesWords(dearest.lost)} more than the best choice there, on average. ${compared}`;
}

/** Every step beside the best one; safety questions asked one after the other are one line. */
export function stepLines({ steps, session }: Pick<Reckoning, 'steps' | 'session'>): readonly StepLine[] {
  const lines: StepLine[] = [];
  for (let i = 0; i < steps.length; i++) {
    let to = i;
    while (steps[to + 1] && isQuestion(steps[i]!) && isQuestion(steps[to + 1]!)) to++;
    lines.push(to > i ? questionsLine(steps.slice(i, to + 1), session) : stepLine(steps[i]!, session));
    i = to;
  }
  return lines;
}

function isQuestion({ step }: ReckonedStep): boolean {
  return step.choice.kind === 'question.asked';
}

function questionsLine(asked: readonly ReckonedStep[], session: Session): StepLine {
  const yes = asked.filter(({ step }) => step.told.kind === 'answer' && step.told.answer === 'yes');
  const { tree, vocabulary } = session.exercise;
  return {
    ...stepLine(asked.at(-1)!, session),
    what: `${asked.length} safety questions`,
    told:
      yes.length === 0
        ? 'No to all'
        : `Yes to ${yes.map(({ step }) => `“${choiceWords(step.choice, tree, vocabulary)}”`).join(', ')}`,
    cost: minutesWords(asked.reduce((sum, { step }) => sum + step.minutes, 0)),
  };
}

/** One step beside the best one. */
export function stepLine(each: ReckonedStep, { exercise }: Pick<Session, 'exercise'>): StepLine {
  const { tree, vocabulary } = exercise;
  const { step, best, own, bestSaves, lost, remarks, belief, lead } = each;
  return {
    what: choiceWords(step.choice, tree, vocabulary),
    told: toldWords(step.choice, step.told, tree),
    cost: costWords(step),
    best:
      best === null || lost <= 1
        ? ''
        : `Best here: ${inSentence(moveWords(best, tree))}. It was expected to save ${savedWords(bestSaves)}; this one ${savedWords(own)}.`,
    remarks: remarks.map((remark) => remarkWords(remark, each, exercise)),
    belief: `Belief then: ${inHundred(lead.share)} in 100 for ${inSentence(shortName(causeName(tree, lead.cause)))}; ${inHundred(belief)} in 100 for what it was.`,
  };
}

function savedWords(minutes: number | null): string {
  if (minutes === null) return 'nothing that can be weighed';
  const whole = Math.round(minutes);
  return whole > 0 ? minutesWords(whole) : whole === 0 ? 'nothing' : `nothing, and cost ${minutesWords(-whole)}`;
}

function costWords({ minutes, accessMinutes, bill }: Step): string {
  const spent = minutes + accessMinutes;
  const extra = Math.round(bill - spent);
  const words = [
    ...(minutes > 0 ? [minutesWords(minutes)] : []),
    ...(accessMinutes > 0 ? [`${minutesWords(accessMinutes)} to open and close`] : []),
    ...(extra > 0 ? [`${minutesWords(extra)} more on the bill`] : []),
  ];
  return words.join(', ');
}

function remarkWords(remark: Remark, { step }: ReckonedStep, { tree }: Session['exercise']): string {
  const name = (id: string): string => `“${inSentence(shortName(causeName(tree, id)))}”`;
  switch (remark.kind) {
    case 'could-not-tell':
      return `This check could not tell the two causes that were left apart: ${name(remark.causes[0])} and ${name(remark.causes[1])} show the same in it.`;
    case 'made-again':
      return 'Made before: it shows the same again.';
    case 'questions-first':
      return `${remark.open} safety ${remark.open === 1 ? 'question was' : 'questions were'} open before the coach could be driven.`;
    case 'wrong-part':
      return `A wrong part: ${minutesWords(step.bill - step.minutes - step.accessMinutes)} on the bill for trust and the way back.`;
    case 'proof-skipped':
      return 'Without a proof nobody knows whether it is cured; what is not cured comes back.';
  }
}

/** An order on its cord: moves between, work at each step. */
export function cordOf(session: Session): Cord {
  const { tree, vocabulary } = session.exercise;
  const pieces: CordPiece[] = [];
  let at = 0;
  for (const { choice, told, minutes, accessMinutes } of session.steps) {
    const add = (kind: CordPiece['kind'], length: number, what: string, said: string): void => {
      if (length <= 0) return;
      const last = pieces.at(-1);
      // Questions one after the other are one block.
      if (choice.kind === 'question.asked' && last?.what === QUESTIONS)
        pieces[pieces.length - 1] = { ...last, to: last.to + length };
      else pieces.push({ kind, from: at, to: at + length, what, told: said });
      at += length;
    };
    add('move', accessMinutes, 'open, close', '');
    if (choice.kind === 'question.asked') add('work', minutes, QUESTIONS, '');
    else add('work', minutes, choiceWords(choice, tree, vocabulary), toldWords(choice, told, tree));
  }
  return { pieces, minutes: at };
}

const QUESTIONS = 'Safety questions';

/** A point of the belief: minutes of work, and the belief in the hidden cause after it, 0 to 1. */
export type BeliefPoint = readonly [number, number];

/** Belief in the hidden cause over the minutes of work. */
export function beliefPoints({
  steps,
  beliefAtStart,
}: Pick<Reckoning, 'steps' | 'beliefAtStart'>): readonly BeliefPoint[] {
  return [
    [0, beliefAtStart],
    ...steps.map(({ step, belief }): BeliefPoint => [step.clock + step.minutes + step.accessMinutes, belief]),
  ];
}

/** Where the planner went another way first; null when it never did. */
export function partingOf(
  reckoning: Reckoning,
): { readonly after: string; readonly yours: string; readonly best: string } | null {
  const { steps, session } = reckoning;
  const { tree, vocabulary } = session.exercise;
  const i = steps.findIndex(({ lost }) => lost > 1);
  const parting = steps[i];
  if (!parting?.best) return null;
  const before = steps.slice(0, i).findLast(({ step }) => step.choice.kind === 'check.made');
  return {
    after: before ? `After “${inSentence(choiceWords(before.step.choice, tree, vocabulary))}”` : 'At the beginning',
    yours: choiceWords(parting.step.choice, tree, vocabulary),
    best: moveWords(parting.best, tree),
  };
}

/** What was suspected, held against what it was, in plain words. */
export function suspicionWords({ forecasts }: Pick<Reckoning, 'forecasts'>): string {
  return brierWords(forecasts);
}
