/** The invented visit: three complaints from arrival to hand-over. Nothing in it happened; it says so on every page. */
import { complaintLine, itemLine, partKey, type VisitEventBody } from '../../shared/visit/index.ts';
import type { DemoPicture } from './demo-pictures.ts';
import { finding, inTurn, JOEL, MINA, opened, OWNER, part, type DemoEntry } from './demo-entry.ts';
import { demoAirTest, driveBrakes, gauges, hubRound, noted, steerPlay } from './demo-sheets.ts';

/** A tree as the invented visits use it. */
export interface DemoTree {
  readonly id: string;
  readonly hash: string;
  /** Ids of its safety questions. */
  readonly rules: readonly string[];
}

/** Complaints of the invented visits, by what they are called here. */
export const DEMO_TREES = {
  growl: 'growl-through-floor-at-speed',
  air: 'air-leaks-when-brake-held',
  retarder: 'weak-engine-brake',
} as const;
export type DemoTrees = Readonly<Record<keyof typeof DEMO_TREES, DemoTree>>;

const [GROWL, AIR, RETARDER] = ['c-growl', 'c-air', 'c-retarder'] as const;
const BEARING = complaintLine(GROWL, 'front-bearing');
const DIAPHRAGM = complaintLine(AIR, 'service-diaphragm');
const HOSE = 'hose@right tag';
const DAMPER = 'damper@right drive';
const SITE = 'right front';
/** Next day, minutes after the beginning. */
const NEXT_DAY = 25 * 60;

/**
 * What was written down over two days.
 *
 * @param photo   name of a stored picture.
 * @param layout  what the profile knows of the layout.
 * @param later   a day three months on, for a reminder.
 */
