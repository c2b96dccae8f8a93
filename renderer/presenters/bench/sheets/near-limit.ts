import {
  conformityProbability,
  guardBand,
  judge,
  meanOfRepeats,
  type Limit,
} from '../../../../shared/measuring/index.ts';
import { digits } from '../figure-kinds.ts';
import { refused } from '../form.ts';
import { heldView } from '../held.ts';
import { Given, rowOf, source, type Asked, type Sheet } from '../sheet.ts';

const FIELDS: readonly Asked[] = [
  ...rowOf('near.reading', 5, 1, (i) => (i === 1 ? 'Reading' : `Reading again, ${i}`), {
    kind: 'plain',
    where: 'As the gauge shows it, all in the same unit as the limit. Take the gauge off and set it anew each time.',
  }),
  {
    ask: 'figure',
    name: 'near.give',
    label: 'Gauge gives or takes',
    kind: 'plain',
    where: 'Half of its smallest division, or the “±” of its data sheet.',
  },
  {
    ask: 'figure',
    name: 'near.limit',
    label: 'Limit',
    kind: 'plain',
    where: 'The rule, the book, or the plate. Note its source beside the finding.',
  },
  {
    ask: 'choice',
    name: 'near.side',
    label: 'The limit is',
    options: [
      ['at-most', 'the most allowed'],
      ['at-least', 'the least allowed'],
    ],
    otherwise: 'at-most',
    where: 'Wear and leaks have a most; thickness and tread have a least.',
  },
  {
    ask: 'figure',
    name: 'near.better',
    label: 'A better gauge would give or take',
    kind: 'plain',
    where: 'The data sheet of the gauge that could be borrowed.',
    optional: true,
  },
];

/** Half of a give or take, in squares, is the gauge's own fault, the same at every look; the other half is the look. */
function lookOf(give: number): number {
  return give / Math.sqrt(3) / Math.SQRT2;
}

function byGauge(readings: readonly number[], give: number) {
  return meanOfRepeats(readings, lookOf(give), lookOf(give));
}

export const NEAR_SHEET: Sheet = {
  id: 'near-limit',
  heading: 'A reading near its limit',
  lead: 'Any quantity, any unit, as long as all of it is in the same.',
  fields: FIELDS,
  answer(form) {
    const given = new Given(form, FIELDS);
    if (given.trouble) return given.trouble;
    const readings = given.row('near.reading', 5);
    const look = lookOf(given.figure('near.give'));
    const mean = byGauge(readings, given.figure('near.give'));
    if (!mean.ok) return refused(mean);
    const side = given.choice('near.side') === 'at-least' ? 'at-least' : 'at-most';
    const limit: Limit = {
      id: 'typed',
      value: given.figure('near.limit'),
      unit: '',
      side,
      atLimit: 'sources-differ',
      source: 'as typed',
      status: 'practice',
    };
    const judgement = judge(mean.value, mean.uncertainty, limit);
    const share = (u: number): string => {
      const found = conformityProbability(
        mean.value,
        Math.max(u, 1e-9),
        side === 'at-least' ? limit.value : null,
        side === 'at-most' ? limit.value : null,
      );
      return found.ok ? `${digits(100 * found.probability, 0)} in 100` : 'not worked out';
    };
    const guard = guardBand(limit.value, mean.uncertainty, 0.95);
    const more = readings.length + 3;
    const give = given.maybe('near.better');
    const better = give === null ? null : byGauge(readings, give);
    if (better && !better.ok) return refused(better);
    return {
      kind: 'shown',
      held: [{ of: '', view: heldView(mean.value, mean.uncertainty, judgement, form.system) }],
      figures: [
        {
          words: readings.length === 1 ? 'Reading' : `Mean of ${readings.length} readings`,
          figure: digits(mean.value, 3),
        },
        { words: 'Give or take', figure: digits(2 * mean.uncertainty, 3) },
        ...(mean.scatter === null ? [] : [{ words: 'Scatter of the readings', figure: digits(mean.scatter, 3) }]),
        ...(guard.ok
          ? [
              {
                words: 'Certain enough either way outside of',
                figure: `${digits(guard.acceptAtMost, 3)} to ${digits(guard.rejectAtLeast, 3)}`,
              },
            ]
          : []),
        {
          words: `With three more readings (${more} in all), if the mean stays`,
          figure: share(Math.hypot(Math.max(look, mean.scatter ?? 0) / Math.sqrt(more), look)),
        },
        ...(better === null
          ? []
          : [{ words: 'With the better gauge, if mean and scatter stay', figure: share(better.uncertainty) }]),
      ],
      notes: [
        'Repeats mend the look, never the gauge: what it reads wrong it reads wrong every time.',
        ...(judgement.decision === 'too-close' ? ['Too close to call counts against driving.'] : []),
      ],
      sources: [source('JCGM 106:2012', 'memory'), source('half of the give or take is the gauge’s own')],
    };
  },
};
