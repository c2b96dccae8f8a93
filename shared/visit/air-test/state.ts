import type { VisitEvent } from '../events.ts';
import type { Reading } from '../reading.ts';
import type { AirAnswer, AirTestSetup, WalkState } from './events.ts';

/** What was recorded of one step, latest. */
export interface AirRecord {
  readonly answer?: AirAnswer;
  readonly readings: Readonly<Record<string, Reading>>;
  readonly note?: string;
  readonly at: string;
  readonly by: string;
}

export interface WalkRecord {
  readonly state: WalkState;
  readonly note?: string;
  readonly at: string;
  readonly by: string;
}

/** The in-cab air test and the walk-round of a visit. */
export interface AirTestState {
  /** Null until the test was begun. */
  readonly setup: AirTestSetup | null;
  readonly begunAt?: string;
  /** Step id → record. */
  readonly records: Readonly<Record<string, AirRecord>>;
  /** The watch that runs: which step, and the time of the event that started it. */
  readonly timer: { readonly step: string; readonly startedAt: string } | null;
  /** Item id → record. */
  readonly walk: Readonly<Record<string, WalkRecord>>;
}

/** Nothing done yet. */
export function emptyAirTest(): AirTestState {
  return { setup: null, records: {}, timer: null, walk: {} };
}

/**
 * The state after an event; an event of another subject changes nothing. Beginning again starts with an empty sheet: what
 * was read belongs to the setup it was read under. The walk-round stays.
 */
export function foldAirTest(state: AirTestState, event: VisitEvent): AirTestState {
  switch (event.kind) {
    case 'air-test.begun':
      return { ...state, setup: event.setup, begunAt: event.at, records: {}, timer: null };
    case 'air-test.timer-started':
      return { ...state, timer: { step: event.step, startedAt: event.at } };
    case 'air-test.recorded': {
      const { at, by, answer, readings = {}, note } = event;
      const record: AirRecord = {
        readings,
        at,
        by,
        ...(answer === undefined ? {} : { answer }),
        ...(note === undefined ? {} : { note }),
      };
      return {
        ...state,
        records: { ...state.records, [event.step]: record },
        timer: state.timer?.step === event.step ? null : state.timer,
      };
    }
    case 'walk-round.noted': {
      const { at, by, note } = event;
      const record: WalkRecord = { state: event.state, at, by, ...(note === undefined ? {} : { note }) };
      return { ...state, walk: { ...state.walk, [event.item]: record } };
    }
    default:
      return state;
  }
}
