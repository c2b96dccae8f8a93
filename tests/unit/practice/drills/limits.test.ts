import { beforeAll, describe, expect, it } from 'vitest';
import { shippedTrees } from '../../../shipped-trees.ts';
import type { Vocabulary } from '../../../../shared/knowledge/index.ts';
import {
  givesAway,
  judgeLimit,
  limitCards,
  limitFigure,
  type LimitCard,
  type LimitJudgement,
} from '../../../../shared/practice/drills/index.ts';

let vocabulary: Vocabulary;
let cards: readonly LimitCard[];
beforeAll(async () => {
  const read = await shippedTrees('weak-engine-brake');
  if (!read.vocabulary) throw new Error('The vocabulary cannot be read.');
  ({ vocabulary } = read);
  cards = limitCards(vocabulary);
});

function card(id: string): LimitCard {
  const found = cards.find(({ limit }) => limit.id === id);
  if (!found) throw new Error(`There is no card of the limit "${id}".`);
  return found;
}
const judged = (id: string, low: string, unit: string, high?: string): LimitJudgement =>
  judgeLimit(card(id), { low, unit, ...(high === undefined ? {} : { high }) });

describe('[DRI-7] the figure of a limit', () => {
  it.each([
    ['more than 1/8 in', { lead: 'more than', low: 0.125, high: null, unit: 'in', rounding: 0, condition: '' }],
    [
      'not more than 3 psi in 1 minute after the first drop, at 90 psi or more at the pedal',
      {
        low: 3,
        high: null,
        unit: 'psi',
        condition: 'in 1 minute after the first drop, at 90 psi or more at the pedal',
      },
    ],
    [
      '0.001–0.005 in (0.025–0.127 mm) by dial gauge',
      { low: 0.001, high: 0.005, rounding: 0.0005, condition: 'by dial gauge' },
    ],
    [
      '85 to 100 psi within 45 s at operating speed',
      { lead: 'within', low: 45, unit: 's', condition: 'from 85 to 100 psi at operating speed' },
    ],
    ['about ¼ degree', { lead: 'about', low: 0.25, unit: 'deg' }],
  ])('“%s” can be asked for', (value, figure) => {
    expect(limitFigure({ value, quantity: 'something' })).toMatchObject(figure);
  });

  it.each([
    'no figure',
    'all in place and tight',
    '4/32 in front, 2/32 in elsewhere',
    '3/16 in at shoe centre for one continuous strip; ¼ in for two pads',
    '55 psi, or one half of governor cut-out, whichever is less',
    '0.5 V on the supply side, 0.2 V on the ground side; connections 0.0 V each',
    'within 5 °F of its stamp',
    'about 3 °F per psi of cap; about 2 °F lower per 1,000 ft',
  ])('“%s” cannot: words, several figures or a difference', (value) => {
    expect(limitFigure({ value, quantity: 'something' })).toBeNull();
  });

  it('nothing that is judged here or remembered without a look is drilled', () => {
    expect(cards.length).toBeGreaterThan(35);
    expect(new Set(cards.map(({ limit }) => limit.status))).toEqual(new Set(['seen', 'second-hand', 'practice']));
  });

  it('[DRI-7] a limit with several figures gives a card for each, and each figure stands in the printed value', () => {
    const lists = [...vocabulary.limits.values()].flatMap(({ figures, ...limit }) =>
      figures ? [{ figures, limit }] : [],
    );
    expect(lists.length).toBeGreaterThan(15);
    for (const { figures, limit } of lists) {
      const own = cards.filter((card) => card.limit.id === limit.id);
      expect(own.map(({ figure }) => figure.condition)).toEqual(figures.map(({ of }) => of));
      expect(new Set(own.map(({ id }) => id)).size, limit.id).toBe(figures.length);
      for (const { value } of figures) expect(limit.value.includes(value), `${limit.id}: ${value}`).toBe(true);
    }
    const stroke = cards.find(
      ({ figure, limit }) => limit.id.startsWith('applied-stroke') && figure.condition === 'type 36',
    )!;
    expect(judgeLimit(stroke, { low: '2 1/4', unit: 'in' })).toEqual({ ok: true, outcome: 'right' });
    expect(judgeLimit(stroke, { low: '2', unit: 'in' })).toEqual({ ok: true, outcome: 'wrong' });
  });

  it('[DRI-3] the question has neither the figure nor the value as printed', () => {
    for (const { limit, figure } of cards) {
      const question = `${limit.quantity} ${figure.lead} ${figure.condition}`;
      expect(givesAway(question, limit.value), question).toBe(false);
      for (const end of [figure.low, ...(figure.high === null ? [] : [figure.high])])
        expect(` ${question} `.includes(` ${String(end)} `), question).toBe(false);
    }
  });
});

