/**
 * Words an author may write in place of a likelihood.
 *
 * Anchors: Renooij & Witteman, Talking probabilities: communicating probabilistic information with words and numbers,
 * International Journal of Approximate Reasoning 22 (1999): (almost) impossible 0, improbable 15, uncertain 25,
 * fifty-fifty 50, expected 75, probable 85, certain 100 in 100 (anchors second-hand, as quoted in other documents).
 * The two ends are moved to .01 and .99 here (judgement), because no likelihood of a tree is 0.
 */
export const VERBAL_SCALE: ReadonlyMap<string, number> = new Map([
  ['almost-impossible', 0.01],
  ['improbable', 0.15],
  ['uncertain', 0.25],
  ['fifty-fifty', 0.5],
  ['expected', 0.75],
  ['probable', 0.85],
  ['certain', 0.99],
]);

/** Stands for what the other results of the row leave. Once a row. */
export const REST = 'rest';

/** The word of the scale that lies nearest to a likelihood, with spaces; the lower one where two are as near. */
export function verbalWord(likelihood: number): string {
  const nearest = [...VERBAL_SCALE].reduce((best, each) =>
    Math.abs(each[1] - likelihood) < Math.abs(best[1] - likelihood) ? each : best,
  );
  return nearest[0].replaceAll('-', ' ');
}
