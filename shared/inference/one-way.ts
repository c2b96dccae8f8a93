/** slope · x + intercept. */
export interface Line {
  readonly slope: number;
  readonly intercept: number;
}

/**
 * One-way sensitivity: unnormalised weights that are linear in one number x, from their values at 0 and 1.
 *
 * @param weights  the weights when the number is x, one a cause; linear in x.
 * @source P(h|e)(x) = (αx + β)/(γx + δ): Laskey 1995; Castillo, Gutiérrez & Hadi 1997; Coupé & van der Gaag 2002 (from
 *   memory); that few evaluations suffice: Kjærulff & van der Gaag 2000 (abstract read).
 */
export function linesThrough(weights: (x: number) => ArrayLike<number>): Line[] {
  const at0 = weights(0);
  const at1 = weights(1);
  return Array.from(at0, (intercept, c) => ({ slope: at1[c]! - intercept, intercept }));
}

/** Σ factor · line: all weights together (factors 1), or the expected loss of a decision (factors = its losses). */
export function combined(lines: readonly Line[], factors: (column: number) => number): Line {
  let slope = 0;
  let intercept = 0;
  lines.forEach((line, c) => {
    slope += factors(c) * line.slope;
    intercept += factors(c) * line.intercept;
  });
  return { slope, intercept };
}

/** Share of one weight in all of them, and how fast it changes, at x. */
export function shareAt(lines: readonly Line[], column: number, x: number): { value: number; derivative: number } {
  const { slope: alpha, intercept: beta } = lines[column]!;
  const { slope: gamma, intercept: delta } = combined(lines, () => 1);
  const total = gamma * x + delta;
  return { value: (alpha * x + beta) / total, derivative: (alpha * delta - beta * gamma) / total ** 2 };
}

/** Where two lines cross; null when they run side by side. */
export function crossingOf(a: Line, b: Line): number | null {
  const slope = a.slope - b.slope;
  return slope === 0 ? null : (b.intercept - a.intercept) / slope;
}
