/** What the window and its worker say to each other while it looks many steps ahead. */
import { lookAhead, type DriveVerdict, type LookedAhead, type Situation } from '../../shared/planning/index.ts';

export interface AheadRequest {
  readonly kind: 'ahead';
  readonly situation: Situation;
  readonly verdict: DriveVerdict;
}

/** Null where nothing is looked ahead; with the reason when something went wrong. */
export interface AheadNews {
  readonly looked: LookedAhead | null;
  readonly fault?: string;
}

/** Looks ahead and tells what came of it; what goes wrong is told too: then no figure is shown. */
export function lookFrom({ situation, verdict }: AheadRequest): AheadNews {
  try {
    return { looked: lookAhead(situation, verdict) };
  } catch (problem) {
    return { looked: null, fault: problem instanceof Error ? problem.message : String(problem) };
  }
}
