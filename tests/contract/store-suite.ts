import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { first, person, type Call, type Reached } from './host-suite.ts';

type Store = Pick<Reached, 'call' | 'close'>;

/** What whatever keeps visits must do: in memory, in files, behind HTTP. */
export function describeStore(kind: string, reach: () => Promise<Store>): void {
  describe(`a store of visits, ${kind}`, () => {
    let store: Store;
    let call: Call;
    beforeEach(async () => {
      store = await reach();
      call = store.call;
    });
    afterEach(() => store.close());
    const events = async (visit = 'v-1'): Promise<unknown> =>
      ((await call('visits.read', { visit })) as { events: unknown }).events;

    it('[HOST-1] is empty at first, and gives back what it was given, in order', async () => {
      expect(await call('visits.list', {})).toEqual({ visits: [], notices: [] });
      expect(await call('visits.create', { visit: 'v-1', first })).toEqual({ visit: 'v-1' });
      expect(await call('visits.append', { visit: 'v-1', events: [person] })).toEqual({ written: 1 });
      const more = Array.from({ length: 50 }, (_, i) => ({ ...person, id: `f${i}`, note: 'ü ≈ \u2028 "x"\n' }));
      expect(await call('visits.append', { visit: 'v-1', events: more })).toEqual({ written: 50 });
      expect(await call('visits.read', { visit: 'v-1' })).toEqual({
        events: [first, person, ...more],
        notices: [],
        readOnly: false,
      });
    });

    it('[HOST-1] keeps visits apart and lists each by its opening and its last entry', async () => {
      await call('visits.create', { visit: 'v-1', first });
      await call('visits.create', { visit: 'v-2', first: { ...first, coach: 'Another coach', demo: false } });
      await call('visits.append', { visit: 'v-2', events: [{ ...person, at: '2021-01-01T00:00:00Z' }] });
      expect(await events()).toEqual([first]);
      const { visits } = (await call('visits.list', {})) as { visits: { id: string }[] };
      expect([...visits].sort((a, b) => (a.id < b.id ? -1 : 1))).toEqual([
        { id: 'v-1', coach: 'Invented coach', demo: true, openedAt: first.at, lastAt: first.at, events: 1 },
        {
          id: 'v-2',
          coach: 'Another coach',
          demo: false,
          openedAt: first.at,
          lastAt: '2021-01-01T00:00:00Z',
          events: 2,
        },
      ]);
    });

    it('[HOST-22] an entry that is sent again under its id counts once', async () => {
      await call('visits.create', { visit: 'v-1', first });
      for (let i = 0; i < 3; i++) await call('visits.append', { visit: 'v-1', events: [person] });
      expect(await events()).toEqual([first, person]);
    });

    it('[HOST-1] takes calls that come at once, whole and in their order', async () => {
      await call('visits.create', { visit: 'v-1', first });
      const pairs = Array.from({ length: 8 }, (_, i) => [
        { ...person, id: `p${i}a` },
        { ...person, id: `p${i}b` },
      ]);
      await Promise.all(pairs.map((pair) => call('visits.append', { visit: 'v-1', events: pair })));
      const ids = ((await events()) as { id: string }[]).slice(1).map(({ id }) => id);
      expect([...ids].sort()).toEqual(pairs.flat().map(({ id }) => id));
      // Both of a pair stand together, whichever pair came first.
      for (let i = 0; i < ids.length; i += 2) expect(ids[i + 1]).toBe(ids[i]!.replace('a', 'b'));
    });

    it.each([
      ['a second visit of one name', 'visits.create', { visit: 'v-1', first }, 'visit-exists'],
      ['a beginning that is none', 'visits.create', { visit: 'v-2', first: person }, 'bad-request'],
      ['a newer beginning', 'visits.create', { visit: 'v-2', first: { ...first, v: 2 } }, 'newer-version'],
      ['a newer entry', 'visits.append', { visit: 'v-1', events: [person, { ...person, v: 2 }] }, 'newer-version'],
      ['an entry without a kind', 'visits.append', { visit: 'v-1', events: [{ id: 'e2', v: 1 }] }, 'bad-request'],
      ['no entries', 'visits.append', { visit: 'v-1', events: [] }, 'bad-request'],
      ['too many entries', 'visits.append', { visit: 'v-1', events: Array(51).fill(person) }, 'bad-request'],
      ['a visit that is not there', 'visits.append', { visit: 'v-none', events: [person] }, 'no-such-visit'],
      ['a visit that is not there', 'visits.read', { visit: 'v-none' }, 'no-such-visit'],
      ['a name that leads elsewhere', 'visits.read', { visit: '../v-1' }, 'bad-request'],
    ])('[HOST-2] refuses %s (%s), and keeps what it has', async (_, method, request, code) => {
      await call('visits.create', { visit: 'v-1', first });
      await expect(call(method, request)).rejects.toMatchObject({ name: 'HostError', code });
      expect(await events()).toEqual([first]);
      expect(((await call('visits.list', {})) as { visits: unknown[] }).visits).toHaveLength(1);
    });
  });
}
