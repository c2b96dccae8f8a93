import {
  readTree,
  readVocabulary,
  type LayoutFeature,
  type Tree,
  type TreeCard,
} from '../../shared/knowledge/index.ts';
import type { Notice, TreeSnapshotAnswer } from '../../shared/host/host-api.ts';
import type { PinnedTree } from '../../shared/visit/index.ts';

/** A tree ready for use, with the hash that a complaint pins. */
export interface LoadedTree extends PinnedTree {
  readonly hash: string;
  /** Drawings that came with the tree's pack: file name → SVG text. */
  readonly drawings?: Readonly<Record<string, string>>;
}

/** A complaint that can be opened: its card, and the hash of the tree behind it. */
export interface ListedTree {
  readonly hash: string;
  readonly card: TreeCard;
  /** The pack that it came with; absent = it came with the program. */
  readonly pack?: { readonly name: string; readonly version: number } | undefined;
}

/** Tells listed trees apart: two may have one id, when one of them came with a pack. */
export function listedKey({ card, pack }: ListedTree): string {
  return pack ? `${pack.name}/${card.id}` : card.id;
}

/** The last vocabulary read: most trees share it, and reading it takes as long as reading a tree. */
let lastVocabulary: { readonly text: string; readonly read: ReturnType<typeof readVocabulary> } | null = null;

function vocabularyOf(files: Readonly<Record<string, string>>): ReturnType<typeof readVocabulary> {
  const text = JSON.stringify(files);
  if (lastVocabulary?.text !== text) lastVocabulary = { text, read: readVocabulary(files) };
  return lastVocabulary.read;
}

/** The questions about the layout, from the vocabulary of any tree; empty when it cannot be read. */
export function layoutIn({ files }: TreeSnapshotAnswer): readonly LayoutFeature[] {
  const vocabulary = Object.fromEntries(Object.entries(files).filter(([name]) => name !== 'tree.yaml'));
  return vocabularyOf(vocabulary).value?.layout ?? [];
}

/** Reads a snapshot; null with a notice when it has errors. */
export function loadSnapshot(snapshot: TreeSnapshotAnswer): { tree: LoadedTree | null; notices: Notice[] } {
  const { 'tree.yaml': treeYaml = '', ...vocabularyFiles } = snapshot.files;
  const { value: vocabulary, problems } = vocabularyOf(vocabularyFiles);
  const read = vocabulary ? readTree({ treeYaml, file: `${snapshot.id}/tree.yaml`, vocabulary }) : null;
  if (vocabulary && read?.value) {
    const { hash, drawings } = snapshot;
    return { tree: { tree: read.value, vocabulary, hash, ...(drawings ? { drawings } : {}) }, notices: [] };
  }
  const first = [...problems, ...(read?.problems ?? [])].find(({ level }) => level === 'error');
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
export function nameIn(tree: Tree | TreeCard | null, listed: readonly ListedTree[], id: string): string | undefined {
  return (
    tree?.checks.find((check) => check.id === id)?.name ??
    tree?.causes.find((cause) => cause.id === id)?.name ??
    listed.find(({ card }) => card.id === id)?.card.title ??
    tree?.checks.flatMap((check) => ('results' in check ? check.results : [])).find((result) => result.id === id)?.label
  );
}
