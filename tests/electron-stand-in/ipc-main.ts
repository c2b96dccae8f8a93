/** Who asked, as a handler of `ipcMain.handle` is told. */
export interface InvokeEvent {
  readonly sender: unknown;
  /** Null when the frame is gone by the time of the call. */
  readonly senderFrame: { readonly url: string } | null;
}

type InvokeHandler = (event: InvokeEvent, ...args: unknown[]) => unknown;

/** Stands in for `ipcMain`: handlers by channel, called with who asked. Errors cross as Electron words them. */
export class IpcMainStandIn {
  readonly #handlers = new Map<string, InvokeHandler>();

  handle(channel: string, handler: InvokeHandler): void {
    if (this.#handlers.has(channel)) throw new Error(`Attempted to register a second handler for '${channel}'`);
    this.#handlers.set(channel, handler);
  }

  removeHandler(channel: string): void {
    this.#handlers.delete(channel);
  }

  /** Channels that are answered, by name. */
  get channels(): readonly string[] {
    return [...this.#handlers.keys()].sort();
  }

  /** One call from a page. */
  async deliver(event: InvokeEvent, channel: string, args: readonly unknown[]): Promise<unknown> {
    try {
      const handler = this.#handlers.get(channel);
      if (!handler) throw new Error(`No handler registered for '${channel}'`);
      return await handler(event, ...args);
    } catch (problem) {
      throw new Error(`Error invoking remote method '${channel}': ${String(problem)}`, { cause: problem });
    }
  }

  /** As before the start. */
  forget(): void {
    this.#handlers.clear();
  }
}
