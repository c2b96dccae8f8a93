/** A faulty entry module: in Electron it would never open a window. */
import { app, BrowserWindow } from 'electron';

await app.whenReady();
const window = new BrowserWindow();
await window.loadURL('about:blank');
