/** An entry of a log as far as merging looks at it. */
interface Entry {
  readonly id: string;
}

/** What a second log of the same visit adds to a first one. */
export interface Merged<E extends Entry> {
  /** Entries of the second that the first lacks, each once, in the order of their ids. */
  readonly missing: readonly E[];
  /** Ids under which the two say different things. */
  readonly conflicts: readonly string[];
}

/**
 * Merges by the id of the entries: the order in which files are read does not matter, and an entry counts once.
 *
 * @param here    entries that are there already.
 * @param coming  entries of whatever comes; may hold the same entry several times.
 */
export function mergeLogs<E extends Entry>(here: readonly Entry[], coming: readonly E[]): Merged<E> {
  const known = new Map(here.map((entry) => [entry.id, sameText(entry)]));
  const missing: E[] = [];
  const conflicts = new Set<string>();
  for (const entry of coming) {
    const text = sameText(entry);
    const there = known.get(entry.id);
    if (there === undefined) {
      known.set(entry.id, text);
      missing.push(entry);
    } else if (there !== text) conflicts.add(entry.id);
  }
  return { missing: missing.sort((a, b) => (a.id < b.id ? -1 : 1)), conflicts: [...conflicts].sort() };
}

/** The same text for the same content, in whatever order its keys were written. */
function sameText(data: unknown): string {
  return JSON.stringify(data, (_, value: unknown) =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
      : value,
  );
}
