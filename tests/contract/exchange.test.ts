import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import {
  entry,
  ENTRIES,
  goodParts,
  lines,
  madeFile,
  oneTreeFolder,
  PHOTO_FILE,
  takeIn,
  zipParts,
} from '../exchange.ts';
import { goodPack, SMALLEST_TREE } from '../packs.ts';
import { endIpc, reachDirectly, reachOverHttp, reachOverIpc, type DirectlyReached } from './carriers.ts';
import { describeExchange, filesBelow } from './exchange-suite.ts';
import { HOSTILE } from './hostile-exchanges.ts';

describeExchange('directly', () => reachDirectly());
describeExchange('over HTTP', () => reachOverHttp());
describeExchange('over IPC', reachOverIpc);
afterAll(endIpc);

const treesFolder = oneTreeFolder();
afterAll(() => rmSync(treesFolder, { recursive: true }));
/** A machine side that knows one tree. */
const reach = (): Promise<DirectlyReached> => reachDirectly({ treesFolder });

describe('a file from somebody hostile', () => {
  let reached: DirectlyReached;
  let before: Record<string, string>;
  beforeAll(async () => {
    reached = await reach();
    await reached.call('visits.create', { visit: 'v-mine', first: { ...ENTRIES[0], coach: 'My own coach' } });
    before = filesBelow(reached.home);
  });
  afterAll(() => reached.close());

  it.each(HOSTILE)('[EXC-2][EXC-5][EXC-10] %s is refused with its own reason', async (_, make, code, words) => {
    const { taken, problems } = await takeIn(reached.call, make());
    expect(taken).toBeNull();
    const [first] = problems.filter(({ level }) => level === 'error');
    expect([first?.code, first?.message]).toEqual([code, expect.stringMatching(words)]);
    expect(first?.message).toMatch(/^.*\.$/);
    expect(filesBelow(reached.home)).toEqual(before);
  });

  it('there are at least thirty of them, no two alike', () => {
    expect(HOSTILE.length).toBeGreaterThanOrEqual(30);
    expect(new Set(HOSTILE.map(([what]) => what)).size).toBe(HOSTILE.length);
  });

  it('and the same file unbent is taken', async () => {
    expect(await takeIn(reached.call, zipParts(goodParts()))).toMatchObject({ taken: { visits: [{ isNew: true }] } });
  });
});

