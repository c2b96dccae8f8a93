import { untrack } from 'svelte';
import type { DriveVerdict, LookedAhead, Situation } from '../../shared/planning/index.ts';
import type { AheadNews, AheadRequest } from '../workers/ahead-request.ts';
import { startWorker } from '../workers/start-worker.ts';

/** So long the sheet waits for the better answer; then the first one stands. Judgement: a hand on its way to the next key. */
const MOST_MS = 800;

/**
 * The better answer, worked out beside the window for the situation in front. What is on the sheet does not change once it
 * is there: the sheet waits, and an answer that comes too late is dropped. One is worked out at a time.
 */
export class Ahead {
  #answer = $state.raw<{ readonly key: string; readonly looked: LookedAhead } | null>(null);
  /** Situation that nothing better is waited for any more, whether or not it came. */
  #settled = $state.raw('');
  #asked = '';
  #worker: Worker | null = null;
  #end: (() => void) | null = null;

  /** What looking ahead said of this situation; null while that is not known. */
  of(situation: Situation): LookedAhead | null {
    const answer = this.#answer;
    return answer && answer.key === keyOf(situation) ? answer.looked : null;
  }

  /** Whether the better answer for this situation is still to come. */
  isAwaited(situation: Situation | null, verdict: DriveVerdict | null): boolean {
    const key = keyToAsk(situation, verdict);
    return key !== '' && key !== this.#settled;
  }

  /** Looks ahead from a situation, unless that was done or is under way. Without workers the first answer stays. */
  ask(situation: Situation | null, verdict: DriveVerdict | null): void {
    const key = keyToAsk(situation, verdict);
    untrack(() => {
      if (key === this.#asked) return;
      this.#asked = key;
      this.#end?.();
      if (key !== '' && situation && verdict) this.#look({ kind: 'ahead', situation, verdict }, key);
    });
  }

  #look(request: AheadRequest, key: string): void {
    const worker = (this.#worker ??= startWorker('ahead'));
    const end = (): void => {
      clearTimeout(late);
      worker.removeEventListener('message', hear);
      worker.removeEventListener('error', giveUp);
      this.#end = null;
      this.#settled = key;
    };
    // What is under way is of no use any more; the next one begins with a worker of its own.
    const giveUp = (): void => {
      end();
      worker.terminate();
      this.#worker = null;
    };
    const hear = ({ data }: MessageEvent<AheadNews>): void => {
      if (data.looked) this.#answer = { key, looked: data.looked };
      end();
    };
    const late = setTimeout(giveUp, MOST_MS);
    this.#end = giveUp;
    worker.addEventListener('message', hear);
    worker.addEventListener('error', giveUp);
    worker.postMessage(request);
  }
}

/** Empty where nothing is looked ahead: before the safety questions, for an owner, and without workers. */
function keyToAsk(situation: Situation | null, verdict: DriveVerdict | null): string {
  if (!situation || !verdict || verdict.openQuestions.length > 0 || typeof Worker === 'undefined') return '';
  return situation.who === 'mechanic' || situation.who === 'apprentice' ? keyOf(situation) : '';
}

/** Tree and vocabulary do not change while a complaint is open; starting odds may. */
function keyOf({ tree, ...rest }: Situation): string {
  const weights = tree.causes.map(({ weight }) => weight);
  return JSON.stringify([tree.id, tree.version, weights, { ...rest, vocabulary: undefined }]);
}
