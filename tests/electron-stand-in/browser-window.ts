import { EventEmitter } from 'node:events';
import type { BrowserWindowConstructorOptions, WebPreferences } from 'electron';
import { Preventable } from './preventable.ts';
import { app, defaultSession, ipcMain } from './program.ts';
import { WebContentsStandIn } from './web-contents.ts';

/** Stands in for `BrowserWindow`: a page in Chromium, with what was asked for kept to be looked at. */
export class BrowserWindowStandIn extends EventEmitter {
  readonly webContents: WebContentsStandIn;
  readonly preferences: WebPreferences;
  /** How often each was called. */
  readonly calls = { focus: 0, restore: 0 };
  #minimized = false;
  #destroyed = false;

  constructor(options: BrowserWindowConstructorOptions = {}) {
    super();
    if (!app.isReady()) throw new Error('Cannot create BrowserWindow before app is ready');
    this.preferences = options.webPreferences ?? {};
    this.webContents = new WebContentsStandIn(defaultSession, ipcMain, this.preferences, () => this.#gone());
    app.windows.add(this);
    app.emit('web-contents-created', new Preventable(), this.webContents);
    app.emit('browser-window-created', new Preventable(), this);
  }

  static getAllWindows(): BrowserWindowStandIn[] {
    return [...app.windows].filter((each) => each instanceof BrowserWindowStandIn);
  }

  loadURL(address: string): Promise<void> {
    return this.webContents.loadURL(address);
  }

  isMinimized(): boolean {
    return this.#minimized;
  }

  minimize(): void {
    this.#minimized = true;
  }

  restore(): void {
    this.#minimized = false;
    this.calls.restore++;
  }

  focus(): void {
    this.calls.focus++;
  }

  isDestroyed(): boolean {
    return this.#destroyed;
  }

  /** As the person closes it. */
  async close(): Promise<void> {
    const page = await this.webContents.page;
    await page.close();
    this.#gone();
  }

  /** Without asking. */
  destroy(): void {
    void this.close();
    this.#gone();
  }

  #gone(): void {
    if (this.#destroyed) return;
    this.#destroyed = true;
    this.emit('closed');
    app.windowGone(this);
  }
}
