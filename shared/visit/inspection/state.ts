import type { VisitEvent } from '../events.ts';
import type { InspectionItemState, InspectionReading } from './events.ts';

/** One part at one place, as it was found. Items without any complaint count like all others. */
export interface InspectionItem {
  readonly id: string;
  /** `items.ts`, or a word of the person's own. */
  readonly item: string;
  readonly site: string;
  readonly state: InspectionItemState;
  readonly readings: readonly InspectionReading[];
  readonly facts: Readonly<Record<string, string>>;
  readonly note: string;
  readonly photos: readonly string[];
  /** When its state, a figure or a fact was last recorded; a note or a photo is no new look. */
  readonly foundAt: string;
  /** Of the latest entry. */
  readonly at: string;
  readonly by: string;
}

/** How a round of temperatures was taken. */
export interface TemperatureRoundTaken {
  readonly minutes: number;
  readonly sameSpot: boolean;
  readonly emissivity: number;
}

export interface InspectionState {
  /** In the order in which they were first entered. */
  readonly items: readonly InspectionItem[];
  /** Quantity → how its latest round was taken. */
  readonly rounds: Readonly<Record<string, TemperatureRoundTaken>>;
}

/** Nothing looked at. */
export function emptyInspection(): InspectionState {
  return { items: [], rounds: {} };
}

/**
 * The state after an event; an event of another subject changes nothing. An entry made again keeps its place: readings and
 * facts are added by name, photos are added, state is the latest, and a note stays until another is written. What was seen once is never "not opened" again: that would
 * say nothing of it, and an error is taken back.
 */
export function foldInspection(state: InspectionState, event: VisitEvent): InspectionState {
  if (event.kind === 'inspection.round') {
    const { what, minutes, sameSpot, emissivity } = event;
    return { ...state, rounds: { ...state.rounds, [what]: { minutes, sameSpot, emissivity } } };
  }
  if (event.kind !== 'inspection.recorded') return state;
  const before = state.items.find(({ id }) => id === event.entry);
  const { entry: id, item, site, at, by, readings = [], facts = {}, note, photos = [] } = event;
  const again = new Set(readings.map(({ what }) => what));
  const is = event.state === 'not-opened' && before ? before.state : event.state;
  const remark = (note !== undefined || photos.length > 0) && readings.length === 0 && Object.keys(facts).length === 0;
  const now: InspectionItem = {
    id,
    item,
    site,
    state: is,
    readings: [...(before?.readings ?? []).filter(({ what }) => !again.has(what)), ...readings],
    facts: { ...before?.facts, ...facts },
    note: note ?? before?.note ?? '',
    photos: [...new Set([...(before?.photos ?? []), ...photos])],
    foundAt: before && remark && is === before.state ? before.foundAt : at,
    at,
    by,
  };
  return {
    ...state,
    items: before ? state.items.map((each) => (each.id === id ? now : each)) : [...state.items, now],
  };
}

/** Items that belong to the inspection and are not opened yet: ordering warns while there are any. */
export function notOpenedYet({ items }: InspectionState): readonly InspectionItem[] {
  return items.filter(({ state }) => state === 'not-opened');
}
