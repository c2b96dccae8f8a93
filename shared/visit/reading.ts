/** A figure as somebody read it. */
export interface Reading {
  /** As typed, in the unit typed. */
  readonly value: number;
  /** Unit id of `shared/units`. */
  readonly unit: string;
  /** Instrument id when it is not the one the check names. */
  readonly instrument?: string;
}
