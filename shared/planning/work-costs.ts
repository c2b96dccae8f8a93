import type { Cause } from '../knowledge/tree.ts';
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