describe('both sides have worked on a visit', () => {
  let a: DirectlyReached;
  let b: DirectlyReached;
  beforeEach(async () => {
    [a, b] = [await reach(), await reach()];
    for (const { call } of [a, b]) await takeIn(call, zipParts(goodParts()));
  });
  afterEach(async () => {
    await a.close();
    await b.close();
  });
  const note = (id: string, text: string): unknown => entry(id, { kind: 'note.added', complaint: 'c1', text });
  const ids = async ({ call }: DirectlyReached): Promise<string[]> =>
    ((await call('visits.read', { visit: 'v-sent' })) as { events: { id: string }[] }).events
      .map(({ id }) => id)
      .sort();
  const send = async (from: DirectlyReached, to: DirectlyReached) =>
    takeIn(to.call, (await madeFile(from.call, 'visits.export', { visit: 'v-sent' })).bytes);

  it('[EXC-3] the entries of both are kept, each once, and no file that was there is changed', async () => {
    await a.call('visits.append', { visit: 'v-sent', events: [note('e5', 'from a'), note('e7', 'from a')] });
    await b.call('visits.append', { visit: 'v-sent', events: [note('e6', 'from b')] });
    const before = filesBelow(join(b.home, 'visits'));
    expect(await send(a, b)).toMatchObject({
      taken: { visits: [{ visit: 'v-sent', isNew: false, entries: 2, photos: 0 }] },
      problems: [],
    });
    const after = filesBelow(join(b.home, 'visits'));
    expect(after).toMatchObject(before);
    expect(Object.keys(after).length).toBe(Object.keys(before).length + 1);
    await send(b, a);
    const all = [...ENTRIES.map(({ id }) => id), 'e5', 'e6', 'e7'];
    expect([await ids(a), await ids(b)]).toEqual([all, all]);
    // Once more in both directions brings nothing.
    expect(await send(a, b)).toMatchObject({ taken: { visits: [], unchanged: 1 } });
    expect(await send(b, a)).toMatchObject({ taken: { visits: [], unchanged: 1 } });
    // What one adds after that goes on through its own file.
    await b.call('visits.append', { visit: 'v-sent', events: [note('e8', 'from b')] });
    expect(await send(b, a)).toMatchObject({ taken: { visits: [{ entries: 1 }] } });
  });

  it('[EXC-4] one id that says two things, and another visit of the same name, are refused', async () => {
    await a.call('visits.append', { visit: 'v-sent', events: [note('e5', 'from a')] });
    await b.call('visits.append', { visit: 'v-sent', events: [note('e5', 'something else')] });
    const before = filesBelow(join(b.home, 'visits'));
    expect(await send(a, b)).toMatchObject({ taken: null, problems: [{ code: 'entry-differs' }] });
    const other = goodParts(ENTRIES.map((each) => (each['id'] === 'e1' ? { ...each, id: 'e0' } : each)));
    expect(await takeIn(b.call, zipParts(other))).toMatchObject({ taken: null, problems: [{ code: 'other-visit' }] });
    expect(filesBelow(join(b.home, 'visits'))).toEqual(before);
  });

  it('[EXC-6] an entry of a kind that this version does not know is kept, named, and goes out again', async () => {
    const odd = entry('e9', { kind: 'wheel.admired', words: 'fine' });
    const came = await takeIn(b.call, zipParts(goodParts([...ENTRIES, odd])));
    expect(came).toMatchObject({
      taken: { visits: [{ entries: 1 }] },
      problems: [{ level: 'warning', code: 'unknown-kind' }],
    });
    await send(b, a);
    expect(((await a.call('visits.read', { visit: 'v-sent' })) as { events: unknown[] }).events).toContainEqual(odd);
  });

  it('[EXC-1] the coach that a visit speaks of goes with it', async () => {
    const named = entry('e9', { kind: 'wheel.admired', coachId: 'k-1' });
    const coach = entry('k1', { kind: 'coach.named', name: 'Invented coach 7' });
    mkdirSync(join(a.home, 'coaches', 'k-1'), { recursive: true });
    writeFileSync(join(a.home, 'coaches', 'k-1', 'events-aa00.jsonl'), lines([coach]));
    await a.call('visits.append', { visit: 'v-sent', events: [named] });
    expect(await send(a, b)).toMatchObject({ taken: { coaches: 1, visits: [{ entries: 1 }] } });
    expect(filesBelow(join(b.home, 'coaches'))).toEqual(filesBelow(join(a.home, 'coaches')));
  });

  it('what cannot be read here is left out of the file and named, and the file is taken elsewhere', async () => {
    writeFileSync(
      join(a.home, 'visits', 'v-sent', 'events-bb00.jsonl'),
      `{"id":\n${lines([entry('e8', { kind: 'person.set', who: 'nobody' })])}`,
    );
    writeFileSync(join(a.home, 'visits', 'v-sent', 'photos', PHOTO_FILE), 'changed');
    const { bytes, answer } = await madeFile(a.call, 'visits.export', { visit: 'v-sent' });
    expect(answer.notices.map(({ message }) => message)).toEqual([
      expect.stringContaining('Line 1 of events-bb00.jsonl cannot be read'),
      expect.stringContaining('An entry of visits/v-sent/events-bb00.jsonl is not in the file.'),
      expect.stringContaining('A photo of v-sent is not what its name says'),
    ]);
    expect(await takeIn(b.call, bytes)).toMatchObject({
      taken: { unchanged: 1 },
      problems: [{ level: 'warning', code: 'photo-missing' }],
    });
  });
});

