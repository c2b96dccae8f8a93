/** Places on the coach: those that a check is done at, and as people write them. */
import { valuesOf } from './layout-answer.ts';
import type { Layout } from './layout.ts';
import type { SiteKind } from './tree.ts';

/**
 * What a visit's layout calls the number of cylinders of the diesel. No tree hangs on it, so that the vocabulary has no
 * question for it: it is asked where the places of a check are cylinders.
 */
export const CYLINDERS = 'cylinders';

/** Numbers to choose from: common practice for the diesels of heavy coaches. A profile may know another one. */
export const CYLINDER_COUNTS = [4, 6, 8, 12] as const;

/** Places while nobody has said how many cylinders there are. */
const CYLINDERS_OFFERED = 8;
/** More than any coach has: what a log says beyond it is no count. */
const MOST_CYLINDERS = 16;

const cylinders = (count: number): readonly string[] => Array.from({ length: count }, (_, i) => `cylinder ${i + 1}`);

/** Cylinders of the diesel as far as somebody said; null when nobody did. */
export function cylindersOf(layout: Layout): number | null {
  const [said] = valuesOf(layout[CYLINDERS]);
  const count = typeof said === 'string' && said !== '' ? Number(said) : NaN;
  return Number.isInteger(count) && count > 0 && count <= MOST_CYLINDERS ? count : null;
}

/** Places to choose from for a check that is done at several, front to rear and left before right. */
export const PLACES: Readonly<Record<SiteKind, readonly string[]>> = {
  'wheel-end': ['left front', 'right front', 'left drive', 'right drive', 'left tag', 'right tag'],
  axle: ['steer axle', 'drive axle', 'tag axle'],
  side: ['left side', 'right side'],
  bank: ['left bank', 'right bank', 'front bank', 'rear bank'],
  cylinder: cylinders(CYLINDERS_OFFERED),
  'air-spring': ['left front', 'right front', 'left rear', 'right rear'],
};

/** The places that this coach has: as many cylinders as it has; none of a tag axle that is known not to be there. */
export function placesOn(kind: SiteKind, layout: Layout): readonly string[] {
  const count = kind === 'cylinder' ? cylindersOf(layout) : null;
  if (count !== null) return cylinders(count);
  return PLACES[kind].filter((place) => layout['tag-axle'] !== false || axleOf(place) !== 'tag axle');
}

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

/** Whether what was seen at one place was seen at another too: the same place, or the axle that it is an end of. */
export function takesIn(whole: string, part: string): boolean {
  const [ends, ofPart] = [wheelEndsOf(whole), wheelEndsOf(part)];
  return samePlace(whole, part) || (ofPart.length > 0 && ofPart.every((end) => ends.includes(end)));
}
