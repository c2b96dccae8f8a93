import { complaintIndex, searchComplaints, twoComplaints, type ToolKind } from '../../shared/knowledge/index.ts';
import type { HostClient, Notice } from '../../shared/host/host-api.ts';
import { listedKey, loadSnapshot, type ListedTree, type LoadedTree } from './trees.ts';

/** A complaint to open, with the words that brought it up. */
export interface Wanted {
  readonly words: string;
  readonly tree: ListedTree;
}

/** Takes what is to be said about trees; `instead` names by their code the notices that are no longer true. */
type Say = (notices: readonly Notice[], instead?: RegExp) => void;

/** The complaints that can be opened, and the trees read so far; a tree itself is read when it is needed. */
export class TreeList {
  readonly #ask: HostClient['call'];
  readonly #say: Say;

  listed = $state.raw<readonly ListedTree[]>([]);
  /** Kinds of tools that can be at hand. */
  tools = $state.raw<readonly ToolKind[]>([]);
  /** Trees read so far, by hash. */
  known = $state.raw<ReadonlyMap<string, LoadedTree>>(new Map());

  readonly #index = $derived(complaintIndex(this.listed.map((listed) => ({ ...listed.card, id: listedKey(listed) }))));

  constructor(ask: HostClient['call'], say: Say) {
    this.#ask = ask;
    this.#say = say;
  }

  /** Reads the list, at the start and after a pack has come or gone. @throws {HostError} */
  async refresh(): Promise<void> {
    const { trees, tools, notices } = await this.#ask('trees.list', {});
    this.listed = trees;
    this.tools = tools;
    this.#say(notices, /^(tree|pack)-/);
  }

  search(words: string): ReturnType<typeof searchComplaints> {
    return searchComplaints(this.#index, words);
  }

  /** The two complaints that the words name, when they clearly name two that can be opened. */
  twoIn(words: string): readonly Wanted[] {
    const parts = (twoComplaints(this.#index, words) ?? []).flatMap(({ words: piece, hit }) =>
      this.listed.filter(({ card }) => card.id === hit.complaint).map((tree) => ({ words: piece, tree })),
    );
    return parts.length === 2 ? parts : [];
  }

  /** Reads trees of the list by id, for pages that name their checks; one that is not there any more is passed over. */
  async readAll(ids: readonly string[]): Promise<void> {
    for (const { hash, card } of this.listed) if (ids.includes(card.id)) await this.read(hash);
  }

  /** A tree of the list, read when it is first needed; null with a notice when its file has an error. @throws {HostError} */
  async read(hash: string): Promise<LoadedTree | null> {
    const known = this.known.get(hash);
    if (known) return known;
    const { tree, notices } = loadSnapshot(await this.#ask('trees.read', { hash }));
    if (tree) this.#keep(tree);
    this.#say(notices);
    return tree;
  }

  /** Reads a tree as it lies beside a visit that was made with it; gives what there is to say. @throws {HostError} */
  async readOf(visit: string, hash: string): Promise<readonly Notice[]> {
    if (this.known.has(hash)) return [];
    const { tree, notices } = loadSnapshot(await this.#ask('trees.snapshot', { visit, hash }));
    if (tree) this.#keep(tree);
    return notices;
  }

  #keep(tree: LoadedTree): void {
    this.known = new Map([...this.known, [tree.hash, tree]]);
  }
}
