/** What was noted on a road test over time: a lane for each gauge, and the notes as numbered marks above. */
import { ROAD_GAUGES } from '../../../shared/knowledge/index.ts';
import type { UnitSystem } from '../../../shared/units/index.ts';
import type { RoadDrive } from '../../../shared/visit/index.ts';
import { driveTime, entryWords, gaugeWords } from './road-sheet.ts';

/** Places in units of the drawing, 328 wide. */
export interface RoadPlotView {
  readonly height: number;
  readonly lanes: readonly {
    readonly id: string;
    readonly words: string;
    /** Baseline and top of the lane. */
    readonly base: number;
    readonly top: number;
    readonly path: string;
    readonly points: readonly {
      readonly x: number;
      readonly y: number;
      readonly words: string;
      readonly labelled: boolean;
    }[];
  }[];
  /** `textX` is where the number stands: numbers that would run into each other are moved apart. */
  readonly marks: readonly {
    readonly x: number;
    readonly textX: number;
    readonly number: number;
    readonly sign: boolean;
  }[];
  readonly ticks: readonly { readonly x: number; readonly words: string }[];
  readonly spoken: string;
}

const LEFT = 12;
const WIDTH = 328;
const RIGHT = WIDTH - 34;
const LANE = 76;
const TOP = 44;

/** The drawing of a drive; null when nothing was noted. */
export function roadPlot(drive: RoadDrive, system: UnitSystem): RoadPlotView | null {
  const { notes } = drive;
  const last = notes.at(-1);
  if (!last) return null;
  const span = Math.max(60, ...notes.map(({ seconds }) => seconds));
  const x = (seconds: number): number => round(LEFT + ((RIGHT - LEFT) * seconds) / span);
  const used = ROAD_GAUGES.filter(({ id }) => notes.some(({ entry }) => entry.kind === 'gauge' && entry.gauge === id));
  const lanes = used.map(({ id, words }, i) => {
    const read = notes.flatMap(({ entry, seconds }) =>
      entry.kind === 'gauge' && entry.gauge === id ? [{ seconds, value: entry.reading.value }] : [],
    );
    const values = read.map(({ value }) => value);
    const least = Math.min(...values);
    const most = Math.max(...values);
    const base = TOP + LANE * (i + 1) - 8;
    const top = base - LANE + 46;
    const y = (value: number): number =>
      round(most === least ? (base + top) / 2 : base - ((base - top) * (value - least)) / (most - least));
    const points = read.map(({ seconds, value }, k) => ({
      x: x(seconds),
      y: y(value),
      words: gaugeWords(id, value, system),
      // Ends, highest and lowest carry their figure; more would run into each other.
      labelled: k === read.length - 1 || k === values.indexOf(most) || k === values.indexOf(least),
    }));
    return {
      id,
      words,
      base,
      top,
      points,
      path: points.map((point, k) => `${k === 0 ? 'M' : 'L'}${point.x} ${point.y}`).join(''),
    };
  });
  const other = notes.filter(({ entry }) => entry.kind !== 'gauge');
  return {
    height: TOP + LANE * Math.max(1, lanes.length) + 30,
    lanes: lanes.map((lane) => ({ ...lane, points: apart(lane.points) })),
    marks: spaced(
      other.map(({ seconds, entry }, i) => ({ x: x(seconds), number: i + 1, sign: entry.kind === 'sign' })),
    ),
    ticks: ticksOf(span).map((seconds) => ({ x: x(seconds), words: String(seconds / 60) })),
    spoken: spokenOf(drive, used.length, other.length, system),
  };
}

/** The notes that are marked by number above the lanes, in the same order. */
export function markedNotes(
  drive: RoadDrive,
  system: UnitSystem,
): readonly { readonly time: string; readonly words: string }[] {
  return drive.notes.flatMap(({ entry, seconds }) =>
    entry.kind === 'gauge' ? [] : [{ time: driveTime(seconds), words: entryWords(entry, system) }],
  );
}

function apart<P extends { readonly x: number; readonly labelled: boolean }>(points: readonly P[]): P[] {
  let free = Infinity;
  return [...points]
    .reverse()
    .map((point) => {
      const labelled = point.labelled && point.x <= free;
      if (labelled) free = point.x - 58;
      return { ...point, labelled };
    })
    .reverse();
}

/** Numbers at least so far apart that two digits have room, from left to right. */
function spaced<M extends { readonly x: number }>(marks: readonly M[]): (M & { readonly textX: number })[] {
  let free = -Infinity;
  return marks.map((mark) => {
    const textX = Math.max(mark.x, free);
    free = textX + 17;
    return { ...mark, textX };
  });
}

/** Four to six marks a whole number of minutes apart. */
function ticksOf(span: number): number[] {
  const step = [1, 2, 5, 10, 20, 30, 60, 120].find((minutes) => span / (60 * minutes) <= 6) ?? 240;
  return Array.from({ length: Math.floor(span / (60 * step)) + 1 }, (_, i) => 60 * step * i);
}

function spokenOf(drive: RoadDrive, gauges: number, others: number, system: UnitSystem): string {
  const lasting = driveTime(drive.notes.at(-1)?.seconds ?? 0);
  const read = ROAD_GAUGES.flatMap(({ id, words }) => {
    const values = drive.notes.flatMap(({ entry }) =>
      entry.kind === 'gauge' && entry.gauge === id ? [entry.reading.value] : [],
    );
    if (values.length === 0) return [];
    return [
      `${words} from ${gaugeWords(id, Math.min(...values), system)} to ${gaugeWords(id, Math.max(...values), system)}`,
    ];
  });
  return `Noted over ${lasting} minutes: ${others} observations, ${gauges} gauges. ${read.join('; ')}${read.length > 0 ? '.' : ''} Every entry stands in the table below.`;
}

function round(value: number): number {
  return Math.round(10 * value) / 10;
}
