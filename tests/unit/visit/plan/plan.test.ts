import { beforeAll, describe, expect, it } from 'vitest';
import {
  EventError,
  explanationOf,
  planOf,
  readEvent,
  replay,
  type PinnedTree,
  type VisitEventBody,
} from '../../../../shared/visit/index.ts';
import { found, growlConcluded, item, log, planned, planTrees, twoComplaints } from './visit.ts';

let trees: ReadonlyMap<string, PinnedTree>;
beforeAll(async () => {
  trees = await planTrees();
});

const BEARING = 'complaint:g:front-bearing';
const decided = (line: string, decision: 'agreed' | 'declined' | 'deferred', words = ''): VisitEventBody => ({
  kind: 'plan.decided',
  line,
  decision,
  who: 'Invented owner',
  words,
});
const corrected: readonly VisitEventBody[] = [
  { kind: 'correction.started', complaint: 'g', cause: 'front-bearing' },
  {
    kind: 'correction.done',
    complaint: 'g',
    cause: 'front-bearing',
    partSeen: 'bad',
    parts: ['hub seal'],
    alsoRenewed: [],
  },
];
const added = (more: Partial<Extract<VisitEventBody, { kind: 'plan.line-added' }>> = {}): VisitEventBody => ({
  kind: 'plan.line-added',
  line: 'line:1',
  title: 'Renew the wiper blades',
  why: 'they smear',
  danger: false,
  urgency: 'soon',
  minutes: [10, 20],
  ...more,
});

describe('[PLN-1] what is in the plan', () => {
  it('nothing, before anything is concluded', () => {
    expect(planned(trees, []).plan).toMatchObject({ lines: [], stages: [], hours: { total: [0, 0] } });
  });
  it('a conclusion, an item that is bad, one worth watching, and a line by hand; a good or unopened item is none', () => {
    const { plan } = planned(
      trees,
      [...growlConcluded(), added()],
      [
        item('hose', 'right drive'),
        item('lining', 'left drive', 'watch'),
        item('drum', 'left tag', 'good'),
        item('hub', 'left tag', 'not-opened'),
      ],
    );
    expect(plan.lines.map(({ id }) => id).sort()).toEqual(
      [BEARING, 'item:hose-right-drive', 'item:lining-left-drive', 'line:1'].sort(),
    );
  });
  it('an item that the bearing line renews anyway is a reason of it; on another wheel it is a line of its own', () => {
    const seal = (site: string) => item('seal', site, 'bad', { note: 'wet to the drum', photos: ['p1'] });
    const { plan, line } = planned(trees, growlConcluded(), [seal('left front'), seal('left drive')]);
    expect(line('front-bearing').why.at(-1)).toMatchObject({ text: 'hub seal: bad, wet to the drum', photos: ['p1'] });
    expect(plan.lines.map(({ id }) => id).sort()).toEqual([BEARING, 'item:seal-left-drive']);
  });
  it('an unknown kind of item counts as one that can hurt people', () => {
    const { line } = planned(trees, [], [item('skirt-bracket', 'left side')]);
    expect(line('skirt-bracket-left-side')).toMatchObject({ danger: true, urgency: 'now' });
  });
  it('a cause that fits nothing of the list is a line that says so', () => {
    const { line } = planned(trees, growlConcluded('unlisted'));
    expect(line('unlisted').title).toMatch(/^Look further/);
  });
});

