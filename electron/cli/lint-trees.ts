/**
 * Reads and lints every tree of a folder: `npm run lint:trees [-- FOLDER]`.
 * Exit code 0 without an error, 1 with one, 2 when there is nothing that could be linted.
 */
import { relative, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { formatProblem, inFileOrder, lintTree, type Problem } from '../../shared/knowledge/index.ts';
import { loadTrees, SHIPPED_TREES, type LoadedTrees } from './load-trees.ts';
import { runCommand, UsageError } from './usage.ts';

const USE = 'Use: npm run lint:trees [-- FOLDER]';

/** The one folder that was named, or the shipped trees. @throws {UsageError} for anything else. */
function askedFolder(): string {
  const { positionals, values } = parseArgs({ allowPositionals: true, strict: false });
  const [option] = Object.keys(values);
  if (option !== undefined) throw new UsageError(`--${option} is not an option here. ${USE}`);
  if (positionals.length > 1)
    throw new UsageError(
      `${positionals.length} folders are named (${positionals.join(', ')}), one is wanted: a folder with vocabulary/ and one folder a tree. ${USE}`,
    );
  return positionals[0] === undefined ? SHIPPED_TREES : resolve(positionals[0]);
}

/** Reads a folder. A tree folder without its file is a fault of the trees; a folder without vocabulary is none of ours. */
async function load(folder: string, label: string): Promise<LoadedTrees> {
  try {
    return await loadTrees({ folder, label });
  } catch (problem) {
    if (!(problem instanceof Error && 'code' in problem && 'path' in problem)) throw problem;
    const missing = relative(process.cwd(), String(problem.path)) || '.';
    if (!missing.endsWith('tree.yaml'))
      throw new UsageError(
        `${missing} cannot be read (${String(problem.code)}). Name a folder with vocabulary/ and one folder a tree. ${USE}`,
      );
    const fault: Problem = {
      level: 'error',
      code: 'missing-file',
      file: missing,
      line: 1,
      column: 1,
      message: `This file cannot be read (${String(problem.code)}). Every folder but vocabulary/ and pictures/ is a tree: add the file, or move the folder away.`,
    };
    return { vocabulary: null, trees: new Map(), problems: [fault] };
  }
}

await runCommand(async () => {
  const folder = askedFolder();
  const { trees, vocabulary, problems } = await load(folder, relative(process.cwd(), folder) || '.');
  const all = [...problems];
  for (const [id, { value, source }] of trees) {
    if (!value || !vocabulary) continue;
    const found = lintTree(value, vocabulary, source);
    all.push(...found);
    if (value.id === id) continue;
    source.error('id-is-not-the-folder', ['id'], `"${value.id}" lies in the folder "${id}". Make the two the same.`);
    all.push(source.problems.at(-1)!);
  }
  for (const problem of inFileOrder(all)) console.log(formatProblem(problem));
  const errors = all.filter(({ level }) => level === 'error').length;
  console.log(`${trees.size} trees, ${errors} errors, ${all.length - errors} warnings`);
  return errors > 0 ? 1 : 0;
});
