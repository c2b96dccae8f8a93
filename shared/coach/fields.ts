/** Everything that a profile can know beside the layout: words, unit, plausible span, who uses it, where it is found. */
import { AXLES, axleFields } from './axle-fields.ts';
import type { CoachField, FieldUse } from './field.ts';

type Row = Omit<Extract<CoachField, { kind: 'figure' }>, 'kind' | 'uses'> & { readonly uses: readonly FieldUse[] };
const figure = (row: Row): CoachField => ({ kind: 'figure', ...row });
const bench = (page: string, entry: string): FieldUse => ({ kind: 'bench', page, entry });
const check = (id: string): FieldUse => ({ kind: 'check', check: id });
const said = (words: string): FieldUse => ({ kind: 'said', words });

const FLUID_COLOURS = [
  { value: 'red', label: 'Red or pink' },
  { value: 'clear-amber', label: 'Clear amber' },
  { value: 'green-blue-orange', label: 'Green, blue, yellow or orange' },
] as const;

const service = (id: string, words: string, where: string): CoachField => ({
  id: `service.${id}`,
  group: 'service',
  words,
  kind: 'day',
  where,
  uses: [said('Time since then, shown beside it and in the history of the coach')],
});

const DRIVE: readonly CoachField[] = [
  {
    id: 'axle.count',
    group: 'axles',
    words: 'Axles',
    kind: 'choice',
    values: [2, 3, 4].map((n) => ({ value: String(n), label: String(n) })),
    where: 'Count them: steer, drive, and a tag axle where there is one.',
    uses: [bench('stroke', 'stroke.axles'), bench('heat', 'heat.axles')],
  },
  figure({
    id: 'ratio.axle',
    group: 'drive',
    words: 'Ratio of the drive axle',
    measure: 'ratio',
    range: [2, 8],
    where: 'A tag at a bolt of the axle housing; else count turns of shaft and wheel, chocked and raised.',
    uses: [bench('orders', 'orders.axle')],
  }),
  figure({
    id: 'ratio.top',
    group: 'drive',
    words: 'Ratio of the top gear (1 is direct)',
    measure: 'ratio',
    range: [0.5, 2],
    where: 'The plate of the gearbox gives its model; its book the ratios.',
    uses: [bench('orders', 'orders.gear')],
  }),
  figure({
    id: 'ratio.next',
    group: 'drive',
    words: 'Ratio of the gear below it',
    measure: 'ratio',
    range: [0.6, 5],
    where: 'The book of the gearbox.',
    uses: [bench('orders', 'orders.nextGear')],
  }),
  figure({
    id: 'ratio.belt-part',
    group: 'drive',
    words: 'Turns of the belt-driven part for one of the engine',
    measure: 'ratio',
    range: [0.2, 6],
    where: 'Diameter of the engine’s pulley divided by that of the part.',
    uses: [bench('orders', 'orders.accessory')],
  }),
  figure({
    id: 'tyre.turns',
    group: 'drive',
    words: 'Turns of a drive tyre over a mile',
    measure: 'turns',
    range: [350, 800],
    where: 'The data sheet of the tyre.',
    uses: [bench('orders', 'orders.revs')],
  }),
  figure({
    id: 'tyre.free',
    group: 'drive',
    words: 'Free diameter of a drive tyre',
    measure: 'length',
    range: [28, 50],
    where: 'The data sheet of the tyre.',
    uses: [bench('orders', 'orders.free')],
  }),
  figure({
    id: 'tyre.loaded',
    group: 'drive',
    words: 'Static loaded radius of a drive tyre',
    measure: 'length',
    range: [13, 25],
    where: 'From the ground to the middle of the wheel, standing on it.',
    uses: [bench('orders', 'orders.loaded')],
  }),
  figure({
    id: 'engine.cylinders',
    group: 'drive',
    words: 'Cylinders of the engine',
    measure: 'count',
    whole: true,
    range: [3, 16],
    where: 'The plate of the engine, or count the injectors.',
    uses: [
      bench('orders', 'orders.cylinders'),
      { kind: 'said', words: 'Places of checks that are made at a cylinder' },
    ],
  }),
  figure({
    id: 'retarder.housings',
    group: 'drive',
    words: 'Housings of the engine brake',
    measure: 'count',
    whole: true,
    range: [1, 8],
    where: 'Under the rocker covers: one or two for each cylinder head.',
    uses: [check('weak-engine-brake/housing-psi')],
  }),
];

const AIR: readonly CoachField[] = [
  ...(['supply', 'first', 'second', 'other'] as const).map((id) =>
    figure({
      id: `reservoir.${id}`,
      group: 'air',
      words: {
        supply: 'Supply (wet) tank',
        first: 'First service tank',
        second: 'Second service tank',
        other: 'Other tanks together',
      }[id],
      measure: 'volume',
      range: [100, 12_000],
      where: 'The plate of the tank; else its length and outside diameter give the volume.',
      uses: [bench('build', 'build.fitted'), ...(id === 'supply' ? [] : [bench('flow', 'flow.volume')])],
    }),
  ),
  figure({
    id: 'built.year',
    group: 'air',
    words: 'Year of build',
    measure: 'count',
    whole: true,
    range: [1930, 2100],
    where: 'The plate by the driver or the papers of the coach.',
    uses: [bench('bands', 'bands.year')],
  }),
  figure({
    id: 'built.month',
    group: 'air',
    words: 'Month of build, 1 to 12',
    measure: 'count',
    whole: true,
    range: [1, 12],
    where: 'The plate by the driver. It matters for 1975 only.',
    uses: [bench('bands', 'bands.month')],
  }),
];

