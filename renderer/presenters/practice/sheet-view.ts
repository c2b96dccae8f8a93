import { EXERCISE_FORMAT, type Exercise } from '../../../shared/practice/index.ts';
import { answerWords, type Tree } from '../../../shared/knowledge/index.ts';
import { sentence } from '../presenters.ts';
import { accessName, hiddenName } from './words.ts';

/** An exercise on paper: what is handed out, and what lies under the fold. */
export interface YardSheetView {
  readonly title: string;
  readonly words: string;
  readonly layout: readonly { readonly ask: string; readonly value: string }[];
  readonly questions: readonly { readonly n: number; readonly ask: string; readonly answer: string }[];
  readonly checks: readonly {
    readonly n: number;
    readonly name: string;
    readonly access: string;
    readonly minutes: number;
    readonly result: string;
  }[];
  readonly hidden: string;
}

/** Lays an exercise out for paper. The fault and the results belong under the fold alone. */
export function yardSheet(exercise: Exercise, title: string): YardSheetView {
  const { tree, vocabulary, layout } = exercise;
  return {
    title,
    words: exercise.words,
    layout: vocabulary.layout.flatMap((feature) => {
      const value = answerWords(feature, layout[feature.id]);
      return value === null ? [] : [{ ask: feature.ask, value }];
    }),
    questions: tree.stopRules.map(({ id, ask }, i) => ({
      n: i + 1,
      ask,
      answer: exercise.answer(id) === 'yes' ? 'Yes' : 'No',
    })),
    checks: tree.checks.map((check, i) => ({
      n: i + 1,
      name: check.name,
      access: accessName(vocabulary, check.access),
      minutes: check.minutes,
      result: sentence(check.results.find(({ id }) => id === exercise.look(check.id, 0))?.label ?? ''),
    })),
    hidden: hiddenName(tree, exercise.cause),
  };
}

/** A file to begin with: every key, with what it is for. */
export function exerciseTemplate(tree: Tree): string {
  const [cause, second] = tree.causes;
  const [check] = tree.checks;
  return `format: ${EXERCISE_FORMAT}
title: Give it a title
complaint: ${tree.id}
# What you say to whoever opens it.
note: Take your time.
# How the owner says it; left out, one of the tree's own phrases is drawn.
words: ${JSON.stringify(tree.phrases[0] ?? '')}
# The hidden cause. Or "causes: [${[cause?.id, second?.id].filter(Boolean).join(', ')}]", and one of them is drawn.
cause: ${cause?.id ?? 'unlisted'}
# How the coach is built, where it is not the usual one: layout: { feature: value }
# Results that are to come out so; all others are drawn from the tree.
results:
  ${check?.id ?? ''}: ${check?.results[0]?.id ?? ''}
# What counts as passed. An unsafe choice never does.
passed:
  found: true
  proven: true
  wrongParts: 0
`;
}
