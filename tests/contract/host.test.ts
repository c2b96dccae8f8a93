import { appendFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { SHIPPED_TREES } from '../../electron/cli/load-trees.ts';
import { createHost, type Host } from '../../electron/host/host.ts';
import { startServer, type LoopbackServer } from '../../electron/server/server.ts';
import { hostApi } from '../../shared/host/host-api.ts';
import { HOST_METHODS } from '../../shared/host/host-methods.ts';

let home: string;
let host: Host;
let server: LoopbackServer;
let cookie = '';
beforeEach(async () => {
  home = mkdtempSync(join(tmpdir(), 'droplight-'));
  host = await createHost({ dataFolder: home, treesFolder: SHIPPED_TREES, shell: 'browser', version: '0' });
  server = await startServer(host, join(home, 'no-window'));
  cookie = (await fetch(server.address, { redirect: 'manual' })).headers.get('set-cookie')?.split(';')[0] ?? '';
});
afterEach(async () => {
  await server.close();
  rmSync(home, { recursive: true, force: true });
});

type Call = (method: string, body: unknown) => Promise<unknown>;
const direct: Call = (method, body) => host.answer(method, body);
const http: Call = async (method, body) => {
  const response = await fetch(`${server.origin}/api/${method}`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', Cookie: cookie, Origin: server.origin },
    body: JSON.stringify(body),
  });
  const answer: unknown = await response.json();
  if (!response.ok) throw Object.assign(new Error((answer as { message: string }).message), answer);
  return answer;
};
const first = {
  id: 'e1',
  v: 1,
  at: '2020-01-01T00:00:00Z',
  by: '',
  kind: 'visit.opened',
  coach: 'Invented coach',
  demo: true,
};
const person = { ...first, id: 'e2', kind: 'person.set', who: 'mechanic' };

describe.each<[string, Call]>([
  ['directly', direct],
  ['over HTTP', http],
])('the contract, %s', (_, call) => {
  it('[HOST-1] writes a visit and reads it back as it was', async () => {
    await call('visits.create', { visit: 'v-1', first });
    expect(await call('visits.append', { visit: 'v-1', events: [person] })).toEqual({ written: 1 });
    expect(await call('visits.read', { visit: 'v-1' })).toMatchObject({
      events: [first, person],
      notices: [],
      readOnly: false,
    });
    expect(await call('visits.list', {})).toMatchObject({
      visits: [{ id: 'v-1', coach: 'Invented coach', demo: true, events: 2 }],
    });
  });
  it('[HOST-2] refuses what the table does not allow, with a code and a sentence', async () => {
    await expect(call('visits.append', { visit: '../x', events: [person] })).rejects.toMatchObject({
      code: 'bad-request',
    });
    await expect(call('visits.append', { visit: 'v-none', events: [person] })).rejects.toMatchObject({
      code: 'no-such-visit',
    });
    await expect(call('no.such', {})).rejects.toMatchObject({ code: 'no-such-method' });
    await call('visits.create', { visit: 'v-1', first });
    await expect(call('visits.create', { visit: 'v-1', first })).rejects.toMatchObject({ code: 'visit-exists' });
  });
  it('[HOST-3] keeps the tree of a complaint beside the visit, under the hash of its content', async () => {
    await call('visits.create', { visit: 'v-1', first });
    const { trees } = (await call('trees.list', {})) as { trees: { id: string; hash: string }[] };
    expect(trees.length).toBeGreaterThanOrEqual(5);
    const { id, hash } = trees[0]!;
    await call('visits.append', {
      visit: 'v-1',
      events: [{ ...first, id: 'e3', kind: 'complaint.opened', complaint: 'c', tree: id, treeHash: hash, words: '' }],
    });
    expect(readFileSync(join(home, 'visits', 'v-1', 'trees', hash, 'tree.yaml'), 'utf8')).toContain(`id: ${id}`);
    expect(await call('trees.snapshot', { visit: 'v-1', hash })).toMatchObject({ id, hash });
    await expect(
      call('visits.append', {
        visit: 'v-1',
        events: [
          {
            ...first,
            id: 'e4',
            kind: 'complaint.opened',
            complaint: 'd',
            tree: id,
            treeHash: 'f'.repeat(64),
            words: '',
          },
        ],
      }),
    ).rejects.toMatchObject({ code: 'no-such-tree' });
  });
  it('[HOST-4] stores photos under the hash of their content and refuses what is none', async () => {
    await call('visits.create', { visit: 'v-1', first });
    const png = Buffer.from('89504e470d0a1a0a00', 'hex').toString('base64');
    const { photo } = (await call('photos.write', { visit: 'v-1', type: 'image/png', data: png })) as { photo: string };
    expect(await call('photos.read', { visit: 'v-1', photo })).toEqual({ type: 'image/png', data: png });
    await expect(
      call('photos.write', { visit: 'v-1', type: 'image/png', data: Buffer.from('<svg/>').toString('base64') }),
    ).rejects.toMatchObject({ code: 'not-a-photo' });
  });
});