describe('[PLN-2] [PLN-17] why', () => {
  it('names the findings for the cause, strongest first, with place, weight and limits', () => {
    const { why } = planned(trees, growlConcluded()).line('front-bearing');
    expect(why.map(({ text }) => text.split(':')[0])).toHaveLength(2);
    expect(why[0]!.decibans).toBeGreaterThan(why[1]!.decibans!);
    expect(why[0]).toMatchObject({ place: 'left front', by: 'Mina' });
  });
  it('a yes to a safety question that guards the cause is a reason', () => {
    const yes: VisitEventBody = { kind: 'stop.answered', complaint: 'g', rule: 'hub-too-hot-keep-hand', answer: 'yes' };
    const { why } = planned(trees, [yes, { kind: 'halt.acknowledged', complaint: 'g' }, ...growlConcluded()]).line(
      'front-bearing',
    );
    expect(why.at(-1)?.text).toMatch(/Answered yes\.$/);
  });
  it('what was found after the correction does not count as a reason for it', () => {
    const after = found('g', 'where-heard', 'front');
    const still: VisitEventBody = { kind: 'proof.recorded', complaint: 'g', outcome: 'still-there' };
    const before = planned(trees, [...growlConcluded(), ...corrected, still]);
    const later = planned(trees, [...growlConcluded(), ...corrected, still, after]);
    expect(later.visit.ignored).toEqual([]);
    expect(later.line('front-bearing').proof.state).toBe('did-not-hold');
    expect(later.line('front-bearing').why).toEqual(before.line('front-bearing').why);
  });
  it('shows what else it could have been and what speaks against that, and what speaks against the cause', () => {
    const { visit, line } = planned(trees, [found('g', 'where-heard', 'engine-end'), ...growlConcluded()]);
    const told = explanationOf(visit, trees, line('front-bearing'));
    expect(told.share).toBeGreaterThan(0.5);
    expect(told.rivals.length).toBeGreaterThanOrEqual(4);
    const tyre = told.rivals.find(({ cause }) => cause === 'steer-tyre-wear')!;
    expect(tyre.open).toBe(false);
    expect(tyre.against[0]!.decibans).toBeGreaterThanOrEqual(tyre.against.at(-1)!.decibans!);
    expect(told.against.map(({ text }) => text)).toHaveLength(1);
    expect(told.pictures.map(({ file }) => file)).toContain('bearing-damage-patterns.svg');
  });
  it('a line that no complaint stands behind has no rivals', () => {
    const { visit, line } = planned(trees, [added()]);
    expect(explanationOf(visit, trees, line('line:1'))).toMatchObject({ rivals: [], pictures: [] });
  });
});

it('[PLN-19] a picture added to a line stands among its reasons, once, and changes nothing else', () => {
  const photo: VisitEventBody = { kind: 'plan.photo-added', line: BEARING, photo: 'p.jpg' };
  const before = planned(trees, growlConcluded()).line('front-bearing');
  const { line } = planned(trees, [...growlConcluded(), photo, photo]);
  expect(line('front-bearing').why.flatMap(({ photos }) => photos)).toEqual(['p.jpg']);
  expect({ ...line('front-bearing'), why: [] }).toEqual({ ...before, why: [] });
  expect(readEvent(JSON.parse(JSON.stringify({ ...log([photo])[0] })))).toMatchObject(photo);
});

describe('[PLN-3] [PLN-4] order and access', () => {
  it('danger first, and every step is opened once and in one go', () => {
    const { plan } = planned(
      trees,
      [...growlConcluded(), added()],
      [item('bushing', 'drive axle'), item('drum', 'right front'), item('chamber', 'left drive')],
    );
    const order = plan.lines.map(({ danger }) => danger);
    expect(order.lastIndexOf(true)).toBeLessThan(order.indexOf(false));
    const opened = plan.stages.flatMap(({ step }) => (step ? [step.id] : []));
    expect(new Set(opened).size).toBe(opened.length);
  });
  it('a place that nobody said is shared with nothing until it is said', () => {
    const accepted: VisitEventBody = { kind: 'conclusion.accepted', complaint: 'g', cause: 'front-bearing' };
    const drum = [item('drum', 'left front')];
    const before = planned(trees, [accepted], drum);
    // Only the chocks, 5 min, serve both.
    expect(before.plan.hours.saved).toBe(5);
    expect(before.plan.warnings.map(({ code }) => code)).toContain('place-unknown');
    const after = planned(trees, [accepted, { kind: 'plan.place-set', line: BEARING, place: 'Left steer' }], drum);
    expect(after.plan.hours.saved).toBe(90);
    expect(after.plan.warnings.map(({ code }) => code)).not.toContain('place-unknown');
  });
});

