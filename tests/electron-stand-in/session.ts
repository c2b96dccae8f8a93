import type { BrowserContext, Page, Request as PageRequest, Route } from '@playwright/test';
import type { Session } from 'electron';
import { inProgram, ownAddress, type SchemePrivileges } from './addresses.ts';
import { theBrowser } from './chromium.ts';

type RequestHandler = Parameters<Session['setPermissionRequestHandler']>[0];
type CheckHandler = Parameters<Session['setPermissionCheckHandler']>[0];
type SchemeHandler = (request: Request) => Response | Promise<Response>;

/** Decides whether a page's own wish to go somewhere is carried out. */
export interface NavigationGuard {
  mayNavigate(address: string): boolean;
}

/** One answer of a scheme's handler, as it went to the page. */
export interface Answered {
  readonly address: string;
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
}

/**
 * Stands in for `session.defaultSession`: a Chromium context in which every request is intercepted. Addresses of a handled
 * scheme go to its handler; nothing else leaves the machine, and what tried to is kept in `outside`.
 */
export class SessionStandIn {
  readonly schemes = new Map<string, SchemePrivileges>();
  readonly answered: Answered[] = [];
  readonly outside: string[] = [];
  permissionRequestHandler: RequestHandler = null;
  permissionCheckHandler: CheckHandler = null;
  readonly #handlers = new Map<string, SchemeHandler>();
  readonly #guards = new Map<Page, NavigationGuard>();
  #context: Promise<BrowserContext> | null = null;

  readonly protocol = {
    handle: (scheme: string, handler: SchemeHandler): void => {
      if (this.#handlers.has(scheme)) throw new Error(`The scheme ${scheme} has been handled already.`);
      this.#handlers.set(scheme, handler);
      if (!this.schemes.has(scheme)) this.schemes.set(scheme, { secure: false, supportFetchAPI: false });
    },
  };

  setPermissionRequestHandler(handler: RequestHandler): void {
    this.permissionRequestHandler = handler;
  }

  setPermissionCheckHandler(handler: CheckHandler): void {
    this.permissionCheckHandler = handler;
  }

  /** Asks a scheme's handler without a page, so that no browser tidies the address first. */
  async ask(address: string, init?: RequestInit): Promise<Response> {
    const handler = this.#handlers.get(new URL(address).protocol.slice(0, -1));
    if (!handler) throw new Error(`Nothing handles ${address}.`);
    return handler(new Request(address, init));
  }

  /** A page of a window, whose wishes to go somewhere its contents decide about. */
  async newPage(guard: NavigationGuard): Promise<Page> {
    this.#context ??= this.#newContext();
    const page = await (await this.#context).newPage();
    this.#guards.set(page, guard);
    return page;
  }

  async #newContext(): Promise<BrowserContext> {
    const context = await (await theBrowser()).newContext({ viewport: { width: 1440, height: 1000 } });
    await context.route('**/*', (route) => this.#serve(route));
    return context;
  }

  async #serve(route: Route): Promise<void> {
    const request = route.request();
    if (!this.#mayNavigate(request)) return route.abort('aborted');
    const own = ownAddress(request.url(), this.schemes);
    const handler = own ? this.#handlers.get(own.scheme) : undefined;
    if (!own || !handler) {
      this.outside.push(request.url());
      return route.abort('blockedbyclient');
    }
    const fetched = ['fetch', 'xhr', 'eventsource'].includes(request.resourceType());
    if (fetched && this.schemes.get(own.scheme)?.supportFetchAPI !== true) return route.abort('blockedbyclient');
    const body = request.postDataBuffer();
    const response = await handler(
      new Request(own.address, {
        method: request.method(),
        headers: request.headers(),
        ...(body ? { body: new Uint8Array(body) } : {}),
      }),
    );
    const headers = Object.fromEntries(response.headers);
    this.answered.push({ address: own.address, status: response.status, headers });
    return route.fulfill({ status: response.status, headers, body: Buffer.from(await response.arrayBuffer()) });
  }

  /** A page that belongs to no window (one that was opened by a page) goes nowhere. */
  #mayNavigate(request: PageRequest): boolean {
    if (!request.isNavigationRequest()) return true;
    const frame = frameOf(request);
    const guard = frame && this.#guards.get(frame.page());
    if (!guard) return false;
    return frame.parentFrame() !== null || guard.mayNavigate(inProgram(request.url(), this.schemes));
  }

  /** As before the start; closes every page. */
  async forget(): Promise<void> {
    const context = await this.#context;
    this.#context = null;
    await context?.close();
    this.#guards.clear();
    this.#handlers.clear();
    this.schemes.clear();
    this.answered.length = 0;
    this.outside.length = 0;
    this.permissionRequestHandler = null;
    this.permissionCheckHandler = null;
  }
}

/** Playwright throws for the first request of a page that it does not know yet. */
function frameOf(request: PageRequest): ReturnType<PageRequest['frame']> | null {
  try {
    return request.frame();
  } catch (problem) {
    if (problem instanceof Error && problem.message.includes('Frame for this navigation request')) return null;
    throw problem;
  }
}
