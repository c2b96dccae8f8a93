import { beforeAll, describe, expect, it } from 'vitest';
import { loadTrees } from '../../../electron/cli/load-trees.ts';
import { beliefModel, posterior, type Finding } from '../../../shared/inference/index.ts';
import type { Check, Vocabulary } from '../../../shared/knowledge/index.ts';
import { defaultCosts, driveVerdict, type DriveVerdict, type Situation } from '../../../shared/planning/index.ts';
import { blockedAgain, blockedReason, wordsAtHand } from '../../../shared/planning/blocked.ts';
import { standing } from '../../../shared/planning/standing.ts';
import { cause, check, stopRule, tree } from './small-tree.ts';

let vocabulary: Vocabulary;
beforeAll(async () => {
  const loaded = await loadTrees({ only: [] });
  if (!loaded.vocabulary) throw new Error('The shipped vocabulary cannot be read.');
  vocabulary = loaded.vocabulary;
});

const saw = (id: string, result: string): Finding => ({ id, check: id, value: { kind: 'result', result } });
const play = check(
  'play',
  ['small', 'large'],
  [
    [0.2, 0.8],
    [0.7, 0.3],
  ],
  {
    measure: { unit: 'mm', of: '', instrument: 'dial' },
    results: [
      { id: 'small', label: 'small', range: [0, 1] },
      { id: 'large', label: 'large', range: [1, 10] },
    ],
  },
);
// With the costs as they are set the limit is .03 and half of it .015.
const hub = tree(
  [cause('loose', 1, { hazard: 'danger' }), cause('tyre', 99)],
  [
    play,
    check(
      'push',
      ['firm', 'gives'],
      [
        [0.25, 0.75],
        [0.75, 0.25],
      ],
    ),
    check(
      'pull',
      ['firm', 'gives'],
      [
        [0.4, 0.6],
        [0.6, 0.4],
      ],
    ),
    check(
      'look',
      ['clean', 'rust'],
      [
        [0.1, 0.9],
        [0.9, 0.1],
      ],
    ),
  ],
  {
    stopRules: [
      stopRule('play', 'stay-put', { covers: ['loose'], firedBy: [{ check: 'play', results: ['large'] }] }),
      stopRule('grows', 'creep-to-safe-place', { covers: ['loose'] }),
    ],
  },
);
const model = beliefModel(hub, {}, { floor: 0 });
function situation(more: Partial<Situation> = {}): Situation {
  return {
    tree: hub,
    vocabulary,
    who: 'mechanic',
    layout: {},
    findings: [],
    stopAnswers: { play: 'no', grows: 'no' },
    corrections: [],
    access: [],
    costs: defaultCosts('mechanic'),
    ...more,
  };
}
const verdict = (more: Partial<Situation> = {}): DriveVerdict => driveVerdict(situation(more), model);
const read = (value: number): Finding => ({
  id: 'play',
  check: 'play',
  value: { kind: 'reading', value, uncertainty: 0.1, range: [0, 10] },
});

describe('[PLA-18] a reading near the limit of a stop rule', () => {
  it('fires it while the true value may well lie past it, though the likeliest band does not', () => {
    expect(verdict({ findings: [read(0.9)] })).toMatchObject({
      verdict: 'stay-put',
      fired: [{ rule: 'play', by: { kind: 'finding', check: 'play', result: 'large' } }],
    });
  });
  it('does not fire it from well below', () => {
    expect(verdict({ findings: [read(0.5)] }).fired).toEqual([]);
  });
  it('a leaning toward the firing result fires it', () => {
    expect(
      verdict({ findings: [{ id: 'play', check: 'play', value: { kind: 'not-sure', leaning: 'large' } }] }).verdict,
    ).toBe('stay-put');
  });
});

