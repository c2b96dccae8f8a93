export { dripPoints, type DripFluid, type DripPoint, type FluidsKnown } from './drip-points.ts';
export {
  DRIP_COLOURS,
  DRIP_FEELS,
  DRIP_PLACES,
  DRIP_SIZES,
  wordsOf,
  type DripColour,
  type DripFeel,
  type DripPlace,
  type DripSize,
  type WordRow,
} from './drip-words.ts';
export { arrivalEventSchemas, type ArrivalEventBody } from './events.ts';
export { arrivalOffers, OFFER_TARGETS, type ArrivalOffer } from './offers.ts';
export { emptyArrival, foldArrival, type ArrivalState, type SpotSeen, type WorkTold } from './state.ts';
export { TRIP_TRAITS, WORK_AREAS, type TripTrait, type WorkArea } from './told-words.ts';
