/** What was found by one check, as inference sees it. Who, when, notes and photos belong to the visit. */
export type FindingValue =
  /** One of the check's results, seen clearly. */
  | { readonly kind: 'result'; readonly result: string }
  /**
   * A measured number in the check's own unit (converted before it gets here), with the standard uncertainty and the
   * range of the instrument in the same unit.
   */
  | {
      readonly kind: 'reading';
      readonly value: number;
      readonly uncertainty: number;
      readonly range: readonly [number, number];
    }
  /** Looked, cannot say. `leaning` = what it looks like; without it the finding carries no weight. */
  | { readonly kind: 'not-sure'; readonly leaning?: string }
  /** Could not be done; carries no weight and is not asked again while nothing changed. */
  | { readonly kind: 'cant-do' };

export interface Finding {
  /** Unique in the visit; evidence entered twice would count twice. */
  readonly id: string;
  readonly check: string;
  readonly value: FindingValue;
  /** Place on the coach, when the check has sites: "left front". */
  readonly site?: string;
}
