import { beforeAll, describe, expect, it } from 'vitest';
import { shippedTrees } from '../../shipped-trees.ts';
import type { Tree, Vocabulary } from '../../../shared/knowledge/index.ts';
import {
  arrivalOffers,
  dripPoints,
  EVENT_VERSION,
  newEventId,
  readEvent,
  replay,
  type ArrivalOffer,
  type VisitEvent,
  type VisitEventBody,
  type VisitState,
} from '../../../shared/visit/index.ts';

const TREE = 'oil-drip-under-engine';
const HASH = 'a'.repeat(64);
let tree: Tree;
let vocabulary: Vocabulary;
beforeAll(async () => {
  const loaded = await shippedTrees(TREE);
  const value = loaded.trees.get(TREE)?.value;
  if (!value || !loaded.vocabulary) throw new Error('The shipped tree cannot be read.');
  tree = value;
  vocabulary = loaded.vocabulary;
});

const spot = (more: Partial<Extract<VisitEventBody, { kind: 'drip.spot-seen' }>> = {}): VisitEventBody => ({
  kind: 'drip.spot-seen',
  spot: 's1',
  place: 'engine-gearbox-joint',
  colour: 'black-brown',
  feel: 'slippery',
  size: 'hand',
  note: '',
  ...more,
});
const work = (area: 'oil-or-filter' | 'engine' | 'wheel-or-tyre', id = 'w1'): VisitEventBody => ({
  kind: 'arrival.work-told',
  work: id,
  area,
  what: 'oil change',
  when: 'last week',
});
const log = (...bodies: VisitEventBody[]): VisitEvent[] =>
  [
    { kind: 'visit.opened', coach: 'Invented coach', demo: true, coachId: 'c-1' } as const,
    { kind: 'complaint.opened', complaint: 'c', tree: TREE, treeHash: HASH, words: 'it drips' } as const,
    ...bodies,
  ].map((body, i) => ({
    id: newEventId(1000 + i, i, 'aa'),
    v: EVENT_VERSION,
    at: '2020-01-01T00:00:00Z',
    by: '',
    ...body,
  }));
const state = (...bodies: VisitEventBody[]): VisitState =>
  replay(log(...bodies), new Map([[HASH, { tree, vocabulary }]]));
const offers = (...bodies: VisitEventBody[]): readonly ArrivalOffer[] => {
  const visit = state(...bodies);
  return arrivalOffers(visit.arrival, visit.complaints[0]!, tree);
};

describe('[ARR-1] what is told and seen at the arrival', () => {
  it('is kept as told; a second entry of one id changes nothing, the latest trip and link count', () => {
    const trip = (where: string): VisitEventBody => ({ kind: 'arrival.trip-told', where, traits: ['long-grades'] });
    const { arrival } = state(
      work('engine'),
      work('oil-or-filter'),
      trip('over the pass'),
      trip('to the coast'),
      { kind: 'drip.none-seen' },
      spot(),
      spot({ size: 'larger' }),
      { kind: 'coach.linked', coachId: 'c-2' },
    );
    expect(arrival).toMatchObject({
      coachId: 'c-2',
      work: [{ area: 'engine' }],
      trip: { where: 'to the coast' },
      spots: [{ size: 'hand' }],
      nothingDripped: false,
    });
    expect(state().arrival.coachId).toBe('c-1');
    expect(state({ kind: 'drip.none-seen' }).arrival.nothingDripped).toBe(true);
  });
  it('is taken back like anything else, by the id of its event', () => {
    const events = log(work('engine'), spot());
    const back: VisitEvent = {
      ...events[0]!,
      id: newEventId(9000, 1, 'aa'),
      kind: 'event.taken-back',
      event: events[2]!.id,
    };
    const visit = replay([...events, back], new Map([[HASH, { tree, vocabulary }]]));
    expect(visit.arrival.work).toEqual([]);
    expect(visit.arrival.spots).toHaveLength(1);
  });
  it('comes back from the log as it was written, and rubbish is refused', () => {
    const events = log(work('engine'), spot({ photo: 'p.jpg' }), { kind: 'coach.linked', coachId: null });
    expect(events.map((event) => readEvent(JSON.parse(JSON.stringify(event))))).toEqual(events);
    expect(() => readEvent({ ...events[3]!, colour: 'purple' })).toThrow(/colour/);
    expect(() => readEvent({ ...events[2]!, area: 'the moon' })).toThrow(/area/);
  });
});

