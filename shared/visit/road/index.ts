export * from './events.ts';
export { crewProblem, openSigns, roadRefusal, roadVerdict, type VerdictOfComplaint } from './may-drive.ts';
export { roadOffers, type RoadOffer } from './offers.ts';
export { emptyRoad, foldRoad, openDrive, samePerson, type RoadDrive, type RoadNote, type RoadState } from './state.ts';
