/** A figure that was read in an earlier visit. */
export interface PastReading {
  readonly finding: string;
  /** Tree of the complaint, or the sheet that read it (`sheet-readings.ts`). */
  readonly tree: string;
  readonly check: string;
  readonly site: string | null;
  readonly value: number;
  readonly unit: string;
  readonly at: string;
}
