export { isPlanEvent, planEventSchemas, URGENCIES, type FigureId, type PlanEventBody, type Urgency } from './events.ts';
export { partKey } from './cost-band.ts';
export { explanationOf, type Explanation, type Rival } from './explain.ts';
export { foldPlan } from './fold.ts';
export { isDescribed } from './inspected-work.ts';
export type { InspectedItem } from './inspected.ts';
export { addedLine, complaintLine, isComplaintLine, itemLine } from './line-id.ts';
export { accessChoices, planOf } from './plan-of.ts';
export type * from './plan.ts';
export {
  PART_WORDS,
  partCount,
  partMeasured,
  partPlaces,
  partsCsv,
  partsText,
  type WriteFigure,
} from './parts-text.ts';
export { REBUILD } from './rebuild.ts';
export { refusesPlan } from './refusals.ts';
export { emptyPlan, type PlanState } from './state.ts';
export { unprovenCauses } from './complaint-lines.ts';
