import type { AccessState } from '../../knowledge/vocabulary.ts';
import { axleOf, wheelEndsOf } from '../../knowledge/places.ts';
import type { AccessStep } from './plan.ts';

/** How much of the coach one opening of a state serves. Judgement, from what is taken off. */
const SCOPE: Readonly<Record<string, 'coach' | 'axle' | 'wheel-end'>> = {
  parked: 'coach',
  'inside-coach': 'coach',
  'road-test': 'coach',
  'hot-stop': 'coach',
  'cold-start': 'coach',
  chocked: 'coach',
  'under-coach': 'coach',
  'engine-bay': 'coach',
  'engine-running': 'coach',
  'covers-off': 'coach',
  'chocked-raised': 'axle',
  'wheel-off': 'wheel-end',
  'hub-open': 'wheel-end',
};

/**
 * What a job at a place opens, outermost first; states that cost nothing are left out. A state whose place is not known, or
 * of which this program does not know what one opening serves (a part on the bench), is the line's own and shared with none.
 */
export function accessSteps(
  states: readonly AccessState[],
  access: string,
  place: string | null,
  line: string,
): AccessStep[] {
  const chain: AccessState[] = [];
  for (let at = states.find(({ id }) => id === access); at; at = states.find(({ id }) => id === at.parent))
    chain.unshift(at);
  return chain
    .filter(({ openMinutes, closeMinutes }) => openMinutes + closeMinutes > 0)
    .flatMap((state) =>
      placesOf(state.id, place, line).map(({ key, words }) => ({
        id: `${state.id}@${key}`,
        state: state.id,
        name: state.name,
        place: words,
        openMinutes: state.openMinutes,
        closeMinutes: state.closeMinutes,
      })),
    );
}

/** Whether a state is opened at one axle or wheel end, so that the place has to be known to share it. */
export function needsPlace(states: readonly AccessState[], access: string): boolean {
  return accessSteps(states, access, null, '').some(
    ({ state }) => SCOPE[state] === 'axle' || SCOPE[state] === 'wheel-end',
  );
}

function placesOf(
  state: string,
  place: string | null,
  line: string,
): readonly { readonly key: string; readonly words: string }[] {
  const scope = Object.hasOwn(SCOPE, state) ? SCOPE[state] : undefined;
  if (scope === 'coach') return [{ key: '', words: '' }];
  const found =
    scope === 'axle'
      ? [place === null ? null : axleOf(place)].filter((each) => each !== null)
      : scope === 'wheel-end' && place !== null
        ? wheelEndsOf(place)
        : [];
  return found.length > 0
    ? found.map((words) => ({ key: words, words }))
    : [{ key: `?${line}`, words: place ?? 'place not said' }];
}

/** Minutes to open and close steps, each once. */
export function stepMinutes(steps: Iterable<AccessStep>): number {
  const seen = new Map<string, number>();
  for (const { id, openMinutes, closeMinutes } of steps) if (!seen.has(id)) seen.set(id, openMinutes + closeMinutes);
  return [...seen.values()].reduce((sum, minutes) => sum + minutes, 0);
}
