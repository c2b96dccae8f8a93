import { readBands, ReadingError, type BandReading } from '../../shared/inference/index.ts';
import type { Check, Vocabulary } from '../../shared/knowledge/index.ts';
import {
  convertDifference,
  formatQuantity,
  parseNumber,
  UnitError,
  type UnitSystem,
} from '../../shared/units/index.ts';
import { convertedReading, type Observation, type Reading } from '../../shared/visit/index.ts';
import { readingDoubt, readingWords } from './presenters.ts';

/** A reading held against the bands of its check, in words for the screen. */
export interface JudgedReading {
  readonly bands: BandReading;
  readonly words: string;
  /** Two standard uncertainties, nineteen times in twenty, in the unit typed. */
  readonly give: string;
  readonly instrument: string;
  /** What it was worked out of; empty where it was read as it is. */
  readonly observations: readonly Observation[];
}

/** Null when the reading cannot be used with this check. */
export function judgedReading(
  check: Check,
  reading: Reading,
  vocabulary: Vocabulary,
  system: UnitSystem,
): JudgedReading | null {
  if (!check.measure) return null;
  try {
    const { value, uncertainty, range } = convertedReading(check, reading, vocabulary);
    const give = convertDifference(2 * uncertainty, check.measure.unit, reading.unit);
    return {
      bands: readBands(check, value, uncertainty, range),
      words: readingWords(check, reading, system, vocabulary),
      give: formatQuantity(give, reading.unit),
      instrument: reading.worked
        ? 'way of measuring'
        : (vocabulary.instruments.get(reading.instrument ?? check.measure.instrument)?.name ?? 'instrument'),
      observations: reading.worked?.observations ?? [],
    };
  } catch (problem) {
    if (problem instanceof ReadingError || problem instanceof UnitError) return null;
    throw problem;
  }
}

/** What was typed, as a reading, or the doubt to show beside the field; the text itself stays there. */
export function parseReading(
  check: Check,
  text: string,
  unit: string,
  vocabulary: Vocabulary,
): { readonly reading: Reading | null; readonly doubt: string | null } {
  const value = parseNumber(text);
  if (value === null)
    return {
      reading: null,
      doubt:
        text.trim() === ''
          ? 'Type the reading first, for example 3.4 or 2 1/4.'
          : `“${text}” is not a number. Type it like 3.4 or 2 1/4.`,
    };
  return fittingReading(check, { value, unit }, vocabulary);
}

/** A reading as one that the check can take, or the doubt about it. */
export function fittingReading(
  check: Check,
  reading: Reading,
  vocabulary: Vocabulary,
): { readonly reading: Reading | null; readonly doubt: string | null } {
  try {
    const converted = convertedReading(check, reading, vocabulary);
    const doubt = readingDoubt(reading.value, reading.unit, converted);
    if (doubt !== null) return { reading: null, doubt };
    readBands(check, converted.value, converted.uncertainty, converted.range);
    return { reading, doubt: null };
  } catch (problem) {
    if (problem instanceof ReadingError || problem instanceof UnitError)
      return { reading: null, doubt: problem.message };
    throw problem;
  }
}
