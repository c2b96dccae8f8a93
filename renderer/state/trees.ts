import { vocabularyFrom, type Tree, type TreeCard } from '../../shared/knowledge/index.ts';
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

/** A tree as the machine side read it; null with a notice when its files have an error. */
export function loadSnapshot(snapshot: TreeSnapshotAnswer): { tree: LoadedTree | null; notices: Notice[] } {
  const { hash, drawings, read } = snapshot;
  if (read) {
    const vocabulary = vocabularyFrom(read.vocabulary);
    return { tree: { tree: read.tree, vocabulary, hash, ...(drawings ? { drawings } : {}) }, notices: [] };
  }
  return {
    tree: null,
    notices: [
      {
        code: 'tree-broken',
        message: `The complaint “${snapshot.id}” cannot be used until its file is mended. ${snapshot.fault ?? ''}`,
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
