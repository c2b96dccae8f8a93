import { EventEmitter } from 'node:events';
import { readFileSync } from 'node:fs';
import type { Frame, Page } from '@playwright/test';
import type { WebContents, WebPreferences } from 'electron';
import { inChromium, inProgram } from './addresses.ts';
import type { IpcMainStandIn } from './ipc-main.ts';
import { CARRIER, preloadScript } from './preload-world.ts';
import { Preventable } from './preventable.ts';
import type { NavigationGuard, SessionStandIn } from './session.ts';

type OpenHandler = Parameters<WebContents['setWindowOpenHandler']>[0];
type OpenDetails = Parameters<OpenHandler>[0];

/** A frame as a handler sees it: its address is Chromium's at the time of asking. */
export class FrameStandIn {
  readonly #frame: Frame;
  readonly #session: SessionStandIn;

  constructor(frame: Frame, session: SessionStandIn) {
    this.#frame = frame;
    this.#session = session;
  }

  get url(): string {
    return inProgram(this.#frame.url(), this.#session.schemes);
  }
}

/** Details of `will-navigate`. */
class NavigationEvent extends Preventable {
  readonly isMainFrame = true;
  readonly isSameDocument = false;
  readonly url: string;

  constructor(url: string) {
    super();
    this.url = url;
  }
}

/** Stands in for the contents of a window: a page of Chromium with the preload in it. */
export class WebContentsStandIn extends EventEmitter implements NavigationGuard {
  readonly session: SessionStandIn;
  /** The page in Chromium; there a moment after the window. */
  readonly page: Promise<Page>;
  /** Addresses that the page wanted to open in a window of its own, and what became of it. */
  readonly asked: { readonly url: string; readonly action: 'allow' | 'deny' }[] = [];
  openHandler: OpenHandler | null = null;
  readonly #frames = new WeakMap<Frame, FrameStandIn>();
  readonly #ipc: IpcMainStandIn;
  #there: Page | null = null;
  /** Where the program itself is taking the window: Electron does not ask about that. */
  #own: string | null = null;
  #verdicts: ('allow' | 'deny')[] = [];
  #popups: Page[] = [];

  constructor(session: SessionStandIn, ipc: IpcMainStandIn, preferences: WebPreferences, gone: () => void) {
    super();
    this.session = session;
    this.#ipc = ipc;
    this.page = this.#open(preferences, gone);
  }

  async #open(preferences: WebPreferences, gone: () => void): Promise<Page> {
    const page = await this.session.newPage(this);
    this.#there = page;
    page.once('close', gone);
    await page.exposeBinding(CARRIER, ({ frame }, channel: string, args: unknown[]) =>
      this.#ipc.deliver({ sender: this, senderFrame: this.#frameOf(frame) }, channel, args),
    );
    if (preferences.preload !== undefined)
      await page.addInitScript(
        preloadScript(readFileSync(preferences.preload, 'utf8'), {
          contextIsolation: preferences.contextIsolation ?? true,
        }),
      );
    const chromium = await page.context().newCDPSession(page);
    await chromium.send('Page.enable');
    chromium.on('Page.windowOpen', ({ url, windowName }) => {
      this.#verdicts.push(this.#verdictOn(inProgram(url, this.session.schemes), windowName));
      this.#settlePopups();
    });
    page.on('popup', (popup) => {
      this.#popups.push(popup);
      this.#settlePopups();
    });
    return page;
  }

  get mainFrame(): FrameStandIn {
    if (!this.#there) throw new Error('The window has no frame yet.');
    return this.#frameOf(this.#there.mainFrame());
  }

  #frameOf(frame: Frame): FrameStandIn {
    const known = this.#frames.get(frame);
    if (known) return known;
    const made = new FrameStandIn(frame, this.session);
    this.#frames.set(frame, made);
    return made;
  }

  getURL(): string {
    return this.mainFrame.url;
  }

  async loadURL(address: string): Promise<void> {
    const page = await this.page;
    this.#own = address;
    await page.goto(inChromium(address, this.session.schemes));
  }

  async reload(): Promise<void> {
    const page = await this.page;
    this.#own = this.getURL();
    await page.reload();
  }

  mayNavigate(address: string): boolean {
    if (this.#own !== null && sameAddress(this.#own, address)) {
      this.#own = null;
      return true;
    }
    const asked = new NavigationEvent(address);
    this.emit('will-navigate', asked, address);
    return !asked.defaultPrevented;
  }

  setWindowOpenHandler(handler: OpenHandler): void {
    this.openHandler = handler;
  }

  /** Without a handler Electron opens the window. */
  #verdictOn(url: string, frameName: string): 'allow' | 'deny' {
    const details: OpenDetails = {
      url,
      frameName,
      features: '',
      disposition: 'foreground-tab',
      referrer: { url: '', policy: 'default' },
    };
    const { action } = this.openHandler?.(details) ?? { action: 'allow' as const };
    this.asked.push({ url, action });
    return action;
  }

  /** Chromium tells of the wish and of the page by two ways, in any order. */
  #settlePopups(): void {
    while (this.#popups.length > 0 && this.#verdicts.length > 0) {
      const popup = this.#popups.shift();
      if (this.#verdicts.shift() === 'deny') void popup?.close();
    }
  }
}

/** As a request names an address: without its fragment, with the slash that a browser adds after a bare host. */
function sameAddress(one: string, other: string): boolean {
  const [here, there] = [one, other].map((address) => (address.split('#')[0] ?? '').replace(/\/$/, ''));
  return here === there;
}
