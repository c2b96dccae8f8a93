import { beliefModel, type Finding } from '../inference/index.ts';
import { UNLISTED, type Check } from '../knowledge/tree.ts';
import {
  closingCost,
  idsOf,
  move,
  needOf,
  vocabularyGraph,
  type AccessGraph,
  type AccessNeed,
} from '../planning/access.ts';
import type { Blocked, DriveVerdict } from '../planning/assessment.ts';
import { blockedReason, wordsAtHand } from '../planning/blocked.ts';
import { defaultCosts } from '../planning/costs.ts';
import type { CorrectionDone, Situation } from '../planning/situation.ts';
import { correctionMinutes } from '../planning/tree-problem.ts';
import { driveVerdict } from '../planning/verdict.ts';
import { generalProof } from '../planning/proof.ts';
import { correctionAccess, correctionAlone } from '../planning/work-costs.ts';
import { CLOSED, type Choice, type Way } from './choices.ts';
import { shortCuts, type DangerId } from './dangers.ts';
import type { Exercise } from './exercise.ts';

/** Minutes that a safety question takes, and what a hint and an unproven job that comes back cost. Judgement. */
export const QUESTION_MINUTES = 1;
export const HINT_COST = 20;
export const COME_BACK_COST = 90;

/** Practice is worked as a mechanic with the tools that one has: every check of a tree can then be chosen. */
export const PRACTICE_ROLE = 'mechanic';
const COSTS = defaultCosts(PRACTICE_ROLE);

/** What a choice brought to light. */
export type Told =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'answer'; readonly answer: 'yes' | 'no' }
  | { readonly kind: 'result'; readonly finding: string; readonly result: string }
  | { readonly kind: 'proof'; readonly gone: boolean }
  | { readonly kind: 'danger'; readonly danger: DangerId };

/** One choice with what it cost and brought. */
export interface Step {
  readonly choice: Choice;
  /** Where things stood before it. */
  readonly before: Situation;
  /** Clock before it, minutes. */
  readonly clock: number;
  /** Minutes of the thing itself, and of opening and closing for it. */
  readonly minutes: number;
  readonly accessMinutes: number;
  /** Everything that it put on the bill, minutes and their money's worth. */
  readonly bill: number;
  readonly told: Told;
}

export interface End {
  readonly how: 'proven' | 'unproven' | 'handed-over' | 'given-up' | 'stopped';
  /** Whether what was corrected last was the fault; of a hand-over, whether nobody could have found it in the list. */
  readonly right: boolean;
  readonly danger?: DangerId;
}

/** An exercise after some choices. */
export interface Session {
  readonly exercise: Exercise;
  readonly steps: readonly Step[];
  /** What is known now; what the planner would be given. */
  readonly situation: Situation;
  /** Mask of open access states. */
  readonly open: number;
  /** Work, minutes. */
  readonly clock: number;
  /** Work, wrong parts, hints, handing over: minutes and their money's worth. */
  readonly bill: number;
  readonly hints: number;
  readonly wrongParts: number;
  /** Cause that was corrected and not proven yet. */
  readonly corrected: string | null;
  readonly end: End | null;
}

/** An exercise at its beginning. */
export function beginSession(exercise: Exercise): Session {
  const { tree, vocabulary, layout } = exercise;
  return {
    exercise,
    steps: [],
    situation: {
      tree,
      vocabulary,
      who: PRACTICE_ROLE,
      layout,
      findings: [],
      stopAnswers: {},
      corrections: [],
      access: [],
      costs: COSTS,
    },
    open: 0,
    clock: 0,
    bill: 0,
    hints: 0,
    wrongParts: 0,
    corrected: null,
    end: null,
  };
}

/** An exercise after a list of choices. Choices that cannot be made there are left out. */
export function foldSession(exercise: Exercise, choices: readonly Choice[]): Session {
  return choices.reduce(choose, beginSession(exercise));
}

/** May the coach move, as far as is known. */
export function practiceVerdict({ situation }: Pick<Session, 'situation'>): DriveVerdict {
  return driveVerdict(situation, beliefModel(situation.tree, situation.layout));
}

const graphs = new WeakMap<object, AccessGraph>();
/** The access states of the vocabulary of an exercise. */
export function graphOf({ vocabulary }: Pick<Exercise, 'vocabulary'>): AccessGraph {
  const graph = graphs.get(vocabulary.access) ?? vocabularyGraph(vocabulary.access);
  graphs.set(vocabulary.access, graph);
  return graph;
}

/** Why a check cannot be made here; null when it can, be it wise, repeated, or unsafe. */
export function practiceBlock(session: Session, check: Check): Blocked | null {
  const { situation } = session;
  const { tree, vocabulary } = situation;
  const blocked = blockedReason(
    check,
    situation,
    situation.findings.filter((finding) => finding.check !== check.id),
    null,
    wordsAtHand(vocabulary, situation),
    new Map(tree.checks.map((each) => [each.id, each])),
  );
  // The coach is all there to be looked at: what is not in the layout is no reason to leave a check out.
  return blocked?.kind === 'layout' && !blocked.known ? null : blocked;
}

