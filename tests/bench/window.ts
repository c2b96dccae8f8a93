import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { chromium } from '@playwright/test';

const BUILD = new URL('../../build/', import.meta.url).pathname;

/** Whether there is a built window to measure. */
export function isBuilt(): boolean {
  return existsSync(join(BUILD, 'server', 'main.js')) && existsSync(join(BUILD, 'renderer', 'assets'));
}

/** Compressed size of the window's scripts and styles, kB: of all pages, and of what the first screen waits for. */
export function windowSize(): { readonly all: number; readonly first: number } {
  const assets = join(BUILD, 'renderer', 'assets');
  const sizeOf = (name: string): number => gzipSync(readFileSync(join(assets, name))).length / 1000;
  const page = readFileSync(join(BUILD, 'renderer', 'index.html'), 'utf8');
  const names = readdirSync(assets).filter((name) => /\.(js|css)$/.test(name));
  const sum = (of: readonly string[]): number => of.reduce((total, name) => total + sizeOf(name), 0);
  return { all: sum(names), first: sum(names.filter((name) => page.includes(name))) };
}

/**
 * Seconds from asking for the address until the yard can be worked in, over a running machine side and in a browser
 * window that has nothing of it yet: the first one after the start, then the median of `times`.
 */
export async function firstScreen(times = 5): Promise<{ readonly cold: number; readonly warm: number }> {
  const home = mkdtempSync(join(tmpdir(), 'droplight-'));
  const server = spawn(process.execPath, [join(BUILD, 'server', 'main.js')], {
    env: { ...process.env, DROPLIGHT_HOME: home },
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const address = (): Promise<string> =>
    new Promise((resolve, reject) => {
      server.stdout.once('data', (data: Buffer) => resolve(data.toString().trim()));
      server.once('error', reject);
    });
  const executablePath = process.env['DROPLIGHT_CHROMIUM'] ?? '/usr/bin/chromium';
  const browser = await chromium.launch({
    ...(existsSync(executablePath) ? { executablePath } : {}),
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
  });
  try {
    const open = async (at: string): Promise<number> => {
      const context = await browser.newContext();
      const page = await context.newPage();
      const from = performance.now();
      await page.goto(at);
      await page.getByRole('button', { name: /Begin a visit/ }).waitFor();
      const taken = (performance.now() - from) / 1000;
      await context.close();
      return taken;
    };
    const cold = await open(await address());
    const warm: number[] = [];
    for (let i = 0; i < times; i++) {
      const next = address();
      server.stdin.write('\n');
      warm.push(await open(await next));
    }
    return { cold, warm: warm.sort((a, b) => a - b)[Math.floor(times / 2)]! };
  } finally {
    await browser.close();
    server.kill();
    rmSync(home, { recursive: true, force: true });
  }
}
