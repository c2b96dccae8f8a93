import { appendFileSync, existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { first as visitOpened, type Call, type Reached } from './host-suite.ts';

const opened = {
  id: 'e1',
  v: 1,
  at: '2026-01-01T00:00:00Z',
  by: '',
  kind: 'learner.opened',
  name: 'Invented apprentice',
};
const answer = { ...opened, id: 'e2', at: '2026-01-02T00:00:00Z', kind: 'drill.answered', card: 'limit-0' };

/** What every carrier must do for learners: the same tests for each. */
export function describeLearners(carrier: string, reach: () => Promise<Reached>): void {
  describe(`learners, ${carrier}`, () => {
    let reached: Reached;
    let call: Call;
    beforeEach(async () => {
      reached = await reach();
      ({ call } = reached);
      await call('learners.create', { learner: 'l-1', first: opened });
    });
    afterEach(() => reached.close());
    const folder = (): string => join(reached.home, 'learners', 'l-1');

    it('[HOST-14] a learner is written, listed and read back, and is no visit', async () => {
      expect(await call('learners.append', { learner: 'l-1', events: [answer] })).toEqual({ written: 1 });
      expect(await call('learners.read', { learner: 'l-1' })).toEqual({
        events: [opened, answer],
        notices: [],
        readOnly: false,
      });
      expect(await call('learners.list', {})).toEqual({
        learners: [{ id: 'l-1', name: 'Invented apprentice', events: 2, lastAt: answer.at }],
        notices: [],
      });
      expect(await call('visits.list', {})).toEqual({ visits: [], notices: [] });
      await expect(call('visits.read', { visit: 'l-1' })).rejects.toMatchObject({ code: 'no-such-visit' });
    });

    it('[HOST-14] the two kinds of lines are never mixed', async () => {
      const refused = { name: 'HostError', code: 'bad-request' };
      await call('visits.create', { visit: 'v-1', first: visitOpened });
      await expect(call('visits.append', { visit: 'v-1', events: [answer] })).rejects.toMatchObject(refused);
      await expect(call('visits.create', { visit: 'v-2', first: opened })).rejects.toMatchObject(refused);
      await expect(call('learners.append', { learner: 'l-1', events: [visitOpened] })).rejects.toMatchObject(refused);
      await expect(call('learners.create', { learner: 'l-2', first: visitOpened })).rejects.toMatchObject(refused);
      await expect(call('learners.create', { learner: 'l-2', first: answer })).rejects.toMatchObject(refused);
      expect(await call('visits.read', { visit: 'v-1' })).toMatchObject({ events: [visitOpened] });
      expect(await call('learners.read', { learner: 'l-1' })).toMatchObject({ events: [opened] });
    });

    it.each([
      ['learners.create', { learner: 'l-1', first: opened }, 'learner-exists'],
      ['learners.read', { learner: 'l-none' }, 'no-such-learner'],
      ['learners.append', { learner: 'l-none', events: [answer] }, 'no-such-learner'],
      ['learners.delete', { learner: 'l-none' }, 'no-such-learner'],
      ['learners.delete', { learner: '../visits' }, 'bad-request'],
      ['learners.append', { learner: 'l-1', events: [{ ...answer, v: 2 }] }, 'newer-version'],
      ['trees.drawing', { file: '../vocabulary/limits.yaml' }, 'bad-request'],
      ['trees.drawing', { file: 'no-such-drawing.svg' }, 'no-such-drawing'],
    ])('[HOST-14] [HOST-16] refuses %s of %j with %s and a sentence', async (method, request, code) => {
      await expect(call(method, request)).rejects.toMatchObject({
        name: 'HostError',
        code,
        message: expect.stringMatching(/^["\p{Lu}].*\.$/su) as unknown,
      });
      expect(await call('learners.read', { learner: 'l-1' })).toMatchObject({ events: [opened] });
    });

    it('[HOST-15] deleting removes every file, another machine’s too, and nobody else’s', async () => {
      await call('learners.create', { learner: 'l-2', first: opened });
      writeFileSync(join(folder(), 'events-abcabcabcabc.jsonl'), `${JSON.stringify({ ...answer, id: 'e9' })}\n`);
      mkdirSync(join(folder(), 'kept'));
      writeFileSync(join(folder(), 'kept', 'something.txt'), 'x');
      const { events } = (await call('learners.read', { learner: 'l-1' })) as { events: { id: string }[] };
      expect(events.map(({ id }) => id).sort()).toEqual(['e1', 'e9']);
      expect(await call('learners.delete', { learner: 'l-1' })).toEqual({ deleted: 'l-1', files: 3 });
      expect(existsSync(folder())).toBe(false);
      expect(readdirSync(join(reached.home, 'learners'))).toEqual(['l-2']);
      await expect(call('learners.append', { learner: 'l-1', events: [answer] })).rejects.toMatchObject({
        code: 'no-such-learner',
      });
      expect(existsSync(folder())).toBe(false);
    });

    it('[HOST-15] deleting and writing at once leave either everything or nothing', async () => {
      await Promise.allSettled([
        call('learners.append', { learner: 'l-1', events: [answer] }),
        call('learners.delete', { learner: 'l-1' }),
        call('learners.append', { learner: 'l-1', events: [{ ...answer, id: 'e3' }] }),
      ]);
      expect(existsSync(folder())).toBe(false);
    });

    it('[HOST-14] a torn last line is named and costs itself', async () => {
      const name = readdirSync(folder()).find((each) => each.endsWith('.jsonl')) ?? '';
      appendFileSync(join(folder(), name), '{"id":"torn"');
      expect(await call('learners.read', { learner: 'l-1' })).toMatchObject({
        events: [opened],
        notices: [{ code: 'learner-log-torn' }],
      });
      await call('learners.append', { learner: 'l-1', events: [answer] });
      expect(await call('learners.read', { learner: 'l-1' })).toMatchObject({ events: [opened, answer], notices: [] });
    });

    it('[HOST-16] a drawing comes as its text', async () => {
      const { svg } = (await call('trees.drawing', { file: 'relay-valve-leak-paths.svg' })) as { svg: string };
      expect(svg).toMatch(/^<svg [\s\S]*<title[\s\S]*<\/svg>\s*$/);
    });
  });
}
