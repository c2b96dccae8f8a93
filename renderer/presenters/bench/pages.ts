import { BEARING_SHEET, JOINT_SHEET } from './sheets/bearings.ts';
import { FORCES_SHEET, STOP_CAUTIONS, STOP_SHEET } from './sheets/brakes.ts';
import { BOOK_SHEET, GAUGES_SHEET, HEATS_SHEET, ROUND_SHEET, SIDES_SHEET } from './sheets/compare.ts';
import { DRIP_CAUTIONS, DRIP_SHEET, USE_SHEET } from './sheets/drips.ts';
import { COAST_SHEET, RUN_DOWN_SHEET } from './sheets/engine-brake.ts';
import { GRADE_SHEET, VISCOSITY_SHEET } from './sheets/fluids.ts';
import { HAND_CAUTIONS, HEIGHT_SHEET, LASH_SHEET, SUSPENSION_SHEET, TREAD_SHEET } from './sheets/hand-tools.ts';
import { FAILS_SHEET, LIFE_SHEET, REBUILD_SHEET } from './sheets/life.ts';
import { LIFT_CAUTIONS, LIFT_SHEET } from './sheets/lifting.ts';
import { NEAR_SHEET } from './sheets/near-limit.ts';
import { OIL_PRESSURE_CAUTIONS, OIL_PRESSURE_SHEET } from './sheets/oil-pressure.ts';
import type { BenchPage } from './page-ids.ts';
import type { Sheet } from './sheet.ts';

/** The pages of the bench in the order of the list; the first ten have the keys 1 to 9 and 0. */
export const BENCH_GROUPS = [
  {
    words: 'Air',
    pages: [
      ['leak', 'Air leak-down'],
      ['build', 'Build-up and tanks'],
      ['bands', 'Governor, warning, knob'],
      ['flow', 'Leak as a flow'],
    ],
  },
  {
    words: 'Brakes and wheel ends',
    pages: [
      ['stroke', 'Pushrod stroke'],
      ['lining', 'Lining, drum, wear'],
      ['heat', 'Wheel ends compared'],
      ['endplay', 'End play and nut'],
    ],
  },
  {
    words: 'What turns',
    pages: [
      ['orders', 'What turns how fast'],
      ['sound', 'Sound and shake'],
      ['bearing', 'Bearings and joints'],
    ],
  },
  {
    words: 'On the road and by hand',
    pages: [
      ['stop', 'Stopping and force'],
      ['retard', 'Engine brake'],
      ['hand', 'Steering, tyres, springs'],
      ['compare', 'Against book or mate'],
    ],
  },
  {
    words: 'Fluids',
    pages: [
      ['drip', 'Drips and use'],
      ['oil', 'Oil pressure'],
      ['fluid', 'How thick is it'],
    ],
  },
  {
    words: 'Before deciding',
    pages: [
      ['limit', 'Near a limit'],
      ['life', 'Renew now or later'],
      ['lift', 'Lifting'],
    ],
  },
] as const satisfies readonly {
  readonly words: string;
  readonly pages: readonly (readonly [BenchPage, string])[];
}[];

export const BENCH_PAGES: readonly (readonly [BenchPage, string])[] = BENCH_GROUPS.flatMap(
  ({ pages }): readonly (readonly [BenchPage, string])[] => pages,
);

/** A page that is nothing but sheets. */
export interface SheetPage {
  readonly because: string;
  readonly cautions: readonly string[];
  readonly sheets: readonly Sheet[];
}

export const SHEET_PAGES: Readonly<Partial<Record<BenchPage, SheetPage>>> = {
  bearing: {
    because: 'Damage in a bearing knocks at its own rate; a joint at an angle shakes twice a turn.',
    cautions: [
      'A recorder at the hub is fixed with the coach standing, chocked and the wheel cold; nobody reaches there under way.',
    ],
    sheets: [BEARING_SHEET, JOINT_SHEET],
  },
  stop: {
    because: 'What the brakes do together. A good figure says nothing about one wheel, nor about the next stop.',
    cautions: STOP_CAUTIONS,
    sheets: [STOP_SHEET, FORCES_SHEET],
  },
  retard: {
    because: 'How much of the engine brake acts, from a watch.',
    // One sheet is for the standing coach, the other for the road: each has its own.
    cautions: [],
    sheets: [RUN_DOWN_SHEET, COAST_SHEET],
  },
  hand: {
    because: 'What a tape, a tread gauge and a watch can tell.',
    cautions: HAND_CAUTIONS,
    sheets: [LASH_SHEET, TREAD_SHEET, SUSPENSION_SHEET, HEIGHT_SHEET],
  },
  compare: {
    because: 'Two readings, or a reading and the book. What both have wrong goes out of a difference.',
    cautions: ['Running engine: sleeves and hoses away from belts and fan; hot parts are read from a distance.'],
    sheets: [BOOK_SHEET, GAUGES_SHEET, HEATS_SHEET, ROUND_SHEET, SIDES_SHEET],
  },
  drip: {
    because: 'A drop is no measure; a count over time is one.',
    cautions: DRIP_CAUTIONS,
    sheets: [DRIP_SHEET, USE_SHEET],
  },
  oil: {
    because: 'Pressure means something only beside engine speed and oil temperature.',
    cautions: OIL_PRESSURE_CAUTIONS,
    sheets: [OIL_PRESSURE_SHEET],
  },
  fluid: {
    because: 'Whether the fluid is too thick or too thin for what it has to do, and which would be right.',
    cautions: ['Never mix fluids to reach a figure. The unit’s book names the fluid; this says only how thick it is.'],
    sheets: [VISCOSITY_SHEET, GRADE_SHEET],
  },
  limit: {
    because:
      'What may be said of a reading that lies close to its limit, and what a repeat or a better gauge would do.',
    cautions: ['For driving, too close to call counts as failing.'],
    sheets: [NEAR_SHEET],
  },
  life: {
    because: 'Expected cost, on a judged life. For parts that are still sound and that nobody’s life hangs on.',
    cautions: ['Brake, steering and wheel-end parts are never weighed by cost: past their limit they are renewed.'],
    sheets: [LIFE_SHEET, FAILS_SHEET, REBUILD_SHEET],
  },
  lift: {
    because: 'Whether jack and stands are enough by the numbers.',
    cautions: LIFT_CAUTIONS,
    sheets: [LIFT_SHEET],
  },
};
