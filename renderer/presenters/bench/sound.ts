import { orderProminence, type RotatingLine } from '../../../shared/measuring/index.ts';
import type { Band, RecordedSpectrum } from '../../workers/spectrum-job.ts';
import { digits } from './figure-kinds.ts';
import { GROUP_WORDS, matchView } from './orders.ts';
import { place, ticks, type PlotAxes } from './plot-axes.ts';

export const SOUND_CAUTIONS: readonly string[] = [
  'The driver does not touch the recorder. Hold speed and gear steady for the whole recording.',
];

export const SPANS: readonly (readonly [string, string])[] = [
  ['60', 'Up to 60 Hz'],
  ['120', 'Up to 120 Hz'],
  ['300', 'Up to 300 Hz'],
];

/** What is looked at: the sound itself, or how a band of it swells; '' is the sound. Bands: judgement. */
export const BANDS: readonly (readonly [string, string])[] = [
  ['', 'The sound itself'],
  ['500-2000', 'Envelope, 500 to 2,000 Hz'],
  ['2000-5000', 'Envelope, 2,000 to 5,000 Hz'],
];

/** The band of a choice; undefined for the sound itself. */
export function bandOf(choice: string): Band | undefined {
  const [lowHz, highHz] = choice.split('-').map(Number);
  return lowHz && highHz ? { lowHz, highHz } : undefined;
}

export interface PeakRow {
  readonly hz: number;
  readonly words: string;
  readonly prominence: string;
  /** What the table of orders says of it; null where there is none. */
  readonly fit: string | null;
}

export interface OrderOverRow {
  readonly group: string;
  readonly name: string;
  readonly hz: string;
  readonly words: string;
}

export interface SoundView {
  readonly heading: string;
  readonly facts: readonly string[];
  readonly warnings: readonly string[];
  readonly peaks: readonly PeakRow[];
  readonly orders: readonly OrderOverRow[];
  readonly plot: SpectrumPlotView;
}

export interface SpectrumPlotView {
  readonly width: number;
  readonly height: number;
  readonly curve: string;
  readonly bands: readonly { readonly x: number; readonly width: number; readonly number: number }[];
  /** Numbers over the uprights; those that would lie on one another stand together. */
  readonly names: readonly { readonly x: number; readonly y: number; readonly words: string }[];
  readonly peaks: readonly { readonly x: number; readonly y: number; readonly words: string }[];
  readonly axes: PlotAxes;
  readonly spoken: string;
}

/** A lower frequency is the sway of the recorder, not the coach: judgement, as in the matching of beats. */
const LEAST_HZ = 3;
/** An order stands out from here: as the picking of peaks. */
const STANDS_OUT_DB = 10;
const CLIPPED = 0.001;

/** A recording's spectrum with the orders over it, up to `mostHz`. */
export function soundView(
  spectrum: RecordedSpectrum,
  lines: readonly RotatingLine[],
  mostHz: number,
  speedDrift: number,
): SoundView {
  const peaks = spectrum.peaks.filter(({ frequencyHz }) => frequencyHz >= LEAST_HZ && frequencyHz <= mostHz);
  const strongest = [...peaks].sort((a, b) => b.prominenceDb - a.prominenceDb)[0];
  return {
    heading: strongest
      ? `${digits(strongest.frequencyHz, 1)} Hz stands out, by ${digits(strongest.prominenceDb, 0)} dB`
      : 'None stands out',
    facts: [
      `${digits(spectrum.durationS, 1)} s at ${spectrum.sampleRateHz} samples a second`,
      `${spectrum.segments} pieces averaged, told apart from ${digits(2 * spectrum.binHz, 2)} Hz`,
      ...(spectrum.envelope
        ? [
            `envelope of ${spectrum.envelope.lowHz} to ${spectrum.envelope.highHz} Hz; kurtosis ${digits(spectrum.envelope.kurtosis, 1)} (3 for plain noise, higher for knocks)`,
          ]
        : []),
    ],
    warnings: [
      spectrum.clippedShare > CLIPPED
        ? `The recording is clipped: ${digits(100 * spectrum.clippedShare, 1)} in 100 samples stand at full scale, so its spectrum is wrong. Record again, further away or quieter.`
        : '',
      spectrum.envelope
        ? 'A recording in the cabin does not hold the knocks of a bearing; the recorder has to sit on the metal near it.'
        : '',
      spectrum.segments < 4
        ? `Only ${spectrum.segments} ${spectrum.segments === 1 ? 'piece was' : 'pieces were'} averaged; noise alone makes peaks. Record longer.`
        : '',
    ].filter((words) => words !== ''),
    peaks: peaks.map((peak) => {
      const found =
        lines.length === 0
          ? null
          : matchView({ frequencyHz: peak.frequencyHz, binHz: spectrum.binHz, interpolated: true, speedDrift }, lines);
      return {
        hz: peak.frequencyHz,
        words: `${digits(peak.frequencyHz, 1)} Hz`,
        prominence: `${digits(peak.prominenceDb, 0)} dB`,
        fit: found === null ? null : found.kind === 'shown' ? fitWords(found) : found.words,
      };
    }),
    orders: lines.filter(({ frequencyHz }) => frequencyHz <= mostHz).map((line) => orderRow(line, spectrum)),
    plot: plotOf(spectrum, lines, peaks, mostHz),
  };
}

function fitWords(found: {
  readonly heading: string;
  readonly nearest: readonly { readonly name: string; readonly fit: string }[];
}): string {
  const nearest = found.nearest[0];
  return nearest && nearest.fit === 'fits' ? `${found.heading}: ${nearest.name}` : found.heading;
}

