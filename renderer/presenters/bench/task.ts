import type { Check } from '../../../shared/knowledge/index.ts';

/** The check of a walk that the bench measures for. */
export interface BenchTask {
  readonly check: string;
  readonly name: string;
  /** What the check says about the brake pedal; null where it says nothing. */
  readonly brake: 'held' | 'released' | null;
}

/** What the bench can measure for a check; null where it has no calculation for its reading. */
export function benchTask(check: Check): BenchTask | null {
  if (check.measure?.unit !== 'psi/min') return null;
  const { of } = check.measure;
  return {
    check: check.id,
    name: check.name,
    brake: of.includes('held') ? 'held' : of.includes('released') ? 'released' : null,
  };
}
