import { untrack } from 'svelte';
import type { DriveVerdict, LookedAhead, Situation } from '../../shared/planning/index.ts';
import type { AheadNews, AheadRequest } from '../workers/ahead-request.ts';
import { startWorker } from '../workers/start-worker.ts';

/** After so long the first answer stays: a check that somebody has begun to read does not change any more. Judgement. */
const MOST_MS = 1500;

/**
 * The better answer, worked out beside the window for the situation in front; it takes the place of the first one when it
 * is ready. One is worked out at a time.
 */
export class Ahead {
  #answer = $state.raw<{ readonly key: string; readonly looked: LookedAhead } | null>(null);
  #asked = '';
  #end: (() => void) | null = null;

  /** What looking ahead said of this situation; null while that is not known. */
  of(situation: Situation): LookedAhead | null {
    const answer = this.#answer;
    return answer && answer.key === keyOf(situation) ? answer.looked : null;
  }

  /** Looks ahead from a situation, unless that was done or is under way. Without workers the first answer stays. */
  ask(situation: Situation | null, verdict: DriveVerdict | null): void {
    const key = situation && verdict && verdict.openQuestions.length === 0 ? keyOf(situation) : '';
    untrack(() => {
      if (key === this.#asked) return;
      this.#asked = key;
      this.#end?.();
      if (key === '' || !situation || !verdict || typeof Worker === 'undefined') return;
      this.#look({ kind: 'ahead', situation, verdict }, key);
    });
  }

  #look(request: AheadRequest, key: string): void {
    const worker = startWorker('ahead');
    const end = (): void => {
      clearTimeout(late);
      for (const begun of BEGUN) removeEventListener(begun, end);
      worker.terminate();
      this.#end = null;
    };
    const late = setTimeout(end, MOST_MS);
    // Whoever has begun to work on the first answer keeps it, and what they type in it.
    for (const begun of BEGUN) addEventListener(begun, end);
    this.#end = end;
    worker.addEventListener('message', ({ data }: MessageEvent<AheadNews>) => {
      end();
      if (data.looked) this.#answer = { key, looked: data.looked };
    });
    worker.addEventListener('error', end);
    worker.postMessage(request);
  }
}

const BEGUN = ['keydown', 'pointerdown'] as const;

/** Tree and vocabulary do not change while a complaint is open; starting odds may. */
function keyOf({ tree, ...rest }: Situation): string {
  const weights = tree.causes.map(({ weight }) => weight);
  return JSON.stringify([tree.id, tree.version, weights, { ...rest, vocabulary: undefined }]);
}
