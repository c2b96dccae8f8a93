/** An item of the inspection as the plan reads it: the owner of that subject is `shared/visit/inspection`. */
export interface InspectedItem {
  readonly id: string;
  /** Kind of item: "hub", "drum", "lining" … */
  readonly item: string;
  /** Place in words: "left front". */
  readonly site: string;
  readonly state: 'not-opened' | 'good' | 'watch' | 'bad';
  readonly readings: readonly {
    readonly what: string;
    readonly reading: { readonly value: number; readonly unit: string };
    readonly limit?: string;
  }[];
  readonly note?: string;
  readonly photos: readonly string[];
  /** When it was last looked at; left out where every entry is a look. */
  readonly foundAt?: string;
  readonly at: string;
  readonly by: string;
}
