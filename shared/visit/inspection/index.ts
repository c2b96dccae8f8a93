export * from './events.ts';
export {
  AXLE_WORDS,
  entryId,
  heldWhileBad,
  INSPECTION_PARTS,
  SIDES,
  sitesOf,
  WHEEL_AXLES,
  wheelSite,
  type InspectionPart,
  type WheelAxle,
  type WheelSide,
} from './items.ts';
export { hubPairVerdict, oddEnds, pairsOf, type AxlePairOf, type OddEnd, type OddEnds, type PairEnd } from './pairs.ts';
export {
  heldAgainst,
  QUANTITIES,
  quantityOf,
  type Quantity,
  type QuantityFact,
  type QuantityOutcome,
} from './quantities.ts';
export {
  emptyInspection,
  foldInspection,
  notOpenedYet,
  type InspectionItem,
  type InspectionState,
  type TemperatureRoundTaken,
} from './state.ts';
export { inspectionHolds, inspectionVerdict } from './verdict.ts';
