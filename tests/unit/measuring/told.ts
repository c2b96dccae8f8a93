import type { Outcome } from '../../../shared/measuring/index.ts';

/** The figures of an outcome; a refusal fails the test with its own words. */
export function told<T, R extends string>(outcome: Outcome<T, R>): { readonly ok: true } & T {
  if (!outcome.ok) throw new Error(`Refused, ${outcome.reason}: ${outcome.message}`);
  return outcome;
}

/** The reason of a refusal; "answered" when there was none. */
export function reasonOf<T, R extends string>(outcome: Outcome<T, R>): R | 'answered' {
  return outcome.ok ? 'answered' : outcome.reason;
}