describe('[PLN-5] [PLN-6] urgency and driving', () => {
  it('a danger line set to later is said, and the verdict stays', () => {
    const before = planned(trees, growlConcluded());
    const set: VisitEventBody = { kind: 'plan.urgency-set', line: BEARING, urgency: 'watch', words: 'no time' };
    const { plan, line } = planned(trees, [...growlConcluded(), set]);
    expect(line('front-bearing')).toMatchObject({ urgency: 'watch', urgencyProposed: 'now' });
    expect(plan.warnings.map(({ code }) => code)).toContain('lowered-danger');
    expect(plan.meanwhile).toEqual(before.plan.meanwhile);
    const back = planned(trees, [...growlConcluded(), set, { ...set, urgency: null }]);
    expect(back.line('front-bearing').urgency).toBe('now');
  });
  it('a declined danger line holds the coach as before', () => {
    const before = planned(trees, growlConcluded()).plan.meanwhile;
    expect(before?.verdict).toBe('stay-put');
    expect(planned(trees, [...growlConcluded(), decided(BEARING, 'declined')]).plan.meanwhile).toEqual(before);
  });
  it('the strictest of inspection and complaints counts, and nothing says that the coach is in order', () => {
    expect(planned(trees, [], [item('air-spring', 'left drive')]).plan.meanwhile?.verdict).toBe('creep-to-safe-place');
    expect(
      planned(trees, [], [item('air-spring', 'left drive'), item('drum', 'left tag')]).plan.meanwhile?.verdict,
    ).toBe('stay-put');
    const watch = planned(trees, [], [item('lining', 'left drive', 'watch')]).line('lining-left-drive');
    expect(watch.meanwhile.because).toMatch(/What was not looked at is not known/);
  });
});

describe('[PLN-7] renew while open', () => {
  it('a wheel-end part is held to its limit, a seal is renewed, a look is a look: none is weighed', () => {
    const rules = planned(trees, growlConcluded())
      .line('front-bearing')
      .proposals.map(({ what, rule }) => [what, rule]);
    expect(rules).toEqual([
      ['seal and wear ring', 'renew'],
      ['brake shoes and springs while the drum is off', 'limit'],
      ['kingpin play check', 'look'],
      ['the other side by inspection', 'look'],
    ]);
  });
  it('what is weighed names what is missing, gives bounds without an age, and figures with one', () => {
    const line = 'complaint:g:trans-output';
    const base: VisitEventBody[] = [{ kind: 'conclusion.accepted', complaint: 'g', cause: 'trans-output' }];
    const proposals = planned(trees, base).line('trans-output').proposals;
    const weighed = proposals.find(({ rule }) => rule === 'weigh')!;
    expect(weighed.missing).toMatch(/^To weigh it: price of the part/);
    const figure = (id: 'part-cost' | 'open-hours' | 'access-hours' | 'age', value: number): VisitEventBody => ({
      kind: 'plan.figure-set',
      line,
      about: weighed.what,
      figure: id,
      value,
    });
    const basis = (of: string, value: number): VisitEventBody => ({ kind: 'plan.basis-set', basis: of, value });
    const given = [
      ...base,
      figure('part-cost', 100),
      figure('open-hours', 0.5),
      figure('access-hours', 4),
      basis('labour-rate', 100),
      basis('roadside', 1000),
      basis('horizon-miles', 20),
      basis('horizon-years', 2),
    ];
    const bounds = planned(trees, given)
      .line('trans-output')
      .proposals.find(({ what }) => what === weighed.what)!;
    expect(bounds.bounds.map(({ age }) => age)).toEqual([0, expect.any(Number)]);
    expect(bounds.advice).toBeUndefined();
    const known = planned(trees, [...given, figure('age', 5)])
      .line('trans-output')
      .proposals.find(({ what }) => what === weighed.what)!;
    expect(known.weighed).toHaveLength(3);
    expect(known.weighed[1]!.life.scale / known.weighed[0]!.life.scale).toBe(2);
    expect(known.advice).toBeDefined();
  });
  it('what the inspection found bad at the same place is part of the job', () => {
    const { proposals } = planned(trees, growlConcluded(), [item('lining', 'left front')]).line('front-bearing');
    expect(proposals[1]).toMatchObject({ rule: 'renew', because: expect.stringMatching(/found it bad/) as string });
  });
  it('a proposal taken into the plan is a line done where its host is open', () => {
    const take = added({ line: 'line:9', title: 'kingpin play check', of: BEARING });
    const { line } = planned(trees, [...growlConcluded(), take]);
    expect(line('line:9')).toMatchObject({ place: 'left front', from: { kind: 'renew-while-open', of: BEARING } });
    expect(line('line:9').accessSteps).toEqual(line('front-bearing').accessSteps);
    expect(line('front-bearing').proposals[2]).toMatchObject({ taken: 'line:9' });
  });
});

