/// <reference types="vite/client" />
import aheadAddress from './ahead.worker.ts?worker&url';
import compileAddress from './compile.worker.ts?worker&url';
import spectrumAddress from './spectrum.worker.ts?worker&url';
import trialAddress from './tree-trial.worker.ts?worker&url';

/** Long work that is done beside the window, each in a file of its own. */
const ADDRESSES = {
  ahead: aheadAddress,
  compile: compileAddress,
  spectrum: spectrumAddress,
  trial: trialAddress,
} as const;

/** The part of the trusted types API that is used here; the library of types does not know it yet. */
interface TrustedTypes {
  createPolicy(
    name: string,
    rules: { readonly createScriptURL: (address: string) => string },
  ): { createScriptURL(address: string): string };
}

let policy: { createScriptURL(address: string): string } | null = null;

/** The content security policy lets this one name make script addresses; it makes those of the workers and no other. */
function trusted(address: string): string {
  const types: unknown = Reflect.get(globalThis, 'trustedTypes');
  if (types === undefined) return address;
  policy ??= (types as TrustedTypes).createPolicy('droplight-worker', {
    createScriptURL: (asked) => {
      if (Object.values(ADDRESSES).includes(asked)) return asked;
      throw new TypeError('Only a worker that comes with the program is started.');
    },
  });
  return policy.createScriptURL(address);
}

/** Starts one of the program's own workers. */
export function startWorker(which: keyof typeof ADDRESSES): Worker {
  return new Worker(trusted(ADDRESSES[which]), { type: 'module' });
}
