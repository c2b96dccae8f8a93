import type { LearnedOdds } from '../inference/index.ts';
import type { UnitSystem } from '../units/index.ts';
import type { PinnedTree, VisitEvent, VisitState } from '../visit/index.ts';
import type { InspectedItem } from '../visit/plan/inspected.ts';
import type { Plan } from '../visit/plan/plan.ts';
import type { Reader } from './document.ts';

/** One thing that was seen or read outside of the complaints: a step of the air test, an entry of the road test. */
export interface OtherFinding {
  /** Id that its event carries, or of the event itself. */
  readonly id: string;
  readonly what: string;
  readonly result: string;
  readonly reading?: { readonly value: number; readonly unit: string };
  /** As printed, with its source and how it was read. */
  readonly heldAgainst?: string;
  readonly note?: string;
  readonly photos?: readonly string[];
  readonly at: string;
  readonly by: string;
}

/** What was done to the coach as a whole, under its own heading. */
export interface OtherWork {
  readonly id: 'arrival' | 'air-test' | 'road-test';
  readonly findings: readonly OtherFinding[];
}

/** An item of the inspection, with what else was answered about it: question → answer, both in words. */
export type InspectedPart = InspectedItem & { readonly facts?: Readonly<Record<string, string>> };

/** Everything that a report is made from. */
export interface HandOverInput {
  readonly visit: VisitState;
  /** The log that `visit` was made from. */
  readonly events: readonly VisitEvent[];
  /** By content hash. */
  readonly trees: ReadonlyMap<string, PinnedTree>;
  readonly reader: Reader;
  readonly units: UnitSystem;
  /** How this reader's clock shows the time of an event. */
  readonly clock: { readonly day: (at: string) => string; readonly time: (at: string) => string };
  /** Starting odds as proven cures have moved them, by complaint; absent while that is switched off. */
  readonly learned?: ReadonlyMap<string, LearnedOdds>;
  readonly plan?: Plan;
  readonly inspection?: readonly InspectedPart[];
  readonly others?: readonly OtherWork[];
}
