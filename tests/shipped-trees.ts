import { loadTrees, shippedIds, type LoadedTrees } from '../electron/cli/load-trees.ts';
import type { ReadTree } from '../shared/knowledge/index.ts';

/** Every tree that some test of this process has asked for. */
const known = new Map<string, ReadTree>();
let around: Promise<{ readonly ids: readonly string[]; readonly read: LoadedTrees }> | null = null;

async function readAround(): Promise<{ readonly ids: readonly string[]; readonly read: LoadedTrees }> {
  return { ids: await shippedIds(), read: await loadTrees({ only: [] }) };
}

/**
 * The trees that come with the program, each read once for all test files that share a process. Nobody may change them.
 *
 * @param only  ids of the trees that are wanted; all of them unless given.
 */
export async function shippedTrees(...only: readonly string[]): Promise<LoadedTrees> {
  around ??= readAround();
  const { ids, read } = await around;
  const wanted = ids.filter((id) => only.length === 0 || only.includes(id));
  const missing = wanted.filter((id) => !known.has(id));
  if (missing.length > 0)
    for (const [id, tree] of (await loadTrees({ only: missing })).trees) if (!known.has(id)) known.set(id, tree);
  const trees = new Map<string, ReadTree>();
  for (const id of wanted) {
    const tree = known.get(id);
    if (tree) trees.set(id, tree);
  }
  return {
    vocabulary: read.vocabulary,
    trees,
    problems: [...read.problems, ...[...trees.values()].flatMap(({ problems }) => problems)],
  };
}