/** What a choice needs open, and what can hurt somebody while it is done. */
function workOf(
  session: Session,
  choice: Choice,
): { readonly access: string; readonly hazards: Check['hazards'] } | null {
  const { tree } = session.exercise;
  switch (choice.kind) {
    case 'check.made': {
      const check = tree.checks.find(({ id }) => id === choice.check);
      return check ? { access: check.access, hazards: check.hazards } : null;
    }
    case 'access.changed':
      return { access: choice.to, hazards: [] };
    case 'correction.made': {
      const cause = tree.causes.find(({ id }) => id === choice.cause);
      return cause ? { access: correctionAccess(cause), hazards: [] } : null;
    }
    case 'proof.made':
      return { access: generalProof(tree).access, hazards: [] };
    default:
      return null;
  }
}

/** Ways to set about a choice: properly, and the short cuts that somebody in a hurry could take. */
export function waysFor(session: Session, choice: Choice): readonly Way[] {
  const work = workOf(session, choice);
  if (!work || work.access === CLOSED || choice.kind === 'proof.made') return ['properly'];
  const graph = graphOf(session.exercise);
  return ['properly', ...shortCuts(graph, session.open, needIn(session, work.access), work.hazards)];
}

function needIn({ exercise }: Session, access: string): AccessNeed {
  return needOf(graphOf(exercise), exercise.vocabulary.access, access);
}

/** Whether a choice can be made at all; unsafe ones can. */
export function canChoose(session: Session, choice: Choice): boolean {
  const { exercise, situation, corrected, end } = session;
  const { tree, vocabulary } = exercise;
  if (end) return false;
  switch (choice.kind) {
    case 'question.asked':
      return tree.stopRules.some(({ id }) => id === choice.rule) && situation.stopAnswers[choice.rule] === undefined;
    case 'check.made': {
      const check = tree.checks.find(({ id }) => id === choice.check);
      return (
        check !== undefined && practiceBlock(session, check) === null && waysFor(session, choice).includes(choice.way)
      );
    }
    case 'access.changed':
      return (
        (choice.to === CLOSED || vocabulary.access.some(({ id }) => id === choice.to)) &&
        waysFor(session, choice).includes(choice.way)
      );
    case 'suspicion.stated':
      return (
        (choice.cause === UNLISTED || tree.causes.some(({ id }) => id === choice.cause)) &&
        choice.share >= 0 &&
        choice.share <= 1
      );
    case 'correction.made':
      return (
        corrected === null &&
        tree.causes.some(({ id }) => id === choice.cause) &&
        !situation.corrections.some(({ cause }) => cause === choice.cause) &&
        waysFor(session, choice).includes(choice.way)
      );
    case 'proof.made':
    case 'proof.skipped':
      return corrected !== null;
    case 'hint.taken':
    case 'handed-over':
    case 'given-up':
      return true;
  }
}

/** The session after one more choice; the same session when the choice cannot be made. */
export function choose(session: Session, choice: Choice): Session {
  if (!canChoose(session, choice)) return session;
  const danger = dangerIn(session, choice);
  if (danger !== null)
    return after(session, choice, {
      told: { kind: 'danger', danger },
      change: { end: { how: 'stopped', right: false, danger } },
    });
  const { exercise, situation } = session;
  switch (choice.kind) {
    case 'question.asked': {
      const answer = exercise.answer(choice.rule);
      return after(session, choice, {
        minutes: QUESTION_MINUTES,
        told: { kind: 'answer', answer },
        situation: { stopAnswers: { ...situation.stopAnswers, [choice.rule]: answer } },
      });
    }
    case 'check.made':
      return afterCheck(session, choice);
    case 'access.changed':
      return after(session, choice, { access: choice.to });
    case 'suspicion.stated':
      return after(session, choice, {});
    case 'hint.taken':
      return after(session, choice, { extra: HINT_COST, change: { hints: session.hints + 1 } });
    case 'correction.made': {
      const cause = exercise.tree.causes.find(({ id }) => id === choice.cause)!;
      return after(session, choice, {
        minutes: correctionAlone(graphOf(exercise), cause),
        access: correctionAccess(cause),
        change: { corrected: cause.id },
      });
    }
    case 'proof.made':
      return afterProof(session, choice);
    case 'proof.skipped': {
      const right = session.corrected === exercise.cause;
      return after(session, choice, {
        extra: COME_BACK_COST + (right ? 0 : COSTS.wrongPart + COSTS.handOver),
        access: CLOSED,
        change: { corrected: null, wrongParts: session.wrongParts + Number(!right), end: { how: 'unproven', right } },
      });
    }
    case 'handed-over':
    case 'given-up':
      return afterLeaving(session, choice);
  }
}

