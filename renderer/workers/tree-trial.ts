import type { Tree, Vocabulary } from '../../shared/knowledge/index.ts';
import type { Trial } from '../../shared/planning/evaluation/trial.ts';
import { startWorker } from './start-worker.ts';

/** What the worker is asked. */
export interface TrialAsked {
  readonly tree: Tree;
  readonly vocabulary: Vocabulary;
  readonly coaches: number;
  readonly seed: number;
}

/** What it tells, progress from 0 to 1. */
export type TrialTold =
  { readonly kind: 'progress'; readonly share: number } | { readonly kind: 'done'; readonly trial: Trial };

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
