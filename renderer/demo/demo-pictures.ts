import { Raster } from './raster.ts';

/** Photos of the invented visit: drawings that say so. */
export type DemoPicture = 'spot' | 'bearing' | 'hose';

const [GROUND, PALE, GREY, DARK, BLACK, AMBER, BROWN, STEEL] = [0, 1, 2, 3, 4, 5, 6, 7];
const INKS = [
  [214, 208, 196],
  [246, 243, 235],
  [150, 150, 148],
  [86, 84, 82],
  [30, 29, 28],
  [201, 140, 44],
  [120, 78, 30],
  [186, 192, 198],
] as const;

/** A drawing as the bytes of a PNG. */
export function demoPicture(of: DemoPicture): Uint8Array<ArrayBuffer> {
  const drawing = new Raster(360, 240, INKS);
  DRAW[of](drawing);
  drawing.box(0, 214, 360, 26, BLACK);
  drawing.word('INVENTED', 12, 218, 2, PALE);
  return drawing.png();
}

const DRAW: Readonly<Record<DemoPicture, (on: Raster) => void>> = {
  /** Oil on the sheet of paper, inside of the front wheel. */
  spot: (on) => {
    on.box(0, 0, 360, 214, DARK);
    on.box(24, 16, 312, 184, PALE);
    on.box(24, 16, 70, 184, GREY);
    for (const [x, y, r] of [
      [196, 108, 40],
      [226, 92, 26],
      [170, 128, 24],
      [240, 130, 16],
      [262, 152, 6],
      [150, 82, 5],
    ] as const)
      on.disc(x, y, r, AMBER);
    on.disc(200, 110, 22, BROWN);
  },
  /** Cup of a bearing with pits over a third of its track. */
  bearing: (on) => {
    on.disc(180, 108, 96, DARK);
    on.disc(180, 108, 90, STEEL, 52);
    on.disc(180, 108, 52, BLACK);
    on.disc(180, 108, 74, GREY, 68);
    for (let i = 0; i < 15; i++) {
      const turn = -0.4 + (i * 2.2) / 15;
      on.disc(180 + 71 * Math.cos(turn), 108 + 71 * Math.sin(turn), 2 + (i % 4), BLACK);
    }
  },
  /** Hose rubbed to its cord where it passes a bracket. */
  hose: (on) => {
    on.box(250, 0, 22, 214, GREY);
    on.stroke(20, 40, 130, 90, 34, BLACK);
    on.stroke(130, 90, 240, 104, 34, BLACK);
    on.stroke(240, 104, 346, 176, 34, BLACK);
    on.stroke(206, 98, 250, 108, 24, BROWN);
    for (let i = 0; i < 6; i++) {
      on.stroke(206 + 8 * i, 90, 212 + 8 * i, 114, 2, PALE);
      on.stroke(212 + 8 * i, 90, 206 + 8 * i, 114, 2, GROUND);
    }
  },
};
