/**
 * Φ(z), the standard normal distribution function, to about 1e-15.
 *
 * @source Marsaglia, Evaluating the Normal Distribution, Journal of Statistical Software 11(4), 2004: Taylor series
 *   about 0 for small |z|; beyond that the continued fraction of the tail (Abramowitz & Stegun 26.2.14). From memory,
 *   held against published table values in the tests.
 */
export function normalCdf(z: number): number {
  if (Number.isNaN(z)) return NaN;
  if (z > 38) return 1;
  if (z < -38) return 0;
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  if (Math.abs(z) < 4) {
    let term = z;
    let sum = z;
    for (let k = 3; Math.abs(term) > 1e-18 * Math.abs(sum) && k < 400; k += 2) {
      term *= (z * z) / k;
      sum += term;
    }
    return 0.5 + density * sum;
  }
  const x = Math.abs(z);
  let fraction = 0;
  for (let k = 120; k >= 1; k--) fraction = k / (x + fraction);
  const tail = density / (x + fraction);
  return z > 0 ? 1 - tail : tail;
}