describe('a backup', () => {
  let a: DirectlyReached;
  let b: DirectlyReached;
  const coach = entry('k1', { kind: 'coach.named', name: 'Invented coach 7' });
  const learner = (id: string, kind = 'learner.opened') => entry(id, { kind, name: 'Invented learner' });
  const LEARNER = 'learners/l-1/events-aa00.jsonl';
  const settings = {
    light: 'night',
    units: 'metric',
    name: 'Invented name',
    singleKeys: true,
    who: 'mechanic',
    learning: true,
    casesTakenOut: ['v-sent/c1'],
  };
  beforeEach(async () => {
    [a, b] = [await reach(), await reach()];
    await takeIn(a.call, zipParts(goodParts()));
    await a.call('visits.create', { visit: 'v-own', first: { ...ENTRIES[0] } });
    await a.call('settings.write', settings);
    await a.call('packs.install', {
      source: { files: Object.entries(goodPack()).map(([path, text]) => ({ path, text })) },
      replace: false,
    });
    for (const [path, text] of [
      ['coaches/k-1/events-aa00.jsonl', lines([coach])],
      ['drafts/horn-again/tree.yaml', SMALLEST_TREE],
      ['practice/learner-1.jsonl', lines([{ what: 'an exercise' }])],
      [LEARNER, lines([learner('l1'), learner('l2', 'drill.answered')])],
    ] as const) {
      mkdirSync(join(a.home, path, '..'), { recursive: true });
      writeFileSync(join(a.home, path), text);
    }
  });
  afterEach(async () => {
    await a.close();
    await b.close();
  });
  /** All but what belongs to one machine alone: its name as a writer, what it made, what it keeps at hand. */
  const kept = (home: string): Record<string, string> =>
    Object.fromEntries(
      Object.entries(filesBelow(home)).filter(([path]) => !/^(device-id|exports\/|exchange\/|tree-cards)/.test(path)),
    );

  it('[EXC-7] restored into an empty folder gives what there was', async () => {
    const { bytes, answer } = await madeFile(a.call, 'backup.write');
    expect(answer.notices).toEqual([]);
    const { taken, problems } = await takeIn(b.call, bytes, 'backup.restore');
    expect(problems).toEqual([]);
    expect(taken).toMatchObject({
      unchanged: 0,
      coaches: 1,
      packs: ['yard-notes'],
      drafts: 1,
      practice: 2,
      settings: 'taken',
    });
    expect(taken?.visits.map(({ visit }) => visit)).toEqual(['v-own', 'v-sent']);
    expect(kept(b.home)).toEqual(kept(a.home));
    expect(Object.keys(kept(b.home)).length).toBeGreaterThan(15);
    for (const [method, request] of [
      ['visits.list', {}],
      ['settings.read', {}],
      ['packs.list', {}],
      ['trees.list', {}],
    ] as const)
      expect(await b.call(method, request)).toEqual(await a.call(method, request));
  });

  it('[EXC-7] restored over what is there adds, and takes nothing away', async () => {
    const { bytes } = await madeFile(a.call, 'backup.write');
    await b.call('visits.create', { visit: 'v-b', first: { ...ENTRIES[0], coach: 'Another coach' } });
    await b.call('settings.write', { ...settings, light: 'day' });
    await takeIn(
      b.call,
      zipParts(
        goodParts(
          ENTRIES.slice(0, 3).concat(
            entry('e4', { kind: 'photo.added', complaint: 'c1', photo: PHOTO_FILE }),
            entry('e5', { kind: 'note.added', complaint: 'c1', text: 'b' }),
          ),
        ),
      ),
    );
    mkdirSync(join(b.home, 'drafts/horn-again'), { recursive: true });
    writeFileSync(join(b.home, 'drafts/horn-again/tree.yaml'), 'id: mine\n');
    mkdirSync(join(b.home, LEARNER, '..'), { recursive: true });
    writeFileSync(join(b.home, LEARNER), lines([learner('l1'), learner('l3', 'drill.answered')]));
    const before = kept(b.home);
    const { taken, problems } = await takeIn(b.call, bytes, 'backup.restore');
    expect(taken).toMatchObject({ visits: [{ visit: 'v-own' }], unchanged: 1, settings: 'kept', drafts: 0 });
    expect(problems).toMatchObject([{ level: 'warning', code: 'stays-as-it-is', file: 'drafts/horn-again/tree.yaml' }]);
    expect(kept(b.home)).toMatchObject(before);
    // [EXC-12] the answers of both sides, each once.
    const { events } = (await b.call('learners.read', { learner: 'l-1' })) as { events: { id: string }[] };
    expect(events.map(({ id }) => id).sort()).toEqual(['l1', 'l2', 'l3']);
    expect(
      ((await b.call('visits.list', {})) as { visits: { id: string }[] }).visits.map(({ id }) => id).sort(),
    ).toEqual(['v-b', 'v-own', 'v-sent']);
    expect(await takeIn(b.call, bytes, 'backup.restore')).toMatchObject({
      taken: { visits: [], unchanged: 2, packs: [] },
    });
  });

  it('[EXC-8] what lay damaged on its own disk comes back and is named; what is hostile is refused', async () => {
    const log = join(a.home, 'visits', 'v-own', 'events-bb00.jsonl');
    writeFileSync(
      log,
      lines([
        entry('e8', { kind: 'person.set', who: 'nobody' }),
        { ...entry('e9', { kind: 'person.set', who: 'mechanic' }), v: 9 },
      ]),
    );
    const { bytes } = await madeFile(a.call, 'backup.write');
    const { taken, problems } = await takeIn(b.call, bytes, 'backup.restore');
    expect(taken?.visits).toHaveLength(2);
    expect(problems.map(({ level, code }) => [level, code])).toEqual([
      ['warning', 'not-an-event'],
      ['warning', 'newer-version'],
    ]);
    expect(kept(b.home)).toEqual(kept(a.home));
    expect(await takeIn(b.call, bytes)).toMatchObject({ taken: null, problems: [{ code: 'other-kind' }] });
    expect(await takeIn(b.call, zipParts(goodParts()), 'backup.restore')).toMatchObject({
      taken: null,
      problems: [{ code: 'other-kind' }],
    });
  });
});
