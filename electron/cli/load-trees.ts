import { join } from 'node:path';
import {
  readTree,
  readVocabulary,
  type Problem,
  type ReadTree,
  type Vocabulary,
} from '../../shared/knowledge/index.ts';
import { readTreeFolder } from '../host/tree-files.ts';

/** The trees that come with the program. */
export const SHIPPED_TREES = new URL('../../trees', import.meta.url).pathname;

export interface LoadedTrees {
  /** Null when the vocabulary has an error; then no tree is read. */
  readonly vocabulary: Vocabulary | null;
  readonly trees: ReadonlyMap<string, ReadTree>;
  /** Of the vocabulary and all trees. */
  readonly problems: readonly Problem[];
}

/** Ids of the complaints in the trees that come with the program. */
export async function shippedIds(): Promise<string[]> {
  return [...(await readTreeFolder(SHIPPED_TREES)).trees.keys()];
}

/**
 * Reads a folder of trees for the command lines and tests.
 *
 * @param options  `only` names the trees to read, for a tree takes a tenth of a second; the vocabulary is always read.
 */
export async function loadTrees(
  options: { readonly folder?: string; readonly label?: string; readonly only?: readonly string[] } = {},
): Promise<LoadedTrees> {
  const { folder = SHIPPED_TREES, label = 'trees', only } = options;
  const files = await readTreeFolder(folder);
  const vocabularyFiles = Object.fromEntries(
    Object.entries(files.vocabulary).map(([name, text]) => [join(label, name), text]),
  );
  const read = readVocabulary(vocabularyFiles);
  if (!read.value) return { vocabulary: null, trees: new Map(), problems: read.problems };
  const trees = new Map<string, ReadTree>();
  const problems = [...read.problems];
  for (const [id, text] of files.trees) {
    if (only && !only.includes(id)) continue;
    const tree = readTree({ treeYaml: text, file: join(label, id, 'tree.yaml'), vocabulary: read.value });
    trees.set(id, tree);
    problems.push(...tree.problems);
  }
  return { vocabulary: read.value, trees, problems };
}
