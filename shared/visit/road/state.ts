import type { VisitEvent } from '../events.ts';
import type { RoadEntry } from './events.ts';

/** One touch with its time. */
export interface RoadNote {
  /** Id of the event, for taking it back. */
  readonly id: string;
  readonly entry: RoadEntry;
  readonly at: string;
  /** Since the drive began, by the clock of the machine; 0 where that clock ran backwards. */
  readonly seconds: number;
}

export interface RoadDrive {
  readonly id: string;
  readonly driver: string;
  readonly writer: string;
  readonly route?: string;
  readonly begunAt: string;
  readonly endedAt?: string;
  /** In the order of the touches. */
  readonly notes: readonly RoadNote[];
  /** Sign → what was found when it was followed up. */
  readonly followed: Readonly<Record<string, string>>;
}

export interface RoadState {
  /** Oldest first. */
  readonly drives: readonly RoadDrive[];
}

/** No drive yet. */
export function emptyRoad(): RoadState {
  return { drives: [] };
}

/** The drive that is under way; null when the coach stands. */
export function openDrive({ drives }: RoadState): RoadDrive | null {
  return drives.find(({ endedAt }) => endedAt === undefined) ?? null;
}

/** Why an event of a road test cannot be used where it stands; null when it can, or belongs to another subject. */
export function refusesRoad(state: RoadState, event: VisitEvent): string | null {
  switch (event.kind) {
    case 'road.begun':
      if (openDrive(state)) return 'A road test is under way already.';
      if (state.drives.some(({ id }) => id === event.drive)) return 'This road test was begun before.';
      return samePerson(event) ? 'One person is named for driving and for writing.' : null;
    case 'road.noted':
    case 'road.ended':
      return openDrive(state)?.id === event.drive ? null : 'The road test that it belongs to is not under way.';
    case 'road.sign-followed':
      return state.drives.some(({ id }) => id === event.drive) ? null : 'The road test that it belongs to is not here.';
    default:
      return null;
  }
}

/** The state after an event; one of another subject, or one that `refusesRoad`, changes nothing. */
export function foldRoad(state: RoadState, event: VisitEvent): RoadState {
  if (refusesRoad(state, event) !== null) return state;
  switch (event.kind) {
    case 'road.begun': {
      const { drive: id, driver, writer, route, at: begunAt } = event;
      const begun = { id, driver, writer, begunAt, notes: [], followed: {}, ...(route === undefined ? {} : { route }) };
      return { drives: [...state.drives, begun] };
    }
    case 'road.noted':
      return changed(state, event.drive, (drive) => {
        const seconds = secondsBetween(drive.begunAt, event.at);
        return { ...drive, notes: [...drive.notes, { id: event.id, entry: event.entry, at: event.at, seconds }] };
      });
    case 'road.ended':
      return changed(state, event.drive, (drive) => ({ ...drive, endedAt: event.at }));
    case 'road.sign-followed':
      return changed(state, event.drive, (drive) => ({
        ...drive,
        followed: { ...drive.followed, [event.sign]: event.found },
      }));
    default:
      return state;
  }
}

/** Whether one person is named for both: the one who drives never writes. */
export function samePerson({ driver, writer }: { readonly driver: string; readonly writer: string }): boolean {
  return driver.trim().toLowerCase() === writer.trim().toLowerCase();
}

function changed(state: RoadState, id: string, change: (drive: RoadDrive) => RoadDrive): RoadState {
  return { drives: state.drives.map((drive) => (drive.id === id ? change(drive) : drive)) };
}

function secondsBetween(from: string, to: string): number {
  const seconds = (Date.parse(to) - Date.parse(from)) / 1000;
  return Number.isFinite(seconds) ? Math.max(0, seconds) : 0;
}
