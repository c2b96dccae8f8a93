import { readTree, readVocabulary, type Tree } from '../../shared/knowledge/index.ts';
import type { Notice, TreeSnapshotAnswer } from '../../shared/host/host-api.ts';
import type { PinnedTree } from '../../shared/visit/index.ts';

/** A tree ready for use, with the hash that a complaint pins. */
export interface LoadedTree extends PinnedTree {
  readonly hash: string;
}

/** Reads a snapshot; null with a notice when it has errors. */
export function loadSnapshot(snapshot: TreeSnapshotAnswer): { tree: LoadedTree | null; notices: Notice[] } {
  const { 'tree.yaml': treeYaml = '', ...vocabularyFiles } = snapshot.files;
  const vocabulary = readVocabulary(vocabularyFiles);
  const read = vocabulary.value
    ? readTree({ treeYaml, file: `${snapshot.id}/tree.yaml`, vocabulary: vocabulary.value })
    : null;
  if (vocabulary.value && read?.value)
    return { tree: { tree: read.value, vocabulary: vocabulary.value, hash: snapshot.hash }, notices: [] };
  const first = [...vocabulary.problems, ...(read?.problems ?? [])].find(({ level }) => level === 'error');
  const where = first ? `${first.file}, line ${first.line}: ${first.message}` : '';
  return {
    tree: null,
    notices: [
      {
        code: 'tree-broken',
        message: `The complaint “${snapshot.id}” cannot be used until its file is mended. ${where}`,
      },
    ],
  };
}

/** Name of a check, cause or complaint for texts that refer to it. */
export function nameIn(tree: Tree | null, others: readonly LoadedTree[], id: string): string | undefined {
  return (
    tree?.checks.find((check) => check.id === id)?.name ??
    tree?.causes.find((cause) => cause.id === id)?.name ??
    others.find((each) => each.tree.id === id)?.tree.title ??
    tree?.checks.flatMap(({ results }) => results).find((result) => result.id === id)?.label
  );
}
