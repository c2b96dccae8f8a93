/** Places on the coach as people write them, for deciding what two jobs share. */

/** A place in one spelling: lower case, single blanks. */
export function placeWords(place: string): string {
  return place.trim().toLowerCase().replace(/\s+/g, ' ');
}

/** Axle of a place: "front axle" for "left front"; null when the words name none. */
export function axleOf(place: string): string | null {
  const words = placeWords(place);
  if (/\b(front|steer)\b/.test(words)) return 'front axle';
  if (/\bdrive\b/.test(words)) return 'drive axle';
  if (/\btag\b/.test(words)) return 'tag axle';
  // "Rear" may be either of two axles, so it is shared with neither.
  return /\brear\b/.test(words) ? 'rear axle' : null;
}

/**
 * Wheel ends that a place stands for: one for "left front", both for "steer axle", none when no axle is named or only one
 * is but no side.
 */
export function wheelEndsOf(place: string): readonly string[] {
  const axle = axleOf(place)?.replace(' axle', '');
  if (axle === undefined) return [];
  const side = /\b(left|right)\b/.exec(placeWords(place))?.[1];
  return (side === undefined ? ['left', 'right'] : [side]).map((each) => `${each} ${axle}`);
}

/** Whether two places are one: equal words, or the same single wheel end ("left steer", "left front"). */
export function samePlace(a: string, b: string): boolean {
  if (placeWords(a) === placeWords(b)) return true;
  const [ends, others] = [wheelEndsOf(a), wheelEndsOf(b)];
  return ends.length === 1 && others.length === 1 && ends[0] === others[0];
}
