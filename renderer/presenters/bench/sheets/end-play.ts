import { DIAL_UNCERTAINTY_IN, judgeEndPlay, meanOfRepeats } from '../../../../shared/measuring/index.ts';
import { digits } from '../figure-kinds.ts';
import { refused } from '../form.ts';
import { heldView } from '../held.ts';
import { Given, source, type Asked, type Sheet } from '../sheet.ts';

export const END_PLAY_STEPS: readonly string[] = [
  'Indicator base on hub or drum, plunger on the spindle end, in line with the spindle.',
  'Push in at 3 and 9 o’clock while turning the wheel a little; set the dial to zero.',
  'Pull out in the same way. The whole movement is the end play.',
  'Do it three times: a dial that slips shows.',
];

const REDO = {
  'preload-not-known': 'No movement may be heavy preload, which burns a bearing. Adjust again from the start.',
  'too-loose': 'Too loose. Adjust again from the start.',
} as const;

const WHERE = 'Dial from pushed in to pulled out, hub turned a little both ways. Not rocked: rocking bends the hub.';

const FIELDS: readonly Asked[] = [
  {
    ask: 'choice',
    name: 'endplay.unitised',
    label: 'Hub',
    options: [
      ['no', 'Conventional bearings'],
      ['yes', 'Hub unit or self-locking nut'],
    ],
    otherwise: 'no',
    where: 'Under the hub cap: two nuts or a nut with a pin are conventional; a stamped unit with one nut is not.',
  },
  {
    ask: 'figure',
    name: 'endplay.value',
    label: 'Whole movement',
    kind: 'length',
    where: WHERE,
    typical: [0.001, 0.01],
  },
  {
    ask: 'figure',
    name: 'endplay.second',
    label: 'The same, second time',
    kind: 'length',
    where: WHERE,
    typical: [0.001, 0.01],
    optional: true,
  },
  {
    ask: 'figure',
    name: 'endplay.third',
    label: 'The same, third time',
    kind: 'length',
    where: WHERE,
    typical: [0.001, 0.01],
    optional: true,
  },
];

export const END_PLAY_SHEET: Sheet = {
  id: 'endplay-play',
  heading: 'End play by dial',
  fields: FIELDS,
  answer(form) {
    const given = new Given(form, FIELDS);
    if (given.choice('endplay.unitised') === 'yes') {
      const no = judgeEndPlay(0, DIAL_UNCERTAINTY_IN, true);
      if (!no.ok) return refused(no);
    }
    if (given.trouble) return given.trouble;
    const readings = ['value', 'second', 'third'].flatMap((which) => given.maybe(`endplay.${which}`) ?? []);
    const mean = meanOfRepeats(readings, DIAL_UNCERTAINTY_IN);
    if (!mean.ok) return refused(mean);
    const found = judgeEndPlay(mean.value, mean.uncertainty);
    if (!found.ok) return refused(found);
    return {
      kind: 'shown',
      ...(found.redo === null ? {} : { stop: REDO[found.redo] }),
      held: [
        { of: 'Some play', view: heldView(mean.value, mean.uncertainty, found.low, form.system) },
        { of: 'Not too much', view: heldView(mean.value, mean.uncertainty, found.high, form.system) },
      ],
      figures:
        mean.scatter === null ? [] : [{ words: 'Scatter of the readings', figure: `${digits(mean.scatter, 4)} in` }],
      sources: [source('dial read to half a division')],
      worked: { value: mean.value, uncertainty: mean.uncertainty, unit: 'in' },
    };
  },
};
