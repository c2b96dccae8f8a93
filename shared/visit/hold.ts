import type { Hold } from '../planning/situation.ts';
import { airTestVerdict } from './air-test/verdict.ts';
import { inspectionVerdict } from './inspection/verdict.ts';
import { roadVerdict } from './road/may-drive.ts';
import { strictestFirst } from './sheet-hold.ts';
import type { VisitState } from './state.ts';

/**
 * The strictest of what the sheets of a visit hold the coach to; null when none does. Every complaint's verdict is at
 * least so strict (PLA-37).
 */
export function holdOf({
  airTest,
  road,
  inspection,
  plan,
}: Pick<VisitState, 'airTest' | 'road' | 'inspection' | 'plan'>): Hold | null {
  const holds = [airTestVerdict(airTest), roadVerdict(road), inspectionVerdict(inspection, plan)].filter(
    (each) => each !== null,
  );
  return strictestFirst(holds)[0] ?? null;
}
