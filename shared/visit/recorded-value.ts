import type { FindingValue } from '../inference/index.ts';
import { ReadingError } from '../inference/index.ts';
import type { Check, Tree } from '../knowledge/tree.ts';
import type { Vocabulary } from '../knowledge/vocabulary.ts';
import { possibleResults } from '../planning/index.ts';
import { convert, convertDifference, UnitError } from '../units/index.ts';
import type { RecordedValue, Reading } from './events.ts';

/** A reading in the unit of its check, with what its instrument can tell. */
export type ConvertedReading = Extract<FindingValue, { kind: 'reading' }>;

/**
 * A reading as typed → in the unit of the check, with its uncertainty and the instrument's range in the same unit. The
 * uncertainty is the instrument's, or that of the calculation which the reading was worked out by.
 *
 * @throws {UnitError} when the unit does not measure what the check measures.
 */
export function convertedReading(check: Check, reading: Reading, vocabulary: Vocabulary): ConvertedReading {
  const measure = check.measure;
  if (!measure)
    throw new UnitError('different-quantities', `"${check.name}" measures nothing. Choose one of its results.`);
  const instrument =
    vocabulary.instruments.get(reading.instrument ?? measure.instrument) ??
    vocabulary.instruments.get(measure.instrument)!;
  return {
    kind: 'reading',
    value: convert(reading.value, reading.unit, measure.unit),
    uncertainty: reading.worked
      ? convertDifference(reading.worked.uncertainty, reading.unit, measure.unit)
      : convertDifference(instrument.uncertainty, instrument.unit, measure.unit),
    range: [
      convert(instrument.range[0], instrument.unit, measure.unit),
      convert(instrument.range[1], instrument.unit, measure.unit),
    ],
  };
}

/** A recorded value as inference takes it; null when a reading cannot be used with this tree (unit or band unknown). */
export function findingValue(check: Check, value: RecordedValue, vocabulary: Vocabulary): FindingValue | null {
  if (value.kind === 'result') return check.results.some(({ id }) => id === value.result) ? value : null;
  if (value.kind === 'not-sure') return value;
  if (value.kind === 'cant-do') return { kind: 'cant-do' };
  try {
    const converted = convertedReading(check, value.reading, vocabulary);
    possibleResults(check, { id: '', check: check.id, value: converted });
    return converted;
  } catch (problem) {
    // A log may hold a reading from another version of the tree; it stays in the trail and carries no weight.
    if (problem instanceof UnitError || problem instanceof ReadingError) return null;
    throw problem;
  }
}

/** Results a recorded value may stand for; none when it cannot be used. */
export function recordedResults(
  tree: Tree,
  vocabulary: Vocabulary,
  checkId: string,
  value: RecordedValue,
): readonly string[] {
  const check = tree.checks.find(({ id }) => id === checkId);
  const used = check && findingValue(check, value, vocabulary);
  return used ? possibleResults(check, { id: '', check: checkId, value: used }) : [];
}
