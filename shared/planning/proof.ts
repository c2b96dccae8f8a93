import type { Proof, Tree } from '../knowledge/tree.ts';
import type { Costs } from './situation.ts';

/** The proof that follows any correction of a tree. */
export type GeneralProof = Pick<Proof, 'minutes' | 'access' | 'sensitivity' | 'specificity'>;

/** The proof that follows any correction of a tree: its minutes, the access that it needs, and how far it can be trusted. */
export function generalProof(tree: Tree): GeneralProof {
  return (
    tree.proofs.find(({ after }) => after === '*') ??
    tree.proofs[0] ?? { minutes: 0, access: 'parked', sensitivity: 1, specificity: 1 }
  );
}

/**
 * What a proof that does not tell the truth costs on average. A fault that it misses comes back on the road; a cure that it
 * does not see is proven once more before anything else is touched.
 *
 * @returns minutes, or their money's worth: `missed` when the fault is still there, `again` when it is gone.
 */
export function proofRisk(
  { minutes, sensitivity, specificity }: GeneralProof,
  costs: Costs,
): { readonly missed: number; readonly again: number } {
  return { missed: (1 - sensitivity) * costs.comeBack, again: (1 - specificity) * minutes };
}
