import FFT from 'fft.js';
import type { HalfSpectrum } from '../../shared/measuring/index.ts';

const NOTHING: HalfSpectrum = { re: [], im: [] };

/**
 * The package's transform in the form that the calculations take.
 *
 * @param signal  real; a power of two of samples, 4 or more. The package knows no other length: then no bins come back,
 *   and the calculation refuses with `bad-transform`.
 */
export function packageTransform(): (signal: Float64Array) => HalfSpectrum {
  let fft: FFT | null = null;
  return (signal) => {
    const n = signal.length;
    if (n < 4 || (n & (n - 1)) !== 0) return NOTHING;
    if (fft?.size !== n) fft = new FFT(n);
    const out = new Float64Array(2 * n);
    fft.realTransform(out, signal);
    const re = new Float64Array(n / 2 + 1);
    const im = new Float64Array(n / 2 + 1);
    for (let k = 0; k <= n / 2; k++) {
      re[k] = out[2 * k]!;
      im[k] = out[2 * k + 1]!;
    }
    return { re, im };
  };
}
