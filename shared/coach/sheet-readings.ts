/** What the sheets of a visit read: figures of the inspection, judged figures of the air test, gauges of the drives. */
import {
  airTestStandings,
  emptyAirTest,
  emptyRoad,
  foldAirTest,
  foldRoad,
  QUANTITIES,
  type RoadDrive,
  type VisitEvent,
} from '../visit/index.ts';
import { readingIn } from '../visit/reading-in.ts';
import type { PastReading } from './past-reading.ts';

const INSPECTION = 'sheet/inspection';
const AIR_TEST = 'sheet/air-test';
const ROAD = 'sheet/road';

/** Coolant from which an engine counts as hot, °F, and the road speed from which it is driven, mph. Judgement. */
const HOT_F = 160;
const DRIVEN_MPH = 40;
/** Seconds for which a noted speed still says how fast it went. Judgement. */
const SPEED_HOLDS_S = 30;

/** What is kept of the gauges of one drive, so that a year has one figure and not fifty. */
const ROAD_MARKS = {
  'oil-standing': 'Oil pressure, hot, standing: lowest',
  'oil-driven': 'Oil pressure, hot, at 40 mph or more: lowest',
  'coolant-most': 'Coolant on the drive: highest',
  'air-least': 'Air on the drive: lowest',
} as const;
type RoadMark = keyof typeof ROAD_MARKS;

/** Readings of the sheets, in the order of inspection, air test, road. @param events  what stands of the log, in order. */
export function sheetReadings(events: readonly VisitEvent[]): PastReading[] {
  const inspected = events.flatMap((event): PastReading[] =>
    event.kind === 'inspection.recorded'
      ? (event.readings ?? []).map(({ what, reading: { value, unit } }) => ({
          finding: `${event.id} ${what}`,
          tree: INSPECTION,
          check: what,
          site: event.site === '' ? null : event.site,
          value,
          unit,
          at: event.at,
        }))
      : [],
  );
  const drives = events.reduce(foldRoad, emptyRoad()).drives;
  return [...inspected, ...airReadings(events), ...drives.flatMap(driveReadings)];
}

/** What a reading of a sheet is called; undefined for a reading of a complaint. */
export function sheetReadingWords(tree: string, check: string): string | undefined {
  if (tree === INSPECTION) return QUANTITIES.find(({ what }) => what === check)?.words ?? check.replaceAll('-', ' ');
  if (tree === AIR_TEST) return `Air test: ${check}`;
  return tree === ROAD ? Object.entries(ROAD_MARKS).find(([mark]) => mark === check)?.[1] : undefined;
}

/** Judged figures of the test as it stands at the end of the visit: what came of a step, not where its needle began. */
function airReadings(events: readonly VisitEvent[]): PastReading[] {
  const state = events.reduce(foldAirTest, emptyAirTest());
  return airTestStandings(state).flatMap(({ step, outcome }): PastReading[] => {
    const record = state.records[step.id];
    if (outcome.kind !== 'judged' || !record) return [];
    // The knob is held against two ends of one band: it is one figure.
    const once = step.id === 'parking-valve' ? outcome.judged.slice(0, 1) : outcome.judged;
    return once.map(({ words, value, judgement }) => ({
      finding: `${step.id} ${words}`,
      tree: AIR_TEST,
      check: `${step.name.toLowerCase()}${once.length > 1 ? `, ${words}` : ''}`,
      site: null,
      value,
      unit: judgement.limit.unit,
      at: record.at,
    }));
  });
}

function driveReadings({ id, notes }: RoadDrive): PastReading[] {
  const best = new Map<RoadMark, { readonly reading: PastReading; readonly figure: number }>();
  let noted: { readonly mph: number | null; readonly seconds: number } | null = null;
  let hot = false;
  for (const { id: note, entry, at, seconds } of notes) {
    if (entry.kind !== 'gauge') continue;
    const { reading: read } = entry;
    const { value, unit } = read;
    const keep = (mark: RoadMark, own: string, better: (a: number, b: number) => boolean): void => {
      const figure = readingIn(read, own);
      const known = best.get(mark);
      if (figure === null || (known && !better(figure, known.figure))) return;
      const reading = { finding: `${id} ${note}`, tree: ROAD, check: mark, site: null, value, unit, at };
      best.set(mark, { reading, figure });
    };
    const speed = noted && seconds - noted.seconds <= SPEED_HOLDS_S ? noted.mph : null;
    const less = (a: number, b: number): boolean => a < b;
    if (entry.gauge === 'speed') noted = { mph: readingIn(read, 'mph'), seconds };
    else if (entry.gauge === 'coolant') {
      hot = hot || (readingIn(read, 'degF') ?? 0) >= HOT_F;
      keep('coolant-most', 'degF', (a, b) => a > b);
    } else if (entry.gauge === 'air') keep('air-least', 'psi', less);
    else if (entry.gauge === 'oil' && hot && speed === 0) keep('oil-standing', 'psi', less);
    else if (entry.gauge === 'oil' && hot && speed !== null && speed >= DRIVEN_MPH) keep('oil-driven', 'psi', less);
  }
  return [...best.values()].map(({ reading }) => reading);
}
