/** A place on an axis with the figure written there. */
export interface Tick {
  readonly at: number;
  readonly words: string;
}

/** The frame of a plot of the bench, in units of the drawing, with what is written along it. */
export interface PlotAxes {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly xTicks: readonly Tick[];
  readonly yTicks: readonly Tick[];
  readonly xUnit: string;
  readonly yUnit: string;
}

/** Round figures that enclose a span, at most so many steps. */
export function ticks(from: number, to: number, most: number): readonly number[] {
  const rough = Math.max(1e-9, to - from) / most;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 5, 10].find((each) => each * power >= rough) ?? 10);
  const first = Math.floor(from / step + 1e-9);
  const last = Math.ceil(to / step - 1e-9);
  return Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}

/** A place of a drawing, to a tenth of a unit. */
export function place(value: number): number {
  return Math.round(value * 10) / 10;
}
