import { mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { jpeg, ONE_POINT, png, PNG_DATA, PNG_MARK, pngChunk, pngHead, SECRET } from '../unit/photo/crafted.ts';

/** One call by name, as a carrier takes it; a refusal is thrown with its code and message. */
export type Call = (method: string, request: unknown) => Promise<unknown>;

/** A machine side over a data folder of its own, reached by one carrier. */
export interface Reached {
  readonly home: string;
  readonly call: Call;
  /** What was reported to whoever mends the program. */
  readonly reported: () => string;
  readonly close: () => Promise<void>;
}

/** The opening of a visit, as the log takes it. */
export const first = {
  id: 'e1',
  v: 1,
  at: '2020-01-01T00:00:00Z',
  by: '',
  kind: 'visit.opened',
  coach: 'Invented coach',
  demo: true,
};
/** A second event for it. */
export const person = { ...first, id: 'e2', kind: 'person.set', who: 'mechanic' };

/**
 * What every carrier of the contract must do, refusals included: the same tests for each.
 *
 * @param carrier  for the tests' names: "directly", "over HTTP", "over IPC".
 * @param reach    opens a machine side before each test.
 */
export function describeContract(carrier: string, reach: () => Promise<Reached>): void {
  describe(`the contract, ${carrier}`, () => {
    let reached: Reached;
    let call: Call;
    beforeEach(async () => {
      reached = await reach();
      call = reached.call;
    });
    afterEach(() => reached.close());

    const complaint = (id: string, tree: string, treeHash: string): unknown => ({
      ...first,
      id,
      kind: 'complaint.opened',
      complaint: id,
      tree,
      treeHash,
      words: '',
    });
    const anyTree = async (): Promise<{ id: string; hash: string }> => {
      const { trees } = (await call('trees.list', {})) as { trees: { card: { id: string }; hash: string }[] };
      expect(trees.length).toBeGreaterThanOrEqual(16);
      return { id: trees[0]!.card.id, hash: trees[0]!.hash };
    };

    it('[HOST-1] writes a visit and reads it back as it was', async () => {
      expect(await call('visits.create', { visit: 'v-1', first })).toEqual({ visit: 'v-1' });
      expect(await call('visits.append', { visit: 'v-1', events: [person] })).toEqual({ written: 1 });
      expect(await call('visits.read', { visit: 'v-1' })).toEqual({
        events: [first, person],
        notices: [],
        readOnly: false,
      });
      expect(await call('visits.list', {})).toMatchObject({
        visits: [{ id: 'v-1', coach: 'Invented coach', demo: true, events: 2 }],
        notices: [],
      });
    });

    it('[HOST-2] says where it keeps things, and keeps settings', async () => {
      expect(await call('app.info', {})).toMatchObject({ dataFolder: reached.home });
      const before = { light: 'night', units: 'metric', name: 'Invented name', singleKeys: false, who: 'mechanic' };
      // What an older window does not send is off.
      expect(await call('settings.write', before)).toEqual({
        settings: { ...before, learning: false, casesTakenOut: [] },
      });
      const settings = { ...before, learning: true, casesTakenOut: ['v-1/c-1'] };
      expect(await call('settings.write', settings)).toEqual({ settings });
      expect(await call('settings.read', {})).toEqual({ settings, notices: [] });
    });

    it.each([
      ['a name that leads out of its folder', 'visits.append', { visit: '../x', events: [person] }, 'bad-request'],
      ['no events', 'visits.append', { visit: 'v-1', events: [] }, 'bad-request'],
      ['nothing', 'visits.read', null, 'bad-request'],
      ['a list', 'visits.read', [], 'bad-request'],
      ['a visit that is not there', 'visits.append', { visit: 'v-none', events: [person] }, 'no-such-visit'],
      ['a visit that is not there', 'visits.read', { visit: 'v-none' }, 'no-such-visit'],
      ['a second visit of one name', 'visits.create', { visit: 'v-1', first }, 'visit-exists'],
      ['a beginning that is none', 'visits.create', { visit: 'v-2', first: person }, 'bad-request'],
      ['a light that there is not', 'settings.write', { light: 'purple' }, 'bad-request'],
      ['a photo that is not there', 'photos.read', { visit: 'v-1', photo: `${'0'.repeat(64)}.png` }, 'no-such-photo'],
      ['a tree that is not there', 'trees.read', { hash: 'f'.repeat(64) }, 'no-such-tree'],
      ['a tree that is not there', 'trees.snapshot', { visit: 'v-1', hash: 'f'.repeat(64) }, 'no-such-tree'],
    ])('[HOST-2] refuses %s (%s) with a code and a sentence', async (_, method, request, code) => {
      await call('visits.create', { visit: 'v-1', first });
      await expect(call(method, request)).rejects.toMatchObject({
        name: 'HostError',
        code,
        message: expect.stringMatching(/^["\p{Lu}].*\.$/su) as unknown,
      });
      expect(await call('visits.read', { visit: 'v-1' })).toMatchObject({ events: [first] });
      expect(readdirSync(join(reached.home, 'visits'))).toEqual(['v-1']);
    });

    it('[HOST-3] keeps the tree of a complaint beside the visit, under the hash of its content', async () => {
      await call('visits.create', { visit: 'v-1', first });
      const { id, hash } = await anyTree();
      await call('visits.append', { visit: 'v-1', events: [complaint('c', id, hash)] });
      expect(readFileSync(join(reached.home, 'visits', 'v-1', 'trees', hash, 'tree.yaml'), 'utf8')).toContain(
        `id: ${id}`,
      );
      expect(await call('trees.snapshot', { visit: 'v-1', hash })).toMatchObject({ id, hash });
      expect(await call('trees.read', { hash })).toEqual(await call('trees.snapshot', { visit: 'v-1', hash }));
      await expect(
        call('visits.append', { visit: 'v-1', events: [complaint('d', id, 'f'.repeat(64))] }),
      ).rejects.toMatchObject({ code: 'no-such-tree' });
    });

    it('[HOST-3] several complaints opened at once keep their tree once and lose nothing', async () => {
      await call('visits.create', { visit: 'v-1', first });
      const { id, hash } = await anyTree();
      const ids = ['c1', 'c2', 'c3', 'c4', 'c5'];
      await Promise.all(
        ids.map((each) => call('visits.append', { visit: 'v-1', events: [complaint(each, id, hash)] })),
      );
      const { events } = (await call('visits.read', { visit: 'v-1' })) as { events: { id: string }[] };
      expect(events.map((event) => event.id).sort()).toEqual([...ids, 'e1'].sort());
      expect(readdirSync(join(reached.home, 'visits', 'v-1', 'trees'))).toEqual([hash]);
    });

    it('[HOST-4] stores photos under the hash of their content and refuses what is none', async () => {
      await call('visits.create', { visit: 'v-1', first });
      const onePoint = ONE_POINT.toString('base64');
      const { photo } = (await call('photos.write', { visit: 'v-1', type: 'image/png', data: onePoint })) as {
        photo: string;
      };
      expect(await call('photos.read', { visit: 'v-1', photo })).toEqual({ type: 'image/png', data: onePoint });
      const drawing = Buffer.from('<svg/>').toString('base64');
      await expect(call('photos.write', { visit: 'v-1', type: 'image/png', data: drawing })).rejects.toMatchObject({
        code: 'not-a-photo',
      });
      await expect(call('photos.write', { visit: 'v-none', type: 'image/png', data: onePoint })).rejects.toMatchObject({
        code: 'no-such-visit',
      });
    });

    it('[HOST-19] stores a photo without what is not the picture, under one name; a damaged one and one for a newer visit are refused', async () => {
      await call('visits.create', { visit: 'v-1', first });
      const write = (bytes: Buffer, type = 'image/png'): Promise<unknown> =>
        call('photos.write', { visit: 'v-1', type, data: bytes.toString('base64') });
      const { photo } = (await write(png(1))) as { photo: string };
      const { data } = (await call('photos.read', { visit: 'v-1', photo })) as { data: string };
      expect(Buffer.from(data, 'base64').includes(SECRET)).toBe(false);
      expect(await write(Buffer.from(data, 'base64'))).toEqual({ photo });
      await expect(write(jpeg().subarray(0, 100), 'image/jpeg')).rejects.toMatchObject({
        code: 'photo-damaged',
        message: expect.stringMatching(/^The photo cannot be kept: .*nothing was stored/) as unknown,
      });
      const huge = Buffer.concat([PNG_MARK, pngHead(20_000, 20_000), pngChunk('IDAT', PNG_DATA), pngChunk('IEND', '')]);
      await expect(write(huge)).rejects.toMatchObject({ code: 'photo-too-large' });
      const log = join(reached.home, 'visits', 'v-1', 'events-0a.jsonl');
      writeFileSync(log, `${JSON.stringify({ ...person, id: 'e9', v: 2 })}\n`);
      await expect(write(png(3))).rejects.toMatchObject({ code: 'newer-version' });
      expect(readdirSync(join(reached.home, 'visits', 'v-1', 'photos'))).toEqual([photo]);
    });

    it('[HOST-6] an event of a newer version is not written, to an old visit or a new one', async () => {
      const newer = { code: 'newer-version', message: expect.stringContaining('version 2') as unknown };
      await expect(call('visits.create', { visit: 'v-2', first: { ...first, v: 2 } })).rejects.toMatchObject(newer);
      expect(await call('visits.list', {})).toMatchObject({ visits: [] });
      await call('visits.create', { visit: 'v-1', first });
      await expect(
        call('visits.append', { visit: 'v-1', events: [person, { ...person, id: 'e3', v: 2 }] }),
      ).rejects.toMatchObject(newer);
      expect(await call('visits.read', { visit: 'v-1' })).toMatchObject({ events: [first], readOnly: false });
    });

    it('[HOST-12] what nobody expected is one fault over every carrier; its details are reported, not shown', async () => {
      mkdirSync(join(reached.home, 'settings.json'));
      await expect(call('settings.read', {})).rejects.toMatchObject({
        name: 'HostError',
        code: 'machine-side',
        message:
          'The machine side met something it did not expect. What is on disk is unharmed. Close the window and open the visit again.',
      });
      expect(reached.reported()).toMatch(/"settings\.read" failed: .*EISDIR/s);
      rmSync(join(reached.home, 'settings.json'), { recursive: true });
      expect(await call('settings.read', {})).toMatchObject({ settings: { light: 'system' } });
    });

    it('[HOST-12] a fault of the disk says what is wrong with it', async () => {
      await call('visits.create', { visit: 'v-1', first });
      symlinkSync(join(reached.home, 'unplugged', 'photos'), join(reached.home, 'visits', 'v-1', 'photos'));
      const onePoint = ONE_POINT.toString('base64');
      await expect(call('photos.write', { visit: 'v-1', type: 'image/png', data: onePoint })).rejects.toMatchObject({
        name: 'HostError',
        code: 'disk',
        message: expect.stringContaining('A file or folder that should be there is missing') as unknown,
      });
    });
  });
}
