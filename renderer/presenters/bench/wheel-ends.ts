export type Side = 'left' | 'right';
export const SIDES: readonly Side[] = ['left', 'right'];

/** Coaches of two to four axles; the first one steers. */
export const AXLE_COUNTS: readonly (readonly [string, string])[] = [
  ['2', 'Two axles'],
  ['3', 'Three axles'],
  ['4', 'Four axles'],
];

/** What an axle is called beside its figures. */
export function axleName(axle: number): string {
  return axle === 1 ? 'Steer axle' : `Axle ${axle}`;
}

/** What is written at a wheel in the drawing of the coach from above. */
export interface DrawnEnd {
  readonly axle: number;
  readonly side: Side;
  readonly words: string;
  /** Sign beside the words; null for none. */
  readonly mark: 'tick' | 'straddle' | 'cross' | null;
  /** The wheel is drawn lit. */
  readonly lit: boolean;
}

/** Places of the drawing: 328 units wide, front of the coach on top. */
export interface CoachView {
  readonly height: number;
  readonly wheels: readonly (DrawnEnd & { readonly x: number; readonly y: number; readonly textX: number })[];
  readonly spoken: string;
}

const STEP = 92;
const FIRST = 74;

export function coachView(axles: number, ends: readonly DrawnEnd[]): CoachView {
  const signs = { tick: 'within the limit', straddle: 'too close to call', cross: 'beyond the limit' } as const;
  return {
    height: FIRST + STEP * (axles - 1) + 56,
    wheels: ends.map((end) => ({
      ...end,
      x: end.side === 'left' ? 118 : 192,
      y: FIRST + STEP * (end.axle - 1) - 22,
      textX: end.side === 'left' ? 104 : 224,
    })),
    spoken: `The coach from above, front on top. ${ends
      .map(
        ({ axle, side, words, mark, lit }) =>
          `${axleName(axle)} ${side}: ${words}${mark ? `, ${signs[mark]}` : ''}${lit ? ', marked' : ''}`,
      )
      .join('; ')}.`,
  };
}
