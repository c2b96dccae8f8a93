import { place, ticks, type PlotAxes } from './plot-axes.ts';

/** A plot of marks over a quantity, with usual bands as hatched floors: places in a frame of fixed size. */
export interface BandPlotView {
  readonly width: number;
  readonly height: number;
  readonly axes: PlotAxes;
  readonly bands: readonly {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
    readonly words: string;
  }[];
  /** Horizontal lines with their words: a limit. */
  readonly limits: readonly { readonly y: number; readonly words: string }[];
  readonly marks: readonly {
    readonly x: number;
    readonly y: number;
    readonly top: number;
    readonly bottom: number;
    readonly open: boolean;
    readonly words: string;
  }[];
  /** A curve through the marks; null for none. */
  readonly curve: string | null;
  readonly spoken: string;
  readonly caption: string;
}

export interface BandPlotInput {
  readonly x: { readonly from: number; readonly to: number; readonly unit: string };
  readonly y: {
    readonly from: number;
    readonly to: number;
    readonly unit: string;
    /** What is written at a line; the figure itself where it is left out. */
    readonly words?: (value: number) => string;
  };
  readonly bands: readonly {
    readonly from: number;
    readonly to: number;
    readonly low: number;
    readonly high: number;
    readonly words: string;
  }[];
  readonly limits?: readonly { readonly at: number; readonly words: string }[];
  readonly marks: readonly {
    readonly x: number;
    readonly y: number;
    readonly give: number;
    readonly open: boolean;
    readonly words: string;
  }[];
  readonly curve?: readonly (readonly [number, number])[];
  readonly spoken: string;
  readonly caption: string;
}

const FRAME = { width: 328, height: 252, left: 46, right: 314, top: 26, bottom: 216 } as const;

/** Lays a plot out; what lies outside the axes is drawn at their edge. */
export function bandPlot(input: BandPlotInput): BandPlotView {
  const { left, right, top, bottom } = FRAME;
  const x = scale(input.x.from, input.x.to, left, right);
  const y = scale(input.y.from, input.y.to, bottom, top);
  return {
    width: FRAME.width,
    height: FRAME.height,
    axes: {
      left,
      right,
      top,
      bottom,
      xTicks: ticks(input.x.from, input.x.to, 5).map((at) => ({ at: x(at), words: String(at) })),
      yTicks: ticks(input.y.from, input.y.to, 6).map((at) => ({ at: y(at), words: (input.y.words ?? String)(at) })),
      xUnit: input.x.unit,
      yUnit: input.y.unit,
    },
    bands: input.bands.map(({ from, to, low, high, words }) => ({
      x: x(from),
      y: y(high),
      width: x(to) - x(from),
      height: y(low) - y(high),
      words,
    })),
    limits: (input.limits ?? []).map(({ at, words }) => ({ y: y(at), words })),
    marks: input.marks.map((mark) => ({
      x: x(mark.x),
      y: y(mark.y),
      top: y(mark.y + mark.give),
      bottom: y(mark.y - mark.give),
      open: mark.open,
      words: mark.words,
    })),
    curve:
      input.curve === undefined || input.curve.length < 2
        ? null
        : input.curve.map(([a, b], i) => `${i === 0 ? 'M' : 'L'}${x(a)} ${y(b)}`).join(''),
    spoken: input.spoken,
    caption: input.caption,
  };
}

function scale(from: number, to: number, start: number, end: number): (value: number) => number {
  return (value) => {
    const share = Math.max(0, Math.min(1, (value - from) / (to - from)));
    return place(start + share * (end - start));
  };
}
