import { startWorker } from './start-worker.ts';
import type { TrialAsked, TrialTold } from './trial-messages.ts';

/**
 * Starts a trial of a tree in a worker of its own.
 *
 * @returns how to stop it; nothing is told after that.
 */
export function startTrial(
  asked: TrialAsked,
  tell: (told: TrialTold | { readonly kind: 'broken'; readonly message: string }) => void,
): () => void {
  const worker = startWorker('trial');
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
