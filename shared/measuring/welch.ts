import { outOfRange, refuse, type Outcome, type OutOfRange, type Refusal } from './outcome.ts';
import { binsOf, hannWindow, soundSamples, type RealTransform } from './transform.ts';

export interface WelchSettings {
  readonly samples: Float64Array;
  readonly sampleRateHz: number;
  /** Even; longer tells closer frequencies apart, shorter averages more. */
  readonly segmentLength: number;
  /** Share of a segment that the next one repeats; 0.5 for a Hann window. */
  readonly overlap: number;
  readonly window: 'hann' | 'rectangular';
}

export interface PowerDensity {
  /** One-sided, unit²/Hz, bins 0 … segmentLength/2. */
  readonly density: Float64Array;
  readonly binHz: number;
  readonly segments: number;
}

export type SpectrumRefusal = OutOfRange | 'too-short' | 'not-a-number' | 'bad-transform';

/** One windowed segment of a record, its mean taken off. */
function windowed(samples: Float64Array, from: number, window: Float64Array): Float64Array {
  const n = window.length;
  let mean = 0;
  for (let t = 0; t < n; t++) mean += samples[from + t]!;
  mean /= n;
  const out = new Float64Array(n);
  for (let t = 0; t < n; t++) out[t] = (samples[from + t]! - mean) * window[t]!;
  return out;
}

function tooFewBins(n: number): Refusal<'bad-transform'> {
  return refuse('bad-transform', `The transform of ${n} samples gave fewer than the ${n / 2 + 1} bins that are due.`);
}

/**
 * Power spectral density of a record by Welch's method.
 *
 * @returns refused `too-short` when not one segment fits, `not-a-number` when a sample is none, `bad-transform` when the
 *   transform gives too few bins, `out-of-range`.
 * @source P. D. Welch 1967; scaling 2·|X|²/(f_s·Σw²), 1 in place of 2 at the ends. Sum of density × bin width is the mean
 *   square (Parseval); the tests hold it against SciPy.
 */
export function welchDensity(
  settings: WelchSettings,
  transform: RealTransform,
): Outcome<PowerDensity, SpectrumRefusal> {
  const { samples, sampleRateHz, segmentLength: n } = settings;
  const bad = outOfRange(
    ['sample rate', sampleRateHz, 1, 200_000, 'Hz'],
    ['segment length', n, 16, 1 << 20, 'samples'],
    ['overlap', settings.overlap, 0, 0.95, ''],
  );
  if (bad) return bad;
  if (n % 2 !== 0) return refuse('out-of-range', `The segment length is ${n}; it must be an even whole number.`);
  if (samples.length < n) {
    return refuse(
      'too-short',
      `The record has ${samples.length} samples, one segment takes ${n}. Record longer or take shorter segments.`,
    );
  }
  if (!soundSamples(samples)) {
    return refuse('not-a-number', 'The record holds a sample that is no number, or beyond 1e9. Record again.');
  }
  const window = settings.window === 'hann' ? hannWindow(n) : new Float64Array(n).fill(1);
  const power = window.reduce((sum, each) => sum + each * each, 0);
  const step = Math.max(1, n - Math.floor(n * settings.overlap));
  const density = new Float64Array(n / 2 + 1);
  let segments = 0;
  for (let from = 0; from + n <= samples.length; from += step) {
    const spectrum = binsOf(windowed(samples, from, window), transform);
    if (!spectrum) return tooFewBins(n);
    for (let k = 0; k <= n / 2; k++) density[k]! += spectrum.re[k]! ** 2 + spectrum.im[k]! ** 2;
    segments++;
  }
  const scale = 1 / (sampleRateHz * power * segments);
  for (let k = 0; k <= n / 2; k++) density[k]! *= k === 0 || k === n / 2 ? scale : 2 * scale;
  return { ok: true, density, binHz: sampleRateHz / n, segments };
}

/**
 * Amplitudes of the tones in a record from one Hann-windowed transform of all of it.
 *
 * @param samples  even length, 16 or more; the mean is taken off.
 * @returns amplitude by bin, 2·|X|/Σw; refused as `welchDensity`.
 */
export function amplitudeSpectrum(
  samples: Float64Array,
  sampleRateHz: number,
  transform: RealTransform,
): Outcome<{ readonly amplitude: Float64Array; readonly binHz: number }, SpectrumRefusal> {
  const n = samples.length - (samples.length % 2);
  const bad = outOfRange(['sample rate', sampleRateHz, 1, 200_000, 'Hz'], ['number of samples', n, 16, 1 << 24, '']);
  if (bad) return bad;
  if (!soundSamples(samples)) {
    return refuse('not-a-number', 'The record holds a sample that is no number, or beyond 1e9. Record again.');
  }
  const spectrum = binsOf(windowed(samples, 0, hannWindow(n)), transform);
  if (!spectrum) return tooFewBins(n);
  // Σw of a periodic Hann window is exactly n/2.
  const amplitude = Float64Array.from(
    { length: n / 2 + 1 },
    (_, k) => (4 / n) * Math.hypot(spectrum.re[k]!, spectrum.im[k]!),
  );
  return { ok: true, amplitude, binHz: sampleRateHz / n };
}

/**
 * How long to record so that two frequencies can be told apart.
 *
 * @returns seconds of one segment and of the whole record (at least four segments at half overlap); refused `same` when
 *   the two are equal, `out-of-range`.
 * @source A Hann main lobe is four bins wide: segment ≥ 2/|f1 − f2|, record ≥ 2.5 segments.
 */
export function recordLengthS(
  firstHz: number,
  secondHz: number,
): Outcome<{ readonly segmentS: number; readonly recordS: number }, OutOfRange | 'same'> {
  const bad = outOfRange(['first frequency', firstHz, 0, 1e5, 'Hz'], ['second frequency', secondHz, 0, 1e5, 'Hz']);
  if (bad) return bad;
  const apart = Math.abs(firstHz - secondHz);
  if (apart < 1e-6) return refuse('same', 'Both frequencies are the same; no record tells them apart.');
  return { ok: true, segmentS: 2 / apart, recordS: 5 / apart };
}