function afterCheck(session: Session, choice: Choice & { readonly kind: 'check.made' }): Session {
  const { exercise, situation, steps } = session;
  const check = exercise.tree.checks.find(({ id }) => id === choice.check)!;
  const nth = steps.filter((step) => step.choice.kind === 'check.made' && step.choice.check === check.id).length;
  const finding: Finding = {
    id: `p${steps.length}`,
    check: check.id,
    value: { kind: 'result', result: exercise.look(check.id, nth) },
  };
  return after(session, choice, {
    minutes: check.minutes,
    access: check.access,
    told: { kind: 'result', finding: finding.id, result: exercise.look(check.id, nth) },
    situation: { findings: [...situation.findings.filter((each) => each.check !== check.id), finding] },
  });
}

/** A proof tells the truth: the complaint is gone when what was corrected was the fault. */
function afterProof(session: Session, choice: Choice): Session {
  const { exercise, situation, corrected, wrongParts } = session;
  const { minutes, access } = generalProof(exercise.tree);
  const cause = corrected!;
  const gone = cause === exercise.cause;
  const done: CorrectionDone = { cause, partSeen: 'good', proof: 'still-there', findingsBefore: [] };
  return after(session, choice, {
    minutes,
    access,
    closes: gone,
    extra: gone ? 0 : COSTS.wrongPart,
    told: { kind: 'proof', gone },
    situation: gone ? {} : { corrections: [...situation.corrections, done] },
    change: {
      corrected: null,
      wrongParts: wrongParts + Number(!gone),
      end: gone ? { how: 'proven', right: true } : null,
    },
  });
}

/** Somebody else goes on: they start again, and the fault has still to be corrected where it has not been. */
function afterLeaving(session: Session, choice: Choice & { readonly kind: 'handed-over' | 'given-up' }): Session {
  const { exercise, corrected, wrongParts } = session;
  const truth = exercise.tree.causes.find(({ id }) => id === exercise.cause);
  const done = corrected !== null && corrected === exercise.cause;
  const wrong = corrected !== null && !done;
  const left = done ? 0 : truth ? correctionMinutes(truth) : COSTS.handOver / 2;
  return after(session, choice, {
    extra: COSTS.handOver + left + (wrong ? COSTS.wrongPart : 0),
    access: CLOSED,
    change: {
      corrected: null,
      wrongParts: wrongParts + Number(wrong),
      end: { how: choice.kind, right: corrected === null ? exercise.cause === UNLISTED : done },
    },
  });
}

/** Minutes and open states after going to an access state. */
function goTo(session: Session, access: string): { readonly cost: number; readonly state: number } {
  const graph = graphOf(session.exercise);
  if (access === CLOSED) return { cost: closingCost(graph, session.open), state: 0 };
  return move(graph, session.open, needIn(session, access));
}

interface Effect {
  readonly minutes?: number;
  readonly access?: string;
  /** Everything is closed behind it. */
  readonly closes?: boolean;
  /** On the bill, but no work here. */
  readonly extra?: number;
  readonly told?: Told;
  readonly situation?: Partial<Situation>;
  readonly change?: Partial<Session>;
}

function after(session: Session, choice: Choice, effect: Effect): Session {
  const { minutes = 0, access, extra = 0, told = { kind: 'nothing' } } = effect;
  const graph = graphOf(session.exercise);
  const there = access === undefined ? { cost: 0, state: session.open } : goTo(session, access);
  const accessMinutes = there.cost + (effect.closes ? closingCost(graph, there.state) : 0);
  const open = effect.closes ? 0 : there.state;
  const work = minutes + accessMinutes;
  const step: Step = {
    choice,
    before: session.situation,
    clock: session.clock,
    minutes,
    accessMinutes,
    bill: work + extra,
    told,
  };
  return {
    ...session,
    steps: [...session.steps, step],
    situation: { ...session.situation, ...effect.situation, access: idsOf(graph, open) },
    open,
    clock: session.clock + work,
    bill: session.bill + work + extra,
    ...effect.change,
  };
}

/** What makes a choice unsafe; null when nothing does. */
export function dangerIn(session: Session, choice: Choice): DangerId | null {
  if ('way' in choice && choice.way !== 'properly') return choice.way;
  const work = workOf(session, choice);
  const moves = session.exercise.vocabulary.access.find(({ id }) => id === work?.access)?.moves ?? false;
  if (!moves) return null;
  const { openQuestions, fired, verdict } = practiceVerdict(session);
  if (openQuestions.length > 0) return 'road-unasked';
  if (choice.kind === 'proof.made') {
    // A rule that guards over what has just been corrected may be proven on the road; any other that holds it may not.
    const covers = (id: string): readonly string[] =>
      session.exercise.tree.stopRules.find((rule) => rule.id === id)?.covers ?? [];
    const held = fired.some(
      (each) =>
        each.verdict === 'stay-put' &&
        covers(each.rule).length > 0 &&
        !covers(each.rule).includes(session.corrected ?? ''),
    );
    return held ? 'road-ruled' : null;
  }
  return verdict === 'stay-put' || fired.some((each) => each.verdict !== 'drive-and-book') ? 'road-ruled' : null;
}