function orderRow(line: RotatingLine, spectrum: RecordedSpectrum): OrderOverRow {
  const tolerance = Math.max(spectrum.binHz, 2 * line.uncertaintyHz);
  const found = orderProminence(spectrum.density, spectrum.binHz, line.frequencyHz, tolerance);
  return {
    group: GROUP_WORDS[line.group],
    name: line.name,
    hz: `${digits(line.frequencyHz, 1)} ± ${digits(2 * line.uncertaintyHz, 1)} Hz`,
    words: !found.ok
      ? found.message
      : found.prominenceDb >= STANDS_OUT_DB
        ? `${digits(found.prominenceDb, 0)} dB, at ${digits(found.foundHz, 1)} Hz`
        : 'none stands out',
  };
}

const PLOT = { width: 328, height: 240, left: 40, right: 316, top: 34, bottom: 204 } as const;

function plotOf(
  spectrum: RecordedSpectrum,
  lines: readonly RotatingLine[],
  peaks: readonly { readonly frequencyHz: number; readonly density: number; readonly prominenceDb: number }[],
  mostHz: number,
): SpectrumPlotView {
  const last = Math.min(spectrum.density.length - 1, Math.floor(mostHz / spectrum.binHz));
  const first = Math.max(1, Math.ceil(LEAST_HZ / spectrum.binHz));
  const levels: number[] = [];
  for (let bin = first; bin <= last; bin++) levels.push(decibels(spectrum.density[bin] ?? 0));
  const most = Math.max(...levels, -200);
  const least = Math.max(most - 80, Math.min(...levels, most - 20));
  const yTicks = ticks(least - most, 0, 4);
  const low = yTicks[0]!;
  const x = (hz: number): number => place(PLOT.left + ((PLOT.right - PLOT.left) * hz) / mostHz);
  const y = (db: number): number =>
    place(PLOT.bottom - ((PLOT.bottom - PLOT.top) * (Math.max(low, db - most) - low)) / Math.max(1, -low));
  const bands = lines
    .filter(({ frequencyHz }) => frequencyHz <= mostHz)
    .map((line, i) => ({
      x: x(Math.max(0, line.frequencyHz - 2 * line.uncertaintyHz)),
      width: Math.max(3, x(line.frequencyHz + 2 * line.uncertaintyHz) - x(line.frequencyHz - 2 * line.uncertaintyHz)),
      number: i + 1,
    }));
  return {
    width: PLOT.width,
    height: PLOT.height,
    curve: curveOf(levels, first, spectrum.binHz, x, y),
    bands,
    names: namesOf(bands),
    peaks: peaks.slice(0, 3).map((peak) => ({
      x: x(peak.frequencyHz),
      y: y(decibels(peak.density)),
      words: digits(peak.frequencyHz, 1),
    })),
    axes: {
      left: PLOT.left,
      right: PLOT.right,
      top: PLOT.top,
      bottom: PLOT.bottom,
      xTicks: ticks(0, mostHz, 6)
        .filter((hz) => hz <= mostHz)
        .map((hz) => ({ at: x(hz), words: digits(hz, 0) })),
      yTicks: yTicks.filter((db) => db <= 0).map((db) => ({ at: y(db + most), words: digits(db, 0) })),
      xUnit: 'Hz',
      yUnit: 'dB',
    },
    spoken: `Spectrum from ${LEAST_HZ} to ${mostHz} Hz. ${
      peaks.length === 0
        ? 'No peak stands out.'
        : `Peaks: ${peaks.map((peak) => `${digits(peak.frequencyHz, 1)} Hz, ${digits(peak.prominenceDb, 0)} dB over its surroundings`).join('; ')}.`
    }${lines.length > 0 ? ' The orders of the table are drawn over it as pale uprights, numbered as in the list.' : ''}`,
  };
}

/** Letters of 14 units: two numbers nearer than this are one label, nearer than twice this stand on two rows. */
const NAME_ROOM = 14;

function namesOf(bands: SpectrumPlotView['bands']): SpectrumPlotView['names'] {
  const names: { x: number; y: number; words: string; right: number }[] = [];
  const placed = bands
    .map((band) => ({ at: band.x + band.width / 2, number: band.number }))
    .sort((a, b) => a.at - b.at);
  for (const { at, number } of placed) {
    const last = names.at(-1);
    if (last && at - last.x < NAME_ROOM) {
      last.words += `, ${number}`;
      last.right += 16;
      continue;
    }
    names.push({
      x: at,
      y: last && at - 8 < last.right && last.y === 16 ? 30 : 16,
      words: String(number),
      right: at + 8,
    });
  }
  return names.map(({ x, y, words }) => ({ x: place(x), y, words }));
}

/** The greatest level of each two units of the drawing, so that a narrow peak is never left out. */
function curveOf(
  levels: readonly number[],
  first: number,
  binHz: number,
  x: (hz: number) => number,
  y: (db: number) => number,
): string {
  const columns = new Map<number, number>();
  levels.forEach((level, i) => {
    const column = Math.round(x((first + i) * binHz) / 2) * 2;
    columns.set(column, Math.max(columns.get(column) ?? -Infinity, level));
  });
  return [...columns]
    .sort(([a], [b]) => a - b)
    .map(([column, level], i) => `${i === 0 ? 'M' : 'L'}${column} ${y(level)}`)
    .join('');
}

function decibels(density: number): number {
  return 10 * Math.log10(Math.max(density, 1e-20));
}
