import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createHost, type Host } from '../../../electron/host/host.ts';
import { LogFiles } from '../../../electron/host/visit-files.ts';
import { entry, oneTreeFolder, OPENING, TREE_HASH } from '../../exchange.ts';
import { FailingDisk } from './failing-disk.ts';

const treesFolder = oneTreeFolder();
afterAll(() => rmSync(treesFolder, { recursive: true }));
let home: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'droplight-disk-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

const first = OPENING as never;
const note = (id: string, text: string): never => entry(id, { kind: 'note.added', complaint: 'c', text }) as never;
const open = (options: { machine?: string; disk?: FailingDisk } = {}): Promise<Host> =>
  createHost({ dataFolder: home, treesFolder, shell: 'browser', version: '0', report: () => undefined, ...options });
const logOf = (visit = 'v-1'): string =>
  join(
    home,
    'visits',
    visit,
    readdirSync(join(home, 'visits', visit)).find((name) => name.endsWith('.jsonl'))!,
  );

describe('[HOST-20] the current goes while a line is written', () => {
  // Letters of more than one byte, so that the cut also falls into the middle of one.
  const second = note('e2', 'ü ≈ “left”');
  const length = Buffer.byteLength(`${JSON.stringify(second)}\n`);

  it.each(Array.from({ length: length + 1 }, (_, byte) => byte))(
    'after byte %i: what was answered is there, the rest is there whole or not at all, and the next line starts afresh',
    async (byte) => {
      const disk = new FailingDisk();
      const dying = new LogFiles(join(home, 'visits'), 'aa00', 'visit', disk);
      await dying.create('v-1', first);
      disk.failure = { at: 'power', byte };
      void dying.append('v-1', [second]);
      await disk.dark;

      const reopened = new LogFiles(join(home, 'visits'), 'aa00', 'visit');
      const { records, notices } = await reopened.read('v-1');
      // A line that is whole but for its end can be read.
      const whole = byte >= length - 1;
      expect(records).toEqual(whole ? [first, second] : [first]);
      expect(notices.map(({ code }) => code)).toEqual(whole || byte === 0 ? [] : ['visit-log-torn']);
      await reopened.append('v-1', [second, note('e3', 'after')]);
      const again = await reopened.read('v-1');
      expect(again).toEqual({ records: [first, second, note('e3', 'after')], notices: [] });
    },
  );

  it('while a visit begins: it is not there, and can begin again', async () => {
    const disk = new FailingDisk();
    disk.failure = { at: 'power', byte: 20 };
    void new LogFiles(join(home, 'visits'), 'aa00', 'visit', disk).create('v-1', first);
    await disk.dark;
    const reopened = new LogFiles(join(home, 'visits'), 'aa00', 'visit');
    expect(await reopened.list()).toEqual([]);
    await reopened.create('v-1', first);
    expect(await reopened.read('v-1')).toEqual({ records: [first], notices: [] });
  });
});

