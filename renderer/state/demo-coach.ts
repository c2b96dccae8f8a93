import type { CoachEventBody } from '../../shared/coach/index.ts';
import type { VisitEventBody } from '../../shared/visit/index.ts';
import type { Coaches } from './coaches.svelte.ts';
import { DEMO } from './demo-visit.ts';

const set = (field: string, value: string | number | boolean, unit?: string, on?: string): CoachEventBody => ({
  kind: 'coach.set',
  field,
  value,
  ...(unit === undefined ? {} : { unit }),
  ...(on === undefined ? {} : { on }),
});

/** The profile of the invented coach: every figure is made up, and the name says so on every page. */
const KNOWN: readonly CoachEventBody[] = [
  set('layout.engine', 'two-stroke'),
  set('layout.tag-axle', true),
  set('layout.parking', 'spring'),
  set('layout.brake', 'drum-s-cam'),
  set('axle.count', '3'),
  set('axle.1.weight', 12_400, 'lb'),
  set('axle.2.weight', 20_100, 'lb'),
  set('axle.1.tyre-size', '12R22.5'),
  set('axle.1.tyre-week', '1419'),
  set('axle.1.chamber', 'clamp 24'),
  set('axle.2.chamber', 'clamp 30'),
  set('axle.2.drum', 16.5, 'in'),
  set('ratio.axle', 4.1, 'to-1'),
  set('tyre.turns', 497, 'per-mile'),
  set('engine.cylinders', 8, ''),
  set('reservoir.supply', 1400, 'in³'),
  set('reservoir.first', 2100, 'in³'),
  set('reservoir.second', 1700, 'in³'),
  set('fluid.coolant-colour', 'green-blue-orange'),
  set('fluid.steering-colour', 'red'),
  set('service.hubs', '2021-06-11'),
  set('odometer', 402_100, 'mi', '2023-05-02'),
  set('odometer', 411_900, 'mi', '2025-05-10'),
];

/** Writes the profile of the invented coach; gives its id. @throws {HostError} */
export async function writeDemoCoach({ coaches }: { readonly coaches: Coaches }): Promise<string> {
  return coaches.create(DEMO.coach, true, KNOWN);
}

/** What was told and seen when the invented coach arrived. */
export function demoArrival(newId: () => string): readonly VisitEventBody[] {
  return [
    {
      kind: 'arrival.work-told',
      work: `w-${newId()}`,
      area: 'wheel-or-tyre',
      what: 'new steer tyres',
      when: 'three weeks ago',
    },
    {
      kind: 'arrival.trip-told',
      where: 'over the mountains to a family meeting',
      distance: { value: 640, unit: 'mi' },
      traits: ['long-grades', 'towing'],
    },
    {
      kind: 'drip.spot-seen',
      spot: `s-${newId()}`,
      place: 'wheel-front',
      colour: 'clear-amber',
      feel: 'slippery',
      size: 'coin',
      note: 'left front, inside of the wheel',
    },
    {
      kind: 'drip.spot-seen',
      spot: `s-${newId()}`,
      place: 'engine-crank-end',
      colour: 'black-brown',
      feel: 'slippery',
      size: 'hand',
      note: '',
    },
  ];
}
