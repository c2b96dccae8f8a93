import { EventEmitter } from 'node:events';
import { readFileSync } from 'node:fs';
import { Preventable } from './preventable.ts';

/** What the app does with its windows when it ends. */
interface Closable {
  destroy(): void;
}

/**
 * Stands in for `app`. It becomes ready only when `becomeReady` is called, which `startProgram` does after the entry module
 * has been evaluated: in Electron a module that waits for `whenReady()` at its top level waits for ever.
 */
export class AppStandIn extends EventEmitter {
  /** Whether another copy of the program holds the lock; a test says so before the start. */
  otherCopyRuns = false;
  sandboxEnabled = false;
  /** Set when the program has ended. */
  exitCode: number | null = null;
  readonly windows = new Set<Closable>();
  #ready = false;
  #becomeReady: () => void = () => undefined;
  #whenReady = this.#unready();

  #unready(): Promise<void> {
    return new Promise((resolve) => (this.#becomeReady = resolve));
  }

  isReady(): boolean {
    return this.#ready;
  }

  whenReady(): Promise<void> {
    return this.#whenReady;
  }

  /** For `startProgram`: the entry module has been evaluated. A program that has ended meanwhile does not become ready. */
  becomeReady(): void {
    if (this.#ready || this.exitCode !== null) return;
    this.#ready = true;
    this.emit('ready', new Preventable());
    this.#becomeReady();
  }

  getVersion(): string {
    const text = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
    // The project's own file; the check below is all that is needed of its shape.
    const { version } = JSON.parse(text) as { version?: unknown };
    if (typeof version !== 'string') throw new Error('package.json has no version.');
    return version;
  }

  requestSingleInstanceLock(): boolean {
    return !this.otherCopyRuns;
  }

  enableSandbox(): void {
    if (this.#ready) throw new Error('app.enableSandbox() can only be called before app is ready');
    this.sandboxEnabled = true;
  }

  quit(): void {
    if (this.exitCode !== null) return;
    const asked = new Preventable();
    this.emit('before-quit', asked);
    if (asked.defaultPrevented) return;
    this.exit(0);
  }

  exit(code = 0): void {
    if (this.exitCode !== null) return;
    this.exitCode = code;
    for (const window of [...this.windows]) window.destroy();
    this.emit('will-quit', new Preventable());
    this.emit('quit', new Preventable(), code);
  }

  /** For windows: one is gone. Without a listener the last one ends the program, as in Electron. */
  windowGone(window: Closable): void {
    this.windows.delete(window);
    if (this.windows.size > 0 || this.exitCode !== null) return;
    if (!this.emit('window-all-closed')) this.quit();
  }

  /** As before the start. */
  forget(): void {
    this.removeAllListeners();
    this.windows.clear();
    this.otherCopyRuns = false;
    this.sandboxEnabled = false;
    this.exitCode = null;
    this.#ready = false;
    this.#whenReady = this.#unready();
  }
}
