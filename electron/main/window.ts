import { BrowserWindow } from 'electron';
import { blockNavigation } from './security/navigation.ts';
import { WINDOW_ORIGIN } from './security/scheme.ts';
import { blockNewWindows } from './security/windows.ts';

/**
 * The one window. Electron's security tutorial, items 2, 3 and 4: no Node in the page, isolated, sandboxed.
 *
 * @param made  told as soon as the window exists, before its page loads and asks.
 */
export async function openWindow(preload: string, made: (window: BrowserWindow) => void): Promise<BrowserWindow> {
  const window = new BrowserWindow({
    width: 1440,
    height: 1000,
    minWidth: 360,
    minHeight: 480,
    title: 'Droplight',
    autoHideMenuBar: true,
    webPreferences: {
      preload,
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      webSecurity: true,
      webviewTag: false,
    },
  });
  made(window);
  blockNavigation(window.webContents);
  blockNewWindows(window.webContents);
  await window.loadURL(`${WINDOW_ORIGIN}/`);
  return window;
}