describe('[PLN-8] cost', () => {
  it('none without a labour rate; with one, parts without a price are named', () => {
    expect(planned(trees, growlConcluded()).line('front-bearing').costBand).toBeUndefined();
    const priced = planned(trees, [
      ...growlConcluded(),
      { kind: 'plan.basis-set', basis: 'labour-rate', value: 100 },
      { kind: 'plan.basis-set', basis: 'part:hub-seal', value: 40 },
    ]);
    // Own work 30 to 210 min at 100 an hour, and the seal.
    expect(priced.line('front-bearing').costBand).toMatchObject({ low: 90, high: 390, partsCost: 40 });
    expect(priced.line('front-bearing').costBand?.unpriced).toContain('hub-cap gasket');
    // With access, 150 min: 300 to 600.
    expect(priced.plan.costBand).toMatchObject({ low: 340, high: 640 });
  });
});

describe('[PLN-9] decisions', () => {
  it('a declined danger line is on record in plain words, with what the person said', () => {
    const { line } = planned(trees, [...growlConcluded(), decided(BEARING, 'declined', 'After the holiday.')]);
    const { decision } = line('front-bearing');
    expect(decision?.record).toBe(
      'Renew inner and outer bearing with cups, seal, and oil or grease; set end play by dial gauge (left front). The rollers that carry the front wheel have gone rough; left alone the hub overheats and the wheel can be lost. You were told that this can hurt people, and that until it is done the coach stays where it stands. You (Invented owner) decided against it. Your words: “After the holiday.”',
    );
    expect(line('front-bearing').proof.state).toBe('not-done');
  });
  it('no record for agreeing, nor for a line that hurts nobody', () => {
    expect(
      planned(trees, [...growlConcluded(), decided(BEARING, 'agreed')]).line('front-bearing').decision,
    ).not.toHaveProperty('record');
    expect(planned(trees, [added(), decided('line:1', 'declined')]).line('line:1').decision).not.toHaveProperty(
      'record',
    );
  });
  it('declined and deferred lines need no hours and no parts; asked again they do', () => {
    for (const decision of ['declined', 'deferred'] as const) {
      const { plan } = planned(trees, [...growlConcluded(), decided(BEARING, decision)]);
      expect(plan).toMatchObject({ hours: { total: [0, 0] }, parts: { rows: [] } });
      expect(plan.lines).toHaveLength(1);
    }
    const again = planned(trees, [
      ...growlConcluded(),
      decided(BEARING, 'declined'),
      { kind: 'plan.decided', line: BEARING, decision: null, who: '', words: '' },
    ]);
    expect(again.plan.hours.total).toEqual([180, 360]);
  });
  it('[PLN-20] what is done takes no more time, and its parts cost nothing more', () => {
    const { plan } = planned(trees, [...growlConcluded(), added(), { kind: 'plan.done', line: 'line:1', words: '' }]);
    expect(plan.hours.total).toEqual(planned(trees, [...growlConcluded()]).plan.hours.total);
    expect(planned(trees, [added(), { kind: 'plan.done', line: 'line:1', words: '' }]).plan.hours.total).toEqual([
      0, 0,
    ]);
  });
  it('a line that is only watched counts once it is agreed to', () => {
    const watch = added({ urgency: 'watch' });
    expect(planned(trees, [watch]).plan.hours.total).toEqual([0, 0]);
    expect(planned(trees, [watch, decided('line:1', 'agreed')]).plan.hours.total).toEqual([10, 20]);
  });
});

