import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { appBrowser, hasDisplay, systemOpener } from '../../electron/start/browsers.mjs';
import { electronBinary } from '../../electron/start/electron-binary.mjs';
import { ensureInstalled } from '../../electron/start/install.mjs';
import { browserCommand, wayToOpen } from '../../electron/start/way-to-open.mjs';

let root: string;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'droplight-start-'));
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

describe('which browser', () => {
  const there =
    (...places: string[]) =>
    (place: unknown): boolean =>
      places.includes(String(place));

  it('the first of the known places that is there', () => {
    expect(appBrowser('linux', {}, there('/usr/bin/chromium', '/usr/bin/google-chrome'))).toBe('/usr/bin/chromium');
    expect(appBrowser('linux', {}, there('/snap/bin/chromium'))).toBe('/snap/bin/chromium');
    const mac = '/Applications/Chromium.app/Contents/MacOS/Chromium';
    expect(appBrowser('darwin', {}, there(mac))).toBe(mac);
  });
  it('none where none is known', () => {
    expect(appBrowser('linux', {}, there())).toBeNull();
    expect(appBrowser('darwin', {}, there('/usr/bin/chromium'))).toBeNull();
    expect(appBrowser('freebsd', {}, there('/usr/bin/chromium'))).toBeNull();
    expect(appBrowser('win32', {}, () => true)).toBeNull();
  });
  it('on Windows, in the folders that the system names', () => {
    const place = join('P', 'Microsoft', 'Edge', 'Application', 'msedge.exe');
    expect(appBrowser('win32', { PROGRAMFILES: 'P' }, there(place))).toBe(place);
  });
  it('each system opens an address in its own way', () => {
    expect(systemOpener('linux')).toEqual(['xdg-open']);
    expect(systemOpener('darwin')).toEqual(['open']);
    expect(systemOpener('win32')).toEqual(['cmd', '/c', 'start', '']);
  });
});

describe('whether and where a window is shown', () => {
  it('Linux needs a display, by either name; an empty one is none', () => {
    expect(hasDisplay('linux', {})).toBe(false);
    expect(hasDisplay('linux', { DISPLAY: '' })).toBe(false);
    expect(hasDisplay('linux', { DISPLAY: ':0' })).toBe(true);
    expect(hasDisplay('linux', { WAYLAND_DISPLAY: 'wayland-0' })).toBe(true);
    expect(hasDisplay('darwin', {})).toBe(true);
    expect(hasDisplay('win32', {})).toBe(true);
  });
  it('the desktop shell where it is and can be shown, else a browser with the reason', () => {
    const electron = '/shell/electron';
    expect(wayToOpen({ wantsBrowser: false, electron, display: true })).toEqual({ electron, message: null });
    expect(wayToOpen({ wantsBrowser: true, electron, display: true })).toEqual({ electron: null, message: null });
    expect(wayToOpen({ wantsBrowser: false, electron, display: false })).toEqual({
      electron: null,
      message: 'There is no display: the same program is served for a browser.',
    });
    expect(wayToOpen({ wantsBrowser: false, electron: null, display: true })).toEqual({
      electron: null,
      message: 'Electron’s binary is not here: the same program opens in a browser.',
    });
  });
  it('the address goes to a window of its own, else to the usual browser, else to the person', () => {
    const address = 'http://127.0.0.1:1/?token=t';
    const opener = ['xdg-open'];
    expect(browserCommand(address, { display: true, browser: '/usr/bin/chromium', opener }).command).toEqual([
      '/usr/bin/chromium',
      `--app=${address}`,
    ]);
    const usual = browserCommand(address, { display: true, browser: null, opener });
    expect(usual.command).toEqual(['xdg-open', address]);
    expect(usual.byHand).toContain(address);
    expect(browserCommand(address, { display: false, browser: '/usr/bin/chromium', opener })).toEqual({
      command: null,
      opened: null,
      byHand: `Open this address on this machine, once: ${address}`,
    });
  });
});

