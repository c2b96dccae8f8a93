/** The window's spectrum job in a thread, for the benchmark; only the last answer is posted. */
import { parentPort } from 'node:worker_threads';
import { spectrumJob, type SpectrumTask } from '../../renderer/workers/spectrum-job.ts';

parentPort?.on('message', (task: SpectrumTask) => {
  spectrumJob(task, (answer) => {
    if (answer.kind !== 'progress') parentPort?.postMessage(answer.kind);
  });
});
