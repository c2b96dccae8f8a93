import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { PackHead } from '../../shared/knowledge/pack/index.ts';
import { hashText } from '../../shared/knowledge/tree-hash.ts';

/** The knowledge files of a folder as text: what the window reads, what is hashed, what is kept beside a visit. */
export interface TreeFolder {
  /** "vocabulary/limits.yaml" → text. */
  readonly vocabulary: Readonly<Record<string, string>>;
  /** Complaint id → text of its tree.yaml. In the order of the names. */
  readonly trees: ReadonlyMap<string, string>;
}

/** A tree with its vocabulary, as sent to the window. */
export interface TreeSnapshot {
  readonly id: string;
  /** SHA-256 over names and contents, hex. */
  readonly hash: string;
  /** "tree.yaml" and "vocabulary/*.yaml" → text. */
  readonly files: Readonly<Record<string, string>>;
  /** The pack that it came with; absent = it came with the program. */
  readonly pack?: PackHead;
  /** Drawings of the pack that the tree names: file name → SVG text. Not part of the hash. */
  readonly drawings?: Readonly<Record<string, string>>;
}

/**
 * Reads `vocabulary/*.yaml` and every `<id>/tree.yaml` below a folder.
 *
 * @throws the system's error when the folder cannot be read.
 */
export async function readTreeFolder(folder: string): Promise<TreeFolder> {
  const vocabulary: Record<string, string> = {};
  for (const name of (await readdir(join(folder, 'vocabulary'))).sort()) {
    if (name.endsWith('.yaml'))
      vocabulary[`vocabulary/${name}`] = await readFile(join(folder, 'vocabulary', name), 'utf8');
  }
  const trees = new Map<string, string>();
  for (const entry of (await readdir(folder, { withFileTypes: true })).sort((a, b) => (a.name < b.name ? -1 : 1))) {
    if (!entry.isDirectory() || entry.name === 'vocabulary' || entry.name === 'pictures') continue;
    trees.set(entry.name, await readFile(join(folder, entry.name, 'tree.yaml'), 'utf8'));
  }
  return { vocabulary, trees };
}

/** Content hash of a set of files. */
export function hashOfFiles(files: Readonly<Record<string, string>>): string {
  return createHash('sha256').update(hashText(files), 'utf8').digest('hex');
}

/** Every tree of a folder with the vocabulary, each with its content hash. */
export function snapshotsOf(folder: TreeFolder): TreeSnapshot[] {
  return [...folder.trees].map(([id, text]) => {
    const files = { 'tree.yaml': text, ...folder.vocabulary };
    return { id, hash: hashOfFiles(files), files };
  });
}