describe('[PLN-10] closing', () => {
  const close = (unproven: readonly { line: string; because: string }[] = []): VisitEventBody => ({
    kind: 'visit.closed-out',
    unproven,
    words: '',
  });
  it('is refused while a correction is unproven, and taken when each is named with the reason', () => {
    const done = [...growlConcluded(), ...corrected];
    const refused = planned(trees, [...done, close()]);
    expect(refused.plan.closedOut).toBeUndefined();
    expect(refused.visit.ignored[0]?.why).toMatch(/One correction is not proven \(complaint:g:front-bearing\)/);
    const named = planned(trees, [...done, close([{ line: BEARING, because: 'the owner drives home first' }])]);
    expect(named.plan.closedOut?.unproven).toEqual([{ line: BEARING, because: 'the owner drives home first' }]);
    expect(named.plan.warnings.map(({ code }) => code)).toContain('unproven');
  });
  it('is taken once the proof has held', () => {
    const proven: VisitEventBody = { kind: 'proof.recorded', complaint: 'g', outcome: 'gone' };
    const { plan, visit } = planned(trees, [...growlConcluded(), ...corrected, proven, close()]);
    expect(plan.closedOut).toMatchObject({ unproven: [] });
    expect(visit.ignored).toEqual([]);
    expect(plan.lines[0]?.proof.state).toBe('held');
  });
  it('a line by hand is proven by itself; one that did not hold keeps the visit open', () => {
    const done: VisitEventBody = { kind: 'plan.done', line: 'line:1', words: 'new blades' };
    const held = (outcome: 'held' | 'did-not-hold'): VisitEventBody => ({
      kind: 'plan.proven',
      line: 'line:1',
      outcome,
      words: 'in the rain',
    });
    expect(planned(trees, [added(), done, close()]).plan.closedOut).toBeUndefined();
    expect(planned(trees, [added(), done, held('did-not-hold'), close()]).plan.closedOut).toBeUndefined();
    expect(planned(trees, [added(), done, held('held'), close()]).plan.closedOut).toBeDefined();
    // Done again: the old proof proves nothing about it.
    expect(planned(trees, [added(), done, held('held'), done]).line('line:1').proof.state).toBe('unproven');
  });
  it('counts work on an item that has become good since, so that it can be named', () => {
    const done: VisitEventBody = { kind: 'plan.done', line: 'item:hose-left-drive', words: '' };
    const { plan } = planned(trees, [done], [item('hose', 'left drive', 'good')]);
    expect(plan.lines).toEqual([]);
    expect(plan.unproven).toEqual([{ line: 'item:hose-left-drive', title: 'item:hose-left-drive' }]);
    expect(planned(trees, [done, close()]).plan.closedOut).toBeUndefined();
    const named = close(plan.unproven.map(({ line }) => ({ line, because: 'seen to' })));
    expect(planned(trees, [done, named]).plan.closedOut).toBeDefined();
  });
  it('work after the closing opens the visit again', () => {
    const { plan } = planned(trees, [close(), added()]);
    expect(plan.closedOut).toBeUndefined();
  });
  it('needs a reason that says something', () => {
    const [event] = log([close([{ line: BEARING, because: '  ' }])]);
    expect(() => readEvent({ ...event })).toThrow(EventError);
  });
});

describe('[PLN-11] [PLN-12] parts', () => {
  it('are one list over lines, axles and sides, measured for every place before they are ordered', () => {
    const items = [item('seal', 'left drive'), item('seal', 'right drive'), item('hub', 'left tag', 'not-opened')];
    const measured = (place: string, what: string): VisitEventBody => ({
      kind: 'part.measured',
      part: 'hub-seal',
      what,
      place,
      found: { value: 4.5, unit: 'in' },
    });
    const row = (bodies: readonly VisitEventBody[]) =>
      planned(trees, bodies, items).plan.parts.rows.find(({ key }) => key === 'hub-seal')!;
    expect(row([]).needs.map(({ place }) => place)).toEqual(['left drive', 'right drive']);
    expect(row([])).toMatchObject({ state: 'measure' });
    expect(row([]).measureFirst).toHaveLength(4);
    const left = [measured('left drive', 'shaft-diameter'), measured('left drive', 'bore-diameter')];
    expect(row(left).measureFirst.every((ask) => ask.endsWith('right drive'))).toBe(true);
    const both = [...left, measured('right drive', 'shaft-diameter'), measured('right drive', 'bore-diameter')];
    expect(row(both)).toMatchObject({ state: 'order', measureFirst: [] });
    expect(row([...both, { kind: 'part.marked', part: 'hub-seal', mark: 'ordered' }]).state).toBe('ordered');
    const { plan } = planned(trees, both, items);
    expect(plan.parts.warnings).toEqual(['Not opened yet: hub, left tag. What it needs is not on this list.']);
    expect(plan.warnings.map(({ code }) => code)).toContain('not-opened');
    expect(plan.parts.rows.find(({ key }) => key === 'wear-sleeve-if-grooved')).toMatchObject({
      state: 'if',
      onlyIf: true,
    });
  });
  it('of a correction that is done are fitted', () => {
    const { plan } = planned(trees, [...growlConcluded(), ...corrected]);
    expect(new Set(plan.parts.rows.map(({ state }) => state))).toEqual(new Set(['fitted']));
  });
});

