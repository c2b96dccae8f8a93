/**
 * Student's t distribution function for a whole number of degrees of freedom.
 *
 * @param t    a finite number.
 * @param dof  degrees of freedom, whole, 1 or more; fractions are cut off.
 * @returns probability in 0…1 that a t variable is at most `t`.
 * @source Abramowitz & Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4 (memory); held against values by
 *   SciPy in the tests.
 */
export function studentCdf(t: number, dof: number): number {
  const n = Math.max(1, Math.trunc(dof));
  const angle = Math.atan(t / Math.sqrt(n));
  const cos2 = Math.cos(angle) ** 2;
  const odd = n % 2 === 1;
  let term = odd ? Math.cos(angle) : 1;
  let sum = n === 1 ? 0 : term;
  for (let k = odd ? 3 : 2; k <= n - 2; k += 2) {
    term *= ((k - 1) / k) * cos2;
    sum += term;
  }
  const central = odd ? (2 / Math.PI) * (angle + Math.sin(angle) * sum) : Math.sin(angle) * sum;
  return (1 + central) / 2;
}
