import { CHAMBERS, STROKE_CLASSES } from './chambers.ts';
import type { CoachField } from './field.ts';

/** Axles that a coach can have; the first one steers. */
export const AXLES = [1, 2, 3, 4] as const;
/** Axles for which the bench asks the volume of the chambers. */
const TANK_AXLES: readonly number[] = [1, 2, 3];

const named = (axle: number): string => (axle === 1 ? 'steer axle' : `axle ${axle}`);
const pairs = (rows: readonly (readonly [string, string])[]): { value: string; label: string }[] =>
  rows.map(([value, label]) => ({ value, label }));

/** What is asked of every axle. */
export function axleFields(axle: number): readonly CoachField[] {
  const id = (what: string): string => `axle.${axle}.${what}`;
  const of = named(axle);
  return [
    {
      id: id('weight'),
      group: 'axles',
      words: `Weight on the ${of}, as it travels`,
      kind: 'figure',
      measure: 'weight',
      range: [2000, 30_000],
      where: 'A truck scale, loaded as for a trip. The plate by the driver gives only what is allowed.',
      uses: [
        { kind: 'said', words: 'Least rating of a jack and stand under one corner, shown beside it' },
        { kind: 'check', check: 'coach-leans-or-settles-overnight/corner-weights' },
      ],
    },
    {
      id: id('tyre-size'),
      group: 'axles',
      words: `Tyre size, ${of}`,
      kind: 'text',
      most: 40,
      example: '12R22.5',
      where: 'Moulded into the side of each tyre.',
      uses: [{ kind: 'said', words: 'Ordering a tyre, and seeing that all of an axle are alike' }],
    },
    {
      id: id('tyre-week'),
      group: 'axles',
      words: `Week and year of the oldest tyre, ${of}`,
      kind: 'tyre-week',
      where: 'The last four digits of the long code on one side of the tyre: week and year, like 1419.',
      uses: [
        { kind: 'said', words: 'Age of the tyre, shown beside it' },
        { kind: 'check', check: 'tyre-look' },
      ],
    },
    {
      id: id('tyre-pressure'),
      group: 'axles',
      words: `Cold tyre pressure wanted, ${of}`,
      kind: 'figure',
      measure: 'pressure',
      range: [40, 150],
      where: 'From the weight of the axle and the load table of the tyre; the plate by the driver else.',
      uses: [{ kind: 'check', check: 'tyre-pressure-cold' }],
    },
    {
      id: id('chamber'),
      group: 'axles',
      words: `Brake chambers, ${of}`,
      kind: 'choice',
      values: pairs(CHAMBERS),
      where: 'Stamped on the clamp ring or the body of the chamber; measure the outside of the ring when it is not.',
      uses: [
        { kind: 'bench', page: 'stroke', entry: `stroke.${axle}.chamber` },
        ...(TANK_AXLES.includes(axle) ? [{ kind: 'bench', page: 'build', entry: `build.axle${axle}` } as const] : []),
      ],
    },
    {
      id: id('stroke-class'),
      group: 'axles',
      words: `Stroke of the chambers, ${of}`,
      kind: 'choice',
      values: pairs(STROKE_CLASSES),
      where: 'Square ports or a trapezoid tag on the chamber: long stroke. Round ports and no tag: standard.',
      uses: [
        { kind: 'bench', page: 'stroke', entry: `stroke.${axle}.class` },
        { kind: 'check', check: 'applied-stroke' },
      ],
    },
    {
      id: id('drum'),
      group: 'axles',
      words: `Drum, nominal inside diameter, ${of}`,
      kind: 'figure',
      measure: 'length',
      range: [10, 20],
      where: 'Cast into the drum, with its largest diameter; the brake plate or the parts book.',
      uses: [
        { kind: 'bench', page: 'lining', entry: 'drum.nominal' },
        { kind: 'check', check: 'drum-off' },
      ],
    },
  ];
}
