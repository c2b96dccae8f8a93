import { UNLISTED, type Check, type Tree } from '../knowledge/tree.ts';
import type { Vocabulary } from '../knowledge/vocabulary.ts';
import { formatOnRule, formatQuantity, preferredUnit, unitOf, type UnitSystem } from '../units/index.ts';
import type { Reading, RecordedValue } from './events.ts';

/** Roles as people call themselves. */
export const ROLE_WORDS = {
  'owner-no-tools': 'Owner, no tools',
  'owner-basic-tools': 'Owner with basic tools',
  apprentice: 'Apprentice',
  mechanic: 'Mechanic',
} as const;

/** How a complaint was closed. */
export const CLOSED_WORDS = {
  cured: 'Closed: gone, and proven',
  'handed-over': 'Handed over to somebody who can look further',
  'left-open': 'Put aside without a proven cure',
} as const;

/** Name of a cause on screen. */
export function causeName(tree: Tree, id: string): string {
  return id === UNLISTED ? 'Not in the list' : (tree.causes.find((cause) => cause.id === id)?.name ?? id);
}

/**
 * A reading as typed and, where the reader reads another unit, in theirs; beside inches read from a rule stands the
 * mark, as "1.36 in (about 1 3/8 in)".
 *
 * @param vocabulary  says whether the instrument is a rule that is divided in fractions; left out = none is.
 */
export function readingWords(
  check: Check | undefined,
  { value, unit, instrument }: Reading,
  system: UnitSystem,
  vocabulary?: Vocabulary,
): string {
  const typed = formatQuantity(value, unit);
  const parts = vocabulary?.instruments.get(instrument ?? check?.measure?.instrument ?? '')?.inchParts;
  const own =
    parts !== undefined && unitOf(unit).quantity === 'length'
      ? formatOnRule(value, unit, parts, system)
      : formatQuantity(value, unit, system);
  if (preferredUnit(unit, system) === unitOf(unit).id) return own;
  return own.includes('(') ? `${typed} = ${own}` : `${typed} (${own})`;
}

/** A recorded value in the words of the tree, readings as `readingWords` has them. */
export function valueWords(
  check: Check | undefined,
  value: RecordedValue,
  system: UnitSystem,
  vocabulary?: Vocabulary,
): string {
  const label = (id: string): string => check?.results.find((result) => result.id === id)?.label ?? id;
  switch (value.kind) {
    case 'result':
      return sentence(label(value.result));
    case 'reading':
      return readingWords(check, value.reading, system, vocabulary);
    case 'not-sure':
      return value.leaning === undefined ? 'Not sure' : `Not sure, looks like: ${label(value.leaning)}`;
    case 'cant-do':
      return 'Could not be done';
  }
}

/** A text with a capital letter in front. */
export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A text with its end: a full stop, unless it has one. */
export function fullStop(text: string): string {
  const own = text.trim();
  return own === '' || /[.!?…:]["”’)]?$/.test(own) ? own : `${own}.`;
}

/** Minutes as hours and minutes from an hour on. */
export function minutesWords(minutes: number): string {
  const whole = Math.round(minutes);
  return whole < 60 ? `${whole} min` : `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, '0')} min`;
}
