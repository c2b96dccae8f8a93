import { readdirSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { SHIPPED_TREES } from '../../../electron/cli/load-trees.ts';
import { shippedTrees } from '../../shipped-trees.ts';
import { ROAD_GAUGES, ROAD_ROWS, ROAD_SIGNS } from '../../../shared/knowledge/index.ts';
import { assess } from '../../../shared/planning/index.ts';
import { isUnit } from '../../../shared/units/index.ts';
import {
  crewProblem,
  holdOf,
  openSigns,
  readEvent,
  replay,
  roadOffers,
  roadRefusal,
  situationOf,
  type PinnedTree,
  type RoadOffer,
  type VisitEventBody,
  type VisitState,
} from '../../../shared/visit/index.ts';
import { OPENED, sheetLog } from './sheet-log.ts';

const NAMES = {
  growl: 'growl-through-floor-at-speed',
  shake: 'vibration-at-speed',
  start: 'hard-start-or-smoke',
  brake: 'brake-pulls-or-one-drum-hot',
} as const;
const HASHES = { growl: 'a'.repeat(64), shake: 'b'.repeat(64), start: 'c'.repeat(64), brake: 'd'.repeat(64) } as const;
type Name = keyof typeof NAMES;
let trees: ReadonlyMap<string, PinnedTree>;
let known: ReadonlySet<string>;
beforeAll(async () => {
  const { trees: read, vocabulary } = await shippedTrees(...Object.values(NAMES));
  known = new Set(readdirSync(SHIPPED_TREES));
  trees = new Map(
    (Object.keys(NAMES) as Name[]).map((name) => [
      HASHES[name],
      { tree: read.get(NAMES[name])!.value!, vocabulary: vocabulary! },
    ]),
  );
});

const opened = (name: Name): VisitEventBody => ({
  kind: 'complaint.opened',
  complaint: name,
  tree: NAMES[name],
  treeHash: HASHES[name],
  words: '',
});
const BEGUN: VisitEventBody = { kind: 'road.begun', drive: 'd1', driver: 'Ada', writer: 'Ben' };
const ENDED: VisitEventBody = { kind: 'road.ended', drive: 'd1' };
const noted = (row: string, choice: string): VisitEventBody => ({
  kind: 'road.noted',
  drive: 'd1',
  entry: { kind: 'choice', row, choice },
});
const gauge = (id: string, value: number, unit: string): VisitEventBody => ({
  kind: 'road.noted',
  drive: 'd1',
  entry: { kind: 'gauge', gauge: id, reading: { value, unit } },
});
const sign = (id: string): VisitEventBody => ({ kind: 'road.noted', drive: 'd1', entry: { kind: 'sign', sign: id } });
const MECHANIC: VisitEventBody = { kind: 'person.set', who: 'mechanic' };
const visitOf = (bodies: readonly VisitEventBody[]): VisitState =>
  replay(sheetLog([OPENED, MECHANIC, ...bodies]), trees);
const said = (bodies: readonly VisitEventBody[]): string[] =>
  roadOffers(visitOf(bodies), trees).map(
    ({ complaint, check, value }) => `${complaint}/${check.id}=${value.kind === 'result' ? value.result : 'reading'}`,
  );

describe('[ROA-1] who drives and who writes', () => {
  it.each([
    ['Ada', 'Ben', null],
    ['', 'Ben', /two people/],
    ['Ada', '  ', /two people/],
    ['Ada', ' ada ', /never touches/],
  ])('%j and %j', (driver, writer, problem) => {
    const found = crewProblem({ driver, writer });
    if (problem === null) expect(found).toBeNull();
    else expect(found).toMatch(problem);
  });
  it('a log that names one for both begins no drive, and says why', () => {
    const visit = visitOf([{ ...BEGUN, writer: 'ADA' }]);
    expect(visit.road.drives).toEqual([]);
    expect(visit.ignored.map(({ why }) => why)).toEqual(['One person is named for driving and for writing.']);
  });
});

describe('[ROA-2] when no road test is begun', () => {
  const refusal = (bodies: readonly VisitEventBody[]) => {
    const visit = visitOf(bodies);
    const complaints = visit.complaints.map((complaint) => {
      const { tree, vocabulary } = trees.get(complaint.treeHash)!;
      return { title: tree.title, verdict: assess(situationOf(visit, complaint, tree, vocabulary)).verdict };
    });
    return roadRefusal(visit.road, complaints, holdOf(visit));
  };
  const answers = (name: Name, yes = ''): VisitEventBody[] =>
    trees.get(HASHES[name])!.tree.stopRules.map(({ id }) => ({
      kind: 'stop.answered',
      complaint: name,
      rule: id,
      answer: id === yes ? 'yes' : 'no',
    }));

  it('with nothing open and nothing found, one may be begun', () => {
    expect(refusal([])).toBeNull();
    expect(refusal([opened('growl'), ...answers('growl')])).toBeNull();
  });
  it('not while safety questions are open, of whatever complaint', () => {
    expect(refusal([opened('growl')])?.because).toMatch(/safety questions are not answered yet/);
    expect(refusal([opened('growl'), ...answers('growl'), opened('shake')])?.because).toContain(
      trees.get(HASHES.shake)!.tree.title,
    );
  });
  it('not while a stop rule is in force, be it one that lets it creep; the reason is the rule’s', () => {
    for (const verdict of ['stay-put', 'creep-to-safe-place'] as const) {
      const rule = trees.get(HASHES.brake)!.tree.stopRules.find((each) => each.verdict === verdict)!;
      const found = refusal([opened('growl'), ...answers('growl'), opened('brake'), ...answers('brake', rule.id)]);
      expect(found?.because.toLowerCase()).toContain(rule.why.slice(0, 20).toLowerCase());
    }
  });
  it('not while the air test holds it, with or without a complaint', () => {
    const nuts: VisitEventBody = { kind: 'walk-round.noted', item: 'nuts', state: 'wrong' };
    expect(refusal([nuts])?.because).toMatch(/^Walk-round: /);
    expect(refusal([opened('growl'), ...answers('growl'), nuts])?.because).toMatch(/^Walk-round: /);
  });
  it('not while one is under way', () => {
    expect(refusal([BEGUN])?.because).toMatch(/under way/);
    expect(refusal([BEGUN, ENDED])).toBeNull();
  });
});

describe('[ROA-3] one touch, one entry', () => {
  it('with its time since the start, in the order of the touches; each is taken back by itself', () => {
    const bodies = [
      OPENED,
      MECHANIC,
      BEGUN,
      noted('noise-pull', 'more'),
      gauge('speed', 50, 'mph'),
      noted('bark', 'soft'),
    ];
    const log = sheetLog(bodies);
    const drive = replay(log, trees).road.drives[0]!;
    expect(drive.notes.map(({ seconds }) => seconds)).toEqual([1, 2, 3]);
    const target = drive.notes[1]!.id;
    const after = replay([...log, ...sheetLog([{ kind: 'event.taken-back', event: target }], 'aa', 6)], trees);
    expect(after.road.drives[0]!.notes).toEqual([drive.notes[0], drive.notes[2]]);
  });
  it('a clock that runs backwards gives no negative time', () => {
    const log = sheetLog([OPENED, BEGUN, noted('bark', 'soft')]).map((event, i) =>
      i === 2 ? { ...event, at: '2019-01-01T00:00:00Z' } : event,
    );
    expect(replay(log, trees).road.drives[0]!.notes[0]!.seconds).toBe(0);
  });
  it('the sheet: ids once, two choices or more, gauges with units that exist and rising figures', () => {
    const ids = [...ROAD_ROWS, ...ROAD_GAUGES, ...ROAD_SIGNS].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { id, choices } of ROAD_ROWS) {
      expect(choices.length, id).toBeGreaterThan(1);
      expect(new Set(choices.map((choice) => choice.id)).size, id).toBe(choices.length);
    }
    for (const { id, unit, marks } of ROAD_GAUGES) {
      expect(unit === '' || isUnit(unit), id).toBe(true);
      expect(marks, id).toEqual([...marks].sort((a, b) => a - b));
    }
  });
});

