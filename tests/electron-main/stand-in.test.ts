/** The stand-in itself: what the program refuses goes through where nobody refuses it, else no test here could fail. */
import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest';
import { inChromium, inProgram, ownAddress } from '../electron-stand-in/addresses.ts';
import { BrowserWindowStandIn } from '../electron-stand-in/browser-window.ts';
import { closeBrowser } from '../electron-stand-in/chromium.ts';
import { protocol, session } from '../electron-stand-in/electron.ts';
import { CARRIER, preloadScript } from '../electron-stand-in/preload-world.ts';
import { app, defaultSession, ipcMain } from '../electron-stand-in/program.ts';
import { evaluateMain, startProgram, stopProgram, type Running } from '../electron-stand-in/start-program.ts';

const main = (name: string): string => new URL(`../electron-stand-in/mains/${name}`, import.meta.url).pathname;
const ELSEWHERE = 'https://elsewhere.example/';

afterEach(stopProgram);
afterAll(closeBrowser);

describe('an entry module without guards', () => {
  let running: Running;
  beforeEach(async () => {
    running = await startProgram({ main: main('unguarded.ts') });
    await running.page.route(`${ELSEWHERE}**`, (route) =>
      route.fulfill({ contentType: 'text/html', body: '<!doctype html><h1>Elsewhere</h1>' }),
    );
  });

  it('is taken elsewhere by its page', async () => {
    await running.page.evaluate((to) => {
      location.href = to;
    }, ELSEWHERE);
    await running.page.getByRole('heading', { name: 'Elsewhere' }).waitFor();
    expect(running.window.webContents.getURL()).toBe(ELSEWHERE);
  });

  it('lets its page open a window', async () => {
    await running.page.evaluate(() => void window.open('about:blank'));
    await expect.poll(() => running.window.webContents.asked).toEqual([{ url: 'about:blank', action: 'allow' }]);
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(running.page.context().pages()).toHaveLength(2);
  });

  it('answers a frame within the page, with the frame’s own address', async () => {
    await running.page.evaluate(() => document.body.append(document.createElement('iframe')));
    const asked = running.page.frames()[1]?.evaluate((carrier) => {
      const send = Reflect.get(window, carrier) as (channel: string, args: unknown[]) => Promise<unknown>;
      return send('anybody', []);
    }, CARRIER);
    expect(await asked).toBe('about:blank');
  });

  it('what leaves the machine is stopped and kept', async () => {
    // The page's own refusal does not matter here: what counts is what the session saw and stopped.
    await running.page.evaluate(() => fetch('https://outside.example/x').catch(() => null));
    expect(defaultSession.outside).toEqual(['https://outside.example/x']);
  });
});

describe('readiness', () => {
  it('a module that waits for it at its top level is found out', async () => {
    await expect(evaluateMain({ main: main('waits-for-ready.ts'), patienceMs: 1_500 })).rejects.toThrow(
      'waits for app.whenReady() at its top level waits for ever',
    );
    expect(app.isReady()).toBe(false);
  });

  it('what comes before it, and what comes after it, is held apart', () => {
    expect(() => new BrowserWindowStandIn()).toThrow('before app is ready');
    expect(() => session.defaultSession).toThrow('when app is ready');
    app.becomeReady();
    expect(() => protocol.registerSchemesAsPrivileged([])).toThrow('before app is ready');
    expect(() => app.enableSandbox()).toThrow('before app is ready');
  });
});

describe('the small parts', () => {
  const schemes = new Map([
    ['droplight', { secure: true, supportFetchAPI: false }],
    ['plain', { secure: false, supportFetchAPI: false }],
  ]);
  it.each([
    ['droplight://app/', 'https://app.droplight.invalid/'],
    ['droplight://app/a%2fb?c#d', 'https://app.droplight.invalid/a%2fb?c#d'],
    ['droplight://app.elsewhere.example/x', 'https://app.elsewhere.example.droplight.invalid/x'],
    ['plain://app/', 'http://app.plain.invalid/'],
    ['https://elsewhere.example/', 'https://elsewhere.example/'],
    ['about:blank', 'about:blank'],
  ])('%s is %s in Chromium, and back', (program, chromium) => {
    expect(inChromium(program, schemes)).toBe(chromium);
    expect(inProgram(chromium, schemes)).toBe(program);
  });

  it('an address of Chromium is the program’s only by the exact host and the declared security', () => {
    for (const address of [
      'http://app.droplight.invalid/',
      'https://app.plain.invalid/',
      'https://app.droplight.invalid.elsewhere.example/',
      'https://app.other.invalid/',
    ])
      expect(ownAddress(address, schemes)).toBeNull();
  });

  it('a channel is answered once, and an error crosses as Electron words it', async () => {
    ipcMain.handle('a', () => Promise.reject(new Error('inside')));
    expect(() => ipcMain.handle('a', () => null)).toThrow("second handler for 'a'");
    await expect(ipcMain.deliver({ sender: null, senderFrame: null }, 'a', [])).rejects.toThrow(
      "Error invoking remote method 'a': Error: inside",
    );
  });

  it('a preload that asks for more than the sandbox has is stopped', async () => {
    app.becomeReady();
    const window = new BrowserWindowStandIn();
    const page = await window.webContents.page;
    const faults: string[] = [];
    page.on('pageerror', ({ message }) => faults.push(message));
    await page.addInitScript(preloadScript("require('node:fs')", { contextIsolation: true }));
    await page.goto('about:blank');
    await expect.poll(() => faults).toEqual(['module not found: node:fs']);
  });
});
