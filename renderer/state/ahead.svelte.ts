import { untrack } from 'svelte';
import type { DriveVerdict, LookedAhead, Situation } from '../../shared/planning/index.ts';
import type { AheadNews, AheadRequest } from '../workers/ahead-request.ts';
import { startWorker } from '../workers/start-worker.ts';

/** After so long nobody waits for the figure any more. Judgement. */
const MOST_MS = 1500;

/** What the best plan costs in the end, worked out beside the window for the situation in front. One is worked out at a time. */
export class Ahead {
  #answer = $state.raw<{ readonly key: string; readonly looked: LookedAhead } | null>(null);
  #asked = '';
  #end: (() => void) | null = null;

  /** What looking ahead said of this situation; null while that is not known. */
  of(situation: Situation): LookedAhead | null {
    const answer = this.#answer;
    return answer && answer.key === keyOf(situation) ? answer.looked : null;
  }

  /** Looks ahead from a situation, unless that was done or is under way. Without workers nothing is said. */
  ask(situation: Situation | null, verdict: DriveVerdict | null): void {
    const key = situation && verdict && verdict.openQuestions.length === 0 ? keyOf(situation) : '';
    untrack(() => {
      if (key === this.#asked) return;
      this.#asked = key;
      this.#end?.();
      this.#end = null;
      if (key === '' || !situation || !verdict || typeof Worker === 'undefined') return;
      const worker = startWorker('ahead');
      const late = setTimeout(() => this.#end?.(), MOST_MS);
      this.#end = () => {
        clearTimeout(late);
        worker.terminate();
        this.#end = null;
      };
      worker.addEventListener('message', ({ data }: MessageEvent<AheadNews>) => {
        this.#end?.();
        if (data.looked) this.#answer = { key, looked: data.looked };
      });
      worker.addEventListener('error', () => this.#end?.());
      const request: AheadRequest = { kind: 'ahead', situation, verdict };
      worker.postMessage(request);
    });
  }
}

/** Tree and vocabulary do not change while a complaint is open; starting odds may. */
function keyOf({ tree, ...rest }: Situation): string {
  const weights = tree.causes.map(({ weight }) => weight);
  return JSON.stringify([tree.id, tree.version, weights, { ...rest, vocabulary: undefined }]);
}
