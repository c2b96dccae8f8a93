/** Whether something that holds for some coaches holds for this one. */
import type { LayoutValue, When } from './tree.ts';

/** Coach layout as confirmed: feature → value. A feature not in it is unknown, and nothing is struck out for it. */
export type Layout = Readonly<Record<string, LayoutValue>>;

export type Fit =
  | { readonly fits: 'yes' }
  /** A known feature contradicts it. */
  | { readonly fits: 'no'; readonly feature: string }
  /** Nothing contradicts it, but this feature has not been asked. */
  | { readonly fits: 'unknown'; readonly feature: string };

/**
 * Holds `when` against the layout. All features named must fit; within a feature any listed value fits.
 *
 * @example fitOf({ engine: ['two-stroke'] }, { engine: 'four-stroke' }) // { fits: 'no', feature: 'engine' }
 */
export function fitOf(when: When, layout: Layout): Fit {
  let unknown: string | undefined;
  for (const [feature, values] of Object.entries(when)) {
    const known = layout[feature];
    if (known === undefined) unknown ??= feature;
    else if (!values.includes(known)) return { fits: 'no', feature };
  }
  return unknown === undefined ? { fits: 'yes' } : { fits: 'unknown', feature: unknown };
}
