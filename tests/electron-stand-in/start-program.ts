import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import type { BrowserWindowStandIn } from './browser-window.ts';
import { app, dialog, forgetProgram } from './program.ts';

const MAIN = new URL('../../electron/main/main.ts', import.meta.url).pathname;

/** A program that runs over a data folder of its own. */
export interface Running {
  /** DROPLIGHT_HOME of this program. */
  readonly home: string;
  readonly window: BrowserWindowStandIn;
  readonly page: Page;
}

export interface StartOptions {
  /** The entry module; the program's own unless a test brings a faulty one. */
  readonly main?: string;
  /** Milliseconds that the evaluation of the entry module may take. */
  readonly patienceMs?: number;
  /** A data folder to use; a new one in the system's temporary folder otherwise. */
  readonly home?: string;
}

let starts = 0;
let ownHome: string | null = null;
let homeBefore: string | undefined;

/**
 * Evaluates the entry module, then lets the program become ready, as Electron does it.
 *
 * @returns the data folder.
 * @throws when the module has not been evaluated in time: it waits for what comes only afterwards.
 */
export async function evaluateMain(options: StartOptions = {}): Promise<string> {
  const { main = MAIN, patienceMs = 30_000 } = options;
  const home = options.home ?? mkdtempSync(join(tmpdir(), 'droplight-'));
  if (options.home === undefined) ownHome = home;
  homeBefore = process.env['DROPLIGHT_HOME'];
  process.env['DROPLIGHT_HOME'] = home;
  starts++;
  let waiting: NodeJS.Timeout | undefined;
  await Promise.race([
    // A fresh copy of the module for each start: its body is what is tested.
    import(/* @vite-ignore */ `${main}?start=${starts}`),
    new Promise((_, reject) => {
      waiting = setTimeout(() => {
        reject(
          new Error(
            `The entry module was not evaluated within ${patienceMs} ms. Electron becomes ready only after that: a module that waits for app.whenReady() at its top level waits for ever. Use app.whenReady().then(…).`,
          ),
        );
      }, patienceMs);
    }),
  ]);
  clearTimeout(waiting);
  app.becomeReady();
  return home;
}

/**
 * Starts the program and waits for its window.
 *
 * @throws what the program told the person, when it ended instead.
 */
export async function startProgram(options: StartOptions = {}): Promise<Running> {
  const opened = new Promise<BrowserWindowStandIn>((resolve, reject) => {
    app.once('browser-window-created', (_event: unknown, window: BrowserWindowStandIn) => resolve(window));
    app.once('quit', () =>
      reject(new Error(dialog.shown.map(({ title, content }) => `${title}: ${content}`).join('\n') || 'It ended.')),
    );
  });
  // `await opened` below throws what went wrong; without a listener until then Node would end the run over it.
  opened.catch(() => undefined);
  const home = await evaluateMain(options);
  const window = await opened;
  const page = await window.webContents.page;
  await page.getByRole('heading', { level: 1 }).waitFor();
  return { home, window, page };
}

/** Ends the program and takes its data folder away. The browser stays for the next one. */
export async function stopProgram(): Promise<void> {
  await forgetProgram();
  if (homeBefore === undefined) delete process.env['DROPLIGHT_HOME'];
  else process.env['DROPLIGHT_HOME'] = homeBefore;
  if (ownHome !== null) rmSync(ownHome, { recursive: true, force: true });
  ownHome = null;
}
