import { bearingRates, cardanJoint } from '../../../../shared/measuring/index.ts';
import { digits } from '../figure-kinds.ts';
import { refused } from '../form.ts';
import { Given, source, type Asked, type Sheet } from '../sheet.ts';

const GEOMETRY: readonly Asked[] = [
  {
    ask: 'figure',
    name: 'bearing.rollers',
    label: 'Rollers or balls',
    kind: 'plain',
    where: 'Count them in the cage, or the data sheet of the number stamped on the ring.',
    typical: [8, 30],
  },
  {
    ask: 'figure',
    name: 'bearing.roller',
    label: 'Diameter of a roller',
    kind: 'length',
    where: 'Caliper; of a tapered roller the mean of both ends.',
    typical: [0.3, 1],
  },
  {
    ask: 'figure',
    name: 'bearing.pitch',
    label: 'Pitch diameter',
    kind: 'length',
    where: 'Caliper from the middle of one roller to the middle of the one opposite.',
    typical: [2, 6],
  },
  {
    ask: 'figure',
    name: 'bearing.angle',
    label: 'Contact angle',
    kind: 'angle',
    where: 'Between the axis of a roller and that of the bearing; 0 for a ball bearing, 10 to 16 for a wheel bearing.',
    typical: [0, 20],
  },
  {
    ask: 'figure',
    name: 'bearing.hz',
    label: 'Turns a second',
    kind: 'frequency',
    where: 'From “What turns how fast”: the wheel, the shaft or the engine once a turn.',
    typical: [5, 40],
  },
  {
    ask: 'choice',
    name: 'bearing.ring',
    label: 'What turns',
    options: [
      ['outer', 'The outer ring, as in a wheel hub'],
      ['inner', 'The inner ring, on a shaft'],
    ],
    otherwise: 'outer',
    where: 'In a hub the cups turn with the wheel; on a shaft the cone turns.',
  },
];

export const BEARING_SHEET: Sheet = {
  id: 'bearing-rates',
  heading: 'Bearing defect frequencies',
  lead: 'Only with the bearing’s own geometry. Real bearings slip: look within 2 in 100.',
  fields: GEOMETRY,
  answer(form) {
    const given = new Given(form, GEOMETRY);
    if (given.trouble) return given.trouble;
    const found = bearingRates({
      rollers: given.figure('bearing.rollers'),
      rollerDiameter: given.figure('bearing.roller'),
      pitchDiameter: given.figure('bearing.pitch'),
      contactAngleDeg: given.figure('bearing.angle'),
    });
    if (!found.ok) return refused(found);
    const hz = given.figure('bearing.hz');
    const outer = given.choice('bearing.ring') !== 'inner';
    const row = (words: string, rate: number): string[] => [words, digits(rate, 3), `${digits(rate * hz, 2)} Hz`];
    return {
      kind: 'shown',
      table: {
        head: ['Damage on', 'Times a turn', 'At this speed'],
        rows: [
          row('Outer race (cup)', found.outerRace),
          row('Inner race (cone)', found.innerRace),
          row('Roller, both races', found.rollerDefect),
          row('Roller spin', found.rollerSpin),
          row('Cage', outer ? found.cageOuterTurning : found.cage),
        ],
      },
      notes: [
        `Damage on the ring that turns, here the ${outer ? 'cup' : 'cone'}, has a line at either side, ${digits(hz, 1)} Hz away.`,
        'It shows in the envelope of a recording taken at the hub, at the rate and at twice the rate; a cabin recording does not hold it (judgement).',
      ],
      sources: [source('pure rolling', 'practice'), source('slip of 1 to 2 in 100: published tutorial', 'memory')],
    };
  },
};

const JOINT: readonly Asked[] = [
  {
    ask: 'figure',
    name: 'joint.rpm',
    label: 'Shaft speed',
    kind: 'rotation',
    where: 'Engine speed divided by the gear ratio, or from “What turns how fast”, times 60.',
    typical: [800, 2400],
  },
  {
    ask: 'figure',
    name: 'joint.angle',
    label: 'Angle of the joint',
    kind: 'angle',
    where: 'An inclinometer on both shafts of the joint; the difference of the two.',
    typical: [0.5, 7],
  },
];

export const JOINT_SHEET: Sheet = {
  id: 'bearing-joint',
  heading: 'Universal joint at an angle',
  fields: JOINT,
  answer(form) {
    const given = new Given(form, JOINT);
    if (given.trouble) return given.trouble;
    const found = cardanJoint(given.figure('joint.angle'), given.figure('joint.rpm'));
    if (!found.ok) return refused(found);
    return {
      kind: 'shown',
      figures: [
        { words: 'Speeds up and slows down, twice a turn, by', figure: `${digits(100 * found.ripple, 3)} %` },
        { words: 'Largest angular acceleration', figure: `${digits(found.peakRadPerS2, 0)} rad/s²` },
      ],
      notes: ['300 to 400 rad/s² is often given as the most that is not felt (from memory).'],
      sources: [source('kinematics of the cardan joint', 'practice')],
    };
  },
};
