/** Whether something that holds for some coaches holds for this one. */
import { valuesOf, type LayoutAnswer } from './layout-answer.ts';
import type { Cause, When } from './tree.ts';

/** Coach layout as confirmed: feature → answer. A feature not in it is unknown, and nothing is struck out for it. */
export type Layout = Readonly<Record<string, LayoutAnswer>>;

export type Fit =
  | { readonly fits: 'yes' }
  /** A known feature contradicts it. */
  | { readonly fits: 'no'; readonly feature: string }
  /** Nothing contradicts it, but this feature has not been asked. */
  | { readonly fits: 'unknown'; readonly feature: string };

/**
 * Holds `when` against the layout. All features named must fit; within a feature any listed value fits, and of a coach
 * that has several any one is enough.
 *
 * @example fitOf({ engine: ['two-stroke'] }, { engine: 'four-stroke' }) // { fits: 'no', feature: 'engine' }
 */
export function fitOf(when: When, layout: Layout): Fit {
  let unknown: string | undefined;
  for (const [feature, values] of Object.entries(when)) {
    const known = valuesOf(layout[feature]);
    if (known.length === 0) unknown ??= feature;
    else if (!known.some((value) => values.includes(value))) return { fits: 'no', feature };
  }
  return unknown === undefined ? { fits: 'yes' } : { fits: 'unknown', feature: unknown };
}

/**
 * Weight of a cause on a coach built like this: what is rare over all coaches may be frequent on the few that have the part.
 * A feature that is not known changes nothing.
 */
export function weightOn({ weight, weightIf = [] }: Pick<Cause, 'weight' | 'weightIf'>, layout: Layout): number {
  return weightIf.find(({ when }) => fitOf(when, layout).fits === 'yes')?.weight ?? weight;
}
