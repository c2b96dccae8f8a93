import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beliefModel, learnedOdds, verifiedCause, withOdds, type ClosedCase } from '../../../shared/inference/index.ts';
import { cause, check, tree } from '../../unit/planning/small-tree.ts';

const SEED = { seed: 20251128, numRuns: 200 };
const brakes = tree(
  [
    cause('lining', 50),
    cause('drum', 20, { when: { brake: ['drum'] } }),
    cause('disc', 30, { when: { brake: ['disc'] } }),
  ],
  [
    check(
      'look',
      ['x', 'y'],
      [
        [0.5, 0.5],
        [0.4, 0.6],
        [0.3, 0.7],
      ],
    ),
  ],
  { unlistedShare: 0.1 },
);
const proven = (id: string, of: string, more: Partial<ClosedCase> = {}): ClosedCase => ({
  id,
  complaint: brakes.id,
  layout: {},
  corrections: [{ cause: of, partSeen: 'bad', proof: 'gone' }],
  ...more,
});
const anyCases = fc
  .array(fc.constantFrom('lining', 'drum', 'unlisted', 'disc'), { maxLength: 30 })
  .map((causes) => causes.map((each, i) => proven(`case-${i}`, each)));
const anyOpinion = fc.integer({ min: 1, max: 60 });
const ON = { on: true };

describe('[INF-15] learned odds, for any cases', () => {
  it('no cases, or learning off: the author’s odds to the last digit', () => {
    const authored = Array.from(beliefModel(brakes, {}).prior);
    fc.assert(
      fc.property(anyCases, anyOpinion, (cases, opinion) => {
        expect(learnedOdds(brakes, {}, [], { on: true, opinion }).causes.map((each) => each.learned)).toEqual(authored);
        const off = learnedOdds(brakes, {}, cases, { opinion });
        expect(off).toMatchObject({ on: false, data: 0, leftOut: [] });
        expect(off.causes.map((each) => each.learned)).toEqual(authored);
        expect(withOdds(brakes, off)).toBe(brakes);
      }),
      SEED,
    );
  });
  it('sums to 1, and lies between the author’s share and the cases’', () => {
    fc.assert(
      fc.property(anyCases, anyOpinion, (cases, opinion) => {
        const { causes, data } = learnedOdds(brakes, {}, cases, { on: true, opinion });
        expect(data).toBe(cases.length);
        expect(causes.reduce((sum, { learned }) => sum + learned, 0)).toBeCloseTo(1, 12);
        for (const { authored, learned, cases: n } of causes) {
          const seen = data > 0 ? n / data : authored;
          expect(learned).toBeGreaterThanOrEqual(Math.min(authored, seen) - 1e-12);
          expect(learned).toBeLessThanOrEqual(Math.max(authored, seen) + 1e-12);
        }
      }),
      SEED,
    );
  });
  it('the order of the cases does not matter', () => {
    fc.assert(
      fc.property(
        anyCases.chain((cases) =>
          fc.tuple(fc.constant(cases), fc.shuffledSubarray(cases, { minLength: cases.length })),
        ),
        ([cases, shuffled]) => {
          expect(learnedOdds(brakes, {}, shuffled, ON).causes).toEqual(learnedOdds(brakes, {}, cases, ON).causes);
        },
      ),
      SEED,
    );
  });
  it('one case at a time is the same as all at once', () => {
    fc.assert(
      fc.property(anyCases, anyOpinion, (cases, opinion) => {
        let now = brakes;
        let strength = opinion;
        for (const each of cases) {
          now = withOdds(now, learnedOdds(now, {}, [each], { on: true, opinion: strength }));
          strength += 1;
        }
        const all = learnedOdds(brakes, {}, cases, { on: true, opinion });
        all.causes.forEach(({ learned }, c) => expect(beliefModel(now, {}).prior[c]).toBeCloseTo(learned, 9));
      }),
      SEED,
    );
  });
  it('taking a case out undoes it', () => {
    fc.assert(
      fc.property(anyCases, fc.constantFrom('lining', 'drum', 'unlisted'), (cases, of) => {
        const more = [...cases, proven('late', of)];
        const without = learnedOdds(brakes, {}, more, { on: true, takenOut: new Set(['late']) });
        expect(without.causes).toEqual(learnedOdds(brakes, {}, cases, ON).causes);
        expect(without.leftOut).toEqual([{ id: 'late', why: 'taken-out' }]);
      }),
      SEED,
    );
  });
  it('the belief model of the tree with learned odds starts from them', () => {
    fc.assert(
      fc.property(anyCases, (cases) => {
        const learned = learnedOdds(brakes, {}, cases, ON);
        const { prior } = beliefModel(withOdds(brakes, learned), {});
        learned.causes.forEach((each, c) => expect(prior[c]).toBeCloseTo(each.learned, 12));
      }),
      SEED,
    );
  });
});

describe('[INF-16] which cases count', () => {
  const why = (each: ClosedCase, layout = {}) => learnedOdds(brakes, layout, [each], ON).leftOut[0]?.why;

  it('only complaints of the same kind', () => {
    expect(why(proven('1', 'lining', { complaint: 'another' }))).toBe('other-complaint');
  });
  it('proven after one correction, unless its part was seen to be good', () => {
    const once = (partSeen: 'bad' | 'good' | 'unknown', proof: 'gone' | 'still-there' | 'pending') =>
      verifiedCause(proven('1', 'lining', { corrections: [{ cause: 'lining', partSeen, proof }] }));
    expect(once('unknown', 'gone')).toBe('lining');
    expect(once('bad', 'gone')).toBe('lining');
    expect(once('good', 'gone')).toBeNull();
    expect(once('bad', 'still-there')).toBeNull();
    expect(once('bad', 'pending')).toBeNull();
    expect(verifiedCause(proven('1', 'lining', { corrections: [] }))).toBeNull();
  });
  it('after several corrections only when the last part alone was seen to be bad', () => {
    const twice = (first: 'bad' | 'good' | 'unknown', last: 'bad' | 'unknown') =>
      why(
        proven('1', 'lining', {
          corrections: [
            { cause: 'drum', partSeen: first, proof: 'still-there' },
            { cause: 'lining', partSeen: last, proof: 'gone' },
          ],
        }),
      );
    expect(twice('good', 'bad')).toBeUndefined();
    expect(twice('unknown', 'bad')).toBeUndefined();
    expect(twice('bad', 'bad')).toBe('not-verified');
    expect(twice('good', 'unknown')).toBe('not-verified');
  });
  it('a cause that cannot exist on this coach teaches nothing about it', () => {
    expect(why(proven('1', 'disc', { layout: { brake: 'disc' } }), { brake: 'drum' })).toBe('cause-elsewhere');
  });
  it('a coach that could not have every cause of this one would teach against them', () => {
    const fromDrum = proven('1', 'lining', { layout: { brake: 'drum' } });
    expect(why(fromDrum, {})).toBe('built-otherwise');
    expect(why(fromDrum, { brake: 'drum' })).toBeUndefined();
    expect(why(proven('1', 'lining'), { brake: 'drum' })).toBeUndefined();
  });
  it('refuses an opinion that is worth nothing', () => {
    for (const opinion of [0, -1, NaN, Infinity])
      expect(() => learnedOdds(brakes, {}, [], { on: true, opinion })).toThrow(/number above 0/);
  });
});