const FLUIDS: readonly CoachField[] = [
  {
    id: 'fluid.engine-oil',
    group: 'fluids',
    words: 'Engine oil in use',
    kind: 'text',
    most: 80,
    example: 'SAE 40',
    where: 'The last invoice or the tag at the filler. The engine’s book says what it must be.',
    uses: [check('oil-level'), said('Topping up with the same oil')],
  },
  {
    id: 'fluid.coolant-colour',
    group: 'fluids',
    words: 'Colour of the coolant in use',
    kind: 'choice',
    values: FLUID_COLOURS,
    where: 'The sight glass or the surge tank, cold. Never open a hot cap.',
    uses: [said('What a spot of the overnight drip sheet points to')],
  },
  {
    id: 'fluid.transmission-colour',
    group: 'fluids',
    words: 'Colour of the transmission fluid in use',
    kind: 'choice',
    values: FLUID_COLOURS,
    where: 'A drop from the dipstick on white paper.',
    uses: [said('What a spot of the overnight drip sheet points to')],
  },
  {
    id: 'fluid.steering-colour',
    group: 'fluids',
    words: 'Colour of the steering fluid in use',
    kind: 'choice',
    values: FLUID_COLOURS,
    where: 'A drop from the steering tank on white paper.',
    uses: [said('What a spot of the overnight drip sheet points to')],
  },
  {
    id: 'fluid.steering',
    group: 'fluids',
    words: 'Steering fluid in use',
    kind: 'text',
    most: 80,
    example: 'automatic transmission fluid',
    where: 'The tag at the tank, the last invoice; the book says what it must be.',
    uses: [check('steering-pump-whines-cold/fluid-identity')],
  },
  {
    id: 'fluid.transmission',
    group: 'fluids',
    words: 'Transmission fluid in use',
    kind: 'text',
    most: 80,
    example: 'automatic transmission fluid',
    where: 'The last invoice; the book of the gearbox says what it must be.',
    uses: [check('harsh-or-late-shift/fluid-identity')],
  },
];

const SERVICE: readonly CoachField[] = [
  figure({
    id: 'odometer',
    group: 'service',
    words: 'Odometer',
    measure: 'distance',
    range: [0, 5_000_000],
    dated: true,
    where: 'On the dash or at a hub. Every reading is kept with its day.',
    uses: [
      bench('lining', 'wear.secondAt'),
      bench('lining', 'wear.yearly'),
      said('Distance a year, from two readings a month or more apart'),
    ],
  }),
  service('hubs', 'Hub bearings and seals last serviced', 'Invoices; else a note inside the hub cap or bay door.'),
  service('air-springs', 'Air springs last renewed', 'Invoices; a date is often moulded into the rubber.'),
  service('belts', 'Belts last renewed', 'Invoices; a date is often printed on the belt.'),
  service('hoses', 'Coolant hoses last renewed', 'Invoices; a date is often printed on the hose.'),
  service('brakes', 'Linings last renewed', 'Invoices; the edge of the lining carries a code.'),
  service('dryer', 'Cartridge of the air dryer last renewed', 'Invoices, or a date written on the can.'),
];

const BOOK: readonly CoachField[] = [
  figure({
    id: 'book.ride-height',
    group: 'book',
    words: 'Ride height by the book',
    measure: 'length',
    range: [2, 40],
    where: 'The coach’s book, with the two points between which it is measured.',
    uses: [check('ride-height')],
  }),
  figure({
    id: 'book.idle',
    group: 'book',
    words: 'Idle speed by the book',
    measure: 'rotation',
    range: [350, 1200],
    where: 'The plate or the book of the engine.',
    uses: [check('idle-speed')],
  }),
  figure({
    id: 'book.governed',
    group: 'book',
    words: 'Governed speed by the book',
    measure: 'rotation',
    range: [1200, 3600],
    where: 'The plate or the book of the engine.',
    uses: [check('oil-pressure-drops-hot/direct-hot-governed'), check('runs-hot-on-grade/rpm-at-hottest')],
  }),
  figure({
    id: 'book.stall',
    group: 'book',
    words: 'Stall speed by the book',
    measure: 'rotation',
    range: [800, 3200],
    where: 'The book of the gearbox, for this engine.',
    uses: [check('harsh-or-late-shift/stall-speed')],
  }),
  figure({
    id: 'book.cap',
    group: 'book',
    words: 'Pressure printed on the radiator cap',
    measure: 'pressure',
    range: [2, 30],
    where: 'On the cap, cold; the book says what it must be.',
    uses: [check('cap-test')],
  }),
];

/** Every field but those of the layout, in the order in which a person is shown them. */
export const COACH_FIELDS: readonly CoachField[] = [
  DRIVE[0]!,
  ...AXLES.flatMap(axleFields),
  ...DRIVE.slice(1),
  ...AIR,
  ...FLUIDS,
  ...SERVICE,
  ...BOOK,
];

const byId = new Map(COACH_FIELDS.map((field) => [field.id, field]));

/** The field of an id; undefined for one of the layout or of a newer program. */
export function fieldOf(id: string): CoachField | undefined {
  return byId.get(id);
}
