import * as v from 'valibot';
import { checkShape } from '../check-shape.ts';
import { lintTree } from '../lint/index.ts';
import { readTree } from '../read-tree.ts';
import { readVocabulary } from '../read-vocabulary.ts';
import { SourceFile } from '../source-file.ts';
import { PACK_LIMITS } from './pack-limits.ts';
import { misplacedFile, topFolder, unsafePath } from './pack-paths.ts';
import { fromProblem, packError, type PackProblem } from './pack-problem.ts';
import { unsafeDrawing } from './unsafe-drawing.ts';

/** What a pack says of itself. */
export interface PackHead {
  readonly name: string;
  readonly version: number;
}

/** A pack whose every file has been looked at. */
export interface Pack extends PackHead {
  /** Complaint ids, by name. */
  readonly trees: readonly string[];
  /** File → text, below the pack's own folder; nothing else of what came is kept. */
  readonly files: Readonly<Record<string, string>>;
}

export interface PackRead {
  /** Null when there is any error: a pack is taken whole or not at all. */
  readonly value: Pack | null;
  readonly problems: readonly PackProblem[];
}

/** A file as it came; `text` is null when its bytes are no UTF-8. */
export interface PackFile {
  readonly path: string;
  readonly text: string | null;
}

/** What a pack may lean on without bringing it. */
export interface BuiltIn {
  /** "vocabulary/limits.yaml" → text. */
  readonly vocabulary: Readonly<Record<string, string>>;
  /** File names of the drawings that come with the program. */
  readonly pictures: ReadonlySet<string>;
}

const head = v.strictObject({
  format: v.literal('droplight-pack/1'),
  name: v.pipe(
    v.string(),
    v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'a name: lower-case letters, digits and single hyphens'),
    v.maxLength(40, 'at most 40 characters'),
  ),
  version: v.pipe(v.number(), v.integer('a whole number'), v.minValue(1, '1 or more'), v.maxValue(1_000_000)),
});

/** Reads what a pack says of itself: `format`, `name`, `version` and nothing else. */
export function readPackHead(text: string): { readonly value: PackHead | null; readonly problems: PackProblem[] } {
  const file = new SourceFile('pack.yaml', text);
  const data = file.data();
  const read = data === undefined ? null : checkShape(file, head, data ?? {});
  return { value: read ? { name: read.name, version: read.version } : null, problems: file.problems.map(fromProblem) };
}

/** The text of a pack.yaml that says this. */
export function packHeadText({ name, version }: PackHead): string {
  return `format: droplight-pack/1\nname: ${name}\nversion: ${version}\n`;
}

/**
 * Reads a pack from somebody else. Everything in it is taken for hostile: paths, names, sizes, drawings and trees are all
 * looked at before anything is kept.
 *
 * @returns the pack, or null with every problem: its code, file, and line where there is one.
 */
export function readPack(came: readonly PackFile[], builtIn: BuiltIn): PackRead {
  const refused = tooMuch(came);
  if (refused.length > 0) return { value: null, problems: refused };
  const unsafe = came.flatMap(({ path }) => unsafePath(path) ?? []);
  if (unsafe.length > 0) return { value: null, problems: unsafe };

  const top = topFolder(came.map(({ path }) => path));
  const problems: PackProblem[] = [];
  const files = new Map<string, string>();
  for (const { path, text } of came) {
    const below = path.slice(top.length);
    const misplaced = misplacedFile(below);
    if (misplaced) problems.push(misplaced);
    else if (files.has(below))
      problems.push(packError('file-twice', below, 'The pack holds this file twice. Take one of the two out.'));
    else if (text === null)
      problems.push(packError('not-text', below, 'The file is not text in UTF-8. Save it so, or take it out.'));
    else files.set(below, text);
  }
  // What is hostile or misplaced is said by itself; reading on would bury it.
  if (problems.length > 0) return { value: null, problems };

  const headText = files.get('pack.yaml');
  const said = headText === undefined ? null : readPackHead(headText);
  if (said) problems.push(...said.problems);
  else
    problems.push(
      packError(
        'no-pack-file',
        'pack.yaml',
        'The pack has no pack.yaml at its top. Add one with three lines: "format: droplight-pack/1", "name: …" and "version: 1".',
      ),
    );
  const trees = [...files.keys()].filter((path) => path.endsWith('/tree.yaml')).map((path) => path.split('/')[0]!);
  if (trees.length === 0)
    problems.push(packError('no-trees', 'the pack', 'The pack holds no tree. Add TREE/tree.yaml for each complaint.'));
  problems.push(...contentProblems(files, trees, builtIn));
  if (problems.some(({ level }) => level === 'error') || !said?.value) return { value: null, problems };
  return { value: { ...said.value, trees: trees.sort(), files: Object.fromEntries(files) }, problems };
}

