/** Works through simulated coaches beside the window, so that it stays quick to answer. Ended from outside at any time. */
import { tryTree } from '../../shared/planning/evaluation/trial.ts';
import type { TrialAsked, TrialTold } from './trial-messages.ts';

const tell = (message: TrialTold): void => self.postMessage(message);

self.addEventListener('message', ({ data }: MessageEvent<TrialAsked>) => {
  const { tree, vocabulary, coaches, seed } = data;
  let said = 0;
  const trial = tryTree(tree, vocabulary, {
    coaches,
    seed,
    tell: (done) => {
      // A hundredth at a time is all that anybody can see.
      const share = Math.floor((done / (2 * coaches)) * 100);
      if (share > said) tell({ kind: 'progress', share: (said = share) / 100 });
    },
  });
  tell({ kind: 'done', trial });
});