describe('[HOST-21] a disk that refuses', () => {
  let disk: FailingDisk;
  let host: Host;
  beforeEach(async () => {
    disk = new FailingDisk();
    host = await open({ disk });
  });
  const read = async (): Promise<readonly unknown[]> => (await host.call('visits.read', { visit: 'v-1' })).events;

  it('is full after any byte of three entries: none of them is written, and doing it again writes each once', async () => {
    await host.call('visits.create', { visit: 'v-1', first });
    const before = readFileSync(logOf(), 'utf8');
    const three = [note('e2', 'a'), note('e3', 'b'), note('e4', 'c')];
    const length = three.reduce<number>((sum, each) => sum + JSON.stringify(each).length + 1, 0);
    for (let byte = 0; byte <= length; byte += 7) {
      disk.failure = { at: 'byte', byte, code: 'ENOSPC' };
      await expect(host.call('visits.append', { visit: 'v-1', events: three })).rejects.toMatchObject({
        code: 'disk',
        message: expect.stringMatching(/^The disk is full \(.*What you typed is still in the window/) as unknown,
      });
      expect(readFileSync(logOf(), 'utf8')).toBe(before);
    }
    disk.failure = null;
    await host.call('visits.append', { visit: 'v-1', events: three });
    expect(await read()).toEqual([first, ...three]);
  });

  it.each([
    ['is full when a visit begins', { at: 'byte', byte: 10, code: 'ENOSPC' }, 'The disk is full'],
    ['can only be read', { at: 'open', code: 'EROFS' }, 'The data folder can only be read'],
    ['may not be written', { at: 'open', code: 'EACCES' }, 'The data folder may not be written'],
  ] as const)('%s: it says so, and no empty folder is left behind', async (_, failure, words) => {
    disk.failure = failure;
    await expect(host.call('visits.create', { visit: 'v-1', first })).rejects.toMatchObject({
      code: 'disk',
      message: expect.stringContaining(words) as unknown,
    });
    expect(readdirSync(join(home, 'visits'))).toEqual([]);
    disk.failure = null;
    await host.call('visits.create', { visit: 'v-1', first });
    expect(await read()).toEqual([first]);
  });

  it('cannot flush: the entry is not taken as written', async () => {
    await host.call('visits.create', { visit: 'v-1', first });
    disk.failure = { at: 'flush', code: 'ENOSPC' };
    await expect(host.call('visits.append', { visit: 'v-1', events: [note('e2', 'a')] })).rejects.toMatchObject({
      code: 'disk',
    });
    expect(await read()).toEqual([first]);
  });

  it('an empty folder that an older version left behind does not stop the visit from beginning', async () => {
    mkdirSync(join(home, 'visits', 'v-1'), { recursive: true });
    await host.call('visits.create', { visit: 'v-1', first });
    expect(await read()).toEqual([first]);
  });
});

describe('[EXC-9] two machines on one folder', () => {
  const complaint = (id: string): never =>
    entry(id, {
      kind: 'complaint.opened',
      complaint: id,
      tree: 'horn-stays-silent',
      treeHash: TREE_HASH,
      words: '',
    }) as never;
  const idsOf = async (host: Host): Promise<string[]> =>
    (await host.call('visits.read', { visit: 'v-1' })).events.map(({ id }) => id).sort();
  const logs = (): string[] => readdirSync(join(home, 'visits', 'v-1')).filter((name) => name.endsWith('.jsonl'));

  it('write a file each, interleaved, and each reads what the other has written', async () => {
    const [a, b] = [await open({ machine: 'a' }), await open({ machine: 'b' })];
    await a.call('visits.create', { visit: 'v-1', first });
    await expect(b.call('visits.create', { visit: 'v-1', first })).rejects.toMatchObject({ code: 'visit-exists' });
    const wanted = ['e1'];
    for (let i = 0; i < 12; i++) {
      wanted.push(`a${i}`, `b${i}`);
      await Promise.all([
        a.call('visits.append', { visit: 'v-1', events: [note(`a${i}`, 'by a')] }),
        b.call('visits.append', { visit: 'v-1', events: [note(`b${i}`, 'by b')] }),
      ]);
    }
    wanted.sort();
    expect([await idsOf(a), await idsOf(b)]).toEqual([wanted, wanted]);
    const texts = logs().map((name) => readFileSync(join(home, 'visits', 'v-1', name), 'utf8'));
    expect(texts.map((text) => [text.includes('by a'), text.includes('by b')]).sort()).toEqual([
      [false, true],
      [true, false],
    ]);
    // Started again they are the same two writers.
    await (await open({ machine: 'b' })).call('visits.append', { visit: 'v-1', events: [note('b99', 'by b')] });
    expect(logs()).toHaveLength(2);
    expect(await idsOf(a)).toContain('b99');
  });

  it('keep the tree of a complaint once, when both open one at the same time', async () => {
    const [a, b] = [await open({ machine: 'a' }), await open({ machine: 'b' })];
    await a.call('visits.create', { visit: 'v-1', first });
    await Promise.all([
      a.call('visits.append', { visit: 'v-1', events: [complaint('c1')] }),
      b.call('visits.append', { visit: 'v-1', events: [complaint('c2')] }),
    ]);
    expect(await idsOf(a)).toEqual(['c1', 'c2', 'e1']);
    expect(readdirSync(join(home, 'visits', 'v-1', 'trees'))).toEqual([TREE_HASH]);
    expect(await b.call('trees.snapshot', { visit: 'v-1', hash: TREE_HASH })).toMatchObject({ hash: TREE_HASH });
  });

  it('a folder of before has one writer: whoever opens it first goes on with its name, the other gets its own', async () => {
    writeFileSync(join(home, 'device-id'), '0123456789ab\n');
    const a = await open({ machine: 'a' });
    const b = await open({ machine: 'b' });
    await a.call('visits.create', { visit: 'v-1', first });
    await b.call('visits.append', { visit: 'v-1', events: [note('e2', 'by b')] });
    expect(logs()).toHaveLength(2);
    expect(logs()).toContain('events-0123456789ab.jsonl');
  });
});