describe('damage on disk', () => {
  const logOf = (): string =>
    join(home, 'visits', 'v-1', readdirSync(join(home, 'visits', 'v-1')).find((name) => name.endsWith('.jsonl')) ?? '');
  beforeEach(() => host.call('visits.create', { visit: 'v-1', first }));
  it('[HOST-5] a torn last line costs that line only, is named, and the next append starts a fresh line', async () => {
    appendFileSync(logOf(), '{"id":"torn"');
    expect(await direct('visits.read', { visit: 'v-1' })).toMatchObject({
      events: [first],
      notices: [{ code: 'visit-log-torn' }],
    });
    await direct('visits.append', { visit: 'v-1', events: [person] });
    expect(await direct('visits.read', { visit: 'v-1' })).toMatchObject({ events: [first, person], notices: [] });
    expect(readdirSync(join(home, 'visits', 'v-1')).some((name) => name.endsWith('.torn'))).toBe(true);
  });
  it('[HOST-5] a last line that is whole but for its end was shown, so it stays', async () => {
    appendFileSync(logOf(), JSON.stringify(person));
    await direct('visits.append', { visit: 'v-1', events: [{ ...person, id: 'e9' }] });
    expect(await direct('visits.read', { visit: 'v-1' })).toMatchObject({
      events: [first, person, { id: 'e9' }],
      notices: [],
    });
  });
  it('[HOST-6] a log of a newer version is read only', async () => {
    appendFileSync(logOf(), `${JSON.stringify({ ...person, v: 99 })}\n`);
    expect(await direct('visits.read', { visit: 'v-1' })).toMatchObject({
      readOnly: true,
      notices: [{ code: 'newer-version' }],
    });
    await expect(direct('visits.append', { visit: 'v-1', events: [person] })).rejects.toMatchObject({
      code: 'newer-version',
    });
  });
  it('[HOST-7] broken settings are kept aside and said so', async () => {
    writeFileSync(join(home, 'settings.json'), '{"light": "purple"');
    expect(await direct('settings.read', {})).toMatchObject({
      settings: { light: 'system' },
      notices: [{ code: 'settings-broken' }],
    });
    expect(readdirSync(home)).toContain('settings.json.broken');
  });
  it('[HOST-8] two writers’ files are read as one', async () => {
    appendFileSync(join(home, 'visits', 'v-1', 'events-00000000ffff.jsonl'), `${JSON.stringify(person)}\n`);
    expect(((await direct('visits.read', { visit: 'v-1' })) as { events: unknown[] }).events).toHaveLength(2);
  });
});

describe('the loopback server refuses', () => {
  const post = (headers: Record<string, string>, path = '/api/app.info', body = '{}') =>
    new Promise<number>((resolve, reject) => {
      const { port } = new URL(server.origin);
      const sent = request(
        { host: '127.0.0.1', port, path, method: 'POST', headers: { 'Content-Type': 'application/json', ...headers } },
        (response) => {
          response.resume();
          resolve(response.statusCode ?? 0);
        },
      );
      sent.once('error', reject);
      sent.end(body);
    });
  it('[HOST-9] another host, another origin, none, no cookie, a used token', async () => {
    const { origin } = server;
    expect(await post({ Cookie: cookie, Origin: origin })).toBe(200);
    expect(await post({ Cookie: cookie, Origin: origin, Host: 'droplight.example' })).toBe(403);
    expect(await post({ Cookie: cookie, Origin: 'https://elsewhere.example' })).toBe(403);
    expect(await post({ Cookie: cookie })).toBe(403);
    expect(await post({ Origin: origin })).toBe(403);
    expect((await fetch(server.address)).status).toBe(403);
  });
  it('[HOST-10] a path out of its folders, and anything that is not JSON', async () => {
    expect(
      (await fetch(`${server.origin}/pictures/..%2f..%2fpackage.json`, { headers: { Cookie: cookie } })).status,
    ).toBe(404);
    expect((await fetch(`${server.origin}/..%2f..%2fetc%2fpasswd`, { headers: { Cookie: cookie } })).status).toBe(404);
    expect(await post({ Cookie: cookie, Origin: server.origin }, '/api/app.info', '{')).toBe(400);
    const picture = await fetch(`${server.origin}/pictures/heat-by-hand.svg`, { headers: { Cookie: cookie } });
    expect([picture.status, picture.headers.get('content-security-policy')]).toEqual([
      200,
      expect.stringContaining("default-src 'none'"),
    ]);
  });
});

it('[HOST-11] the preload’s list of calls is the contract’s', () => {
  expect([...HOST_METHODS].sort()).toEqual(Object.keys(hostApi).sort());
});