describe('Electron’s binary', () => {
  const folder = (): string => join(root, 'node_modules', 'electron');
  const package_ = (version: string): void => {
    mkdirSync(folder(), { recursive: true });
    writeFileSync(join(folder(), 'package.json'), JSON.stringify({ version }));
  };
  const binary = (): string => {
    mkdirSync(join(folder(), 'dist'), { recursive: true });
    writeFileSync(join(folder(), 'dist', 'electron'), '');
    writeFileSync(join(folder(), 'path.txt'), 'electron\n');
    return join(folder(), 'dist', 'electron');
  };
  const counting = (does: () => void = () => undefined): { fetch: () => void; times: () => number } => {
    let count = 0;
    return {
      fetch: () => {
        count++;
        does();
      },
      times: () => count,
    };
  };

  it('is not looked for without its package', () => {
    const { fetch, times } = counting();
    expect(electronBinary(root, fetch)).toBeNull();
    expect(times()).toBe(0);
    expect(existsSync(join(root, 'node_modules'))).toBe(false);
  });
  it('that is there is used and not fetched', () => {
    package_('1.0.0');
    const path = binary();
    const { fetch, times } = counting();
    expect(electronBinary(root, fetch)).toBe(path);
    expect(times()).toBe(0);
  });
  it('that cannot be had is tried once, not at every start, and again with the next version', () => {
    package_('1.0.0');
    const { fetch, times } = counting();
    for (let start = 0; start < 3; start++) expect(electronBinary(root, fetch)).toBeNull();
    expect(times()).toBe(1);
    package_('1.0.1');
    expect(electronBinary(root, fetch)).toBeNull();
    expect(electronBinary(root, fetch)).toBeNull();
    expect(times()).toBe(2);
  });
  it('that was given up is used when somebody puts it there', () => {
    package_('1.0.0');
    expect(electronBinary(root, () => undefined)).toBeNull();
    expect(electronBinary(root, () => undefined)).toBeNull();
    const path = binary();
    expect(electronBinary(root, () => undefined)).toBe(path);
  });
  it('that is fetched is used at once; one that is named but missing is none', () => {
    package_('1.0.0');
    let path = '';
    expect(
      electronBinary(
        root,
        counting(() => {
          path = binary();
        }).fetch,
      ),
    ).toBe(path);
    rmSync(path);
    expect(electronBinary(root, () => undefined)).toBeNull();
  });
  it('a package without a way to fetch it is given up without a word', () => {
    package_('1.0.0');
    expect(electronBinary(root)).toBeNull();
    expect(readFileSync(join(root, 'node_modules', '.cache', 'droplight', 'no-electron'), 'utf8')).toBe('1.0.0');
  });
});

describe('installing', () => {
  interface Ran {
    readonly commands: string[];
    readonly said: string[];
    readonly ended: number[];
  }
  const install = (code = 0, does: () => void = () => undefined): Ran => {
    const ran: Ran = { commands: [], said: [], ended: [] };
    ensureInstalled(root, {
      npm: (args: string[], where: string) => {
        expect(where).toBe(root);
        ran.commands.push(args[0] ?? '');
        does();
        return code;
      },
      say: (line: string) => ran.said.push(line),
      end: (status: number) => ran.ended.push(status),
    });
    return ran;
  };
  const lock = (text = '{}'): void => writeFileSync(join(root, 'package-lock.json'), text);
  beforeEach(() => writeFileSync(join(root, 'package.json'), '{}'));

  it('takes exactly what the lock file names, once, and again when it changes', () => {
    lock();
    expect(install()).toMatchObject({ commands: ['ci'], said: ['Installing packages (once) …'] });
    expect(install()).toEqual({ commands: [], said: [], ended: [] });
    lock('{"changed": true}');
    expect(install().commands).toEqual(['ci']);
  });
  it('without a lock file takes what package.json allows, and says so; the file that this writes counts', () => {
    const ran = install(0, lock);
    expect(ran.commands).toEqual(['install']);
    expect(ran.said.join()).toContain('There is no package-lock.json');
    expect(install().commands).toEqual([]);
  });
  it('without a lock file, and none written, does it once all the same', () => {
    expect(install().commands).toEqual(['install']);
    expect(install().commands).toEqual([]);
    writeFileSync(join(root, 'package.json'), '{"name": "other"}');
    expect(install().commands).toEqual(['install']);
  });
  it('ends with npm’s code and a message when it fails, and tries again at the next start', () => {
    lock();
    const ran = install(7);
    expect(ran.ended).toEqual([7]);
    expect(ran.said.at(-1)).toContain('could not be installed');
    expect(install().commands).toEqual(['ci']);
  });
});
