import { pickPeaks, readWav, welchDensity, type SpectrumPeak } from '../../shared/measuring/index.ts';
import { packageTransform } from './fft-transform.ts';

/** What the worker is asked: a file's bytes, or the samples of one channel. */
export type SpectrumTask =
  | { readonly kind: 'file'; readonly bytes: Uint8Array }
  | { readonly kind: 'samples'; readonly samples: Float64Array; readonly sampleRateHz: number };

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
}

/** Nothing above it belongs to what turns on a coach: judgement. */
const SEARCHED_HZ = 500;
/** Bins no wider than this tell a wheel order from the next at road speed; twice as narrow smears a speed that wanders. */
const WANTED_BIN_HZ = 0.35;
const OVERLAP = 0.5;

/** Works a recording out; `post` gets progress, then one answer. */
export function spectrumJob(task: SpectrumTask, post: (answer: SpectrumAnswer) => void): void {
  const sound = soundOf(task);
  if (!sound.ok) {
    post({ kind: 'refused', reason: sound.reason, words: sound.message });
    return;
  }
  const { samples, sampleRateHz, clippedShare } = sound;
  const segmentLength = segmentFor(samples.length, sampleRateHz);
  const step = segmentLength - Math.floor(segmentLength * OVERLAP);
  const due = Math.max(1, Math.floor((samples.length - segmentLength) / step) + 1);
  const transform = packageTransform();
  let pieces = 0;
  const found = welchDensity({ samples, sampleRateHz, segmentLength, overlap: OVERLAP, window: 'hann' }, (signal) => {
    pieces++;
    post({ kind: 'progress', done: pieces / due });
    return transform(signal);
  });
  if (!found.ok) {
    post({ kind: 'refused', reason: found.reason, words: found.message });
    return;
  }
  const density = found.density.slice(0, Math.min(found.density.length, Math.ceil(SEARCHED_HZ / found.binHz) + 1));
  const peaks = pickPeaks(density, found.binHz);
  if (!peaks.ok) {
    post({ kind: 'refused', reason: peaks.reason, words: peaks.message });
    return;
  }
  const { binHz, segments } = found;
  const durationS = samples.length / sampleRateHz;
  post({
    kind: 'done',
    spectrum: { density, binHz, segments, sampleRateHz, durationS, clippedShare, peaks: peaks.peaks },
  });
}

type Sound =
  | { readonly ok: true; readonly samples: Float64Array; readonly sampleRateHz: number; readonly clippedShare: number }
  | { readonly ok: false; readonly reason: string; readonly message: string };

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
