import type { CompileNews, CompileRequest } from './compile-request.ts';
import { startWorker } from './start-worker.ts';

/**
 * Draws up a tree in a worker of its own.
 *
 * @returns a function that ends the worker, finished or not.
 */
export function compileAway(request: CompileRequest, onNews: (news: CompileNews) => void): () => void {
  const worker = startWorker('compile');
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
