import type { Session } from './session.ts';

/**
 * 0 to 100: the planner's bill for the same fault over one's own, at most 100. An unsafe choice is 0, whatever else was done:
 * nothing makes up for it.
 */
export function scoreOf(session: Session, best: Session): number {
  if (!session.end || session.end.how === 'stopped') return 0;
  return scoreOfCost(session.bill, best.bill);
}

/** The same for two bills, minutes or their money's worth. Never rises with one's own. */
export function scoreOfCost(own: number, best: number): number {
  if (own <= best) return 100;
  return Math.round((100 * best) / own);
}
