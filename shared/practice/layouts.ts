import type { Layout } from '../knowledge/layout.ts';
import { answerOf, isSameAnswer, valuesOf, type LayoutAnswer } from '../knowledge/layout-answer.ts';
import type { LayoutValue, Tree } from '../knowledge/tree.ts';
import type { LayoutFeature, Vocabulary } from '../knowledge/vocabulary.ts';

/** Features of a coach on which something of the tree hangs, in the order of the vocabulary. */
export function featuresOf(tree: Tree, vocabulary: Vocabulary): readonly LayoutFeature[] {
  const used = new Set([tree, ...tree.causes, ...tree.checks].flatMap(({ when }) => Object.keys(when)));
  return vocabulary.layout.filter(({ id }) => used.has(id));
}

/** A usual coach on which the complaint can be: what the tree supposes, else what is usual, else the first value listed. */
export function usualLayout(tree: Tree, vocabulary: Vocabulary): Layout {
  return Object.fromEntries(featuresOf(tree, vocabulary).map((feature) => [feature.id, usualValue(tree, feature)]));
}

function usualValue(tree: Tree, feature: LayoutFeature): LayoutValue {
  return tree.when[feature.id]?.[0] ?? feature.usual ?? feature.values[0]!.value;
}

/**
 * Everything that a feature can be answered with, the usual value first: its values, then the sets of those that go
 * together, each in the order of the vocabulary.
 */
function answersOf(tree: Tree, feature: LayoutFeature): readonly LayoutAnswer[] {
  const { values, together = [] } = feature;
  const usual = values.findIndex(({ value }) => value === usualValue(tree, feature));
  const single = values.map((_, i) => values[(usual + i) % values.length]!.value);
  return [...single, ...setsOf(values.flatMap(({ value }) => (together.includes(value) ? [value] : [])))];
}

/** All sets of two or more. */
function setsOf(values: readonly LayoutValue[]): readonly (readonly LayoutValue[])[] {
  return Array.from({ length: 2 ** values.length }, (_, set) => values.filter((_, i) => set & (1 << i))).filter(
    ({ length }) => length > 1,
  );
}

/** Layouts of one value a feature. */
export function layoutCount(tree: Tree, vocabulary: Vocabulary): number {
  return featuresOf(tree, vocabulary).reduce((count, { values }) => count * values.length, 1);
}

/**
 * Number of a layout; the usual one is 0. What the layout does not say counts as usual. Those of one value a feature come
 * first, counted as ever, so that codes made before there were others still name the same coach.
 */
export function numberOfLayout(tree: Tree, vocabulary: Vocabulary, layout: Layout): number {
  const places = featuresOf(tree, vocabulary).map((feature) => {
    const answers = answersOf(tree, feature);
    const own = answerOf(feature, valuesOf(layout[feature.id]));
    const at = answers.findIndex((each) => own !== null && isSameAnswer(each, own));
    return { at: Math.max(0, at), single: feature.values.length, all: answers.length };
  });
  return places.every(({ at, single }) => at < single)
    ? places.reduce((number, { at, single }) => number * single + at, 0)
    : layoutCount(tree, vocabulary) + places.reduce((number, { at, all }) => number * all + at, 0);
}

/** The layout of a number; null when there is none with it. */
export function layoutOfNumber(tree: Tree, vocabulary: Vocabulary, number: number): Layout | null {
  if (!Number.isSafeInteger(number) || number < 0) return null;
  const count = layoutCount(tree, vocabulary);
  const several = number >= count;
  const layout: Record<string, LayoutAnswer> = {};
  let left = several ? number - count : number;
  let sets = 0;
  for (const feature of [...featuresOf(tree, vocabulary)].reverse()) {
    const answers = answersOf(tree, feature);
    const radix = several ? answers.length : feature.values.length;
    const at = left % radix;
    if (at >= feature.values.length) sets += 1;
    layout[feature.id] = answers[at]!;
    left = Math.floor(left / radix);
  }
  // A layout of single values has one number alone, the lower one.
  return left > 0 || (several && sets === 0) ? null : layout;
}
