// Where an ordinary browser may be, and how a window of its own is asked for.
import { existsSync } from 'node:fs';
import { join } from 'node:path';

/** Chromium-like browsers that can show one address as a window without tabs. */
export function appBrowser(platform = process.platform, env = process.env, exists = existsSync) {
  const places = {
    linux: [
      '/usr/bin/chromium',
      '/usr/bin/chromium-browser',
      '/usr/bin/google-chrome',
      '/usr/bin/google-chrome-stable',
      '/usr/bin/microsoft-edge',
      '/snap/bin/chromium',
    ],
    darwin: [
      '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
      '/Applications/Chromium.app/Contents/MacOS/Chromium',
      '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
    ],
    win32: [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA]
      .filter(Boolean)
      .flatMap((base) => [
        join(base, 'Google', 'Chrome', 'Application', 'chrome.exe'),
        join(base, 'Microsoft', 'Edge', 'Application', 'msedge.exe'),
      ]),
  };
  return (places[platform] ?? []).find((place) => exists(place)) ?? null;
}

/** Whether a window can be shown at all. */
export function hasDisplay(platform = process.platform, env = process.env) {
  return platform !== 'linux' || Boolean(env.DISPLAY || env.WAYLAND_DISPLAY);
}

/** The system's way to open an address in whatever browser is usual. */
export function systemOpener(platform = process.platform) {
  if (platform === 'darwin') return ['open'];
  if (platform === 'win32') return ['cmd', '/c', 'start', ''];
  return ['xdg-open'];
}
