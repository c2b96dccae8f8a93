import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { closeBrowser } from '../electron-stand-in/chromium.ts';
import { app, dialog, ipcMain } from '../electron-stand-in/program.ts';
import { evaluateMain, startProgram, stopProgram } from '../electron-stand-in/start-program.ts';

afterEach(stopProgram);
afterAll(closeBrowser);

describe('the life of the desktop program', () => {
  it('a second copy brings the window of the first to the front', async () => {
    const { window } = await startProgram();
    app.emit('second-instance', {}, ['droplight'], '.', null);
    expect(window.calls).toEqual({ focus: 1, restore: 0 });
    window.minimize();
    app.emit('second-instance', {}, ['droplight'], '.', null);
    expect(window.calls).toEqual({ focus: 2, restore: 1 });
    expect(window.isMinimized()).toBe(false);
    expect(app.windows.size).toBe(1);
  });

  it('a copy that finds another one ends at once: no window, no answers', async () => {
    app.otherCopyRuns = true;
    await evaluateMain();
    expect(app.exitCode).toBe(0);
    expect(app.windows.size).toBe(0);
    expect(ipcMain.channels).toEqual([]);
    expect(dialog.shown).toEqual([]);
  });

  it('ends when its window is closed', async () => {
    const { window } = await startProgram();
    const said: string[] = [];
    for (const name of ['before-quit', 'will-quit']) app.on(name, () => said.push(name));
    await window.close();
    expect(app.exitCode).toBe(0);
    expect(said).toEqual(['before-quit', 'will-quit']);
  });

  it('a data folder that cannot be used is said to the person, and the program ends with 1', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'droplight-'));
    const home = join(folder, 'a-file');
    writeFileSync(home, '');
    await expect(startProgram({ home })).rejects.toThrow('Droplight could not start');
    expect(app.exitCode).toBe(1);
    expect(app.windows.size).toBe(0);
    expect(dialog.shown).toHaveLength(1);
    expect(dialog.shown[0]?.content).toContain(home);
    rmSync(folder, { recursive: true });
  });
});
