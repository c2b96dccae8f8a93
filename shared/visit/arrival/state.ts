import type { EventHead } from '../events.ts';
import type { ArrivalEventBody } from './events.ts';

type Told<K extends ArrivalEventBody['kind']> = EventHead & Extract<ArrivalEventBody, { kind: K }>;

/** What was told and seen at the arrival. Each entry is its event, so that it can be taken back by its id. */
export interface ArrivalState {
  /** Profile of the coach, when the visit is linked to one. */
  readonly coachId: string | null;
  readonly work: readonly Told<'arrival.work-told'>[];
  readonly trip: Told<'arrival.trip-told'> | null;
  readonly spots: readonly Told<'drip.spot-seen'>[];
  /** The sheet was read and nothing lay on it; a spot seen later takes that away. */
  readonly nothingDripped: boolean;
}

export type WorkTold = ArrivalState['work'][number];
export type SpotSeen = ArrivalState['spots'][number];

/** A visit of which nothing was told yet. */
export function emptyArrival(): ArrivalState {
  return { coachId: null, work: [], trip: null, spots: [], nothingDripped: false };
}

/** What an event of the visit adds; an event of another subject, or a second one of the same thing, changes nothing. */
export function foldArrival(
  state: ArrivalState,
  event: EventHead & ({ readonly kind: string } | ArrivalEventBody),
): ArrivalState {
  if (!isArrival(event)) return state;
  switch (event.kind) {
    case 'coach.linked':
      return { ...state, coachId: event.coachId };
    case 'arrival.work-told':
      return state.work.some(({ work }) => work === event.work) ? state : { ...state, work: [...state.work, event] };
    case 'arrival.trip-told':
      return { ...state, trip: event };
    case 'drip.none-seen':
      return state.spots.length > 0 ? state : { ...state, nothingDripped: true };
    case 'drip.spot-seen':
      return state.spots.some(({ spot }) => spot === event.spot)
        ? state
        : { ...state, spots: [...state.spots, event], nothingDripped: false };
  }
}

const KINDS: ReadonlySet<string> = new Set<ArrivalEventBody['kind']>([
  'coach.linked',
  'arrival.work-told',
  'arrival.trip-told',
  'drip.none-seen',
  'drip.spot-seen',
]);

function isArrival(event: EventHead & { readonly kind: string }): event is EventHead & ArrivalEventBody {
  return KINDS.has(event.kind);
}
