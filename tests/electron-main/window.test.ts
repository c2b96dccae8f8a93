import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CONTENT_SECURITY_POLICY } from '../../shared/host/csp.ts';
import { HOST_METHODS } from '../../shared/host/host-methods.ts';
import { closeBrowser } from '../electron-stand-in/chromium.ts';
import { app, defaultSession, ipcMain } from '../electron-stand-in/program.ts';
import { startProgram, stopProgram, type Running } from '../electron-stand-in/start-program.ts';

let running: Running;
const complaints: string[] = [];
beforeAll(async () => {
  app.once('browser-window-created', (_event: unknown, window: Running['window']) => {
    void window.webContents.page.then((page) => {
      page.on('console', (message) => {
        if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
      });
      page.on('pageerror', (error) => complaints.push(error.message));
    });
  });
  running = await startProgram();
});
afterAll(async () => {
  await stopProgram();
  await closeBrowser();
});

describe('the desktop program on the stand-in of electron', () => {
  it('opens one window: isolated, sandboxed, without Node and without webview', () => {
    expect(app.sandboxEnabled).toBe(true);
    expect(app.windows.size).toBe(1);
    expect(running.window.preferences).toMatchObject({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      webSecurity: true,
      webviewTag: false,
    });
    expect(running.window.preferences).not.toHaveProperty('nodeIntegrationInSubFrames');
    expect(running.window.preferences).not.toHaveProperty('experimentalFeatures');
  });

  it('shows the yard, from its own scheme, in a secure page without Node', async () => {
    expect(running.window.webContents.getURL()).toBe('droplight://app/');
    await running.page.getByRole('heading', { level: 1, name: 'The yard is empty' }).waitFor();
    await running.page.getByRole('button', { name: /Begin a visit/ }).waitFor();
    expect(
      await running.page.evaluate(() => [window.isSecureContext, 'require' in window, 'process' in window]),
    ).toEqual([true, false, false]);
  });

  it('answers exactly the calls of the contract, and shows the page exactly those', async () => {
    expect(ipcMain.channels).toEqual([...HOST_METHODS].sort());
    expect((await running.page.evaluate(() => Object.keys(window.droplight ?? {}))).sort()).toEqual(
      [...HOST_METHODS].sort(),
    );
    expect(
      await running.page.evaluate(() => [
        Object.isFrozen(window.droplight),
        Object.getOwnPropertyDescriptor(window, 'droplight')?.writable,
        Object.getOwnPropertyDescriptor(window, 'droplight')?.configurable,
      ]),
    ).toEqual([true, false, false]);
  });

  it('walks from the yard to the second safety question, and every act is on disk', async () => {
    const { page, home } = running;
    await page.getByRole('button', { name: /Begin a visit/ }).click();
    await page.getByRole('textbox', { name: 'What is it doing?' }).fill('humming under my feet above 50');
    await page.getByLabel('Name or number').fill('Invented coach 12');
    await page.getByRole('radio', { name: 'Mechanic' }).check();
    await page.getByRole('button', { name: /^1 Growl through the floor/ }).click();
    await page.getByText(/question 1 of/).waitFor();
    await page.getByRole('button', { name: /No, I looked/ }).click();
    await page.getByText(/question 2 of/).waitFor();

    const [visit] = readdirSync(join(home, 'visits'));
    const folder = join(home, 'visits', visit ?? '');
    const log = readdirSync(folder).find((name) => name.endsWith('.jsonl')) ?? '';
    const events = readFileSync(join(folder, log), 'utf8')
      .trimEnd()
      .split('\n')
      .map((line): unknown => JSON.parse(line));
    expect(events[0]).toMatchObject({ kind: 'visit.opened', coach: 'Invented coach 12' });
    expect(events).toContainEqual(
      expect.objectContaining({ kind: 'complaint.opened', tree: 'growl-through-floor-at-speed' }),
    );
    expect(events.at(-1)).toMatchObject({ kind: 'stop.answered', answer: 'no' });
  });

  it('sends the policy with every answer of the scheme, asks nobody else, and the page reports no fault', () => {
    expect(defaultSession.answered.length).toBeGreaterThan(3);
    expect(defaultSession.answered.some(({ address }) => address.endsWith('.js'))).toBe(true);
    for (const { headers } of defaultSession.answered)
      expect(headers).toMatchObject({
        'content-security-policy': CONTENT_SECURITY_POLICY,
        'x-content-type-options': 'nosniff',
      });
    expect(defaultSession.answered.filter(({ status }) => status !== 200)).toEqual([]);
    expect(defaultSession.outside).toEqual([]);
    expect(complaints).toEqual([]);
  });
});
