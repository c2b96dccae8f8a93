import type { CoachEventBody } from '../../shared/coach/index.ts';

const set = (field: string, value: string | number | boolean, unit?: string, on?: string): CoachEventBody => ({
  kind: 'coach.set',
  field,
  value,
  ...(unit === undefined ? {} : { unit }),
  ...(on === undefined ? {} : { on }),
});

/** The profile of the invented coach: every figure is made up, and the name says so on every page. */
export const DEMO_PROFILE: readonly CoachEventBody[] = [
  set('layout.engine', 'two-stroke'),
  set('layout.tag-axle', true),
  set('layout.parking', 'spring'),
  set('layout.brake', 'drum-s-cam'),
  set('axle.count', '3'),
  set('axle.1.weight', 12_400, 'lb'),
  set('axle.2.weight', 20_100, 'lb'),
  set('axle.3.weight', 9_300, 'lb'),
  ...[1, 2, 3].flatMap((axle) => [
    set(`axle.${axle}.tyre-size`, '12R22.5'),
    set(`axle.${axle}.tyre-week`, axle === 1 ? '2224' : '1419'),
    set(`axle.${axle}.tyre-pressure`, axle === 1 ? 110 : 95, 'psi'),
    set(`axle.${axle}.chamber`, axle === 2 ? 'clamp 30' : 'clamp 24'),
    set(`axle.${axle}.stroke-class`, 'standard'),
    set(`axle.${axle}.drum`, 16.5, 'in'),
  ]),
  set('ratio.axle', 4.1, 'to-1'),
  set('ratio.top', 1, 'to-1'),
  set('tyre.turns', 497, 'per-mile'),
  set('engine.cylinders', 8, ''),
  set('retarder.housings', 4, ''),
  set('reservoir.supply', 1400, 'in³'),
  set('reservoir.first', 2100, 'in³'),
  set('reservoir.second', 1700, 'in³'),
  set('built.year', 1987, ''),
  set('fluid.engine-oil', 'SAE 40'),
  set('fluid.coolant-colour', 'green-blue-orange'),
  set('fluid.transmission-colour', 'red'),
  set('fluid.steering-colour', 'red'),
  set('service.hubs', '2021-06-11'),
  set('service.air-springs', '2016-04-02'),
  set('service.belts', '2022-09-20'),
  set('service.hoses', '2018-03-15'),
  set('service.brakes', '2021-06-11'),
  set('service.dryer', '2023-05-02'),
  set('book.idle', 500, 'rpm'),
  set('book.governed', 2100, 'rpm'),
];

/** Readings of the odometer, each with its day: two years ago, a year ago, now. */
export function demoOdometer(days: readonly [string, string, string]): readonly CoachEventBody[] {
  const miles = [402_100, 411_900, 420_350] as const;
  return days.map((day, i) => set('odometer', miles[i]!, 'mi', day));
}
