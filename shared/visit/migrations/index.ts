/** One step from a version of the event log to the next. */
export interface Migration {
  /** Version it starts from; it leads to `from + 1`. */
  readonly from: number;
  /** What changed, one line. */
  readonly what: string;
  apply(record: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>>;
}

/** Every step since version 1, in order without gaps. */
export const MIGRATIONS: readonly Migration[] = [];

/**
 * A record brought to the newest version by the steps that it still lacks; anything that is no record is given back as
 * it is.
 *
 * @param steps  for tests; the shipped list otherwise.
 */
export function migrate(record: unknown, steps: readonly Migration[] = MIGRATIONS): unknown {
  if (typeof record !== 'object' || record === null || !('v' in record) || typeof record.v !== 'number') return record;
  let at: Readonly<Record<string, unknown>> = { ...record };
  for (const step of steps) if (at['v'] === step.from) at = { ...step.apply(at), v: step.from + 1 };
  return at;
}
