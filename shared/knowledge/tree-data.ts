import type { Instrument, Limit, SharedCheck, Vocabulary } from './vocabulary.ts';
import type { Tree } from './tree.ts';

/** A vocabulary in which every list is an array, so that it can cross from the machine side to the window. */
export type VocabularyData = Omit<Vocabulary, 'limits' | 'instruments' | 'checks'> & {
  readonly limits: readonly Limit[];
  readonly instruments: readonly Instrument[];
  readonly checks: readonly SharedCheck[];
};

/** A tree that has been read, with its vocabulary, as plain data: JSON gives it back as it was. */
export interface TreeData {
  readonly tree: Tree;
  readonly vocabulary: VocabularyData;
}

/** A tree and its vocabulary as data. */
export function treeData(tree: Tree, { limits, instruments, checks, ...lists }: Vocabulary): TreeData {
  return {
    tree,
    vocabulary: {
      ...lists,
      limits: [...limits.values()],
      instruments: [...instruments.values()],
      checks: [...checks.values()],
    },
  };
}

/** The vocabulary again, each id to be looked up. */
export function vocabularyFrom({ limits, instruments, checks, ...lists }: VocabularyData): Vocabulary {
  const byId = <T extends { readonly id: string }>(list: readonly T[]): ReadonlyMap<string, T> =>
    new Map(list.map((each) => [each.id, each]));
  return { ...lists, limits: byId(limits), instruments: byId(instruments), checks: byId(checks) };
}
