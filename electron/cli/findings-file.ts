import * as v from 'valibot';
import { readBands, ReadingError, type Finding } from '../../shared/inference/index.ts';
import type { Check, Tree, Vocabulary } from '../../shared/knowledge/index.ts';
import { nearestText } from '../../shared/knowledge/names.ts';
import { convert, convertDifference, formatQuantity, unitOf, unitsLike, UnitError } from '../../shared/units/index.ts';
import { oneOf, UsageError } from './usage.ts';

const ENTRY = v.strictObject({
  check: v.string(),
  result: v.optional(v.string()),
  reading: v.optional(v.pipe(v.number(), v.finite())),
  unit: v.optional(v.string()),
  answer: v.optional(v.string()),
  site: v.optional(v.string()),
});
type Entry = v.InferOutput<typeof ENTRY>;
const KEYS = Object.keys(ENTRY.entries);

/**
 * Findings as written for the command line.
 *
 * @param text  JSON: a list of {check, result} | {check, reading, unit} | {check, answer: "not-sure" | "cant-do"}; with
 *   "not-sure" a result may say what it looks like; any entry may name a site.
 * @param file  name for messages.
 * @throws {UsageError} for anything that does not fit, naming entry, value, what is allowed and the nearest spelling.
 */
export function readFindings(text: string, file: string, tree: Tree, vocabulary: Vocabulary): Finding[] {
  const data = parse(text, file);
  if (!Array.isArray(data))
    throw new UsageError(
      `${file}: a list of findings is wanted, as in [{"check": "…", "result": "…"}]. Found: ${typeof data}.`,
    );
  return data.map((each: unknown, i) => {
    const where = `${file}, entry ${i + 1}`;
    const parsed = v.safeParse(ENTRY, each);
    if (!parsed.success) throw new UsageError(`${where}: ${explain(parsed.issues[0], each)}`);
    return findingOf(parsed.output, where, i, tree, vocabulary);
  });
}

function findingOf(entry: Entry, where: string, index: number, tree: Tree, vocabulary: Vocabulary): Finding {
  const check = tree.checks.find(({ id }) => id === entry.check);
  if (!check)
    throw new UsageError(
      `${where}: check "${entry.check}" is not in tree "${tree.id}".${nearestText(
        entry.check,
        tree.checks.map(({ id }) => id),
      )}`,
    );
  const base = {
    id: `finding-${index + 1}`,
    check: check.id,
    ...(entry.site === undefined ? {} : { site: entry.site }),
  };
  if (entry.answer !== undefined) {
    const answer = oneOf(entry.answer, ['not-sure', 'cant-do'] as const, `${where}: answer`);
    if (entry.reading !== undefined)
      throw new UsageError(`${where}: a reading and an answer exclude each other. Keep one of them.`);
    if (answer === 'cant-do') return { ...base, value: { kind: 'cant-do' } };
    return {
      ...base,
      value:
        entry.result === undefined
          ? { kind: 'not-sure' }
          : { kind: 'not-sure', leaning: resultOf(check, entry.result, where) },
    };
  }
  if (entry.reading !== undefined) {
    if (entry.result !== undefined)
      throw new UsageError(`${where}: a reading and a result exclude each other. Keep one of them.`);
    return { ...base, value: readingOf(check, entry.reading, entry.unit, where, vocabulary) };
  }
  if (entry.unit !== undefined) throw new UsageError(`${where}: a unit without a reading. Add "reading".`);
  if (entry.result === undefined) throw new UsageError(`${where}: one of "result", "reading" or "answer" is wanted.`);
  return { ...base, value: { kind: 'result', result: resultOf(check, entry.result, where) } };
}

function resultOf(check: Check, result: string, where: string): string {
  return oneOf(
    result,
    check.results.map(({ id }) => id),
    `${where}: result of "${check.id}"`,
  );
}

function readingOf(
  check: Check,
  reading: number,
  unit: string | undefined,
  where: string,
  vocabulary: Vocabulary,
): Finding['value'] {
  if (!check.measure)
    throw new UsageError(
      `${where}: check "${check.id}" measures nothing. Give one of its results: ${check.results.map(({ id }) => id).join(', ')}.`,
    );
  const { measure } = check;
  const instrument = vocabulary.instruments.get(measure.instrument)!;
  if (unit === undefined)
    throw new UsageError(
      `${where}: the reading has no unit. Allowed: ${unitsLike(measure.unit)
        .map(({ id }) => id)
        .join(', ')}.`,
    );
  try {
    const value = convert(reading, unitOf(unit).id, measure.unit);
    const range = [
      convert(instrument.range[0], instrument.unit, measure.unit),
      convert(instrument.range[1], instrument.unit, measure.unit),
    ] as const;
    if (value < range[0] || value > range[1]) {
      throw new UsageError(
        `${where}: ${reading} ${unit} is outside what a ${instrument.name} can show (${formatQuantity(range[0], measure.unit)} to ${formatQuantity(range[1], measure.unit)}). Look at figure and unit.`,
      );
    }
    const uncertainty = convertDifference(instrument.uncertainty, instrument.unit, measure.unit);
    readBands(check, value, uncertainty, range);
    return { kind: 'reading', value, uncertainty, range };
  } catch (problem) {
    if (problem instanceof UnitError || problem instanceof ReadingError)
      throw new UsageError(`${where}: ${problem.message}`);
    throw problem;
  }
}

function parse(text: string, file: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch (problem) {
    if (!(problem instanceof SyntaxError)) throw problem;
    const at = /position (\d+)/.exec(problem.message);
    const before = text.slice(0, at ? Number(at[1]) : text.length).split('\n');
    throw new UsageError(
      `${file}:${before.length}:${before.at(-1)!.length + 1}: not JSON. ${problem.message}. Correct the file here.`,
    );
  }
}

function explain(issue: v.BaseIssue<unknown>, entry: unknown): string {
  const step = issue.path?.[0]?.key;
  const key = typeof step === 'string' ? step : '';
  if (issue.type === 'strict_object' && issue.expected === 'never')
    return `"${key}" is not a key of a finding.${nearestText(key, KEYS)} Allowed: ${KEYS.join(', ')}.`;
  if (issue.received === 'undefined') return `"${key}" is missing.`;
  if (key === '')
    return `${JSON.stringify(entry)} is not a finding. Wanted is {"check": "…", "result": "…"} or the like.`;
  return `"${key}" is ${JSON.stringify(issue.input)}, wanted is ${issue.expected ?? issue.message}.`;
}
