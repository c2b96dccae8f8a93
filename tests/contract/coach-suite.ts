import { appendFileSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { SHIPPED_TREES } from '../../electron/cli/load-trees.ts';
import { createHost, type Host } from '../../electron/host/host.ts';
import { first as visitFirst, type Call, type Reached } from './host-suite.ts';

const first = {
  id: 'e1',
  v: 1,
  at: '2020-01-01T00:00:00Z',
  by: '',
  kind: 'coach.opened',
  name: 'Invented coach 7',
  demo: true,
};
const set = {
  ...first,
  id: 'e2',
  kind: 'coach.set',
  field: 'ratio.axle',
  value: 4.1,
  unit: 'to-1',
  name: undefined,
  demo: undefined,
};
const plain = (event: object): unknown => JSON.parse(JSON.stringify(event));

/** What every carrier must do with coaches: the same tests for each. */
export function describeCoaches(carrier: string, reach: () => Promise<Reached>): void {
  describe(`coaches, ${carrier}`, () => {
    let reached: Reached;
    let call: Call;
    beforeEach(async () => {
      reached = await reach();
      call = reached.call;
      await call('coaches.create', { coach: 'c-1', first });
    });
    afterEach(() => reached.close());

    it('[COACH-1] a profile is read back as it was written, and listed by its last name', async () => {
      expect(await call('coaches.append', { coach: 'c-1', events: [plain(set)] })).toEqual({ written: 1 });
      const named = { ...first, id: 'e3', kind: 'coach.named', name: 'The blue one' };
      await call('coaches.append', { coach: 'c-1', events: [named] });
      expect(await call('coaches.read', { coach: 'c-1' })).toEqual({
        events: [first, plain(set), named],
        notices: [],
        readOnly: false,
      });
      expect(await call('coaches.list', {})).toMatchObject({
        coaches: [{ id: 'c-1', name: 'The blue one', demo: true, events: 3 }],
      });
    });

    it.each([
      ['a name that leads out of its folder', 'coaches.append', { coach: '../x', events: [set] }, 'bad-request'],
      ['a coach that is not there', 'coaches.read', { coach: 'c-none' }, 'no-such-coach'],
      ['a coach that is not there', 'coaches.append', { coach: 'c-none', events: [plain(set)] }, 'no-such-coach'],
      ['a second coach of one name', 'coaches.create', { coach: 'c-1', first }, 'coach-exists'],
      ['a beginning that is none', 'coaches.create', { coach: 'c-2', first: plain(set) }, 'bad-request'],
      [
        'an event of a newer version',
        'coaches.append',
        { coach: 'c-1', events: [{ ...first, v: 2 }] },
        'newer-version',
      ],
    ])('[COACH-2] refuses %s (%s) with a code and a sentence, and writes nothing', async (_, method, request, code) => {
      await expect(call(method, request)).rejects.toMatchObject({
        name: 'HostError',
        code,
        message: expect.stringMatching(/^["\p{Lu}].*\.$/su) as unknown,
      });
      expect(await call('coaches.read', { coach: 'c-1' })).toMatchObject({ events: [first] });
      expect(readdirSync(join(reached.home, 'coaches'))).toEqual(['c-1']);
    });

    it('[COACH-3] the visits of a coach come with their complaints and readings; those of others do not', async () => {
      const of = (visit: string, coachId: string | null, value: number): Promise<unknown> =>
        call('visits.create', { visit, first: { ...visitFirst, ...(coachId === null ? {} : { coachId }) } }).then(
          () => {
            // The tree of an old visit need not be here for its record: its log says enough.
            const log = readdirSync(join(reached.home, 'visits', visit)).find((name) => name.endsWith('.jsonl'))!;
            const lines = [
              { kind: 'complaint.opened', complaint: 'c', tree: 'invented', treeHash: 'a'.repeat(64), words: 'hiss' },
              {
                kind: 'finding.recorded',
                complaint: 'c',
                finding: 'f',
                check: 'applied-rate',
                value: { kind: 'reading', reading: { value, unit: 'psi/min' } },
              },
            ].map((body, i) => JSON.stringify({ id: `e${i + 2}`, v: 1, at: visitFirst.at, by: '', ...body }));
            appendFileSync(join(reached.home, 'visits', visit, log), `${lines.join('\n')}\n`);
          },
        );
      await of('v-1', 'c-1', 2);
      await of('v-2', 'c-2', 9);
      await of('v-3', null, 9);
      expect(await call('coaches.history', { coach: 'c-1' })).toMatchObject({
        visits: [
          {
            id: 'v-1',
            complaints: [{ tree: 'invented', words: 'hiss', closedHow: null }],
            readings: [{ check: 'applied-rate', value: 2, unit: 'psi/min' }],
          },
        ],
      });
      // A visit may be linked later, and the link taken back.
      const link = { ...visitFirst, id: 'e8', kind: 'coach.linked', coachId: 'c-1' };
      await call('visits.append', { visit: 'v-3', events: [link] });
      const ids = async (): Promise<string[]> =>
        ((await call('coaches.history', { coach: 'c-1' })) as { visits: { id: string }[] }).visits.map(({ id }) => id);
      expect((await ids()).sort()).toEqual(['v-1', 'v-3']);
      await call('visits.append', {
        visit: 'v-3',
        events: [{ ...visitFirst, id: 'e9', kind: 'event.taken-back', event: 'e8' }],
      });
      expect(await ids()).toEqual(['v-1']);
    });
  });
}

/** What holds for the cards of long lists, whatever the carrier. */
export function describeCards(reach: () => Promise<Reached>): void {
  describe('the cards of long lists', () => {
    let reached: Reached;
    let call: Call;
    beforeEach(async () => {
      reached = await reach();
      call = reached.call;
    });
    afterEach(() => reached.close());
    const log = (visit: string, device = '00000000ffff'): string =>
      join(reached.home, 'visits', visit, `events-${device}.jsonl`);
    const put = (visit: string, ...events: object[]): void => {
      mkdirSync(join(reached.home, 'visits', visit), { recursive: true });
      appendFileSync(log(visit), events.map((event) => `${JSON.stringify(event)}\n`).join(''));
    };
    const listed = async (): Promise<{ id: string; events: number }[]> =>
      ((await call('visits.list', {})) as { visits: { id: string; events: number }[] }).visits;

    it('[COACH-4] what another device adds, in its file or a new one, is in the next list; a visit taken away is not', async () => {
      put('v-1', visitFirst);
      put('v-2', visitFirst);
      expect(await listed()).toHaveLength(2);
      put('v-1', { ...visitFirst, id: 'e2', kind: 'person.set', who: 'mechanic' });
      expect((await listed()).find(({ id }) => id === 'v-1')?.events).toBe(2);
      writeFileSync(log('v-1', '00000000eeee'), `${JSON.stringify({ ...visitFirst, id: 'e3', kind: 'person.set' })}\n`);
      expect((await listed()).find(({ id }) => id === 'v-1')?.events).toBe(3);
      rmSync(join(reached.home, 'visits', 'v-2'), { recursive: true });
      expect((await listed()).map(({ id }) => id)).toEqual(['v-1']);
    });

    it('[COACH-4] kept cards only save time: spoilt or out of date, the list is the same', async () => {
      for (let i = 0; i < 60; i++) put(`v-${i}`, { ...visitFirst, coach: `Invented coach ${i}` });
      const before = await call('visits.list', {});
      const kept = join(reached.home, 'cache', 'visits.json');
      expect(JSON.parse(readFileSync(kept, 'utf8'))).toMatchObject({ form: 1 });
      const whole = readFileSync(kept, 'utf8');
      const startAnew = (): Promise<Host> =>
        createHost({ dataFolder: reached.home, treesFolder: SHIPPED_TREES, shell: 'browser', version: '0' });
      const spoilt = ['', whole.slice(0, 900), '{"version":"0","form":1,"entries":[["v-0",{}]]}'];
      for (const text of [whole, ...spoilt, whole.replaceAll('Invented coach', 'Old coach').replaceAll('@', '@1')]) {
        writeFileSync(kept, text);
        expect(await (await startAnew()).call('visits.list', {})).toEqual(before);
      }
    });
  });
}
