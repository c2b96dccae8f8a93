/// <reference types="vite/client" />
import type { TrialAsked, TrialTold } from './trial-messages.ts';
import address from './tree-trial.worker.ts?worker&url';

/** The part of the trusted types API that is used here; the library of types does not know it yet. */
interface TrustedTypes {
  createPolicy(
    name: string,
    rules: { readonly createScriptURL: (address: string) => string },
  ): { createScriptURL(address: string): string };
}

/** The policy header lets this one name make script addresses; it makes the worker's own and no other. */
let own: { createScriptURL(address: string): string } | null = null;

function ownAddress(): string {
  const types: unknown = Reflect.get(globalThis, 'trustedTypes');
  if (types === undefined) return address;
  own ??= (types as TrustedTypes).createPolicy('droplight-workers', {
    createScriptURL: (asked) => {
      if (asked !== address) throw new TypeError('Only the worker of the window itself is started.');
      return asked;
    },
  });
  return own.createScriptURL(address);
}

/**
 * Starts a trial of a tree in a worker of its own.
 *
 * @returns how to stop it; nothing is told after that.
 */
export function startTrial(
  asked: TrialAsked,
  tell: (told: TrialTold | { readonly kind: 'broken'; readonly message: string }) => void,
): () => void {
  const worker = new Worker(ownAddress());
  const stop = (): void => worker.terminate();
  worker.addEventListener('message', ({ data }: MessageEvent<TrialTold>) => {
    tell(data);
    if (data.kind !== 'progress') stop();
  });
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    tell({ kind: 'broken', message: event.message });
    stop();
  });
  worker.postMessage(asked);
  return stop;
}
