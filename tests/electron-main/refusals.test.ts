import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Frame, Page } from '@playwright/test';
import type { Session } from 'electron';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BrowserWindowStandIn } from '../electron-stand-in/browser-window.ts';
import { closeBrowser } from '../electron-stand-in/chromium.ts';
import { CARRIER } from '../electron-stand-in/preload-world.ts';
import { Preventable } from '../electron-stand-in/preventable.ts';
import { defaultSession, ipcMain } from '../electron-stand-in/program.ts';
import { startProgram, stopProgram, type Running } from '../electron-stand-in/start-program.ts';

let running: Running;
beforeAll(async () => {
  running = await startProgram();
  await running.page.getByRole('heading', { level: 1, name: 'The yard is empty' }).waitFor();
});
afterAll(async () => {
  await stopProgram();
  await closeBrowser();
});

const ELSEWHERE = 'https://elsewhere.example/';

/** What stands in the window. Read by script: Playwright's own waiting takes a refused form for a navigation. */
function seen(page: Page): Promise<readonly (string | null | undefined)[]> {
  return page.evaluate(() => [document.title, document.querySelector('h1')?.textContent]);
}

/** Whatever is tried, the yard stands where it stood. A page that went away would make the call fail. */
async function stands(page: Page, attempt: (page: Page) => Promise<unknown>): Promise<void> {
  await attempt(page);
  await page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 300)));
  expect(running.window.webContents.getURL()).toBe('droplight://app/');
  expect(await seen(page)).toEqual(['Droplight', 'The yard is empty']);
}

/** A call as a page sends it that has been taken over: not by the preload. */
function raw(frame: Frame | Page, channel: string, request: unknown): Promise<unknown> {
  return frame.evaluate(
    ([carrier, name, body]) => {
      const send: unknown = Reflect.get(window, carrier);
      if (typeof send !== 'function') throw new Error('The carrier is not in this frame.');
      return (send as (channel: unknown, args: unknown[]) => Promise<unknown>)(name, [body]);
    },
    [CARRIER, channel, request] as const,
  );
}

/** A page of another origin, by the program's own mistake: what it asks for must be refused all the same. */
async function loadForeign(): Promise<void> {
  await running.page.route(`${ELSEWHERE}**`, (route) =>
    route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>Elsewhere</title><h1>Elsewhere</h1>' }),
  );
  await running.window.loadURL(ELSEWHERE);
  await running.page.getByRole('heading', { name: 'Elsewhere' }).waitFor();
}

describe('the window never leaves its page', () => {
  const hostile = [
    ELSEWHERE,
    'http://127.0.0.1:9/',
    'file:///etc/hosts',
    'data:text/html,<title>taken</title>',
    'javascript:document.title="taken"',
    'blob:null/0',
    'droplight://other/',
    'droplight://app.elsewhere.example/',
    // Its own files are no pages to go to either: moving about is done within the one page.
    'droplight://app/lamp.svg',
  ];

  it.each(hostile)('the handler of will-navigate prevents %s', (address) => {
    expect(running.window.webContents.mayNavigate(address)).toBe(false);
  });

  it.each(hostile)('the page itself cannot go to %s', async (address) => {
    await stands(running.page, (page) =>
      page.evaluate((to) => {
        location.href = to;
      }, address),
    );
    expect(defaultSession.outside).toEqual([]);
  });

  it('a link, a form and a refresh lead nowhere', async () => {
    await stands(running.page, (page) =>
      page.evaluate((to) => {
        const link = document.createElement('a');
        link.href = to;
        document.body.append(link);
        link.click();
        link.remove();
      }, ELSEWHERE),
    );
    await stands(running.page, (page) =>
      page.evaluate((to) => {
        const form = document.createElement('form');
        form.action = to;
        form.method = 'post';
        document.body.append(form);
        form.submit();
        form.remove();
      }, ELSEWHERE),
    );
    await stands(running.page, (page) =>
      page.evaluate((to) => {
        const refresh = document.createElement('meta');
        refresh.httpEquiv = 'refresh';
        refresh.content = `0; url=${to}`;
        document.head.append(refresh);
      }, ELSEWHERE),
    );
    expect(defaultSession.outside).toEqual([]);
  });

  it('a redirect and a webview are prevented', () => {
    for (const name of ['will-redirect', 'will-attach-webview']) {
      const asked = new Preventable();
      expect(running.window.webContents.emit(name, asked, ELSEWHERE)).toBe(true);
      expect(asked.defaultPrevented).toBe(true);
    }
  });

  it('moving within the page, and loading it again from outside of it, stay possible', async () => {
    await running.page.evaluate(() => {
      history.pushState(null, '', '#here');
    });
    expect(running.window.webContents.getURL()).toBe('droplight://app/#here');
    await running.window.webContents.reload();
    expect(running.window.webContents.getURL()).toBe('droplight://app/#here');
    await running.page.getByRole('heading', { level: 1, name: 'The yard is empty' }).waitFor();
    await running.window.loadURL('droplight://app/');
    await running.page.getByRole('heading', { level: 1, name: 'The yard is empty' }).waitFor();
  });
});

