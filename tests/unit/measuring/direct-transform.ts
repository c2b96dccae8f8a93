/** The Fourier sum as it is defined, n² steps: slow and plain, so that no package is trusted in a reference test. */
export function directTransform(signal: Float64Array): { readonly re: Float64Array; readonly im: Float64Array } {
  const n = signal.length;
  const cos = Float64Array.from({ length: n }, (_, t) => Math.cos((2 * Math.PI * t) / n));
  const sin = Float64Array.from({ length: n }, (_, t) => Math.sin((2 * Math.PI * t) / n));
  const re = new Float64Array(n / 2 + 1);
  const im = new Float64Array(n / 2 + 1);
  for (let k = 0; k <= n / 2; k++) {
    let real = 0;
    let imaginary = 0;
    let turn = 0;
    for (let t = 0; t < n; t++) {
      real += signal[t]! * cos[turn]!;
      imaginary -= signal[t]! * sin[turn]!;
      turn += k;
      if (turn >= n) turn -= n;
    }
    re[k] = real;
    im[k] = imaginary;
  }
  return { re, im };
}
