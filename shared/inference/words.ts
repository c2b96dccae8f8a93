/**
 * Weight of evidence in words, for and against. Bounds 1, 3, 7 and 13 decibans are judgement; one deciban is about the
 * smallest change a person can feel (Good 1950, after Turing; from memory).
 */
export function wordsForDecibans(decibans: number): string {
  const size = Math.abs(decibans);
  if (size < 1) return 'hardly matters';
  const strength = size < 3 ? 'slightly' : size < 7 ? 'clearly' : size < 13 ? 'strongly' : 'decisively';
  return `${strength} ${decibans > 0 ? 'for' : 'against'}`;
}

/**
 * A share as a word of the approximate probability scale of EFSA, Guidance on uncertainty analysis, EFSA Journal 16(1),
 * 2018: almost certain 99–100, extremely likely 95–99, very likely 90–95, likely 66–90, about as likely as not 33–66,
 * unlikely 10–33, very unlikely 5–10, extremely unlikely 1–5, almost impossible 0–1 in 100.
 */
export function wordsForShare(share: number): string {
  const scale: readonly (readonly [number, string])[] = [
    [0.99, 'almost certain'],
    [0.95, 'extremely likely'],
    [0.9, 'very likely'],
    [0.66, 'likely'],
    [0.33, 'about as likely as not'],
    [0.1, 'unlikely'],
    [0.05, 'very unlikely'],
    [0.01, 'extremely unlikely'],
  ];
  return scale.find(([from]) => share >= from)?.[1] ?? 'almost impossible';
}

/** From here on the word of the scale says what an owner takes it to say. */
const SPEAKS_FOR_ITSELF = 0.66;

/**
 * What a share of belief in one cause means to somebody who does not read odds. "About as likely as not" begins at 33 in
 * 100, where the word alone would pass for more than it is. Goes by the figure as it is shown, so that both agree.
 *
 * @param other  what it would be if it is not this.
 */
export function meansForShare(share: number, other = 'something else'): string {
  const shown = Math.round(share * 100);
  if (shown < 50) return `more likely ${other} than this`;
  if (shown === 50) return `as likely ${other} as this`;
  return share < SPEAKS_FOR_ITSELF ? `more likely this than ${other}` : wordsForShare(share);
}

/** A share as a word of the scale and, where that misleads, what it means: "unlikely, so more likely something else than this". */
export function shareInWords(share: number, other?: string): string {
  const word = wordsForShare(share);
  return share < SPEAKS_FOR_ITSELF ? `${word}, so ${meansForShare(share, other)}` : word;
}

/** A share as "in 100" for the screen; below one it says so instead of printing 0. */
export function inHundred(share: number): string {
  if (share > 0 && share < 0.01) return 'under 1';
  if (share < 1 && share > 0.99) return 'over 99';
  return String(Math.round(share * 100));
}