describe('[ARR-2] what a spot points to', () => {
  const fluids = (...[at, known]: Parameters<typeof dripPoints>): string[] =>
    dripPoints(at, known).map(({ fluid }) => fluid);
  it('feel and smell decide before colour and place', () => {
    expect(fluids({ place: 'engine-middle', colour: 'black-brown', feel: 'slippery' })[0]).toBe('engine-oil');
    expect(fluids({ place: 'engine-middle', colour: 'black-brown', feel: 'thin-smells-of-diesel' })).toEqual([
      'diesel',
    ]);
    expect(fluids({ place: 'engine-middle', colour: 'red', feel: 'sweet-sticky' })).toEqual(['coolant']);
    expect(fluids({ place: 'elsewhere', colour: 'green-blue-orange', feel: 'tarry' })).toEqual([]);
  });
  it('a wheel points to its hub, with the brakes named first', () => {
    expect(fluids({ place: 'wheel-drive', colour: 'clear-amber', feel: 'slippery' }).slice(0, 2)).toEqual([
      'hub-oil',
      'gear-oil',
    ]);
    const front = dripPoints({ place: 'wheel-front', colour: 'clear-amber', feel: 'slippery' })[0];
    expect(front).toMatchObject({ fluid: 'hub-oil', caution: expect.stringContaining('brake') as unknown });
  });
  it('the colours of this coach take the place of the usual ones', () => {
    const red = { place: 'radiator', colour: 'red', feel: 'not-felt' } as const;
    expect(fluids(red)).toContain('transmission-fluid');
    const known = fluids(red, {
      coolantColour: 'red',
      transmissionColour: 'clear-amber',
      steeringColour: 'clear-amber',
    });
    expect(known).toEqual(['coolant']);
  });
});

describe('[ARR-3] what is offered as a finding', () => {
  it('is what the complaint asks for, with what it rests on', () => {
    expect(offers(spot(), work('oil-or-filter'), work('wheel-or-tyre', 'w2'))).toEqual([
      { complaint: 'c', check: 'drip-map', result: 'bell', because: 'Drip sheet: 1 spot under the coach.', photos: [] },
      {
        complaint: 'c',
        check: 'recent-work',
        result: 'oil-or-filter',
        because: 'Told at the arrival: oil or oil-filter change (oil change, last week).',
        photos: [],
      },
    ]);
  });
  it('[ARR-4] takes a spot for a fluid only when that one alone agrees in all three', () => {
    const fluidOf = (...bodies: VisitEventBody[]): string | undefined =>
      offers(...bodies).find(({ check }) => check === 'fluid-id')?.result;
    // Black and slippery under the joint may be engine oil or old transmission fluid.
    expect(fluidOf(spot())).toBeUndefined();
    expect(fluidOf(spot({ place: 'engine-crank-end' }))).toBe('black-oil');
    expect(fluidOf(spot({ place: 'engine-crank-end', feel: 'not-felt' }))).toBeUndefined();
  });
  it('is nothing where two offers contradict each other', () => {
    const two = offers(
      spot({ place: 'engine-crank-end' }),
      spot({ spot: 's2', place: 'tube-end', feel: 'tarry' }),
      work('oil-or-filter'),
      work('engine', 'w2'),
    );
    expect(two.map(({ check, result }) => [check, result])).toEqual([['drip-map', 'scattered']]);
  });
  it('is not offered again once answered, and never recorded by itself', () => {
    const visit = state(spot(), work('oil-or-filter'));
    expect(visit.complaints[0]?.trail).toEqual([]);
    const answers = tree.stopRules.map(({ id }): VisitEventBody => ({
      kind: 'stop.answered',
      complaint: 'c',
      rule: id,
      answer: 'no',
    }));
    const answered = offers(...answers, spot(), work('oil-or-filter'), {
      kind: 'finding.recorded',
      complaint: 'c',
      finding: 'f',
      check: 'recent-work',
      value: { kind: 'result', result: 'nothing' },
    });
    expect(answered.map(({ check }) => check)).toEqual(['drip-map']);
  });
});