describe('[PLN-14] reminders', () => {
  it('are proposed from what was opened, and leave the proposals once set', () => {
    const { plan } = planned(trees, growlConcluded());
    expect(plan.reminderProposals.map(({ what, afterMiles }) => [what.split(' (')[0], afterMiles])).toEqual([
      ['Torque the wheel nuts again', 50],
      ['Read hub temperature against the other side', 50],
      ['Clean it, drive, look again for a leak', 50],
    ]);
    const [first] = plan.reminderProposals;
    const set: VisitEventBody = { kind: 'reminder.set', reminder: 'r', what: first!.what, dueMiles: 50, line: BEARING };
    const done: VisitEventBody = { kind: 'reminder.done', reminder: 'r', words: 'none moved' };
    const after = planned(trees, [...growlConcluded(), set, done]).plan;
    expect(after.reminders).toMatchObject([{ dueMiles: 50, done: { words: 'none moved' } }]);
    expect(after.reminderProposals).toHaveLength(2);
  });
});

describe('[PLN-15] [PLN-16] the log', () => {
  it('every event of the plan comes back from the log as it was written', () => {
    const bodies: VisitEventBody[] = [
      added({ of: BEARING, place: 'left front', access: 'hub-open', parts: ['x'], photos: ['p'] }),
      { kind: 'plan.line-removed', line: 'line:1' },
      decided(BEARING, 'deferred', 'later'),
      { kind: 'plan.urgency-set', line: BEARING, urgency: 'soon', words: '' },
      { kind: 'plan.place-set', line: BEARING, place: 'left front' },
      { kind: 'plan.figure-set', line: BEARING, about: 'seal', figure: 'age', value: null },
      { kind: 'plan.basis-set', basis: 'labour-rate', value: 100 },
      { kind: 'plan.done', line: 'line:1', words: '', minutes: 3 },
      { kind: 'plan.proven', line: 'line:1', outcome: 'held', words: '' },
      { kind: 'part.measured', part: 'hub-seal', what: 'shaft-diameter', place: '', found: 'stamped 47' },
      { kind: 'part.marked', part: 'hub-seal', mark: 'none' },
      { kind: 'reminder.set', reminder: 'r', what: 'look', dueDate: '2026-06-01' },
      { kind: 'reminder.done', reminder: 'r', words: '' },
      { kind: 'visit.closed-out', unproven: [{ line: BEARING, because: 'x' }], words: '' },
    ];
    for (const event of log(bodies)) expect(readEvent(JSON.parse(JSON.stringify(event)))).toEqual(event);
  });
  it.each<[string, VisitEventBody, RegExp]>([
    ['a reminder without a time', { kind: 'reminder.set', reminder: 'r', what: 'look' }, /date or a distance/],
    ['a reminder that is not here', { kind: 'reminder.done', reminder: 'r', words: '' }, /not here/],
    ['a line that is not here', decided('line:7', 'agreed'), /not in the plan/],
    ['a line under a complaint’s name', added({ line: BEARING }), /no name for a line/],
    ['times that run backwards', added({ minutes: [20, 10] }), /above the most/],
    ['a complaint’s work', { kind: 'plan.done', line: BEARING, words: '' }, /with the complaint/],
    ['a complaint’s proof', { kind: 'plan.proven', line: BEARING, outcome: 'held', words: '' }, /with the complaint/],
    ['an unknown basis', { kind: 'plan.basis-set', basis: '__proto__', value: 1 }, /nothing that this version/],
  ])('%s is listed with a reason', (_, body, why) => {
    const { visit } = planned(trees, [body]);
    expect(visit.ignored).toHaveLength(1);
    expect(visit.ignored[0]?.why).toMatch(why);
  });
  it('names that objects have by themselves are names like others', () => {
    const { line } = planned(trees, [
      added({ line: 'line:constructor' }),
      decided('line:constructor', 'agreed'),
      { kind: 'plan.figure-set', line: 'line:constructor', about: '__proto__', figure: 'age', value: 1 },
    ]);
    expect(line('line:constructor').decision?.decision).toBe('agreed');
  });
  it('a complaint whose tree is missing is a warning of the replay, not a line', () => {
    const visit = replay(log([...twoComplaints(trees), ...growlConcluded()]), new Map());
    expect(planOf(visit, new Map()).lines).toEqual([]);
    expect(visit.ignored.length).toBeGreaterThan(0);
  });
});
