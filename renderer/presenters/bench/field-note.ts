import { parseNumber, type UnitSystem } from '../../../shared/units/index.ts';
import { preferredOfKind, shown, toBase, type FigureKind } from './figure-kinds.ts';

/** What stands beside a field: what is wrong with it, or what is unusual. */
export interface FieldNote {
  readonly kind: 'wrong' | 'unusual';
  readonly words: string;
}

/**
 * Looks at what was typed.
 *
 * @param typical  span that is usual, in the unit of the calculations; undefined = none is known.
 * @returns null while the field is empty or as usual.
 */
export function fieldNote(
  { text, unit }: { readonly text: string; readonly unit: string | null },
  kind: FigureKind,
  typical: readonly [number, number] | undefined,
  system: UnitSystem,
): FieldNote | null {
  if (text.trim() === '') return null;
  const usual = typicalWords(kind, typical, system);
  const value = parseNumber(text);
  if (value === null)
    return {
      kind: 'wrong',
      words: `“${text.trim()}” is not a number. ${usual === null ? 'Type it like 3.4 or 2 1/4.' : `Usual is ${usual}.`}`,
    };
  const base = toBase(value, unit ?? preferredOfKind(kind, system), kind);
  if (typical === undefined || usual === null || (base >= typical[0] && base <= typical[1])) return null;
  return { kind: 'unusual', words: `Unusual: ${usual} is what is found. Look at the figure and its unit.` };
}

/** "80 psi to 95 psi", in the units that the person reads; null where nothing is usual. */
export function typicalWords(
  kind: FigureKind,
  typical: readonly [number, number] | undefined,
  system: UnitSystem,
): string | null {
  return typical === undefined ? null : `${shown(typical[0], kind, system)} to ${shown(typical[1], kind, system)}`;
}
