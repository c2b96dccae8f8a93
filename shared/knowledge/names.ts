import { nearest, UNITS } from '../units/index.ts';

/** " Nearest: …" behind a message, or nothing when no candidate is near. */
export function nearestText(word: string, candidates: Iterable<string>): string {
  const near = nearest(word, candidates);
  return near === null ? '' : ` Nearest: "${near}".`;
}

/** Message for a unit that does not exist. */
export function unknownUnit(name: string): string {
  return `"${name}" is not a known unit.${nearestText(
    name,
    UNITS.map((unit) => unit.id),
  )}`;
}
