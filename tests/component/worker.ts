import { drawUp, type CompileNews, type CompileRequest } from '../../renderer/workers/compile-request.ts';
import type { AheadRequest } from '../../renderer/workers/ahead-request.ts';

/** What the worker said to a request before: the same request is drawn up once for all tests of a file. */
const told = new Map<string, readonly CompileNews[]>();

function news(request: CompileRequest): readonly CompileNews[] {
  const { tree, who, findings } = request.situation;
  // Ids are new in every window and are no part of what is drawn up.
  const key = JSON.stringify([tree.id, who, findings, request.threshold, request.walked], (name, value: unknown) =>
    name === 'id' ? undefined : value,
  );
  const before = told.get(key);
  if (before) return before;
  const all: CompileNews[] = [];
  drawUp(request, (each) => all.push(each));
  told.set(key, all);
  return all;
}

/**
 * What stands in for the browser's worker, which this document lacks: the worker's own work on the same messages, copied
 * as over a real channel, after the page has been drawn.
 */
export function furnishWorker(): void {
  class Here extends EventTarget {
    #ended = false;
    postMessage(request: CompileRequest | AheadRequest): void {
      // Looking ahead is tested apart; here the first answer stays.
      if ('kind' in request) return;
      const copied = structuredClone(request);
      setTimeout(() => {
        for (const data of news(copied))
          if (!this.#ended) this.dispatchEvent(new MessageEvent('message', { data: structuredClone(data) }));
      }, 50);
    }
    terminate(): void {
      this.#ended = true;
    }
  }
  Object.assign(window, { Worker: Here });
}
