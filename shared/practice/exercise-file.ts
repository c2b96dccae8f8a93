import * as v from 'valibot';
import { checkShape } from '../knowledge/check-shape.ts';
import { fitOf, type Layout } from '../knowledge/layout.ts';
import { nearestText } from '../knowledge/names.ts';
import { inFileOrder, type Problem, type ReadResult } from '../knowledge/problem.ts';
import { SourceFile, type Path } from '../knowledge/source-file.ts';
import { isAnswerTo, valuesOf } from '../knowledge/layout-answer.ts';
import { UNLISTED, type Tree } from '../knowledge/tree.ts';
import type { Vocabulary } from '../knowledge/vocabulary.ts';
import { drawFor, evenly } from './draw.ts';
import { exerciseWith, type Exercise } from './exercise.ts';
import { usualLayout } from './layouts.ts';

/** What counts as passed. What is not asked for does not matter; an unsafe choice never passes. */
export interface PassRule {
  /** The fault was corrected, or rightly handed over. */
  readonly found: boolean;
  /** The cure was proven. */
  readonly proven: boolean;
  /** At most so many. */
  readonly wrongParts?: number;
  readonly hints?: number;
  /** Minutes of work at most. */
  readonly minutes?: number;
}

/** An exercise as an instructor writes it. */
export interface ExerciseFile {
  readonly title: string;
  readonly complaint: string;
  /** What the instructor says to whoever opens it; may be empty. */
  readonly note: string;
  readonly layout: Layout;
  readonly words?: string;
  /** One of these is hidden; several are drawn from. */
  readonly causes: readonly string[];
  readonly results: Readonly<Record<string, string>>;
  readonly answers: Readonly<Record<string, 'yes' | 'no'>>;
  readonly passed: PassRule;
}

export const EXERCISE_FORMAT = 'droplight-exercise/1';
/** Characters of an exercise file, at most. */
export const LONGEST_FILE = 100_000;

const id = v.pipe(
  v.string(),
  v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'an id: lower-case letters, digits and single hyphens'),
);
const text = v.pipe(v.string(), v.trim(), v.minLength(1, 'some text'), v.maxLength(2000, 'at most 2000 characters'));
const count = v.pipe(v.number(), v.integer('a whole number'), v.minValue(0, '0 or more'));

const shape = v.strictObject({
  format: v.literal(EXERCISE_FORMAT),
  title: text,
  complaint: id,
  note: v.optional(text),
  layout: v.optional(v.record(id, v.union([v.string(), v.boolean(), v.array(v.string())])), {}),
  words: v.optional(text),
  cause: v.optional(id),
  causes: v.optional(v.pipe(v.array(id), v.minLength(1, 'at least one cause'))),
  results: v.optional(v.record(id, id), {}),
  answers: v.optional(v.record(id, v.picklist(['yes', 'no'])), {}),
  passed: v.optional(
    v.strictObject({
      found: v.optional(v.boolean(), true),
      proven: v.optional(v.boolean(), true),
      wrongParts: v.optional(count),
      hints: v.optional(count),
      minutes: v.optional(count),
    }),
    {},
  ),
});