it.each([ELSEWHERE, 'droplight://app/', 'about:blank', 'file:///etc/hosts', 'javascript:alert(1)'])(
  'a page cannot open a window on %s',
  (address) => {
    const handler = running.window.webContents.openHandler;
    expect(
      handler?.({
        url: address,
        frameName: '',
        features: '',
        disposition: 'new-window',
        referrer: { url: '', policy: 'default' },
      }),
    ).toEqual({ action: 'deny' });
  },
);

it('window.open in the page gives no window that stays', async () => {
  const { page } = running;
  const { webContents } = running.window;
  await stands(page, () => page.evaluate((to) => void window.open(to), ELSEWHERE));
  await expect.poll(() => page.context().pages().length).toBe(1);
  expect(webContents.asked).toEqual([{ url: ELSEWHERE, action: 'deny' }]);
  expect(defaultSession.outside).toEqual([]);
});

type CheckHandler = NonNullable<Parameters<Session['setPermissionCheckHandler']>[0]>;
type RequestHandler = NonNullable<Parameters<Session['setPermissionRequestHandler']>[0]>;
type Permission = Parameters<CheckHandler | RequestHandler>[1];

/** Every permission that Electron's type declarations name: the compiler says when one is missing. */
const PERMISSIONS: Readonly<Record<Permission, true>> = {
  ar: true,
  'automatic-fullscreen': true,
  'background-fetch': true,
  'background-sync': true,
  'captured-surface-control': true,
  'clipboard-read': true,
  'clipboard-sanitized-write': true,
  'deprecated-sync-clipboard-read': true,
  'display-capture': true,
  fileSystem: true,
  fullscreen: true,
  geolocation: true,
  'geolocation-approximate': true,
  'hand-tracking': true,
  hid: true,
  'idle-detection': true,
  keyboardLock: true,
  'local-fonts': true,
  'local-network': true,
  'local-network-access': true,
  'loopback-network': true,
  media: true,
  mediaKeySystem: true,
  midi: true,
  midiSysex: true,
  nfc: true,
  notifications: true,
  openExternal: true,
  'payment-handler': true,
  'periodic-background-sync': true,
  'persistent-storage': true,
  pointerLock: true,
  'screen-wake-lock': true,
  sensors: true,
  serial: true,
  'smart-card': true,
  'speaker-selection': true,
  'storage-access': true,
  'system-wake-lock': true,
  'top-level-storage-access': true,
  unknown: true,
  usb: true,
  vr: true,
  'web-app-installation': true,
  'web-printing': true,
  'window-management': true,
};

it.each(Object.keys(PERMISSIONS))('the permission %s is refused, asked for or looked up', (permission) => {
  // The handlers take whatever Electron says; its declarations may know fewer names than Chromium.
  const check = defaultSession.permissionCheckHandler as
    ((contents: unknown, permission: string, origin: string, details: object) => boolean) | null;
  const request = defaultSession.permissionRequestHandler as
    ((contents: unknown, permission: string, answer: (granted: boolean) => void, details: object) => void) | null;
  for (const origin of ['droplight://app', ELSEWHERE]) {
    expect(check?.(running.window.webContents, permission, origin, { isMainFrame: true })).toBe(false);
    expect(check?.(null, permission, origin, { isMainFrame: false })).toBe(false);
    const answers: boolean[] = [];
    request?.(running.window.webContents, permission, (granted) => answers.push(granted), { requestingUrl: origin });
    expect(answers).toEqual([false]);
  }
});

