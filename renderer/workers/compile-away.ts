import workerAddress from './compile.worker.ts?worker&url';
import type { CompileNews, CompileRequest } from './compile-request.ts';

/** The part of the browser's trusted types that is used here; absent where the browser has none. */
interface TrustedTypes {
  createPolicy(
    name: string,
    rules: { readonly createScriptURL: (address: string) => string },
  ): { createScriptURL(address: string): string };
}
declare global {
  interface Window {
    readonly trustedTypes?: TrustedTypes;
  }
}

let address: string | null = null;

/** The worker's own address, vouched for once: the content security policy lets no other script be started. */
function trustedAddress(): string {
  address ??= window.trustedTypes
    ? window.trustedTypes
        .createPolicy('droplight-worker', {
          createScriptURL: (wanted) => {
            if (wanted === workerAddress) return wanted;
            throw new TypeError('Only the worker that comes with the program is started.');
          },
        })
        .createScriptURL(workerAddress)
    : workerAddress;
  return address;
}

/**
 * Draws up a tree in a worker of its own.
 *
 * @returns a function that ends the worker, finished or not.
 */
export function compileAway(request: CompileRequest, onNews: (news: CompileNews) => void): () => void {
  const worker = new Worker(trustedAddress(), { type: 'module' });
  worker.addEventListener('message', ({ data }: MessageEvent<CompileNews>) => {
    if (data.kind !== 'progress') worker.terminate();
    onNews(data);
  });
  worker.addEventListener('error', ({ message }) => {
    worker.terminate();
    onNews({ kind: 'failed', message: message || 'its script did not start' });
  });
  worker.postMessage(request);
  return () => worker.terminate();
}