describe('[PLA-17] milder only below half the limit', () => {
  // Odds of "loose" start at 1:99; "gives" multiplies by 3 or 1.5, "firm" by 1/3 or 2/3.
  it('starts below half: may drive', () => {
    expect(verdict()).toMatchObject({ verdict: 'drive-and-book' });
    expect(verdict().dangerShare).toBeCloseTo(0.01, 9);
    expect(verdict().threshold).toBeCloseTo(0.03, 9);
  });
  it('between half and the limit it stays as it was: mild from below', () => {
    const now = verdict({ findings: [saw('push', 'gives')] });
    expect(now.dangerShare).toBeCloseTo(3 / 102, 9);
    expect(now.verdict).toBe('drive-and-book');
  });
  it('at the limit it becomes creep', () => {
    const now = verdict({ findings: [saw('push', 'gives'), saw('pull', 'gives')] });
    expect(now.dangerShare).toBeCloseTo(4.5 / 103.5, 9);
    expect(now.verdict).toBe('creep-to-safe-place');
  });
  it('between half and the limit it stays as it was: creep from above', () => {
    const now = verdict({ findings: [saw('look', 'rust'), saw('push', 'firm'), saw('pull', 'firm')] });
    expect(now.dangerShare).toBeCloseTo(2 / 101, 9);
    expect(now.dangerShare).toBeLessThan(now.threshold);
    expect(now.dangerShare).toBeGreaterThan(now.threshold / 2);
    expect(now.verdict).toBe('creep-to-safe-place');
  });
  it('below half it may drive again', () => {
    const now = verdict({ findings: [saw('push', 'gives'), saw('pull', 'gives'), saw('play', 'small')] });
    expect(now.dangerShare).toBeCloseTo((4.5 * 0.2) / (4.5 * 0.2 + 99 * 0.7), 9);
    expect(now.dangerShare).toBeLessThan(now.threshold / 2);
    expect(now.verdict).toBe('drive-and-book');
  });
  it('with a question open it never drives, however low the odds', () => {
    for (const stopAnswers of [{}, { play: 'no' }, { grows: 'no' }] as const)
      expect(verdict({ stopAnswers, findings: [saw('look', 'clean'), saw('push', 'firm')] }).verdict).toBe(
        'creep-to-safe-place',
      );
  });
});

describe('[PLA-19] after a correction that did not end it', () => {
  const findings = [saw('look', 'rust'), saw('push', 'firm')];
  const done = (partSeen: 'bad' | 'good' | 'unknown', proof: 'pending' | 'gone' | 'still-there') => ({
    cause: 'loose',
    partSeen,
    proof,
    findingsBefore: ['look', 'push'],
  });
  it.each(['good', 'unknown'] as const)('part seen %s: the cause is out, every finding stands', (partSeen) => {
    const {
      excluded,
      stale,
      findings: stand,
    } = standing(model, { findings, corrections: [done(partSeen, 'still-there')] });
    expect([...excluded]).toEqual(['loose']);
    expect([...stale]).toEqual([]);
    expect(stand).toEqual(findings);
    expect(posterior(model, stand, excluded).probability[0]).toBe(0);
  });
  it('part seen bad: what it explained is asked again, the rest stands', () => {
    const { stale, findings: stand } = standing(model, { findings, corrections: [done('bad', 'still-there')] });
    expect([...stale]).toEqual(['look']);
    expect(stand.map(({ id }) => id)).toEqual(['push']);
  });
  it.each(['pending', 'gone'] as const)('proof %s: nothing changes', (proof) => {
    const { excluded, stale } = standing(model, { findings, corrections: [done('bad', proof)] });
    expect([excluded.size, stale.size]).toEqual([0, 0]);
  });
  it('a finding made after the correction is never set aside', () => {
    const corrections = [{ ...done('bad', 'still-there'), findingsBefore: ['push'] }];
    expect([...standing(model, { findings, corrections }).stale]).toEqual([]);
  });
});