it('sound alone is granted, to the own main frame, and only while the page of recordings asks', async () => {
  const { page } = running;
  const contents = running.window.webContents;
  const check = (permission: 'media', origin: string, details: object): boolean | undefined =>
    defaultSession.permissionCheckHandler?.(contents as never, permission, origin, details as never);
  const asked = (details: object): boolean[] => {
    const answers: boolean[] = [];
    defaultSession.permissionRequestHandler?.(
      contents as never,
      'media',
      (granted) => answers.push(granted),
      details as never,
    );
    return answers;
  };
  const own = { isMainFrame: true, requestingUrl: 'droplight://app/index.html', mediaTypes: ['audio'] };
  const look = { isMainFrame: true, mediaType: 'audio' };
  // Not while the page does not ask.
  expect(asked(own)).toEqual([false]);
  expect(check('media', 'droplight://app', look)).toBe(false);
  await page.evaluate(() => history.replaceState(history.state, '', '#microphone'));
  await expect.poll(() => contents.getURL()).toContain('#microphone');
  expect(asked(own)).toEqual([true]);
  expect(check('media', 'droplight://app', look)).toBe(true);
  // Nothing with a picture in it, no frame, nobody else.
  for (const details of [
    { ...own, mediaTypes: ['video'] },
    { ...own, mediaTypes: ['audio', 'video'] },
    { ...own, mediaTypes: [] },
    { ...own, isMainFrame: false },
    { ...own, requestingUrl: ELSEWHERE },
    { ...own, requestingUrl: 'droplight://other/' },
  ])
    expect(asked(details), JSON.stringify(details)).toEqual([false]);
  expect(check('media', ELSEWHERE, look)).toBe(false);
  expect(check('media', 'droplight://app', { ...look, isMainFrame: false })).toBe(false);
  expect(check('media', 'droplight://app', { ...look, mediaType: 'video' })).toBe(false);
  await page.evaluate(() => history.replaceState(history.state, '', location.pathname));
  await expect.poll(() => contents.getURL()).not.toContain('#');
  expect(asked(own)).toEqual([false]);
});

describe('the machine side answers only the main frame of its own window', () => {
  const refused = {
    fault: { code: 'host-refused', message: expect.stringContaining('Nothing was written') as unknown },
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
  const create = { visit: 'v-taken', first };
  const nothingWritten = (): void => {
    expect(existsSync(join(running.home, 'visits', 'v-taken'))).toBe(false);
  };

  it('its own page is answered', async () => {
    expect(await raw(running.page, 'app.info', {})).toMatchObject({
      answer: { shell: 'electron', dataFolder: running.home },
    });
  });

  it('a frame within the page is refused, and has no bridge', async () => {
    await running.page.evaluate(() => document.body.append(document.createElement('iframe')));
    const frame = running.page.frames()[1];
    if (!frame) throw new Error('The frame was not made.');
    expect(await frame.evaluate(() => 'droplight' in window)).toBe(false);
    expect(await raw(frame, 'visits.create', create)).toEqual(refused);
    nothingWritten();
    await running.page.evaluate(() => document.querySelector('iframe')?.remove());
  });

  it('a frame that is gone is refused', async () => {
    const { webContents } = running.window;
    expect(await ipcMain.deliver({ sender: webContents, senderFrame: null }, 'visits.create', [create])).toEqual(
      refused,
    );
    nothingWritten();
  });

  it('another window on the same address is refused', async () => {
    const other = new BrowserWindowStandIn({ webPreferences: running.window.preferences });
    await other.loadURL('droplight://app/');
    const page = await other.webContents.page;
    expect(await raw(page, 'visits.create', create)).toEqual(refused);
    nothingWritten();
    await other.close();
  });

  it('a call that the contract does not have is not answered at all', async () => {
    await expect(raw(running.page, 'no.such', {})).rejects.toThrow("No handler registered for 'no.such'");
  });

  it('a request that the contract does not take is refused', async () => {
    expect(await raw(running.page, 'visits.create', { visit: '../x', first })).toMatchObject({
      fault: { code: 'bad-request' },
    });
    expect(await raw(running.page, 'visits.create', null)).toMatchObject({ fault: { code: 'bad-request' } });
  });

  it.each(['droplight://other/', 'droplight://app.elsewhere.example/'])(
    'the window on another host of its scheme, %s, is shown nothing and refused',
    async (address) => {
      await running.window.loadURL(address);
      expect(running.window.webContents.getURL()).toBe(address);
      await running.page.getByText('There is no such file.').waitFor();
      expect(await raw(running.page, 'visits.create', create)).toEqual(refused);
      nothingWritten();
    },
  );

  it('the window on another origin is refused, by the bridge too', async () => {
    await loadForeign();
    expect(running.window.webContents.getURL()).toBe(ELSEWHERE);
    expect(await raw(running.page, 'visits.create', create)).toEqual(refused);
    expect(await running.page.evaluate(() => window.droplight?.['app.info']({}))).toMatchObject({
      fault: { code: 'host-refused' },
    });
    nothingWritten();
  });
});
