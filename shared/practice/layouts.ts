import type { Layout } from '../knowledge/layout.ts';
import { valuesOf } from '../knowledge/layout-answer.ts';
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

/** Layouts that can be told apart. */
export function layoutCount(tree: Tree, vocabulary: Vocabulary): number {
  return featuresOf(tree, vocabulary).reduce((count, { values }) => count * values.length, 1);
}

/**
 * Number of a layout; the usual one is 0. What the layout does not say counts as usual, and of several values the first:
 * a drawn exercise has one of each.
 */
export function numberOfLayout(tree: Tree, vocabulary: Vocabulary, layout: Layout): number {
  return featuresOf(tree, vocabulary).reduce((number, feature) => {
    const place = (value: LayoutValue): number => feature.values.findIndex((each) => each.value === value);
    const usual = place(usualValue(tree, feature));
    const own = Math.max(0, place(valuesOf(layout[feature.id])[0] ?? usualValue(tree, feature)));
    const count = feature.values.length;
    return number * count + ((own - usual + count) % count);
  }, 0);
}

/** The layout of a number; null when there is none with it. */
export function layoutOfNumber(tree: Tree, vocabulary: Vocabulary, number: number): Layout | null {
  if (!Number.isInteger(number) || number < 0 || number >= layoutCount(tree, vocabulary)) return null;
  const layout: Record<string, LayoutValue> = {};
  let left = number;
  for (const feature of [...featuresOf(tree, vocabulary)].reverse()) {
    const count = feature.values.length;
    const usual = feature.values.findIndex(({ value }) => value === usualValue(tree, feature));
    layout[feature.id] = feature.values[(usual + (left % count)) % count]!.value;
    left = Math.floor(left / count);
  }
  return layout;
}
