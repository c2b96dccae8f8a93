/** Reads and lints every tree: `npm run lint:trees [-- FOLDER]`. Exit code 1 when there is an error. */
import { relative, resolve } from 'node:path';
import { formatProblem, inFileOrder, lintTree } from '../../shared/knowledge/index.ts';
import { loadTrees, SHIPPED_TREES } from './load-trees.ts';
import { runCommand } from './usage.ts';

await runCommand(async () => {
  const folder = process.argv[2] === undefined ? SHIPPED_TREES : resolve(process.argv[2]);
  const { trees, vocabulary, problems } = await loadTrees(folder, relative(process.cwd(), folder) || '.');
  const all = [...problems];
  if (vocabulary)
    for (const { value, source } of trees.values()) if (value) all.push(...lintTree(value, vocabulary, source));
  for (const problem of inFileOrder(all)) console.log(formatProblem(problem));
  const errors = all.filter(({ level }) => level === 'error').length;
  console.log(`${trees.size} trees, ${errors} errors, ${all.length - errors} warnings`);
  return errors > 0 ? 1 : 0;
});