describe('[DRI-7] a typed figure', () => {
  it.each([
    ['front-wheel-bearing-movement-at-the', '1/8', 'in'],
    ['front-wheel-bearing-movement-at-the', '0.125', 'in'],
    ['front-wheel-bearing-movement-at-the', '3.2', 'mm'],
    ['universal-joint-movement-at-the-cup', '0.006', 'in'],
    ['universal-joint-movement-at-the-cup', '0.15', 'mm'],
    ['drum-temperature-as-upper-end-of', '500', 'degF'],
    ['drum-temperature-as-upper-end-of', '260', 'degC'],
  ])('%s: %s %s is right', (id, low, unit) => {
    expect(judged(id, low, unit)).toEqual({ ok: true, outcome: 'right' });
  });

  it.each([
    ['front-wheel-bearing-movement-at-the', '3/16', 'in'],
    ['front-wheel-bearing-movement-at-the', '3', 'mm'],
    ['universal-joint-movement-at-the-cup', '0.06', 'in'],
    ['universal-joint-movement-at-the-cup', '0', 'mm'],
    ['drum-temperature-as-upper-end-of', '500', 'degC'],
  ])('%s: %s %s is wrong', (id, low, unit) => {
    expect(judged(id, low, unit)).toEqual({ ok: true, outcome: 'wrong' });
  });

  it('a range wants both ends', () => {
    const id = 'wheel-bearing-end-play-manually-adjusted';
    expect(judged(id, '0.001', 'in', '0.005')).toMatchObject({ outcome: 'right' });
    expect(judged(id, '0.025', 'mm', '0.127')).toMatchObject({ outcome: 'right' });
    expect(judged(id, '0.001', 'in', '0.010')).toMatchObject({ outcome: 'wrong' });
    expect(judged(id, '0.001', 'in', '')).toMatchObject({ ok: false });
  });

  it('the figure of a source that disagrees is half right, and the source is named', () => {
    const withOthers = cards.flatMap((each) => {
      const other = (each.limit.figures ? [] : (each.limit.disagreement?.others ?? [])).flatMap((said) => {
        const figure = limitFigure({ value: said.value, quantity: '' });
        return figure?.high === null && each.figure.high === null && figure.low !== each.figure.low
          ? [{ said, figure }]
          : [];
      })[0];
      return other ? [{ each, other }] : [];
    });
    expect(withOthers.length).toBeGreaterThan(0);
    for (const { each, other } of withOthers)
      expect(judgeLimit(each, { low: String(other.figure.low), unit: other.figure.unit })).toEqual({
        ok: true,
        outcome: 'nearly',
        by: other.said.source,
      });
  });

  it('what is no figure, or measures something else, is said and not judged', () => {
    expect(judged('drum-temperature-as-upper-end-of', 'hot', 'degF')).toMatchObject({
      ok: false,
      problem: /“hot” is not a figure/,
    });
    expect(judged('drum-temperature-as-upper-end-of', '500', 'psi')).toMatchObject({
      ok: false,
      problem: /Choose another unit/,
    });
  });
});
