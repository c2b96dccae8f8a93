import { appendFileSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { connect } from 'node:net';
import { join } from 'node:path';
import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest';
import { hostApi } from '../../shared/host/host-api.ts';
import { HOST_METHODS } from '../../shared/host/host-methods.ts';
import {
  endIpc,
  reachDirectly,
  reachOverHttp,
  reachOverIpc,
  type DirectlyReached,
  type ServerReached,
} from './carriers.ts';
import { describeCards, describeCoaches } from './coach-suite.ts';
import { describeContract, first, person, type Call } from './host-suite.ts';
import { describeLearners } from './learner-suite.ts';
import { describePacks } from './pack-suite.ts';

describeContract('directly', () => reachDirectly());
describeContract('over HTTP', () => reachOverHttp());
describeContract('over IPC', reachOverIpc);
describePacks('directly', () => reachDirectly());
describePacks('over HTTP', () => reachOverHttp());
describePacks('over IPC', reachOverIpc);
describeLearners('directly', reachDirectly);
describeLearners('over HTTP', reachOverHttp);
describeLearners('over IPC', reachOverIpc);
describeCoaches('directly', reachDirectly);
describeCoaches('over HTTP', reachOverHttp);
describeCards(reachDirectly);
afterAll(endIpc);

describe('a call that the contract does not have', () => {
  it('[HOST-2] is refused directly and over HTTP; over IPC the window has no such call', async () => {
    for (const reach of [reachDirectly, reachOverHttp]) {
      const { call, close } = await reach();
      for (const method of ['no.such', 'constructor', '__proto__', 'visits.create.x'])
        await expect(call(method, {})).rejects.toMatchObject({ code: 'no-such-method' });
      await close();
    }
  });
});

describe('damage on disk', () => {
  let reached: DirectlyReached;
  let home: string;
  let direct: Call;
  beforeEach(async () => {
    reached = await reachDirectly();
    ({ home, call: direct } = reached);
    await direct('visits.create', { visit: 'v-1', first });
  });
  afterEach(() => reached.close());
  const logOf = (): string =>
    join(home, 'visits', 'v-1', readdirSync(join(home, 'visits', 'v-1')).find((name) => name.endsWith('.jsonl')) ?? '');
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
    expect(readFileSync(join(home, 'settings.json.broken'), 'utf8')).toBe('{"light": "purple"');
  });
  it('[HOST-7] a second and a third broken file do not take the place of the first, even when asked for at once', async () => {
    for (const [broken, name] of [
      ['first', 'settings.json.broken'],
      ['second', 'settings.json.broken-2'],
      ['third', 'settings.json.broken-3'],
    ] as const) {
      writeFileSync(join(home, 'settings.json'), broken);
      const answers = await Promise.all([direct('settings.read', {}), direct('settings.read', {})]);
      expect(answers).toMatchObject([{ notices: [{ code: 'settings-broken' }] }, { notices: [] }]);
      expect(JSON.stringify(answers[0])).toContain(`${name}.`);
      expect(readFileSync(join(home, name), 'utf8')).toBe(broken);
    }
    expect(readdirSync(home).filter((each) => each.includes('broken'))).toHaveLength(3);
    expect(existsSync(join(home, 'settings.json'))).toBe(false);
  });
  it('[HOST-8] two writers’ files are read as one', async () => {
    appendFileSync(join(home, 'visits', 'v-1', 'events-00000000ffff.jsonl'), `${JSON.stringify(person)}\n`);
    expect(((await direct('visits.read', { visit: 'v-1' })) as { events: unknown[] }).events).toHaveLength(2);
  });
});

describe('the loopback server refuses', () => {
  let reached: ServerReached;
  let server: ServerReached['server'];
  let cookie: string;
  beforeEach(async () => {
    reached = await reachOverHttp();
    ({ server, cookie } = reached);
  });
  afterEach(() => reached.close());
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
  /** The whole answer to a photo of so many MB, read by a client that first sends all of it and then listens. */
  const sendThenListen = (mb: number, headers: readonly string[]): Promise<string> => {
    const { port } = new URL(server.origin);
    const body = Buffer.alloc(mb * 1024 * 1024, 'x');
    return new Promise((resolve, reject) => {
      const socket = connect(Number(port), '127.0.0.1');
      socket.once('error', reject);
      socket.pause();
      socket.write(
        [
          'POST /api/photos.write HTTP/1.1',
          `Host: 127.0.0.1:${port}`,
          ...headers,
          'Content-Type: application/json',
          `Content-Length: ${body.length}`,
          'Connection: close',
          '\r\n',
        ].join('\r\n'),
      );
      socket.write(body, () => {
        const parts: Buffer[] = [];
        socket.on('data', (part: Buffer) => parts.push(part));
        socket.once('end', () => resolve(Buffer.concat(parts).toString('utf8')));
        socket.resume();
      });
    });
  };
  it.each([19, 60])(
    '[HOST-10] a body of %i MB, and the refusal can be read by who sends all of it first',
    async (mb) => {
      const answer = await sendThenListen(mb, [`Origin: ${server.origin}`, `Cookie: ${cookie}`]);
      expect(answer).toMatch(/^HTTP\/1\.1 413 /);
      expect(answer).toContain('"code":"too-large"');
      expect(answer).toContain('at once (18 MB). Nothing was written.');
      expect(await post({ Cookie: cookie, Origin: server.origin })).toBe(200);
    },
  );
  it.each([
    ['without a cookie', [], 'no-cookie'],
    ['from another page', ['Origin: https://elsewhere.example'], 'wrong-origin'],
  ])(
    '[HOST-10] a large body %s before any of it is looked at, and that refusal can be read too',
    async (_, headers, code) => {
      const answer = await sendThenListen(60, headers);
      expect(answer).toMatch(/^HTTP\/1\.1 403 /);
      expect(answer).toContain(`"code":"${code}"`);
      expect(await post({ Cookie: cookie, Origin: server.origin })).toBe(200);
    },
  );
});

it('[HOST-11] the preload’s list of calls is the contract’s', () => {
  expect([...HOST_METHODS].sort()).toEqual(Object.keys(hostApi).sort());
});