describe('[ROA-4] a sign on the road', () => {
  it('holds the coach, through the end of the drive, until somebody says what was found', () => {
    const during = visitOf([BEGUN, sign('low-air')]);
    expect(holdOf(during)).toMatchObject({
      verdict: 'stay-put',
      because: expect.stringContaining('low-air') as string,
    });
    const after = visitOf([BEGUN, sign('low-air'), ENDED]);
    expect(openSigns(after.road)).toEqual([{ drive: 'd1', sign: 'low-air', words: 'Low-air warning' }]);
    const followed: VisitEventBody = { kind: 'road.sign-followed', drive: 'd1', sign: 'low-air', found: 'line mended' };
    expect(holdOf(visitOf([BEGUN, sign('low-air'), ENDED, followed]))).toBeNull();
  });
  it('[VIS-1] nothing written is no following up', () => {
    const [event] = sheetLog([{ kind: 'road.sign-followed', drive: 'd1', sign: 'low-air', found: '  ' }]);
    expect(() => readEvent(event)).toThrow(/found/);
  });
});

describe('[ROA-5] what notes say is data', () => {
  it('every tree that road.yaml names is there, and every saying can be heard in some drive', () => {
    const { road } = trees.get(HASHES.growl)!.vocabulary;
    expect(road.length).toBeGreaterThan(90);
    const named = road.flatMap(({ says }) => says.flatMap(({ tree }) => tree ?? []));
    expect(named.filter((id) => !known.has(id))).toEqual([]);
    expect(new Set(named).size).toBeGreaterThan(8);
    expect(new Set(road.map(({ id }) => id)).size).toBe(road.length);
  });
});

