import { mkdtempSync } from 'node:fs';
import { readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { vi } from 'vitest';
import packageFile from '../../package.json' with { type: 'json' };
import { SHIPPED_TREES } from '../../electron/cli/load-trees.ts';
import { createHost, type Host, type HostOptions } from '../../electron/host/host.ts';
import { programFolders } from '../../electron/host/program-folders.ts';
import { startServer, type LoopbackServer } from '../../electron/server/server.ts';
import { ipcHost, type Bridge } from '../../renderer/app/host-ipc.ts';
import { HostError, isHostMethod, type HostFault } from '../../shared/host/host-api.ts';
import { closeBrowser } from '../electron-stand-in/chromium.ts';
import { startProgram, stopProgram, type Running } from '../electron-stand-in/start-program.ts';
import type { Reached } from './host-suite.ts';

/** A machine side in this process, with what it reported. */
export interface DirectlyReached extends Reached {
  readonly host: Host;
}

/** The machine side itself, without a carrier. */
export async function reachDirectly(options: Partial<HostOptions> = {}): Promise<DirectlyReached> {
  const home = mkdtempSync(join(tmpdir(), 'droplight-'));
  const lines: string[] = [];
  const host = await createHost({
    dataFolder: home,
    treesFolder: SHIPPED_TREES,
    preparedCards: programFolders(import.meta.url).cards,
    shell: 'browser',
    version: packageFile.version,
    report: (line) => lines.push(line),
    ...options,
  });
  return {
    home,
    host,
    call: (method, request) => host.answer(method, request),
    reported: () => lines.join('\n'),
    close: () => rm(home, { recursive: true, force: true }),
  };
}

/** A machine side behind the loopback server, with what a browser would hold. */
export interface ServerReached extends DirectlyReached {
  readonly server: LoopbackServer;
  readonly cookie: string;
}

/** The machine side over loopback HTTP. */
export async function reachOverHttp(options: Partial<HostOptions> = {}): Promise<ServerReached> {
  const direct = await reachDirectly(options);
  const server = await startServer(direct.host, join(direct.home, 'no-window'));
  const opened = await fetch(server.address, { redirect: 'manual' });
  const cookie = opened.headers.get('set-cookie')?.split(';')[0] ?? '';
  return {
    ...direct,
    server,
    cookie,
    call: async (method, request) => {
      const response = await fetch(`${server.origin}/api/${method}`, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json', Cookie: cookie, Origin: server.origin },
        body: JSON.stringify(request),
      });
      const answer: unknown = await response.json();
      // What is not an answer is a fault by the contract; a wrong one fails the test that looks at it.
      if (!response.ok) throw new HostError(answer as HostFault);
      return answer;
    },
    close: async () => {
      await server.close();
      await direct.close();
    },
  };
}

let overIpc: Running | null = null;

/**
 * The machine side over IPC: the real main process and preload on the stand-in of the electron module, called from the
 * page in Chromium through what the preload put on the window, and read by the window's own client. The program is started
 * once; its data folder is emptied after each test.
 */
export async function reachOverIpc(): Promise<Reached> {
  const lines: string[] = [];
  const standardError = vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
    lines.push(String(text));
    return true;
  });
  overIpc ??= await startProgram();
  const { home, page } = overIpc;
  const call = (method: string, request: unknown): Promise<unknown> =>
    page.evaluate(
      ([name, body]) => {
        const bridge: unknown = Reflect.get(window, 'droplight');
        const ask: unknown = Reflect.get(Object(bridge) as object, name);
        if (typeof ask !== 'function') throw new Error(`The window has no ${name}.`);
        return (ask as (request: unknown) => Promise<unknown>)(body);
      },
      [method, request] as const,
    );
  // Every name is a call into the page; that those are the calls of the contract is tested where the window is.
  const bridge = new Proxy({} as Bridge, {
    get: (_, method) => (request: unknown) => call(String(method), request),
  });
  const client = ipcHost(bridge);
  return {
    home,
    call: (method, request) => {
      if (!isHostMethod(method)) throw new Error(`"${method}" has no place on the bridge.`);
      // Wrong requests are sent on purpose.
      return client.call(method, request as never);
    },
    reported: () => lines.join('\n'),
    close: async () => {
      standardError.mockRestore();
      for (const name of await readdir(home)) await rm(join(home, name), { recursive: true });
    },
  };
}

/** Ends the program behind `reachOverIpc`. */
export async function endIpc(): Promise<void> {
  overIpc = null;
  await stopProgram();
  await closeBrowser();
}
