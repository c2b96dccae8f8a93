/** What is answered to a question about the layout: one value, or several that the vocabulary lets a coach have at once. */
import type { LayoutValue } from './tree.ts';
import type { LayoutFeature } from './vocabulary.ts';

/** What can be answered. */
type Choice = Pick<LayoutFeature, 'values' | 'together'>;

/** A list names two values or more, in the order of the vocabulary. */
export type LayoutAnswer = LayoutValue | readonly LayoutValue[];

/** The values that an answer names; none for what is not known. */
export function valuesOf(answer: LayoutAnswer | undefined): readonly LayoutValue[] {
  if (answer === undefined) return [];
  return typeof answer === 'object' ? answer : [answer];
}

/** Values as an answer, in the order of the vocabulary; null when none of them is one. */
export function answerOf({ values }: Choice, named: readonly LayoutValue[]): LayoutAnswer | null {
  const known = values.flatMap(({ value }) => (named.includes(value) ? [value] : []));
  return known.length > 1 ? known : (known[0] ?? null);
}

/** Whether the feature can be answered like this: with one of its values, or with several of those that go together. */
export function isAnswerTo({ values, together = [] }: Choice, answer: LayoutAnswer): boolean {
  const named = valuesOf(answer);
  if (named.length === 0 || new Set(named).size < named.length) return false;
  const allowed = named.length > 1 ? together : values.map(({ value }) => value);
  return named.every((value) => allowed.includes(value));
}

/** Two answers that name the same. */
export function isSameAnswer(a: LayoutAnswer | undefined, b: LayoutAnswer | undefined): boolean {
  const [of, to] = [valuesOf(a), valuesOf(b)];
  return of.length === to.length && of.every((value) => to.includes(value));
}

/** An answer after a value was ticked or unticked; what cannot be there beside the value goes. Null: nothing is left. */
export function ticked(
  feature: Choice,
  answer: LayoutAnswer | undefined,
  value: LayoutValue,
  on: boolean,
): LayoutAnswer | null {
  const others = valuesOf(answer).filter((each) => each !== value);
  if (!on) return answerOf(feature, others);
  return answerOf(feature, [value, ...others.filter((each) => isAnswerTo(feature, [value, each]))]);
}

/** An answer in the words of the vocabulary, "and" between several; null when it is no answer to the feature. */
export function answerWords(feature: Choice, answer: LayoutAnswer | undefined): string | null {
  if (answer === undefined || !isAnswerTo(feature, answer)) return null;
  const named = valuesOf(answer);
  return feature.values.flatMap(({ value, label }) => (named.includes(value) ? [label] : [])).join(' and ');
}
