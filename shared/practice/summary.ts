import type { ExerciseSummary } from './log.ts';
import type { Reckoning } from './reckoning.ts';

/** An exercise that has ended, in the figures that are kept of it; null while it goes on. */
export function summaryOf({ session, planner, score, forecasts }: Reckoning): ExerciseSummary | null {
  const { end, exercise, clock, bill, wrongParts, hints, steps } = session;
  if (!end) return null;
  return {
    cause: exercise.cause,
    how: end.how,
    right: end.right,
    score,
    clock,
    bill,
    plannerBill: planner.bill,
    plannerClock: planner.clock,
    wrongParts,
    hints,
    checks: steps.flatMap(({ choice }) => (choice.kind === 'check.made' ? [choice.check] : [])),
    forecasts,
  };
}
