import { randomBytes, timingSafeEqual } from 'node:crypto';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { HostError } from '../../shared/host/host-api.ts';
import { SECURITY_HEADERS } from '../../shared/host/csp.ts';
import { faultOf, reportOf } from '../host/fault.ts';
import type { Host } from '../host/host.ts';
import { staticFile } from '../host/static-files.ts';

export interface LoopbackServer {
  /** Address to open once; the token in it is dead after the first use. */
  readonly address: string;
  readonly origin: string;
  /** A fresh address, for opening the window again. */
  newAddress(): string;
  close(): Promise<void>;
}

const MOST_BODY = 18 * 1024 * 1024;
const COOKIE = 'droplight';
/** Refusals of the host whose HTTP status is another than 400. */
const STATUS: Readonly<Record<string, number>> = { 'no-such-method': 404, 'machine-side': 500 };

/**
 * The machine side over loopback HTTP, for an ordinary browser: 127.0.0.1 alone, a random port, a one-time token in the
 * opened address exchanged for a cookie that scripts cannot read and other sites cannot send, Host and Origin checked on
 * every request, the same policy header as the desktop window.
 */
export async function startServer(
  host: Host,
  windowFolder: string,
  report: (line: string) => void = () => undefined,
): Promise<LoopbackServer> {
  const session = randomBytes(32).toString('hex');
  const tokens = new Set<string>();
  let own = '';

  const server = createServer((request, response) => {
    handle(request, response).catch((problem: unknown) => {
      report(`A request failed: ${reportOf(problem)}`);
      if (!response.headersSent) sendJson(response, 500, faultOf(problem));
      else response.end();
    });
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, '127.0.0.1', resolve);
  });
  const bound = server.address();
  if (bound === null || typeof bound === 'string') throw new Error('The server did not get a port.');
  own = `127.0.0.1:${bound.port}`;
  const newAddress = (): string => {
    const token = randomBytes(32).toString('hex');
    tokens.add(token);
    return `http://${own}/?token=${token}`;
  };
  return {
    address: newAddress(),
    origin: `http://${own}`,
    newAddress,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };

  async function handle(request: IncomingMessage, response: ServerResponse): Promise<void> {
    for (const [name, value] of Object.entries(SECURITY_HEADERS)) response.setHeader(name, value);
    if (request.headers.host !== own) {
      refuse(response, 403, 'wrong-host', 'This address is only for the window on this machine.');
      return;
    }
    const { origin } = request.headers;
    if (origin !== undefined && origin !== `http://${own}`) {
      refuse(response, 403, 'wrong-origin', 'Another page asked. Nothing was done.');
      return;
    }
    const url = new URL(request.url ?? '/', `http://${own}`);
    const token = url.searchParams.get('token');
    if (request.method === 'GET' && url.pathname === '/' && token !== null) {
      if (!tokens.delete(token)) {
        refuse(
          response,
          403,
          'token-used',
          'This address has been opened already. Start Droplight again for a fresh one.',
        );
        return;
      }
      response.setHeader('Set-Cookie', `${COOKIE}=${session}; HttpOnly; SameSite=Strict; Path=/`);
      response.setHeader('Cache-Control', 'no-store');
      response.writeHead(303, { Location: '/' }).end();
      return;
    }
    if (!hasCookie(request)) {
      refuse(response, 403, 'no-cookie', 'Open the address that Droplight printed when it started.');
      return;
    }
    if (url.pathname.startsWith('/api/')) return api(request, response, url.pathname.slice('/api/'.length));
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      refuse(response, 405, 'wrong-method', 'Only reading is possible here.');
      return;
    }
    const file = await staticFile(url.pathname, { window: windowFolder, pictures: host.picturesFolder });
    if (!file) {
      refuse(response, 404, 'no-such-file', 'There is no such file.');
      return;
    }
    response.writeHead(200, {
      'Content-Type': file.type,
      'Cache-Control': url.pathname.startsWith('/assets/') ? 'private, max-age=31536000, immutable' : 'no-cache',
    });
    response.end(request.method === 'HEAD' ? undefined : file.body);
  }

  async function api(request: IncomingMessage, response: ServerResponse, method: string): Promise<void> {
    response.setHeader('Cache-Control', 'no-store');
    if (request.method !== 'POST' || !(request.headers['content-type'] ?? '').startsWith('application/json')) {
      refuse(response, 405, 'wrong-method', 'Calls are POST with JSON.');
      return;
    }
    // A browser always names the origin of a POST; anything that does not is no window of ours.
    if (request.headers.origin === undefined) {
      refuse(response, 403, 'wrong-origin', 'The call did not say where it came from. Nothing was done.');
      return;
    }
    const body = await bodyOf(request);
    if (body === null) {
      refuse(
        response,
        413,
        'too-large',
        `This is more than the machine side takes at once (${MOST_BODY / 1_048_576} MB). Nothing was written. Send less at a time, or a smaller photo.`,
      );
      return;
    }
    let data: unknown;
    try {
      data = JSON.parse(body);
    } catch (problem) {
      if (problem instanceof SyntaxError) {
        refuse(response, 400, 'bad-request', 'The call was not JSON. Nothing was written.');
        return;
      }
      throw problem;
    }
    try {
      sendJson(response, 200, await host.answer(method, data));
    } catch (problem) {
      if (!(problem instanceof HostError)) throw problem;
      refuse(response, STATUS[problem.code] ?? 400, problem.code, problem.message);
    }
  }

  function hasCookie(request: IncomingMessage): boolean {
    const sent =
      (request.headers.cookie ?? '')
        .split(/;\s*/)
        .find((each) => each.startsWith(`${COOKIE}=`))
        ?.slice(COOKIE.length + 1) ?? '';
    const given = Buffer.from(sent);
    const wanted = Buffer.from(session);
    return given.length === wanted.length && timingSafeEqual(given, wanted);
  }
}

/**
 * Answers with a fault, once everything that belongs to the request has come. Where it is refused before its body is looked
 * at, the body is thrown away unread, for the reason that `bodyOf` gives.
 */
function refuse(response: ServerResponse, status: number, code: string, message: string): void {
  const answer = (): void => sendJson(response, status, { code, message });
  const { req } = response;
  if (req.complete) answer();
  else req.once('end', answer).resume();
}

function sendJson(response: ServerResponse, status: number, body: unknown): void {
  response.writeHead(status, { 'Content-Type': 'application/json; charset=utf-8' });
  response.end(JSON.stringify(body));
}

/**
 * The body as text; null when it is too large. Even then it is read to its end, and thrown away: a connection that is
 * closed while the other side still sends is reset, and the refusal would be lost with it. Node's own time limit for a
 * request ends one that never comes to its end.
 */
async function bodyOf(request: IncomingMessage): Promise<string | null> {
  const parts: Buffer[] = [];
  let size = 0;
  for await (const part of request as AsyncIterable<Buffer>) {
    size += part.length;
    if (size <= MOST_BODY) parts.push(part);
    else parts.length = 0;
  }
  return size > MOST_BODY ? null : Buffer.concat(parts).toString('utf8');
}
