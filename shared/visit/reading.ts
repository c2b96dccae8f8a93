/** One raw observation, in the words and with the unit in which it was written down. */
export interface Observation {
  readonly what: string;
  readonly said: string;
}

/** What a figure was worked out from. */
export interface Worked {
  /** Id of the calculation, as the check names it. */
  readonly calculation: string;
  readonly observations: readonly Observation[];
  /** One standard uncertainty of the figure, in its unit; takes the place of the instrument's. */
  readonly uncertainty: number;
}

/** A figure as somebody read it. */
export interface Reading {
  /** As typed, in the unit typed. */
  readonly value: number;
  /** Unit id of `shared/units`. */
  readonly unit: string;
  /** Instrument id when it is not the one the check names. */
  readonly instrument?: string;
  /** Present where it was worked out; absent = read as it is. */
  readonly worked?: Worked;
}