describe('[ROA-6] offered, never taken', () => {
  it('a note is offered to the complaint whose tree asks for it, and no finding is made', () => {
    const bodies = [opened('growl'), BEGUN, noted('noise-pull', 'more'), noted('noise-where', 'front')];
    expect(said(bodies)).toEqual(['growl/where-heard=front', 'growl/load-change=louder-pull']);
    expect(visitOf(bodies).complaints[0]!.trail).toEqual([]);
  });
  it('several notes together; half of them say nothing', () => {
    expect(said([opened('growl'), BEGUN, noted('noise-lean-left', 'more')])).toEqual([]);
    expect(said([opened('growl'), BEGUN, noted('noise-lean-left', 'more'), noted('noise-lean-right', 'same')])).toEqual(
      ['growl/sway=swells-one-way'],
    );
    expect(said([opened('growl'), BEGUN, noted('noise-lean-left', 'more'), noted('noise-lean-right', 'more')])).toEqual(
      ['growl/sway=both-ways'],
    );
  });
  it('of one row the latest note counts', () => {
    const bodies = [opened('growl'), BEGUN, noted('noise-where', 'front'), noted('noise-where', 'engine-end')];
    expect(said(bodies)).toEqual(['growl/where-heard=engine-end']);
  });
  it('a gauge becomes a reading, but only when the time has come', () => {
    const hot = (at: number): string[] => {
      const log = sheetLog([OPENED, MECHANIC, opened('start'), BEGUN, gauge('coolant', 130, 'degF')]).map((event, i) =>
        i === 4 ? { ...event, at: new Date(1_577_836_803_000 + 60_000 * at).toISOString() } : event,
      );
      return roadOffers(replay(log, trees), trees).map(({ check, words }) => `${check.id}: ${words}`);
    };
    expect(hot(10)).toEqual([]);
    expect(hot(21)).toEqual(['warm-up-watch: 130 °F']);
  });
  it('only the newest drive is asked', () => {
    const second: VisitEventBody = { kind: 'road.begun', drive: 'd2', driver: 'Ada', writer: 'Ben' };
    expect(said([opened('growl'), BEGUN, noted('noise-where', 'front'), ENDED, second])).toEqual([]);
  });
});

describe('[ROA-7] what is not offered', () => {
  const base = (): VisitEventBody[] => [opened('growl'), BEGUN, noted('noise-where', 'front')];
  it('a check that has a finding, in whatever way', () => {
    expect(
      said([
        ...base(),
        {
          kind: 'finding.recorded',
          complaint: 'growl',
          finding: 'f',
          check: 'where-heard',
          value: { kind: 'cant-do' },
        },
      ]),
    ).toEqual([]);
  });
  it('nothing to a complaint that is closed', () => {
    expect(said([...base(), { kind: 'complaint.closed', complaint: 'growl', how: 'left-open' }])).toEqual([]);
  });
  it('nothing that needs somebody more qualified', () => {
    const asked = (who: 'owner-no-tools' | 'mechanic'): RoadOffer[] =>
      roadOffers(visitOf([...base(), noted('noise-lower-gear', 'same'), { kind: 'person.set', who }]), trees);
    const mechanics = asked('mechanic').filter(({ check }) => check.who !== 'owner-no-tools');
    expect(asked('owner-no-tools')).toHaveLength(asked('mechanic').length - mechanics.length);
    expect(asked('owner-no-tools').every(({ check }) => check.who === 'owner-no-tools')).toBe(true);
  });
});

describe('[ROA-8] shared checks', () => {
  const base = (): VisitEventBody[] => [opened('growl'), opened('shake'), BEGUN, noted('wheels-by-hand', 'one-hot')];
  it('are offered once, and say who else will hear', () => {
    const offers = roadOffers(visitOf(base()), trees);
    expect(offers.map(({ complaint, check, alsoHeardBy }) => [complaint, check.sharedAs, alsoHeardBy])).toEqual([
      ['growl', 'heat-by-hand', ['shake']],
    ]);
  });
  it('confirmed, the finding reaches the other complaint, and is not offered again', () => {
    const [offer] = roadOffers(visitOf(base()), trees);
    const confirmed: VisitEventBody = {
      kind: 'finding.recorded',
      complaint: offer!.complaint,
      finding: 'f1',
      check: offer!.check.id,
      value: offer!.value,
      site: 'left front',
    };
    const visit = visitOf([...base(), confirmed]);
    expect(visit.complaints.map(({ trail }) => trail.map(({ site, from }) => [site, from]))).toEqual([
      [['left front', undefined]],
      [['left front', 'growl']],
    ]);
    expect(roadOffers(visit, trees)).toEqual([]);
  });
});

describe('[ROA-9] what does not fit', () => {
  it('stays in the log with a reason', () => {
    const visit = visitOf([noted('bark', 'soft'), BEGUN, { ...BEGUN, drive: 'd2' }, ENDED, noted('bark', 'full')]);
    expect(visit.road.drives).toHaveLength(1);
    expect(visit.road.drives[0]!.notes).toEqual([]);
    expect(visit.ignored.map(({ why }) => why)).toEqual([
      'The road test that it belongs to is not under way.',
      'A road test is under way already.',
      'The road test that it belongs to is not under way.',
    ]);
  });
  it('[VIS-1] road events come back as they were written', () => {
    for (const event of sheetLog([BEGUN, noted('bark', 'soft'), gauge('air', 100, 'psi'), sign('smell'), ENDED]))
      expect(readEvent(JSON.parse(JSON.stringify(event)))).toEqual(event);
  });
});
