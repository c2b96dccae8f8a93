import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { entry, ENTRIES, goodParts, madeFile, PHOTO, PHOTO_FILE, takeIn, TREE_HASH, zipParts } from '../exchange.ts';
import type { Call, Reached } from './host-suite.ts';

/** Every file below a folder, with its content, for before and after. */
export function filesBelow(folder: string, below = ''): Record<string, string> {
  if (!existsSync(folder)) return {};
  return Object.fromEntries(
    readdirSync(join(folder, below), { withFileTypes: true }).flatMap((each): [string, string][] => {
      const path = below === '' ? each.name : `${below}/${each.name}`;
      return each.isDirectory()
        ? Object.entries(filesBelow(folder, path))
        : [[path, readFileSync(join(folder, path)).toString('base64')]];
    }),
  );
}

/** What every carrier must do with files that go out and come in. */
export function describeExchange(carrier: string, reach: () => Promise<Reached>): void {
  describe(`exchange, ${carrier}`, () => {
    let reached: Reached;
    let call: Call;
    beforeEach(async () => {
      reached = await reach();
      call = reached.call;
    });
    afterEach(() => reached.close());

    it('[EXC-1] a visit goes out in pieces and comes in again as it was, with photo and tree', async () => {
      const came = await takeIn(call, zipParts(goodParts()), 'visits.import', 40_000);
      expect(came).toEqual({
        taken: {
          visits: [{ visit: 'v-sent', coach: 'Invented coach 7', isNew: true, entries: 4, photos: 1 }],
          unchanged: 0,
          coaches: 0,
          packs: [],
          drafts: 0,
          practice: 0,
          settings: 'none',
        },
        problems: [],
      });
      expect(await call('visits.read', { visit: 'v-sent' })).toEqual({ events: ENTRIES, notices: [], readOnly: false });
      expect(await call('photos.read', { visit: 'v-sent', photo: PHOTO_FILE })).toEqual({
        type: 'image/png',
        data: PHOTO.toString('base64'),
      });
      expect(await call('trees.snapshot', { visit: 'v-sent', hash: TREE_HASH })).toMatchObject({
        hash: TREE_HASH,
        fault: null,
      });

      const { bytes, answer } = await madeFile(call, 'visits.export', { visit: 'v-sent' });
      expect(answer).toMatchObject({ bytes: bytes.length, notices: [] });
      expect(answer.name).toMatch(/^visit-invented-coach-7-20\d\d(-\d\d){4}-[0-9a-f]{6}\.zip$/);
      expect(answer.path).toBe(join(reached.home, 'exports', answer.name));
      const before = filesBelow(join(reached.home, 'visits'));
      expect(await takeIn(call, bytes)).toMatchObject({ taken: { visits: [], unchanged: 1 }, problems: [] });
      expect(filesBelow(join(reached.home, 'visits'))).toEqual(before);
      expect(readdirSync(join(reached.home, 'exchange'))).toEqual([]);
    });

    it('[EXC-2] a refused file says why, and nothing of it stays', async () => {
      await call('settings.read', {});
      const parts = goodParts([...ENTRIES, entry('e9', { kind: 'note.added', complaint: 'c1', text: '<script>' })]);
      expect(await takeIn(call, zipParts(parts))).toMatchObject({
        taken: null,
        problems: [{ level: 'error', code: 'script-in-text', file: 'visits/v-sent/events-aa00.jsonl', line: 5 }],
      });
      expect(filesBelow(join(reached.home, 'visits'))).toEqual({});
      expect(readdirSync(join(reached.home, 'exchange'))).toEqual([]);
    });

    it.each([
      ['a visit that is not there', 'visits.export', { visit: 'v-none' }, 'no-such-visit'],
      ['a file that never came', 'visits.import', { upload: 'u-none' }, 'no-such-upload'],
      ['a piece out of turn', 'exchange.send', { upload: 'u-1', at: 5, data: 'AAAA' }, 'piece-out-of-turn'],
      [
        'a piece that is too large',
        'exchange.send',
        { upload: 'u-1', at: 0, data: 'A'.repeat(8_400_004) },
        'bad-request',
      ],
      ['a file that was not made', 'exchange.fetch', { name: 'backup-x.zip', at: 0 }, 'no-such-file'],
      ['a path in place of a name', 'exchange.fetch', { name: '../settings.zip', at: 0 }, 'bad-request'],
    ])('[EXC-2] refuses %s (%s) with a code and a sentence', async (_, method, request, code) => {
      await expect(call(method, request)).rejects.toMatchObject({
        name: 'HostError',
        code,
        message: expect.stringMatching(/^["\p{Lu}].*\.$/su) as unknown,
      });
    });
  });
}