function tooMuch(came: readonly PackFile[]): PackProblem[] {
  if (came.length > PACK_LIMITS.files)
    return [
      packError(
        'too-many-files',
        'the pack',
        `The pack holds ${came.length} files; at most ${PACK_LIMITS.files} are taken. Split it into two packs.`,
      ),
    ];
  const problems: PackProblem[] = [];
  let all = 0;
  for (const { path, text } of came) {
    // At most three bytes of UTF-8 a unit of text; counting units is enough to keep out what is far too large.
    const size = text?.length ?? 0;
    all += size;
    if (size > PACK_LIMITS.fileBytes) problems.push(fileTooLarge(path));
  }
  if (all > PACK_LIMITS.unpackedBytes) problems.push(packTooLarge());
  return problems;
}

/** One file of the pack is beyond the limit. */
export function fileTooLarge(path: string): PackProblem {
  return packError(
    'file-too-large',
    path,
    `The file has more than ${megabytes(PACK_LIMITS.fileBytes)}; more is not taken. Make it smaller, or take it out.`,
  );
}

/** All files together are beyond the limit. */
export function packTooLarge(): PackProblem {
  return packError(
    'pack-too-large',
    'the pack',
    `The pack has more than ${megabytes(PACK_LIMITS.unpackedBytes)} when unpacked; more is not taken. Split it into two packs.`,
  );
}

function megabytes(bytes: number): string {
  return `${bytes / 1_048_576} MB`;
}

function contentProblems(
  files: ReadonlyMap<string, string>,
  trees: readonly string[],
  builtIn: BuiltIn,
): readonly PackProblem[] {
  if (trees.length > PACK_LIMITS.trees)
    return [
      packError(
        'too-many-trees',
        'the pack',
        `The pack holds ${trees.length} trees; at most ${PACK_LIMITS.trees} are taken. Split it into two packs.`,
      ),
    ];
  const own = [...files].filter(([path]) => path.startsWith('vocabulary/'));
  const problems: PackProblem[] = [];
  for (const [path, text] of files) {
    const part = path.startsWith('pictures/') ? unsafeDrawing(text) : null;
    if (part)
      problems.push({ level: 'error', code: 'unsafe-drawing', file: path, line: part.line, message: part.message });
  }
  const vocabulary = readVocabulary({ ...builtIn.vocabulary, ...Object.fromEntries(own) });
  problems.push(...vocabulary.problems.map(fromProblem));
  if (!vocabulary.value) return problems;
  for (const id of trees) {
    const file = `${id}/tree.yaml`;
    const {
      value,
      source,
      problems: reading,
    } = readTree({
      treeYaml: files.get(file)!,
      file,
      vocabulary: vocabulary.value,
    });
    problems.push(...reading.map(fromProblem));
    if (!value) continue;
    problems.push(...lintTree(value, vocabulary.value, source).map(fromProblem));
    if (value.id !== id)
      problems.push({
        level: 'error',
        code: 'id-is-not-the-folder',
        file,
        line: source.lineOf(['id']),
        message: `"${value.id}" lies in the folder "${id}". Make the two the same.`,
      });
    const missing = new Set(
      value.checks
        .flatMap(({ pictures }) => pictures.map((picture) => picture.file))
        .filter((name) => !files.has(`pictures/${name}`) && !builtIn.pictures.has(name)),
    );
    for (const name of missing)
      problems.push({
        level: 'error',
        code: 'missing-picture',
        file,
        line: source.lineOf(['pictures']),
        message: `The drawing "${name}" is neither in the pack nor in the program. Add it as pictures/${name}, or take its line out.`,
      });
  }
  return problems;
}
