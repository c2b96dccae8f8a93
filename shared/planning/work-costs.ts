import type { Cause, Tree } from '../knowledge/tree.ts';
import type { AccessGraph } from './access.ts';
import { chainMinutes, correctionMinutes, LEAST_CORRECTION } from './tree-problem.ts';

/** Minutes of a correction itself: its mean hours without the opening and closing that the access adds again. */
export function correctionAlone(graph: AccessGraph, cause: Cause): number {
  return Math.max(LEAST_CORRECTION, correctionMinutes(cause) - chainMinutes(graph, correctionAccess(cause)));
}

/** Access state in which a cause is corrected. */
export function correctionAccess(cause: Cause): string {
  return cause.correction.access ?? 'parked';
}

/** The proof that follows any correction of a tree: its minutes, and the access that it needs. */
export function generalProof(tree: Tree): { readonly minutes: number; readonly access: string } {
  const proof = tree.proofs.find(({ after }) => after === '*') ?? tree.proofs[0];
  return { minutes: proof?.minutes ?? 0, access: proof?.access ?? 'parked' };
}
