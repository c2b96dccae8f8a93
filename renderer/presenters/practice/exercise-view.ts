import { answerWords, UNLISTED, type Check } from '../../../shared/knowledge/index.ts';
import { idsOf, move, needOf, reasonFor, inSentence } from '../../../shared/planning/index.ts';
import {
  CLOSED,
  graphOf,
  HINT_COST,
  moveOf,
  practiceBlock,
  practiceVerdict,
  QUESTION_MINUTES,
  rankingIn,
  waysFor,
  type Choice,
  type Session,
  type Way,
} from '../../../shared/practice/index.ts';
import { blockedWords, causeName, minutesWords } from '../presenters.ts';
import { accessName, choiceWords, moveWords, toldWords, wayWords } from './words.ts';

/** Lists of choices, one opened at a time. */
export type Menu = 'main' | 'questions' | 'checks' | 'access' | 'suspect' | 'correct' | 'over' | 'up';

/** A line that can be chosen: another list, or a choice. */
export interface Row {
  readonly id: string;
  readonly words: string;
  readonly about: string;
  /** Why it cannot be chosen; empty when it can. */
  readonly blocked: string;
  readonly menu?: Menu;
  readonly choice?: Choice;
  /** Cause whose certainty is asked next. */
  readonly suspect?: string;
}

export const MENU_WORDS: Readonly<Record<Menu, string>> = {
  main: 'What do you do?',
  questions: 'Which safety question?',
  checks: 'Which check?',
  access: 'How far do you open it up?',
  suspect: 'What do you think it is?',
  correct: 'Which cause do you correct?',
  over: 'Hand this coach over?',
  up: 'Give up and see what it was?',
};

/** How sure somebody can say they are, in 100. */
export const SHARES = [30, 50, 70, 90, 99] as const;

/** What can be chosen from a list of a session. */
export function rowsOf(session: Session, menu: Menu): readonly Row[] {
  switch (menu) {
    case 'main':
      return mainRows(session);
    case 'questions':
      return questionRows(session);
    case 'checks':
      return checkRows(session);
    case 'access':
      return accessRows(session);
    case 'suspect':
      return causeRows(session).map((row) => ({ ...row, suspect: row.id }));
    case 'correct':
      return causeRows(session)
        .filter(({ id }) => id !== UNLISTED)
        .map((row) => ({
          ...row,
          choice: { kind: 'correction.made', cause: row.id, way: 'properly' },
          blocked: session.situation.corrections.some(({ cause }) => cause === row.id) ? 'Corrected already.' : '',
        }));
    case 'over':
      return [plain('over', 'Hand it over', 'somebody else starts again; it ends here', { kind: 'handed-over' })];
    case 'up':
      return [plain('up', 'Give up', 'it costs as much as handing over', { kind: 'given-up' })];
  }
}

function plain(id: string, words: string, about: string, choice: Choice): Row {
  return { id, words, about, blocked: '', choice };
}

function list(menu: Menu, words: string, about: string): Row {
  return { id: menu, words, about, blocked: '', menu };
}

function mainRows(session: Session): readonly Row[] {
  const open = practiceVerdict(session).openQuestions.length;
  const proof: readonly Row[] =
    session.corrected === null
      ? []
      : [
          plain('proof', 'Prove that it is cured', 'by the steps of the tree', { kind: 'proof.made' }),
          plain('skip', 'Call it done', 'without a proof', { kind: 'proof.skipped' }),
        ];
  return [
    ...proof,
    list('questions', 'Ask a safety question', open === 0 ? 'none that matters is open' : `${open} open`),
    list('checks', 'Make a check', 'you find what the coach shows'),
    list('access', 'Open it up, or close it', 'without checking anything yet'),
    list('suspect', 'Say what you suspect', 'costs nothing, and shows how far you can trust yourself'),
    ...(session.corrected === null ? [list('correct', 'Correct a cause', 'then prove it')] : []),
    plain('hint', 'Ask for a hint', `${HINT_COST} min on the bill`, { kind: 'hint.taken' }),
    list('over', 'Hand over', 'to somebody who can look further'),
    list('up', 'Give up', 'and see what it was'),
  ];
}

/** In the order of the file, which is the order in which they are read out. */
function questionRows({ exercise, situation }: Session): readonly Row[] {
  return exercise.tree.stopRules.map(({ id, ask }) => ({
    ...plain(id, ask, `${QUESTION_MINUTES} min`, { kind: 'question.asked', rule: id }),
    blocked: situation.stopAnswers[id] === undefined ? '' : `Asked: ${situation.stopAnswers[id]}.`,
  }));
}

function checkRows(session: Session): readonly Row[] {
  const { tree, vocabulary } = session.exercise;
  return tree.checks.map((check) => {
    const blocked = practiceBlock(session, check);
    const again = session.situation.findings.some((finding) => finding.check === check.id);
    const there = minutesTo(session, check.access);
    const effort = `${check.minutes} min${there > 0 ? `, and ${there} to get there` : ''}`;
    return {
      ...plain(
        check.id,
        check.name,
        `${accessName(vocabulary, check.access)}, ${effort}${again ? madeBefore(check) : ''}`,
        { kind: 'check.made', check: check.id, way: 'properly' },
      ),
      blocked: blocked ? blockedWords(blocked, tree, vocabulary) : '',
    };
  });
}

/** What making a check again would bring. */
function madeBefore({ varies }: Check): string {
  return varies === undefined
    ? '; made before, it shows the same'
    : `; made before, it may show something else: ${varies}`;
}

