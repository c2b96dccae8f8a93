import type { SpectrumAnswer, SpectrumTask } from './spectrum-job.ts';
import workerUrl from './spectrum.worker.ts?worker&url';

/** The part of trusted types that is used here; browsers without them have no such object. */
interface TrustedTypes {
  createPolicy(name: string, rules: { createScriptURL(url: string): string }): { createScriptURL(url: string): URL };
}

/** The content security policy lets this one policy make the address of a worker, and the policy knows one address. */
let made: string | URL | null = null;

function trustedAddress(): string | URL {
  if (made !== null) return made;
  const types: TrustedTypes | undefined = 'trustedTypes' in globalThis ? trustedTypesOf(globalThis) : undefined;
  made = types
    ? types
        .createPolicy('droplight-worker', {
          createScriptURL: (url) => {
            if (url !== workerUrl) throw new TypeError(`No worker is known under ${url}.`);
            return url;
          },
        })
        .createScriptURL(workerUrl)
    : workerUrl;
  return made;
}

/** TypeScript's own list of a window's objects does not have it yet. */
function trustedTypesOf(holder: object & { readonly trustedTypes?: unknown }): TrustedTypes {
  return holder.trustedTypes as TrustedTypes;
}

/**
 * Works a recording out beside the window.
 *
 * @param hear  gets progress, and one answer at the end.
 * @returns ends it early; nothing more is heard then.
 */
export function startSpectrum(task: SpectrumTask, hear: (answer: SpectrumAnswer) => void): () => void {
  const worker = new Worker(trustedAddress(), { type: 'module' });
  worker.addEventListener('message', ({ data }: MessageEvent<SpectrumAnswer>) => {
    if (data.kind !== 'progress') worker.terminate();
    hear(data);
  });
  worker.addEventListener('error', (event) => {
    worker.terminate();
    hear({
      kind: 'refused',
      reason: 'worker-failed',
      words: `The analysis stopped before its end (${event.message === '' ? 'the worker could not be started' : event.message}). Try a shorter piece of the recording.`,
    });
  });
  const bytes = task.kind === 'file' ? task.bytes : task.samples;
  worker.postMessage(task, [bytes.buffer]);
  return () => worker.terminate();
}
