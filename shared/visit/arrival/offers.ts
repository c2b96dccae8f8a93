/**
 * What was told and seen at the arrival, as findings that a complaint asks for. An offer is only that: it becomes a finding
 * when a person confirms it, one by one.
 */
import type { Tree } from '../../knowledge/tree.ts';
import type { ComplaintState } from '../state.ts';
import { dripPoints, type DripFluid, type FluidsKnown } from './drip-points.ts';
import { DRIP_PLACES, wordsOf, type DripPlace } from './drip-words.ts';
import type { ArrivalState, SpotSeen, WorkTold } from './state.ts';
import { WORK_AREAS, type WorkArea } from './told-words.ts';

export interface ArrivalOffer {
  readonly complaint: string;
  readonly check: string;
  readonly result: string;
  /** What it rests on, in words, for the note of the finding. */
  readonly because: string;
  readonly photos: readonly string[];
}

/** A check of one tree, or a shared check of any, with the result that is offered. */
interface Target {
  readonly tree?: string;
  readonly check: string;
  readonly result: string;
}

const OIL_DRIP = 'oil-drip-under-engine';

/** The one fluid that a spot most looks like → what the tree of drips calls it. */
const FLUIDS: Readonly<Partial<Record<DripFluid, readonly Target[]>>> = {
  'engine-oil': [{ tree: OIL_DRIP, check: 'fluid-id', result: 'black-oil' }],
  'transmission-fluid': [{ tree: OIL_DRIP, check: 'fluid-id', result: 'red-or-thin' }],
  'power-steering-fluid': [
    { tree: OIL_DRIP, check: 'fluid-id', result: 'red-or-thin' },
    { tree: 'steering-pump-whines-cold', check: 'leak-look', result: 'drips' },
  ],
  coolant: [
    { tree: OIL_DRIP, check: 'fluid-id', result: 'coolant-or-water' },
    { tree: 'coolant-loss', check: 'where-does-it-go', result: 'puddle-under' },
  ],
  diesel: [{ tree: OIL_DRIP, check: 'fluid-id', result: 'fuel' }],
  'tarry-spit': [{ tree: OIL_DRIP, check: 'fluid-id', result: 'tar' }],
  'hub-oil': [
    { tree: 'growl-through-floor-at-speed', check: 'hub-oil', result: 'low-or-wet' },
    { tree: 'brake-pulls-or-one-drum-hot', check: 'wet-trace', result: 'wet-one' },
  ],
};

/** Place of the spots → the place on the card; two or more of them make it scattered. */
const PLACES: Readonly<Partial<Record<DripPlace, string>>> = {
  'engine-middle': 'middle',
  'engine-crank-end': 'crank-end',
  'engine-gearbox-joint': 'bell',
  'tube-end': 'tube-outlet',
};

const CHASSIS = 'recent-chassis-work';
const ENGINE_BAY = 'recent-engine-work';
const ONSET = 'complaint-onset';

const WORK: Readonly<Partial<Record<WorkArea, readonly Target[]>>> = {
  'wheel-or-tyre': [{ check: CHASSIS, result: 'wheel-or-tyre' }],
  'brake-or-hub': [{ check: CHASSIS, result: 'brake-or-hub' }],
  driveline: [{ check: CHASSIS, result: 'driveline-or-engine' }],
  'steering-or-suspension': [{ check: CHASSIS, result: 'steering-or-suspension' }],
  'oil-or-filter': [{ check: ENGINE_BAY, result: 'oil-or-filter' }],
  engine: [{ check: ENGINE_BAY, result: 'top-end' }],
  fuel: [
    { check: ENGINE_BAY, result: 'fuel' },
    { check: ONSET, result: 'after-fuel' },
  ],
  gearbox: [
    { check: ENGINE_BAY, result: 'transmission' },
    { check: ONSET, result: 'after-gearbox-work' },
  ],
  cooling: [{ check: ENGINE_BAY, result: 'radiator-or-hoses' }],
  'belts-or-fan': [{ check: ENGINE_BAY, result: 'belts-or-fan' }],
};

/** Every target of the tables, for the test that holds them against the trees. */
export const OFFER_TARGETS: readonly Target[] = [
  ...Object.values(FLUIDS).flat(),
  ...[...Object.values(PLACES), 'scattered'].map((result) => ({ tree: OIL_DRIP, check: 'drip-map', result })),
  ...Object.values(WORK).flat(),
];

/**
 * Findings that can be offered to one complaint, in the order of the sheet; none for a check that has been answered in
 * this complaint, and none where two answers would contradict each other.
 */
export function arrivalOffers(
  arrival: ArrivalState,
  complaint: ComplaintState,
  tree: Tree,
  known: FluidsKnown = {},
): readonly ArrivalOffer[] {
  if (complaint.phase === 'closed') return [];
  const raised = [
    ...arrival.spots.flatMap((spot, i) => ofSpot(spot, i + 1, known)),
    ...ofPlaces(arrival.spots),
    ...arrival.work.flatMap(ofWork),
  ];
  const offers = raised.flatMap(({ target, because, photos }): ArrivalOffer[] => {
    if (target.tree !== undefined && target.tree !== tree.id) return [];
    const check = tree.checks.find((each) => (target.tree === undefined ? each.sharedAs : each.id) === target.check);
    if (!check?.results.some((result) => result.id === target.result)) return [];
    if (complaint.trail.some((finding) => finding.check === check.id)) return [];
    return [{ complaint: complaint.id, check: check.id, result: target.result, because, photos }];
  });
  const results = (check: string): number =>
    new Set(offers.filter((each) => each.check === check).map(({ result }) => result)).size;
  return offers.filter(
    (offer, i) =>
      results(offer.check) === 1 &&
      offers.findIndex((each) => each.check === offer.check && each.result === offer.result) === i,
  );
}

interface Raised {
  readonly target: Target;
  readonly because: string;
  readonly photos: readonly string[];
}

/** A spot is taken for a fluid only when one alone agrees best, in all three signs. */
function ofSpot(spot: SpotSeen, number: number, known: FluidsKnown): Raised[] {
  const [first, second] = dripPoints(spot, known);
  if (!first || first.agree < 3 || second?.agree === first.agree) return [];
  const because = `Drip sheet, spot ${number}: ${wordsOf(DRIP_PLACES, spot.place).toLowerCase()}, looks like ${first.words.toLowerCase()}.`;
  const photos = spot.photo === undefined ? [] : [spot.photo];
  return (FLUIDS[first.fluid] ?? []).map((target) => ({ target, because, photos }));
}

function ofPlaces(spots: readonly SpotSeen[]): Raised[] {
  const places = [...new Set(spots.flatMap(({ place }) => PLACES[place] ?? []))];
  const [first] = places;
  if (first === undefined) return [];
  const result = places.length > 1 ? 'scattered' : first;
  return [
    {
      target: { tree: OIL_DRIP, check: 'drip-map', result },
      because: `Drip sheet: ${spots.length} ${spots.length === 1 ? 'spot' : 'spots'} under the coach.`,
      photos: spots.flatMap(({ photo }) => photo ?? []),
    },
  ];
}

function ofWork({ area, what, when }: WorkTold): Raised[] {
  const told = [what, when].filter((text) => text.trim() !== '').join(', ');
  const because = `Told at the arrival: ${wordsOf(WORK_AREAS, area).toLowerCase()}${told === '' ? '' : ` (${told})`}.`;
  return (WORK[area] ?? []).map((target) => ({ target, because, photos: [] }));
}
