import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';
import { binsOf, soundSamples, type RealTransform } from './transform.ts';
import { amplitudeSpectrum } from './welch.ts';

export interface EnvelopeSettings {
  readonly samples: Float64Array;
  readonly sampleRateHz: number;
  /** Band about a resonance that impacts ring, for an accelerometer often 2–5 kHz (judgement). */
  readonly lowHz: number;
  readonly highHz: number;
}

export interface EnvelopeSpectrum {
  /** Amplitude by bin of the envelope, its mean taken off, Hann window. */
  readonly amplitude: Float64Array;
  readonly binHz: number;
  readonly meanEnvelope: number;
  /** Of the band-passed signal: 3 for noise, higher for impacts. */
  readonly kurtosis: number;
}

export type EnvelopeRefusal =
  OutOfRange | 'band-outside' | 'silent-band' | 'not-a-number' | 'too-short' | 'bad-transform';

/** The envelope of a band as a signal at the rate of its record, and the kurtosis of the band itself. */
export interface BandEnvelope {
  readonly envelope: Float64Array;
  readonly kurtosis: number;
}

/**
 * Spectrum of the envelope of a band: the rate of impacts that ring a resonance, which the plain spectrum hides.
 *
 * A cabin recording does not hold the impacts of a bearing; a sensor on the metal is needed (judgement).
 *
 * @returns one transform of the whole record, not averaged; refused as `bandEnvelope` and `welchDensity`.
 */
export function envelopeSpectrum(
  settings: EnvelopeSettings,
  transform: RealTransform,
): Outcome<EnvelopeSpectrum, EnvelopeRefusal> {
  const found = bandEnvelope(settings, transform);
  if (!found.ok) return found;
  const { envelope, kurtosis } = found;
  const spectrum = amplitudeSpectrum(envelope, settings.sampleRateHz, transform);
  if (!spectrum.ok) return spectrum;
  const { amplitude, binHz } = spectrum;
  const meanEnvelope = envelope.reduce((sum, each) => sum + each, 0) / envelope.length;
  return { ok: true, amplitude, binHz, meanEnvelope, kurtosis };
}

/**
 * The envelope of a band of a record, for a spectrum that is averaged over its pieces.
 *
 * @returns as many samples as the record has, one less where that is odd; refused `band-outside` when the band does not lie
 *   between 0 and 0.4 of the sample rate, `silent-band` when there is nothing in it, `not-a-number`, `bad-transform`,
 *   `out-of-range`.
 * @source Analytic signal: negative frequencies zero, positive doubled; envelope its magnitude. Held against
 *   scipy.signal.hilbert in the tests.
 */
export function bandEnvelope(
  settings: EnvelopeSettings,
  transform: RealTransform,
): Outcome<BandEnvelope, Exclude<EnvelopeRefusal, 'too-short'>> {
  const { sampleRateHz, lowHz, highHz } = settings;
  const n = settings.samples.length - (settings.samples.length % 2);
  const bad = outOfRange(
    ['sample rate', sampleRateHz, 1, 200_000, 'Hz'],
    ['number of samples', n, 64, 1 << 24, ''],
    ['low end of the band', lowHz, 0, 1e5, 'Hz'],
    ['high end of the band', highHz, 0, 1e5, 'Hz'],
  );
  if (bad) return bad;
  if (!(lowHz > 0 && lowHz < highHz && highHz <= 0.4 * sampleRateHz)) {
    return refuse(
      'band-outside',
      `The band ${lowHz} to ${highHz} Hz must rise and lie below 0.4 of the sample rate, ${0.4 * sampleRateHz} Hz.`,
    );
  }
  const samples = settings.samples.subarray(0, n);
  if (!soundSamples(samples)) {
    return refuse('not-a-number', 'The record holds a sample that is no number, or beyond 1e9. Record again.');
  }
  const band = bandPassed(samples, lowHz / (sampleRateHz / n), highHz / (sampleRateHz / n), transform);
  if (!band) return refuse('bad-transform', `The transform of ${n} samples gave too few bins; ${n / 2 + 1} are due.`);
  const kurtosis = kurtosisOf(band.real);
  if (kurtosis === null) {
    return refuse('silent-band', `There is nothing between ${lowHz} and ${highHz} Hz. Choose another band.`);
  }
  return { ok: true, envelope: band.envelope, kurtosis };
}

/**
 * The band of a record as a signal and as its envelope. The way back from frequencies runs through the same forward
 * transform: the inverse of Z is the conjugate of the transform of its conjugate, and a complex transform is two real ones.
 */
function bandPassed(
  samples: Float64Array,
  lowBin: number,
  highBin: number,
  transform: RealTransform,
): { readonly real: Float64Array; readonly envelope: Float64Array } | null {
  const n = samples.length;
  const spectrum = binsOf(samples, transform);
  if (!spectrum) return null;
  const re = new Float64Array(n);
  const im = new Float64Array(n);
  for (let k = Math.max(1, Math.ceil(lowBin)); k <= Math.min(n / 2 - 1, Math.floor(highBin)); k++) {
    re[k] = (2 * spectrum.re[k]!) / n;
    im[k] = (-2 * spectrum.im[k]!) / n;
  }
  const a = binsOf(re, transform);
  const b = binsOf(im, transform);
  if (!a || !b) return null;
  const real = new Float64Array(n);
  const envelope = new Float64Array(n);
  for (let t = 0; t < n; t++) {
    // Bins above n/2 of a real signal's transform are the conjugates of those below.
    const k = t <= n / 2 ? t : n - t;
    const sign = t <= n / 2 ? 1 : -1;
    real[t] = a.re[k]! - sign * b.im[k]!;
    envelope[t] = Math.hypot(real[t]!, sign * a.im[k]! + b.re[k]!);
  }
  return { real, envelope };
}

/**
 * Fourth moment over the squared second; null for a signal that is constant.
 *
 * @param values  finite, one or more.
 */
export function kurtosisOf(values: Float64Array): number | null {
  const n = values.length;
  let mean = 0;
  for (const value of values) mean += value / n;
  let second = 0;
  let fourth = 0;
  for (const value of values) {
    const square = (value - mean) ** 2;
    second += square / n;
    fourth += square ** 2 / n;
  }
  return second > 1e-24 ? fourth / second ** 2 : null;
}
