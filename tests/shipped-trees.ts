import { loadTrees, type LoadedTrees } from '../electron/cli/load-trees.ts';

const read = new Map<string, Promise<LoadedTrees>>();

/** The trees that come with the program, read once for all test files that share a process. Nobody may change them. */
export function shippedTrees(...only: readonly string[]): Promise<LoadedTrees> {
  const key = only.join(' ');
  let mine = read.get(key);
  if (!mine) {
    mine = loadTrees(only.length > 0 ? { only } : {});
    read.set(key, mine);
  }
  return mine;
}
