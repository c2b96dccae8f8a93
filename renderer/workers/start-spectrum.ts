import type { SpectrumAnswer, SpectrumTask } from './spectrum-job.ts';
import { startWorker } from './start-worker.ts';

/**
 * Works a recording out beside the window.
 *
 * @param hear  gets progress, and one answer at the end.
 * @returns ends it early; nothing more is heard then.
 */
export function startSpectrum(task: SpectrumTask, hear: (answer: SpectrumAnswer) => void): () => void {
  const worker = startWorker('spectrum');
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
