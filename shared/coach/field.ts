import type { LayoutFeature, LayoutValue } from '../knowledge/index.ts';
import type { CoachMeasure } from './measures.ts';

/** What takes a field of the profile. A field without a use is not asked for. */
export type FieldUse =
  /** A figure or choice of the measuring bench, which starts from it. */
  | { readonly kind: 'bench'; readonly page: string; readonly entry: string }
  /** Answers this question about the layout in every new visit. */
  | { readonly kind: 'layout'; readonly feature: string }
  /** A person needs it in this check: a shared check of the vocabulary, or `tree/check`. */
  | { readonly kind: 'check'; readonly check: string }
  /** Shown or worked out by a page of the program, or needed by a person, in words. */
  | { readonly kind: 'said'; readonly words: string };

interface FieldBase {
  readonly id: string;
  readonly group: FieldGroup;
  readonly words: string;
  readonly uses: readonly FieldUse[];
  /** Where a person finds it. */
  readonly where: string;
}

export type CoachField = FieldBase &
  (
    | {
        readonly kind: 'figure';
        readonly measure: CoachMeasure;
        /** Plausible span in the first unit of the measure, ends included. Judgement: wide enough for any coach. */
        readonly range: readonly [number, number];
        readonly whole?: boolean;
        /** Several readings over time mean something: each is kept with its day. */
        readonly dated?: boolean;
      }
    | {
        readonly kind: 'choice';
        readonly values: readonly { readonly value: LayoutValue; readonly label: string }[];
        /** Values that one coach may have at once. */
        readonly together?: readonly LayoutValue[];
      }
    | { readonly kind: 'text'; readonly most: number; readonly example: string }
    /** Calendar day, YYYY-MM-DD. */
    | { readonly kind: 'day' }
    /** Week and year of making as moulded into a tyre: four digits. */
    | { readonly kind: 'tyre-week' }
  );

export const FIELD_GROUPS = ['layout', 'axles', 'drive', 'air', 'fluids', 'service', 'book'] as const;
export type FieldGroup = (typeof FIELD_GROUPS)[number];

/** Prefix of the fields that are questions of the vocabulary's layout. */
export const LAYOUT_PREFIX = 'layout.';

/** The questions of the vocabulary as fields of the profile. */
export function layoutFields(features: readonly LayoutFeature[]): readonly CoachField[] {
  return features.map(({ id, ask, values, together }) => ({
    id: `${LAYOUT_PREFIX}${id}`,
    group: 'layout',
    words: ask,
    kind: 'choice',
    values,
    ...(together === undefined ? {} : { together }),
    where: 'As it was built: handbook, plates, or a look underneath with the coach chocked and not raised.',
    uses: [
      { kind: 'layout', feature: id },
      ...(id === 'engine' ? [{ kind: 'bench', page: 'orders', entry: 'orders.strokes' } as const] : []),
    ],
  }));
}
