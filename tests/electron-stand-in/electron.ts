/**
 * A stand-in of the electron module for tests; no Electron runs. It gives `electron/main` what that imports from
 * 'electron' and drives a stock Chromium with it, so that the program's own main process, preload and window run together.
 * The Vitest project "desktop" puts it in the place of the module.
 *
 * What is real: electron/main from its TypeScript, the built preload, the built window, Chromium with its own enforcement
 * of the content security policy. What only stands in:
 *
 * - A custom scheme cannot be opened in stock Chromium. `droplight://app/…` is `https://app.droplight.invalid/…` in the
 *   page (`http:` when the scheme is not declared secure); every request is intercepted and answered by the handler of
 *   `protocol.handle`, and addresses are translated both ways (addresses.ts).
 * - The preload runs in the page's own world, not in an isolated one; what `exposeInMainWorld` puts on the window is copied
 *   and frozen as Electron does it (preload-world.ts). Of isolation and sandbox it can only be seen that they are asked for.
 * - `invoke` crosses by Playwright's binding instead of structured cloning; sender, frame and address are Chromium's.
 * - `will-navigate` is emitted for requests that would replace the main frame. What Chromium itself refuses before it asks
 *   for anything (`javascript:` under the policy, `file:` and `data:` from a page) never gets there.
 * - Permissions, `will-redirect` and `will-attach-webview`: a test calls their handlers with hostile input, because stock
 *   Chromium has no <webview>, follows redirects of intercepted requests unasked, and is given its permissions from outside.
 *
 * When things may be called, what throws and in which order events come is from Electron's API documentation and type
 * declarations (version 45), partly from memory.
 */
import type { CustomScheme } from 'electron';
import { BrowserWindowStandIn } from './browser-window.ts';
import { app, defaultSession } from './program.ts';
import type { SessionStandIn } from './session.ts';

export { app, dialog, ipcMain } from './program.ts';
export { BrowserWindowStandIn as BrowserWindow };

export const session = {
  get defaultSession(): SessionStandIn {
    if (!app.isReady()) throw new Error('Session can only be received when app is ready');
    return defaultSession;
  },
};

export const protocol = {
  registerSchemesAsPrivileged(schemes: readonly CustomScheme[]): void {
    if (app.isReady()) throw new Error('protocol.registerSchemesAsPrivileged should be called before app is ready');
    for (const { scheme, privileges } of schemes)
      defaultSession.schemes.set(scheme, {
        secure: privileges?.secure ?? false,
        supportFetchAPI: privileges?.supportFetchAPI ?? false,
      });
  },
};
