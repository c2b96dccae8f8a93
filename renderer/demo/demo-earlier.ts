/** Two earlier visits of the invented coach, so that its history and its trends have something to show. */
import type { VisitEventBody } from '../../shared/visit/index.ts';
import type { DemoTree } from './demo-day.ts';
import { finding, inTurn, JOEL, MINA, opened, OWNER, part, type DemoEntry } from './demo-entry.ts';
import { demoAirTest, driveBrakes, gauges, hubRound, noted, steerPlay } from './demo-sheets.ts';

const MECHANIC: VisitEventBody = { kind: 'person.set', who: 'mechanic' };

/** Two years ago: a look-over before the season, without any complaint. */
export function demoLookOver(): DemoEntry[] {
  return [
    ...inTurn(0, MINA, [MECHANIC]),
    ...inTurn(5, MINA, demoAirTest({ cutOut: 120, cutIn: 104, cameOn: 68, popped: 34, seconds: 29 }), 2),
    ...inTurn(60, JOEL, [
      { kind: 'road.begun', drive: 'd-1', driver: MINA, writer: JOEL, route: 'the hill and back, invented' },
    ]),
    ...inTurn(66, JOEL, gauges('d-1', { speed: 60, 'engine-speed': 1900, oil: 50, coolant: 180, air: 115 })),
    ...inTurn(78, JOEL, [
      ...gauges('d-1', { speed: 0, oil: 25, coolant: 185, air: 118 }),
      { kind: 'road.ended', drive: 'd-1' },
    ]),
    ...inTurn(84, MINA, hubRound([88, 92, 99, 97, 90, 91])),
    ...inTurn(120, MINA, [...driveBrakes([1.45, 1.5], [0.58, 0.57], [16.52, 16.53]), ...steerPlay(0.002, 0.002)], 3),
    ...inTurn(170, MINA, [part('air-spring', 'left drive', 'good'), part('air-spring', 'right drive', 'good')]),
  ];
}

/** A year ago: air escaped while the brake was held; the tube of the gauge was renewed, and the proof held. */
export function demoLastYear(tree: DemoTree): DemoEntry[] {
  const found = (id: string, check: string, value: Parameters<typeof finding>[3]) => finding('c-air', id, check, value);
  return [
    ...inTurn(0, MINA, [MECHANIC]),
    ...inTurn(2, OWNER, opened('c-air', tree, 'it hisses behind the dash while I stand on the brake')),
    ...inTurn(
      30,
      MINA,
      [
        found('f-1', 'recent-air-work', 'nothing-recent'),
        found('f-2', 'static-rate', [0.5, 'psi/min']),
        found('f-3', 'applied-rate', [2.2, 'psi/min']),
        found('f-4', 'walk-listen', 'driver-area'),
        found('f-5', 'foot-valve-feel', 'tube-switch'),
      ],
      6,
    ),
    ...inTurn(
      70,
      MINA,
      [
        { kind: 'conclusion.accepted', complaint: 'c-air', cause: 'dash-tubing' },
        { kind: 'correction.started', complaint: 'c-air', cause: 'dash-tubing' },
        {
          kind: 'correction.done',
          complaint: 'c-air',
          cause: 'dash-tubing',
          partSeen: 'bad',
          parts: ['tube and ferrules'],
          alsoRenewed: [],
          minutes: 50,
          note: 'tube cracked at its flare',
        },
        finding('c-air', 'f-6', 'applied-rate', [0.9, 'psi/min']),
        { kind: 'proof.recorded', complaint: 'c-air', outcome: 'gone', note: 'quiet for five minutes, pedal held' },
      ],
      15,
    ),
    ...inTurn(150, MINA, demoAirTest({ cutOut: 119, cutIn: 102, cameOn: 67, popped: 33, seconds: 33 }), 2),
    ...inTurn(195, JOEL, [
      { kind: 'road.begun', drive: 'd-1', driver: MINA, writer: JOEL, route: 'the hill and back, invented' },
    ]),
    ...inTurn(200, JOEL, gauges('d-1', { speed: 60, 'engine-speed': 1900, oil: 48, coolant: 185, air: 114 })),
    ...inTurn(212, JOEL, [
      ...gauges('d-1', { speed: 0, oil: 20, coolant: 190, air: 116 }),
      noted('d-1', 'pull', 'straight'),
      { kind: 'road.ended', drive: 'd-1' },
    ]),
    ...inTurn(218, MINA, hubRound([87, 104, 97, 96, 89, 92])),
    ...inTurn(250, MINA, [...driveBrakes([1.55, 1.65], [0.51, 0.49], [16.54, 16.55]), ...steerPlay(0.003, 0.004)], 3),
    ...inTurn(290, MINA, [part('air-spring', 'left drive', 'good', { note: 'fine weather checks' })]),
  ];
}
