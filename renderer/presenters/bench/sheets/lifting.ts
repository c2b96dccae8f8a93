import { axleSideLift, cornerLoadLb, endLift, groundLoad, standCheck } from '../../../../shared/measuring/index.ts';
import { digits, shown } from '../figure-kinds.ts';
import { refused, type Shown } from '../form.ts';
import { Given, source, type Answer, type Asked, type Sheet } from '../sheet.ts';

export const LIFT_CAUTIONS: readonly string[] = [
  'Nobody goes under a coach that stands on jacks or on its air bags, for no time at all.',
  'Level, hard ground; the wheels that stay down chocked on both sides; stands before hands.',
  'The figures below are arithmetic. They are no permission: a person who lifts coaches for a living has the last word.',
];

const JACK: readonly Asked[] = [
  {
    ask: 'choice',
    name: 'lift.ground',
    label: 'Ground',
    options: [
      ['', 'Choose'],
      ['hard', 'Concrete, dry and whole'],
      ['asphalt', 'Asphalt'],
      ['soft', 'Gravel, grass, earth, hot asphalt'],
    ],
    otherwise: '',
    where: 'Look and stamp: where a heel leaves a mark it is soft.',
  },
  {
    ask: 'choice',
    name: 'lift.held',
    label: 'What will carry it',
    options: [
      ['', 'Choose'],
      ['stands', 'Stands under axle or jacking points'],
      ['jack', 'The jack alone'],
      ['bags', 'The air springs'],
    ],
    otherwise: '',
    where: 'What is there when somebody reaches under it.',
  },
  {
    ask: 'choice',
    name: 'lift.where',
    label: 'Jack under',
    options: [
      ['axle', 'One side of the axle'],
      ['end', 'One end of the body'],
    ],
    otherwise: 'axle',
    where: 'The maker’s jacking points come first; the coach handbook shows them.',
  },
  {
    ask: 'figure',
    name: 'lift.axle',
    label: 'Weight on that axle',
    kind: 'weight',
    where: 'A scale ticket for each axle; else the axle rating on the plate, which is more than it weighs.',
    typical: [8000, 24_000],
  },
  {
    ask: 'figure',
    name: 'lift.span',
    label: 'Track, or wheelbase for an end',
    kind: 'length',
    where: 'Tape between the middles of the outer tyres; for an end, between the axles.',
    typical: [70, 330],
  },
  {
    ask: 'figure',
    name: 'lift.place',
    label: 'Jack from the centre, or behind the axle',
    kind: 'length',
    where: 'Tape from the centre line of the coach out to the jack; for an end, from the axle towards the middle.',
    typical: [0, 45],
  },
  {
    ask: 'figure',
    name: 'lift.jack',
    label: 'Rating of the jack',
    kind: 'weight',
    where: 'Its plate, in pounds; one US ton is 2,000 lb. No plate: no lift.',
    typical: [20_000, 60_000],
  },
  {
    ask: 'figure',
    name: 'lift.stand',
    label: 'Rating of one stand',
    kind: 'weight',
    where: 'Its plate. Sold in pairs, the figure is often for both.',
    typical: [12_000, 50_000],
  },
  {
    ask: 'choice',
    name: 'lift.pair',
    label: 'The stand’s figure is',
    options: [
      ['pair', 'for the pair, or not clear'],
      ['one', 'for one stand'],
    ],
    otherwise: 'pair',
    where: 'The plate, or the paper that came with them.',
  },
  {
    ask: 'figure',
    name: 'lift.stands',
    label: 'Stands that share the load',
    kind: 'plain',
    where: 'Count those that really touch. Under one corner it is one.',
    typical: [1, 2],
  },
  {
    ask: 'figure',
    name: 'lift.base',
    label: 'Side of the base of the jack or stand',
    kind: 'length',
    where: 'Tape across its foot, or across the plate beneath it.',
    typical: [6, 14],
  },
  {
    ask: 'figure',
    name: 'lift.slope',
    label: 'Slope of the ground',
    kind: 'percent',
    where: 'A level of four feet: half an inch out is one in a hundred.',
    typical: [0, 2],
  },
];

export const LIFT_SHEET: Sheet = {
  id: 'lift',
  heading: 'Jack, stands and ground',
  fields: JACK,
  answer(form): Shown<Answer> {
    const given = new Given(form, JACK);
    const ground = given.choice('lift.ground');
    const held = given.choice('lift.held');
    if (ground === 'soft')
      return {
        kind: 'refused',
        reason: 'soft-ground',
        words:
          'Soft ground is never reckoned with: a stand sinks and tips hours later. Move to concrete, or call somebody who has plates for it.',
      };
    if (held === 'bags')
      return {
        kind: 'refused',
        reason: 'air-springs',
        words:
          'Air springs hold nothing: a hose or a valve lets the coach down in a second. Stands under the jacking points, or nobody reaches under.',
      };
    if (held === 'jack')
      return {
        kind: 'refused',
        reason: 'jack-alone',
        words: 'A jack lifts, it does not hold. Set stands, lower onto them, then look.',
      };
    if (given.trouble) return given.trouble;
    if (ground === '' || held === '')
      return { kind: 'waiting', words: 'Choose the ground and what will carry the coach.' };
    const axle = given.figure('lift.axle');
    const corner = cornerLoadLb(axle);
    const lift =
      given.choice('lift.where') === 'end'
        ? endLift(axle, given.figure('lift.span'), given.figure('lift.place'))
        : axleSideLift(axle, given.figure('lift.span'), given.figure('lift.place'));
    if (!corner.ok) return refused(corner);
    if (!lift.ok) return refused(lift);
    const stands = standCheck(
      lift.loadLb,
      given.figure('lift.stand'),
      given.figure('lift.stands'),
      given.choice('lift.pair') !== 'one',
    );
    if (!stands.ok) return refused(stands);
    const base = given.figure('lift.base');
    const press = groundLoad(lift.loadLb, base, base, given.figure('lift.slope') / 100);
    if (!press.ok) return refused(press);
    const jackEnough = given.figure('lift.jack') >= lift.ratingLb;
    const weight = (lb: number): string => shown(lb, 'weight', form.system);
    const enough = jackEnough && stands.verdict === 'enough-by-the-numbers';
    return {
      kind: 'shown',
      ...(enough
        ? {
            verdict:
              'Enough by the numbers alone. That is no permission to go under: look at jack, stands, chocks and ground first.',
          }
        : { stop: jackEnough ? 'The stands are not enough for this load.' : 'The jack is not enough for this load.' }),
      figures: [
        { words: 'One corner of this axle', figure: weight(corner.loadLb) },
        { words: 'On the jack', figure: weight(lift.loadLb) },
        {
          words: 'The jack needs a rating of',
          figure: `${weight(lift.ratingLb)} (${digits(lift.ratingUsTons, 1)} US tons)`,
        },
        { words: 'Stands carry, over the load', figure: `${digits(stands.ratio, 2)} times; 1.25 is needed` },
        { words: 'On the ground', figure: shown(press.pressurePsi, 'pressure', form.system) },
        { words: 'Side force of the slope', figure: weight(press.sideForceLb) },
      ],
      notes: [
        ...(press.needsPlate || ground === 'asphalt'
          ? ['Put a steel plate or thick hardwood under it: that much on so small a foot sinks in.']
          : []),
      ],
      sources: [
        source('moments', 'practice'),
        source('marked rating never exceeded: 29 CFR 1926.305', 'seen'),
        source('factor 1.25, side bias 5 %, 50 psi on the ground'),
      ],
    };
  },
};
