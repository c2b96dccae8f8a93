export { distanceAYear, monthsBetween, monthsWords, tyreDay } from './ages.ts';
export { AXLES } from './axle-fields.ts';
export { benchStart, type BenchStart } from './bench-entries.ts';
export { CHAMBERS, STROKE_CLASSES } from './chambers.ts';
export { derivedWords } from './derived.ts';
export {
  COACH_EVENT_VERSION,
  readCoachEvent,
  type CoachEvent,
  type CoachEventBody,
  type CoachValue,
} from './events.ts';
export { FIELD_GROUPS, LAYOUT_PREFIX, layoutFields, type CoachField, type FieldGroup, type FieldUse } from './field.ts';
export { checkedValue, isDay, typedValue, tyreWeek, type CheckedValue, type ValueRefusal } from './field-value.ts';
export { COACH_FIELDS, fieldOf } from './fields.ts';
export { visitRecord, type PastComplaint, type VisitRecord } from './history.ts';
export type { PastReading } from './past-reading.ts';
export { askOf, layoutForVisit, layoutOf, learnedBodies, learnedInVisit, type Learned } from './layout-exchange.ts';
export { inFirstUnit, MEASURES, type CoachMeasure } from './measures.ts';
export { coachProfile, type CoachProfile, type KnownValue } from './profile.ts';
export { trendsOf, type Trend, type TrendPoint } from './trends.ts';
export { sheetReadingWords } from './sheet-readings.ts';
