/** Bins 0 … n/2 of the Fourier transform of a real signal of even length n: Σ x[t]·e^(−2πi·k·t/n), not scaled. */
export interface HalfSpectrum {
  readonly re: ArrayLike<number>;
  readonly im: ArrayLike<number>;
}

/**
 * A fast Fourier transform, passed in: the calculations here do not choose the package.
 *
 * @param signal  real, even length; must not be changed. The result may be a buffer that the next call overwrites.
 */
export type RealTransform = (signal: Float64Array) => HalfSpectrum;

/** Bins of a signal, copied out of the transform's own buffer; null when it gives fewer than it owes. */
export function binsOf(signal: Float64Array, transform: RealTransform): HalfSpectrum | null {
  const { re, im } = transform(signal);
  const due = signal.length / 2 + 1;
  return re.length >= due && im.length >= due ? { re: Float64Array.from(re), im: Float64Array.from(im) } : null;
}

/**
 * The periodic Hann window, 0.5 − 0.5·cos(2πt/n): coherent gain 0.5, noise bandwidth 1.5 bins.
 *
 * @source Harris 1978 (memory), recomputed in the tests.
 */
export function hannWindow(n: number): Float64Array {
  return Float64Array.from({ length: n }, (_, t) => 0.5 - 0.5 * Math.cos((2 * Math.PI * t) / n));
}

/** A sample larger than this squares beyond every figure; full scale of a recording is 1. */
const LARGEST_SAMPLE = 1e9;

/** Whether every sample is a number that a spectrum can be made of. */
export function soundSamples(samples: Float64Array): boolean {
  return samples.every((each) => Math.abs(each) <= LARGEST_SAMPLE);
}
