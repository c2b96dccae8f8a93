import { describe, expect, it } from 'vitest';
import { coachProfile, layoutForVisit, learnedInVisit, readCoachEvent } from '../../../shared/coach/index.ts';
import {
  answerWords,
  fitOf,
  isAnswerTo,
  ticked,
  weightOn,
  type LayoutFeature,
} from '../../../shared/knowledge/index.ts';
import { numberOfLayout } from '../../../shared/practice/index.ts';
import { readEvent } from '../../../shared/visit/index.ts';
import { shippedTrees } from '../../shipped-trees.ts';

const retarder: LayoutFeature = {
  id: 'retarder',
  ask: 'What holds the coach back?',
  values: [
    { value: 'compression', label: 'an engine brake' },
    { value: 'other', label: 'a flap' },
    { value: 'none', label: 'none' },
  ],
  together: ['compression', 'other'],
};
const both = ['compression', 'other'];
const head = { id: 'e-1', v: 1, at: '2026-05-13T08:00:00.000Z', by: '' };

describe('[KNO-20] a coach that has several kinds at once', () => {
  it('keeps what needs any one of them and strikes out the rest', () => {
    const layout = { brake: ['drum-s-cam', 'disc'] };
    expect(fitOf({ brake: ['disc'] }, layout)).toEqual({ fits: 'yes' });
    expect(fitOf({ brake: ['drum-s-cam'] }, layout)).toEqual({ fits: 'yes' });
    expect(fitOf({ brake: ['drum-wedge'] }, layout)).toEqual({ fits: 'no', feature: 'brake' });
    expect(weightOn({ weight: 3, weightIf: [{ when: { brake: ['disc'] }, weight: 20 }] }, layout)).toBe(20);
  });
  it('is answered only with what the vocabulary lets go together', () => {
    expect(isAnswerTo(retarder, both)).toBe(true);
    expect(isAnswerTo(retarder, 'none')).toBe(true);
    expect(isAnswerTo(retarder, ['compression', 'none'])).toBe(false);
    expect(isAnswerTo(retarder, ['compression', 'compression'])).toBe(false);
    expect(isAnswerTo({ ...retarder, together: [] }, both)).toBe(false);
    expect(answerWords(retarder, both)).toBe('an engine brake and a flap');
  });
  it('is ticked one by one; what cannot be beside it goes; nothing left is not known', () => {
    expect(ticked(retarder, 'other', 'compression', true)).toEqual(both);
    expect(ticked(retarder, both, 'none', true)).toBe('none');
    expect(ticked(retarder, 'none', 'other', true)).toBe('other');
    expect(ticked(retarder, both, 'other', false)).toBe('compression');
    expect(ticked(retarder, 'other', 'other', false)).toBeNull();
  });
  it('is written in the logs, beside answers of one value as older versions wrote them', () => {
    for (const value of [both, 'other', true, null])
      expect(readEvent({ ...head, kind: 'layout.set', feature: 'retarder', value })).toMatchObject({ value });
    expect(() => readEvent({ ...head, kind: 'layout.set', feature: 'retarder', value: ['other'] })).toThrow();
    const profile = coachProfile(
      [both, 'other'].map((value, i) =>
        readCoachEvent({ ...head, id: `e-${i}`, kind: 'coach.set', field: `layout.${i ? 'fan' : 'retarder'}`, value }),
      ),
    );
    // A fan of that kind is not in the vocabulary: left out, as ever.
    expect(layoutForVisit(profile, [retarder])).toEqual([{ kind: 'layout.set', feature: 'retarder', value: both }]);
    expect(learnedInVisit(profile, { retarder: ['other', 'compression'] }, [retarder])).toEqual([]);
    expect(learnedInVisit(profile, { retarder: 'other' }, [retarder])).toEqual([
      { feature: 'retarder', value: 'other', was: both },
    ]);
  });
  it('goes into a code for an exercise as the first of them', async () => {
    const id = 'brake-pulls-or-one-drum-hot';
    const { trees, vocabulary } = await shippedTrees(id);
    const tree = trees.get(id)!.value!;
    expect(numberOfLayout(tree, vocabulary!, { brake: ['drum-wedge', 'disc'] })).toBe(
      numberOfLayout(tree, vocabulary!, { brake: 'drum-wedge' }),
    );
  });
});
