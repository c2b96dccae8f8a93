import {
  bandEnvelope,
  decimate,
  pickPeaks,
  readWav,
  welchDensity,
  type SpectrumPeak,
} from '../../shared/measuring/index.ts';
import { packageTransform } from './fft-transform.ts';

/** A band whose envelope is looked at in place of the sound itself. */
export interface Band {
  readonly lowHz: number;
  readonly highHz: number;
}

/** What the worker is asked: a file's bytes, or the samples of one channel; of the sound itself, or of a band's envelope. */
export type SpectrumTask = (
  | { readonly kind: 'file'; readonly bytes: Uint8Array }
  | { readonly kind: 'samples'; readonly samples: Float64Array; readonly sampleRateHz: number }
) & { readonly band?: Band };

export type SpectrumAnswer =
  /** Share of the pieces transformed, 0…1. */
  | { readonly kind: 'progress'; readonly done: number }
  | { readonly kind: 'refused'; readonly reason: string; readonly words: string }
  | { readonly kind: 'done'; readonly spectrum: RecordedSpectrum };

export interface RecordedSpectrum {
  /** Power density by bin, cut off above the span that is searched. */
  readonly density: Float64Array;
  readonly binHz: number;
  readonly segments: number;
  readonly sampleRateHz: number;
  readonly durationS: number;
  /** Share of samples at full scale. */
  readonly clippedShare: number;
  /** Empty where none stands out. */
  readonly peaks: readonly SpectrumPeak[];
  /** Where the envelope of a band was looked at: the band, and its kurtosis (3 for noise, higher for impacts). */
  readonly envelope?: Band & { readonly kurtosis: number };
}

/** Nothing above it belongs to what turns on a coach: judgement. A faster record is slowed down to four times this first. */
const SEARCHED_HZ = 500;
/** Bins no wider than this tell a wheel order from the next at road speed; twice as narrow smears a speed that wanders. */
const WANTED_BIN_HZ = 0.35;
const OVERLAP = 0.5;
/** An envelope is taken of a power of two samples, before it is averaged: eleven seconds at 48 kHz, and memory for a phone's recording. */
const ENVELOPE_SAMPLES = 2 ** 19;

/** Works a recording out; `post` gets progress, then one answer. */
export function spectrumJob(task: SpectrumTask, post: (answer: SpectrumAnswer) => void): void {
  const answer = answerOf(task, (done) => post({ kind: 'progress', done }));
  post(answer.ok ? { kind: 'done', spectrum: answer.spectrum } : refusal(answer));
}

function refusal({ reason, message }: { readonly reason: string; readonly message: string }): SpectrumAnswer {
  return { kind: 'refused', reason, words: message };
}

/** The sound itself and the envelope of a band go the same way: slowed down, averaged over pieces, peaks picked. */
function answerOf(
  task: SpectrumTask,
  progress: (done: number) => void,
): { readonly ok: true; readonly spectrum: RecordedSpectrum } | { ok: false; reason: string; message: string } {
  const sound = soundOf(task);
  if (!sound.ok) return sound;
  const heard = task.band ? envelopeOf(sound, task.band) : sound;
  if (!heard.ok) return heard;
  const slower = decimate(heard.samples, heard.sampleRateHz, SEARCHED_HZ);
  if (!slower.ok) return slower;
  const { samples, sampleRateHz } = slower;
  const segmentLength = segmentFor(samples.length, sampleRateHz);
  const step = segmentLength - Math.floor(segmentLength * OVERLAP);
  const due = Math.max(1, Math.floor((samples.length - segmentLength) / step) + 1);
  const transform = packageTransform();
  let pieces = 0;
  const found = welchDensity({ samples, sampleRateHz, segmentLength, overlap: OVERLAP, window: 'hann' }, (signal) => {
    pieces++;
    progress(pieces / due);
    return transform(signal);
  });
  if (!found.ok) return found;
  const { binHz, segments } = found;
  const density = found.density.slice(0, Math.min(found.density.length, Math.ceil(SEARCHED_HZ / binHz) + 1));
  const peaks = pickPeaks(density, binHz);
  if (!peaks.ok) return peaks;
  return {
    ok: true,
    spectrum: {
      density,
      binHz,
      segments,
      sampleRateHz: heard.sampleRateHz,
      durationS: heard.samples.length / heard.sampleRateHz,
      clippedShare: heard.clippedShare,
      peaks: peaks.peaks,
      ...(heard.envelope ? { envelope: heard.envelope } : {}),
    },
  };
}

/** How a band of the sound swells, as a sound of its own. */
function envelopeOf(sound: Heard, band: Band): Sound {
  const { sampleRateHz, clippedShare } = sound;
  const given = 2 ** Math.floor(Math.log2(Math.max(1, sound.samples.length)));
  const samples = sound.samples.subarray(0, Math.min(given, ENVELOPE_SAMPLES));
  const found = bandEnvelope({ samples, sampleRateHz, ...band }, packageTransform());
  if (!found.ok) return found;
  const { envelope, kurtosis } = found;
  return { ok: true, samples: envelope, sampleRateHz, clippedShare, envelope: { ...band, kurtosis } };
}

interface Heard {
  readonly samples: Float64Array;
  readonly sampleRateHz: number;
  readonly clippedShare: number;
  readonly envelope?: RecordedSpectrum['envelope'];
}
type Sound =
  ({ readonly ok: true } & Heard) | { readonly ok: false; readonly reason: string; readonly message: string };

function soundOf(task: SpectrumTask): Sound {
  if (task.kind === 'samples') {
    const clipped = task.samples.reduce((sum, each) => sum + (Math.abs(each) >= 0.99996 ? 1 : 0), 0);
    return {
      ok: true,
      samples: task.samples,
      sampleRateHz: task.sampleRateHz,
      clippedShare: clipped / Math.max(1, task.samples.length),
    };
  }
  const read = readWav(task.bytes);
  return read.ok
    ? { ok: true, samples: read.samples, sampleRateHz: read.header.sampleRateHz, clippedShare: read.clippedShare }
    : read;
}

/** A power of two: bins as narrow as wanted where the record gives eight pieces or so, shorter where it does not. */
function segmentFor(samples: number, sampleRateHz: number): number {
  const wanted = 2 ** Math.ceil(Math.log2(sampleRateHz / WANTED_BIN_HZ));
  const given = 2 ** Math.floor(Math.log2(Math.max(1, samples / 4.5)));
  return Math.max(1024, Math.min(wanted, given));
}
