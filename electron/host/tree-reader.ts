import { readTree, readVocabulary, treeData, type Problem, type TreeData } from '../../shared/knowledge/index.ts';
import type { HostAnswer } from '../../shared/host/host-api.ts';
import type { TreeSnapshot } from './tree-files.ts';

/** What came of reading a tree: the tree as data, or the first fault in words. */
type Read = { readonly read: TreeData; readonly fault: null } | { readonly read: null; readonly fault: string };

/** Trees kept in memory: as many as a visit may have complaints, and a few of the list. */
const KEPT = 24;

/**
 * Reads trees for the window, which gets them as data: the text of a stranger's pack is parsed here alone. What has been
 * read is kept by its content hash.
 */
export class TreeReader {
  readonly #read = new Map<string, Read>();

  /** A tree as the window asks for it. */
  answer({ id, hash, files, pack, drawings }: TreeSnapshot): HostAnswer<'trees.read'> {
    let known = this.#read.get(hash);
    if (!known) {
      known = this.#anew(id, files);
      const oldest = this.#read.keys().next();
      if (this.#read.size >= KEPT && !oldest.done) this.#read.delete(oldest.value);
      this.#read.set(hash, known);
    }
    return { id, hash, ...known, ...(pack ? { pack } : {}), ...(drawings ? { drawings } : {}) };
  }

  #anew(id: string, files: TreeSnapshot['files']): Read {
    const { 'tree.yaml': treeYaml = '', ...vocabularyFiles } = files;
    const { value: vocabulary, problems } = readVocabulary(vocabularyFiles);
    const tree = vocabulary ? readTree({ treeYaml, file: `${id}/tree.yaml`, vocabulary }) : null;
    if (vocabulary && tree?.value) return { read: treeData(tree.value, vocabulary), fault: null };
    return { read: null, fault: faultIn([...problems, ...(tree?.problems ?? [])]) };
  }
}

/** The first error at its place; a file that cannot be read has one. */
function faultIn(problems: readonly Problem[]): string {
  const first = problems.find(({ level }) => level === 'error');
  return first ? `${first.file}, line ${first.line}: ${first.message}` : 'It cannot be read.';
}