function minutesTo(session: Session, access: string): number {
  const graph = graphOf(session.exercise);
  return move(graph, session.open, needOf(graph, session.exercise.vocabulary.access, access)).cost;
}

function accessRows(session: Session): readonly Row[] {
  const { vocabulary } = session.exercise;
  const open = session.situation.access;
  const states = vocabulary.access.filter(({ id, openMinutes }) => openMinutes > 0 && !open.includes(id));
  return [
    ...states.map(({ id, name, means }) =>
      plain(id, name, `${minutesTo(session, id)} min: ${means}`, { kind: 'access.changed', to: id, way: 'properly' }),
    ),
    ...(open.length > 0
      ? [
          plain(CLOSED, accessName(vocabulary, CLOSED), 'what is open', {
            kind: 'access.changed',
            to: CLOSED,
            way: 'properly',
          }),
        ]
      : []),
  ];
}

function causeRows({ exercise }: Session): readonly Row[] {
  return [...exercise.tree.causes.map(({ id }) => id), UNLISTED].map((id) => ({
    id,
    words: causeName(exercise.tree, id),
    about: '',
    blocked: '',
  }));
}

/** Ways to set about a choice, in an order that says nothing: by their words. One alone needs no question. */
export function wayRows(session: Session, choice: Choice): readonly Row[] {
  if (!('way' in choice)) return [];
  const ways = waysFor(session, choice);
  if (ways.length < 2) return [];
  const opening = openingFor(session, choice);
  return ways
    .map((way: Way) => ({ id: way, ...wayWords(way, opening), blocked: '', choice: { ...choice, way } }))
    .sort((a, b) => a.words.localeCompare(b.words, 'en'));
}

function openingFor({ exercise, open }: Session, choice: Choice): readonly string[] {
  const { tree, vocabulary } = exercise;
  const access =
    choice.kind === 'check.made'
      ? tree.checks.find(({ id }) => id === choice.check)?.access
      : choice.kind === 'access.changed'
        ? choice.to
        : choice.kind === 'correction.made'
          ? tree.causes.find(({ id }) => id === choice.cause)?.correction.access
          : undefined;
  if (access === undefined || access === CLOSED) return [];
  const graph = graphOf(exercise);
  const need = needOf(graph, vocabulary.access, access);
  return idsOf(graph, need.open & ~open).map((id) => accessName(vocabulary, id));
}

/** What the last choice brought, as a sentence; empty at the beginning. */
export function lastWords(session: Session): string {
  const step = session.steps.at(-1);
  if (!step) return '';
  const { tree, vocabulary } = session.exercise;
  const what = choiceWords(step.choice, tree, vocabulary);
  const told = toldWords(step.choice, step.told, tree);
  const spent = step.minutes + step.accessMinutes;
  const cost = spent > 0 ? ` (${minutesWords(spent)})` : '';
  if (told === '') return `${what}${cost}.`;
  return what.endsWith('?') ? `${what} ${told}.` : `${what}${cost}: ${inSentence(told)}.`;
}

/** What the planner would do now, and why; rests on what has been found alone. */
export function hintWords(session: Session): string {
  const { tree } = session.exercise;
  const open = practiceVerdict(session).openQuestions.length;
  if (open > 0) return `The safety questions come first: ${open} ${open === 1 ? 'is' : 'are'} open.`;
  const ranking = rankingIn(session.situation);
  const next = moveOf(ranking);
  const why = ranking.stop.kind === 'check' ? ` ${reasonFor(ranking, ranking.stop.option, tree)}` : '';
  return `Droplight would now do this: ${inSentence(moveWords(next, tree))}.${why}`;
}

/** Everything that an exercise shows before its end. */
export interface ExerciseView {
  readonly words: string;
  readonly clock: string;
  readonly bill: string;
  readonly access: readonly string[];
  readonly found: readonly { readonly what: string; readonly told: string }[];
  readonly answers: readonly { readonly ask: string; readonly answer: string }[];
  readonly corrected: string;
  readonly hint: string;
  readonly last: string;
  readonly layout: readonly { readonly ask: string; readonly value: string }[];
}

/** What is shown of an exercise; a hint stands until the next choice. */
export function exerciseView(session: Session): ExerciseView {
  const { exercise, situation, clock, bill, steps, corrected } = session;
  const { tree, vocabulary, layout } = exercise;
  const graph = graphOf(exercise);
  const hinted = steps.at(-1)?.choice.kind === 'hint.taken';
  return {
    words: exercise.words,
    clock: minutesWords(clock),
    bill: minutesWords(bill),
    access: idsOf(graph, session.open).map((id) => accessName(vocabulary, id)),
    found: steps.flatMap(({ choice, told }) =>
      told.kind === 'result' || told.kind === 'proof'
        ? [{ what: choiceWords(choice, tree, vocabulary), told: toldWords(choice, told, tree) }]
        : [],
    ),
    answers: tree.stopRules.flatMap(({ id, ask }) => {
      const answer = situation.stopAnswers[id];
      return answer === undefined ? [] : [{ ask, answer: answer === 'yes' ? 'Yes' : 'No' }];
    }),
    corrected: corrected === null ? '' : causeName(tree, corrected),
    hint: hinted ? hintWords(session) : '',
    last: hinted ? '' : lastWords(session),
    layout: vocabulary.layout.flatMap((feature) => {
      const value = answerWords(feature, layout[feature.id]);
      return value === null ? [] : [{ ask: feature.ask, value }];
    }),
  };
}
