/** What somebody who practises can choose. An exercise is a list of these; everything else follows from it. */
import type { DangerId } from './dangers.ts';

/** How something is set about: as its cautions ask, or by a short cut that nobody should take. */
export type Way = 'properly' | DangerId;

export type Choice =
  | { readonly kind: 'question.asked'; readonly rule: string }
  | { readonly kind: 'check.made'; readonly check: string; readonly way: Way }
  /** Opens up to an access state; `closed` closes everything. */
  | { readonly kind: 'access.changed'; readonly to: string; readonly way: Way }
  /** "I think it is this, and would be right so many times in 100." */
  | { readonly kind: 'suspicion.stated'; readonly cause: string; readonly share: number }
  | { readonly kind: 'hint.taken' }
  | { readonly kind: 'correction.made'; readonly cause: string; readonly way: Way }
  | { readonly kind: 'proof.made' }
  /** The job is called done without looking whether it is. */
  | { readonly kind: 'proof.skipped' }
  | { readonly kind: 'handed-over' }
  | { readonly kind: 'given-up' };

/** Everything closed, in `access.changed`. */
export const CLOSED = 'closed';
