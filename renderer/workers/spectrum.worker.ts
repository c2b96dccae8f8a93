import { spectrumJob, type SpectrumTask } from './spectrum-job.ts';

// One task a worker; the window ends it when the person stops or leaves.
addEventListener('message', (event: MessageEvent<SpectrumTask>) =>
  spectrumJob(event.data, (answer) => postMessage(answer)),
);