export function demoDay(
  trees: DemoTrees,
  photo: (of: DemoPicture) => string,
  layout: readonly VisitEventBody[],
  later: string,
): DemoEntry[] {
  const grow = (...all: Parameters<typeof finding> extends [string, ...infer Rest] ? Rest : never) =>
    finding(GROWL, ...all);
  const air = (...all: Parameters<typeof finding> extends [string, ...infer Rest] ? Rest : never) =>
    finding(AIR, ...all);
  const decided = (line: string, decision: 'agreed' | 'declined' | 'deferred', words: string): VisitEventBody => ({
    kind: 'plan.decided',
    line,
    decision,
    who: OWNER,
    words,
  });
  return [
    ...inTurn(0, MINA, [{ kind: 'person.set', who: 'mechanic' }, ...layout], 0),
    ...inTurn(1, MINA, [
      {
        kind: 'arrival.work-told',
        work: 'w-1',
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
        spot: 's-1',
        place: 'wheel-front',
        colour: 'clear-amber',
        feel: 'slippery',
        size: 'coin',
        note: 'right front, inside of the wheel',
        photo: photo('spot'),
      },
      {
        kind: 'drip.spot-seen',
        spot: 's-2',
        place: 'engine-crank-end',
        colour: 'black-brown',
        feel: 'slippery',
        size: 'hand',
        note: '',
      },
    ]),
    ...inTurn(
      6,
      OWNER,
      [
        ...opened(GROWL, trees.growl, 'growl through the floor above 50, swells when I lean into a long left bend'),
        ...opened(AIR, trees.air, 'it hisses somewhere behind while I hold the pedal, once it is warm'),
        ...opened(RETARDER, trees.retarder, 'the engine brake holds only half as well as last year'),
      ],
      0,
    ),
    ...inTurn(12, MINA, demoAirTest({ cutOut: 118, cutIn: 100, cameOn: 66, popped: 32, seconds: 38 }), 1.5),
    ...inTurn(45, JOEL, [
      { kind: 'road.begun', drive: 'd-1', driver: MINA, writer: JOEL, route: 'the hill and back, invented' },
    ]),
    ...inTurn(48, JOEL, gauges('d-1', { speed: 30, 'engine-speed': 1500, oil: 45, coolant: 160, air: 110 }), 0.1),
    ...inTurn(
      52,
      JOEL,
      [
        ...gauges('d-1', { speed: 50, 'engine-speed': 1800 }),
        noted('d-1', 'noise-where', 'front'),
        noted('d-1', 'noise-speed', 'rises'),
        noted('d-1', 'noise-pull', 'same'),
        noted('d-1', 'noise-lift', 'same'),
      ],
      0.3,
    ),
    ...inTurn(
      55,
      JOEL,
      [
        ...gauges('d-1', { speed: 60, 'engine-speed': 1900, oil: 45, coolant: 190, air: 112 }),
        noted('d-1', 'noise-lean-right', 'more'),
        noted('d-1', 'noise-lean-left', 'same'),
      ],
      0.3,
    ),
    ...inTurn(
      60,
      JOEL,
      [
        ...gauges('d-1', { speed: 40, 'engine-speed': 2000, coolant: 195 }),
        noted('d-1', 'bark', 'half'),
        noted('d-1', 'strength', 'weak'),
      ],
      0.3,
    ),
    ...inTurn(
      66,
      JOEL,
      [...gauges('d-1', { speed: 0, oil: 15, coolant: 195, air: 114 }), { kind: 'road.ended', drive: 'd-1' }],
      0.2,
    ),
    ...inTurn(69, MINA, hubRound([94, 135, 98, 96, 89, 91]), 0.6),
    ...inTurn(76, MINA, [
      grow('f-1', 'where-heard', 'front'),
      grow('f-2', 'speed-sweep', 'rises-evenly'),
      grow('f-3', 'load-change', 'no-change'),
      grow('f-4', 'sway', 'swells-one-way', { note: 'in a long left bend' }),
      grow('f-5', 'hub-heat', [41, 'degF-diff'], { site: SITE }),
      { kind: 'halt.acknowledged', complaint: GROWL },
      finding(RETARDER, 'f-20', 'bark', 'half-or-uneven'),
      finding(RETARDER, 'f-21', 'good-when', 'half-always'),
    ]),
    ...inTurn(
      90,
      MINA,
      [
        air('f-10', 'recent-air-work', 'nothing-recent'),
        air('f-11', 'static-rate', [0.6, 'psi/min']),
        air('f-12', 'cold-warm', 'worse-warm'),
        air('f-13', 'walk-listen', 'wheel-end', { site: 'left drive' }),
        air('f-14', 'applied-rate', [4.2, 'psi/min']),
        { kind: 'halt.acknowledged', complaint: AIR },
        air('f-15', 'soap-chamber', 'rod-side', { site: 'left drive' }),
        { kind: 'conclusion.accepted', complaint: AIR, cause: 'service-diaphragm' },
      ],
      5,
    ),
    ...inTurn(
      140,
      JOEL,
      [
        ...driveBrakes([1.7, 1.75], [0.44, 0.42], [16.56, 16.57]),
        part('hose', 'right tag', 'bad', {
          note: 'cord in sight where it rubs on its bracket',
          photos: [photo('hose')],
        }),
        part('hose', 'left tag', 'good'),
        part('air-spring', 'left drive', 'watch', { note: 'cracks in the cover near the piston' }),
        part('air-spring', 'right drive', 'good'),
        part('damper', 'right drive', 'bad', { note: 'oil down its body' }),
        part('bushing', 'front, left', 'good'),
        part('bushing', 'front, right', 'good'),
        part('steering-joint', 'drag link', 'good'),
        part('seal', 'left front', 'not-opened'),
      ],
      3,
    ),
    ...inTurn(
      190,
      MINA,
      [
        grow('f-6', 'end-play', [0.011, 'in'], { site: SITE }),
        grow('f-7', 'spin-feel', 'rough-front', { site: SITE }),
        { kind: 'halt.acknowledged', complaint: GROWL },
        grow('f-8', 'bearing-look', 'pitted-front', { site: SITE, photos: [photo('bearing')] }),
        { kind: 'conclusion.accepted', complaint: GROWL, cause: 'front-bearing' },
      ],
      10,
    ),
    ...inTurn(250, MINA, [
      { kind: 'plan.place-set', line: BEARING, place: SITE },
      { kind: 'plan.place-set', line: DIAPHRAGM, place: 'left drive' },
      { kind: 'plan.basis-set', basis: 'labour-rate', value: 120 },
      { kind: 'plan.basis-set', basis: 'horizon-years', value: 5 },
      { kind: 'plan.basis-set', basis: 'horizon-miles', value: 40 },
      decided(BEARING, 'agreed', 'yes, and the seal with it'),
      decided(DIAPHRAGM, 'agreed', 'before we leave'),
      decided(itemLine(HOSE), 'declined', 'we have somebody at home for that'),
      decided(itemLine(DAMPER), 'deferred', 'in the autumn'),
      {
        kind: 'part.measured',
        part: partKey('hub seal'),
        what: 'shaft-diameter',
        place: SITE,
        found: { value: 4.5, unit: 'in' },
      },
      { kind: 'part.marked', part: partKey('hub seal'), mark: 'here' },
    ]),
    ...inTurn(280, MINA, [{ kind: 'correction.started', complaint: GROWL, cause: 'front-bearing' }]),
    ...inTurn(
      490,
      MINA,
      [
        {
          kind: 'correction.done',
          complaint: GROWL,
          cause: 'front-bearing',
          partSeen: 'bad',
          parts: ['inner bearing with cup', 'outer bearing with cup'],
          alsoRenewed: ['hub seal', 'hub-cap gasket'],
          minutes: 210,
          note: 'pits over a third of the inner cup',
        },
        ...steerPlay(0.003, 0.003),
        grow('f-9', 'end-play', [0.003, 'in'], { site: SITE }),
      ],
      5,
    ),
    ...inTurn(NEXT_DAY, MINA, hubRound([93, 97, 98, 97, 90, 91]), 0.6),
    ...inTurn(NEXT_DAY + 6, MINA, [
      grow('f-16', 'hub-heat', [4, 'degF-diff'], { site: SITE }),
      { kind: 'proof.recorded', complaint: GROWL, outcome: 'gone', note: 'same hill, same speed, quiet' },
      {
        kind: 'reminder.set',
        reminder: 'r-1',
        what: 'Torque the wheel nuts again (50 to 100 miles after the wheel was off)',
        dueMiles: 75,
        line: BEARING,
      },
      {
        kind: 'reminder.set',
        reminder: 'r-2',
        what: 'Read hub temperature against the other side',
        dueMiles: 50,
        line: BEARING,
      },
      { kind: 'reminder.set', reminder: 'r-3', what: 'Cover of the left drive air spring', dueDate: later },
    ]),
  ];
}