/** The complaint that a file names, before its tree is at hand; null when it names none. */
export function complaintOfFile(yaml: string): string | null {
  const found = /^complaint:\s*["']?([a-z0-9-]+)["']?\s*(#.*)?$/m.exec(yaml);
  return found?.[1] ?? null;
}

/**
 * Reads an exercise file.
 *
 * @param input.complaints  ids of all complaints that the program knows, for the message.
 * @param input.known       tree and vocabulary of the complaint that the file names; null when there is none.
 * @returns `value` is null when there is any error; `problems` holds all of them, each with line and column.
 */
export function readExerciseFile(input: {
  readonly text: string;
  readonly file: string;
  readonly complaints: readonly string[];
  readonly known: { readonly tree: Tree; readonly vocabulary: Vocabulary } | null;
}): ReadResult<ExerciseFile> {
  const { file, complaints, known } = input;
  const source = new SourceFile(file, input.text.slice(0, LONGEST_FILE));
  if (input.text.length > LONGEST_FILE)
    source.error('too-long', [], `The file has more than ${LONGEST_FILE} characters. An exercise needs a few lines.`);
  const data = source.data();
  if (data === null) source.error('empty-file', [], `The file is empty. Begin with "format: ${EXERCISE_FORMAT}".`);
  const written = data === undefined || data === null ? null : checkShape(source, shape, data);
  if (!written) return done(source.problems, null);
  if (known?.tree.id !== written.complaint) {
    source.error(
      'unknown-complaint',
      ['complaint'],
      `"${written.complaint}" is not a complaint that this program knows.${nearestText(written.complaint, complaints)}`,
    );
    return done(source.problems, null);
  }
  const causes = causesIn(source, written, known.tree);
  const layout = layoutIn(source, written.layout, causes, known);
  holdResults(source, written.results, known.tree);
  holdAnswers(source, written.answers, known.tree);
  const { wrongParts, hints, minutes, ...asked } = written.passed;
  const passed: PassRule = {
    ...{ found: true, proven: true },
    ...asked,
    ...(wrongParts === undefined ? {} : { wrongParts }),
    ...(hints === undefined ? {} : { hints }),
    ...(minutes === undefined ? {} : { minutes }),
  };
  if (passed.proven && causes.includes(UNLISTED))
    source.error(
      'cannot-be-proven',
      ['passed'],
      'A cause that is not in the list cannot be corrected and proven here. Write "passed: { proven: false }".',
    );
  return done(source.problems, {
    title: written.title,
    complaint: written.complaint,
    note: written.note ?? '',
    layout,
    ...(written.words === undefined ? {} : { words: written.words }),
    causes,
    results: written.results,
    answers: written.answers,
    passed,
  });
}

function done(problems: readonly Problem[], value: ExerciseFile | null): ReadResult<ExerciseFile> {
  const sorted = inFileOrder(problems);
  return { problems: sorted, value: sorted.some(({ level }) => level === 'error') ? null : value };
}

function causesIn(source: SourceFile, written: v.InferOutput<typeof shape>, tree: Tree): readonly string[] {
  const { cause, causes } = written;
  if ((cause === undefined) === (causes === undefined))
    source.error(
      'one-of-two',
      cause === undefined ? [] : ['causes'],
      'Write either "cause" with one id, or "causes" with a list of which one is drawn.',
    );
  const known = [...tree.causes.map((each) => each.id), UNLISTED];
  const named: readonly (readonly [string, Path])[] = [
    ...(cause === undefined ? [] : [[cause, ['cause']] as const]),
    ...(causes ?? []).map((each, i) => [each, ['causes', i]] as const),
  ];
  for (const [each, path] of named)
    if (!known.includes(each))
      source.error('unknown-cause', path, `"${each}" is not a cause of "${tree.id}".${nearestText(each, known)}`);
  return named.map(([each]) => each);
}

function layoutIn(
  source: SourceFile,
  written: Layout,
  causes: readonly string[],
  { tree, vocabulary }: { readonly tree: Tree; readonly vocabulary: Vocabulary },
): Layout {
  for (const [feature, value] of Object.entries(written)) {
    const known = vocabulary.layout.find((each) => each.id === feature);
    const path: Path = ['layout', feature];
    if (!known) {
      const ids = vocabulary.layout.map((each) => each.id);
      source.error('unknown-feature', path, `"${feature}" is not a layout feature.${nearestText(feature, ids)}`);
    } else if (!isAnswerTo(known, value)) {
      const allowed = known.values.map((each) => String(each.value)).join(', ');
      source.error(
        'unknown-feature-value',
        path,
        `"${valuesOf(value).join(', ')}" is not a value of "${feature}". Allowed: ${allowed}${known.together ? `; together: ${known.together.join(', ')}` : ''}.`,
      );
    }
  }
  const layout = { ...usualLayout(tree, vocabulary), ...written };
  for (const cause of causes) {
    const fit = fitOf(tree.causes.find((each) => each.id === cause)?.when ?? {}, layout);
    if (fit.fits === 'no')
      source.error(
        'cause-does-not-fit',
        'layout' in written ? ['layout', fit.feature] : ['layout'],
        `"${cause}" cannot be on a coach with ${fit.feature}: ${String(layout[fit.feature])}. Write another value under "layout", or hide another cause.`,
      );
  }
  return layout;
}

function holdResults(source: SourceFile, results: Readonly<Record<string, string>>, tree: Tree): void {
  for (const [check, result] of Object.entries(results)) {
    const known = tree.checks.find((each) => each.id === check);
    if (!known) {
      const ids = tree.checks.map((each) => each.id);
      source.error(
        'unknown-check',
        ['results', check],
        `"${check}" is not a check of "${tree.id}".${nearestText(check, ids)}`,
      );
      continue;
    }
    const ids = known.results.map((each) => each.id);
    if (!ids.includes(result))
      source.error(
        'unknown-result',
        ['results', check],
        `"${result}" is not a result of "${check}". Allowed: ${ids.join(', ')}.${nearestText(result, ids)}`,
      );
  }
}

function holdAnswers(source: SourceFile, answers: Readonly<Record<string, string>>, tree: Tree): void {
  const ids = tree.stopRules.map((each) => each.id);
  for (const rule of Object.keys(answers))
    if (!ids.includes(rule))
      source.error(
        'unknown-rule',
        ['answers', rule],
        `"${rule}" is not a stop rule of "${tree.id}".${nearestText(rule, ids)}`,
      );
}

/** The exercise of a file. @param seed  whatever tells this handing-out from another: the same one draws the same. */
export function exerciseOfFile(
  file: ExerciseFile,
  known: { readonly tree: Tree; readonly vocabulary: Vocabulary },
  seed: string,
): Exercise {
  const { title, layout, causes, words, results, answers } = file;
  return exerciseWith(known, {
    seed,
    name: title,
    layout,
    cause: causes[drawFor(seed, 'cause', evenly(causes.length))]!,
    forced: { results, answers, ...(words === undefined ? {} : { words }) },
  });
}