describe('[PLA-20] why a check cannot be offered', () => {
  const reason = (
    more: Partial<Check>,
    about: Partial<Situation> = {},
    findings: readonly Finding[] = [],
    drive: DriveVerdict | null = null,
  ) => {
    const asked = check('ask', ['x', 'y'], [[0.5, 0.5]], more);
    const checks = new Map([...hub.checks, asked].map((each) => [each.id, each]));
    const here = situation(about);
    return blockedReason(asked, here, findings, drive, wordsAtHand(vocabulary, here), checks);
  };
  it('nothing in the way', () => expect(reason({})).toBeNull());
  it('done', () => expect(reason({}, {}, [saw('ask', 'x')])).toEqual({ kind: 'done' }));
  it('"can’t do" is not asked again', () =>
    expect(reason({}, {}, [{ id: 'ask', check: 'ask', value: { kind: 'cant-do' } }])).toEqual({ kind: 'done' }));
  it('who', () =>
    expect(reason({ who: 'mechanic' }, { who: 'owner-no-tools' })).toEqual({ kind: 'who', needs: 'mechanic' }));
  it('tools: names those missing', () =>
    expect(reason({ tools: ['a thing that nobody has'] }, { tools: [] })).toEqual({
      kind: 'tools',
      missing: ['a thing that nobody has'],
    }));
  it('layout known against it, and not known', () => {
    const when = { engine: ['two-stroke'] };
    expect(reason({ when }, { layout: { engine: 'four-stroke' } })).toEqual({
      kind: 'layout',
      feature: 'engine',
      known: true,
    });
    expect(reason({ when })).toEqual({ kind: 'layout', feature: 'engine', known: false });
  });
  it('made already: looking again is held back by all but its own finding', () => {
    const here = situation({ findings: [saw('push', 'gives')] });
    const again = (more: Partial<Check>, held: DriveVerdict['verdict']) => {
      const push = { ...hub.checks.find(({ id }) => id === 'push')!, ...more };
      const free: DriveVerdict = { ...driveVerdict(here, model), verdict: held, fired: [], openQuestions: [] };
      return blockedAgain(push, here, free);
    };
    expect(again({}, 'stay-put')).toBeNull();
    expect(again({ access: 'road-test' }, 'drive-and-book')).toBeNull();
    expect(again({ access: 'road-test' }, 'stay-put')).toEqual({ kind: 'verdict' });
    expect(again({ tools: ['a thing that nobody has'] }, 'drive-and-book')?.kind).toBe('tools');
  });
  it('requires another result first', () => {
    const requires = [{ check: 'push', results: ['gives'] }];
    expect(reason({ requires })).toEqual({ kind: 'requires' });
    expect(reason({ requires }, {}, [saw('push', 'firm')])).toEqual({ kind: 'requires' });
    expect(reason({ requires }, {}, [saw('push', 'gives')])).toBeNull();
  });
  it('no road test while a rule holds the coach, for anybody', () => {
    const road = vocabulary.access.find(({ moves }) => moves)!.id;
    expect(reason({ access: road }, {}, [], verdict({ stopAnswers: { play: 'yes' } }))).toEqual({ kind: 'verdict' });
    expect(reason({ access: road }, {}, [], verdict({ stopAnswers: { play: 'no', grows: 'yes' } }))).toEqual({
      kind: 'verdict',
    });
    expect(reason({ access: road }, {}, [], verdict())).toBeNull();
    // Said before who could do it: a mechanic may not take it on the road either.
    const stays = verdict({ stopAnswers: { play: 'yes' } });
    expect(reason({ access: road, who: 'mechanic' }, { who: 'owner-no-tools' }, [], stays)).toEqual({
      kind: 'verdict',
    });
  });
  it('no road test for an owner while a safety question is open', () => {
    const road = vocabulary.access.find(({ moves }) => moves)!.id;
    expect(reason({ access: road }, { who: 'owner-no-tools' }, [], verdict({ stopAnswers: {} }))).toEqual({
      kind: 'triage',
    });
  });
});
