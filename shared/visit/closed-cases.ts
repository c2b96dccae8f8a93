import type { ClosedCase } from '../inference/index.ts';
import type { VisitState } from './state.ts';

/**
 * The complaints of a visit that were closed as cured, as cases to learn from. Whether a case proves anything is for
 * `verifiedCause` to say. Invented visits teach nothing.
 *
 * @param visitId  makes the ids of the cases unique over all visits.
 */
export function closedCases(visitId: string, visit: VisitState): readonly ClosedCase[] {
  if (visit.demo) return [];
  return visit.complaints
    .filter(({ phase, closedHow }) => phase === 'closed' && closedHow === 'cured')
    .map(({ id, tree, corrections }) => ({
      id: caseId(visitId, id),
      complaint: tree,
      layout: visit.layout,
      corrections: corrections.map(({ cause, partSeen, proof }) => ({ cause, partSeen, proof })),
    }));
}

/** Id of a complaint as a case. */
export function caseId(visitId: string, complaint: string): string {
  return `${visitId}/${complaint}`;
}
