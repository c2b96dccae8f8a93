import type { Tree } from '../knowledge/tree.ts';
import type { Vocabulary } from '../knowledge/vocabulary.ts';

/** A tree with the vocabulary it was made with. */
export interface PinnedTree {
  readonly tree: Tree;
  readonly vocabulary: Vocabulary;
}
