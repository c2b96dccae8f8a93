import {
  brakeForceShares,
  judgeStop,
  meanDeceleration,
  requiredBrakeForceLbf,
  STOPPING_TABLE,
  type StoppingClass,
} from '../../../../shared/measuring/index.ts';
import { digits, shown } from '../figure-kinds.ts';
import { refused } from '../form.ts';
import { heldView } from '../held.ts';
import { Given, rowOf, source, type Asked, type Sheet } from '../sheet.ts';

export const STOP_CAUTIONS: readonly string[] = [
  'No road test with brakes that are suspected: the questions of the complaint come first.',
  'Closed, level, dry ground with room for three times the distance; belts on, nothing loose, nobody standing.',
  'Whoever reads the tape stands off the path of the coach, never in front of it.',
];

const CLASSES: readonly (readonly [StoppingClass, string])[] = [
  ['coach', 'Coach alone'],
  ['combination', 'Coach with something on the hook'],
  ['light-bus', 'Bus chassis up to 10,000 lb'],
  ['car-chassis', 'Car chassis, up to ten seats'],
];

const STOP: readonly Asked[] = [
  {
    ask: 'choice',
    name: 'stop.class',
    label: 'Vehicle',
    options: CLASSES,
    otherwise: 'coach',
    where: 'What stops together. A towed car with the coach is a combination.',
  },
  {
    ask: 'choice',
    name: 'stop.brake',
    label: 'Brake used',
    options: [
      ['service', 'Service brake'],
      ['emergency', 'Emergency brake'],
    ],
    otherwise: 'service',
    where: 'The pedal, or the control that is used when the pedal fails.',
  },
  {
    ask: 'choice',
    name: 'stop.road',
    label: 'Road',
    options: [
      ['hard-level-dry', 'Hard, level, dry, clean'],
      ['other', 'Anything else'],
    ],
    otherwise: 'hard-level-dry',
    where: 'The table holds for no other road.',
  },
  {
    ask: 'figure',
    name: 'stop.speed',
    label: 'Speed when the pedal went down',
    kind: 'speed',
    where: 'A satellite receiver on the dash, called out by the passenger. The speedometer is not good enough.',
    typical: [19, 21],
  },
  {
    ask: 'figure',
    name: 'stop.give',
    label: 'Speed known to within',
    kind: 'speed',
    where: 'Half a mile an hour with a satellite receiver; five with a speedometer.',
    typical: [0.3, 1],
  },
  {
    ask: 'figure',
    name: 'stop.distance',
    label: 'Distance to the standstill',
    kind: 'feet',
    where: 'A tape from a mark dropped when the pedal went down to the same place of the coach.',
    typical: [20, 60],
  },
];
const TAPE_FT = 1;

export const STOP_SHEET: Sheet = {
  id: 'stop-distance',
  heading: 'Stopping distance from 20 mph',
  fields: STOP,
  answer(form) {
    const given = new Given(form, STOP);
    if (given.trouble) return given.trouble;
    const vehicle = CLASSES.find(([id]) => id === given.choice('stop.class'))?.[0] ?? 'coach';
    const speedMph = given.figure('stop.speed');
    const speedUncertaintyMph = given.figure('stop.give') / Math.sqrt(3);
    const distanceFt = given.figure('stop.distance');
    const found = judgeStop({
      vehicle,
      brake: given.choice('stop.brake') === 'emergency' ? 'emergency' : 'service',
      speedMph,
      speedUncertaintyMph,
      distanceFt,
      distanceUncertaintyFt: TAPE_FT,
      road: given.choice('stop.road') === 'other' ? 'other' : 'hard-level-dry',
    });
    if (!found.ok) return refused(found);
    const mean = meanDeceleration(speedMph, { distanceFt });
    return {
      kind: 'shown',
      held: [{ of: 'From 20 mph', view: heldView(found.correctedFt, found.uncertainty, found.judgement, form.system) }],
      figures: [
        { words: 'Brought to 20 mph', figure: shown(found.correctedFt, 'feet', form.system) },
        ...(mean.ok
          ? [
              {
                words: 'Mean slowing, the time until the brakes bite included',
                figure: `${digits(mean.decelerationFtPerS2, 1)} ft/s², ${digits(mean.forcePercent, 0)} % of the weight`,
              },
            ]
          : []),
      ],
      notes: [`The table asks ${STOPPING_TABLE[vehicle].forcePercent} % of the weight as brake force.`],
      sources: [
        source('49 CFR 393.52(d)', 'second-hand'),
        source('a motor home may not be under the rule: a yardstick'),
      ],
    };
  },
};

const FORCES: readonly Asked[] = [
  {
    ask: 'figure',
    name: 'force.weight',
    label: 'Weight as driven',
    kind: 'weight',
    where: 'A truck scale ticket; else the gross weight on the plate.',
    typical: [20_000, 54_000],
    optional: true,
  },
  ...rowOf('force.left', 4, 1, (i) => `Axle ${i}, left`, {
    kind: 'force',
    where: 'The print-out of a roller or plate tester, largest force before the wheel slips.',
    typical: [1000, 6000],
  }),
  ...rowOf('force.right', 4, 1, (i) => `Axle ${i}, right`, {
    kind: 'force',
    where: 'The same print-out, other side.',
    typical: [1000, 6000],
  }),
];

export const FORCES_SHEET: Sheet = {
  id: 'stop-forces',
  heading: 'Brake force, shared',
  lead: 'From a roller or plate tester.',
  fields: FORCES,
  answer(form) {
    const given = new Given(form, FORCES);
    if (given.trouble) return given.trouble;
    const typed = given.pairs('force.left', 'force.right', 4);
    if (typed.kind !== 'shown') return typed;
    const axles = typed.pairs;
    const found = brakeForceShares(axles.map(({ first, second }) => ({ leftLbf: first, rightLbf: second })));
    if (!found.ok) return refused(found);
    const weight = given.maybe('force.weight');
    const asked = weight === null ? null : requiredBrakeForceLbf(weight, 'coach');
    if (asked && !asked.ok) return refused(asked);
    return {
      kind: 'shown',
      held: found.axles.map((axle, i) => ({
        of: `Axle ${axles[i]!.place}, sides apart`,
        view: heldView(axle.differencePercent, 0, axle.judgement, form.system),
      })),
      figures: [
        { words: 'All brakes together', figure: shown(found.totalLbf, 'force', form.system) },
        ...(asked ? [{ words: 'Asked of this weight', figure: shown(asked.forceLbf, 'force', form.system) }] : []),
        ...found.axles.map((axle, i) => ({
          words: `Share of axle ${axles[i]!.place}`,
          figure: `${digits(axle.sharePercent, 0)} %`,
        })),
      ],
      sources: [source('sides within 25 %: 49 CFR 570.59(a)(1)', 'memory')],
    };
  },
};
