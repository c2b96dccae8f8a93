import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import * as v from 'valibot';
import { treeList, type Notice, type TreeList } from '../../shared/host/host-api.ts';
import { readTree, readVocabulary, treeCard, type Problem, type Vocabulary } from '../../shared/knowledge/index.ts';
import type { TreeSnapshot } from './tree-files.ts';
import { readIfThere, writeWhole } from './whole-file.ts';

interface KeptList {
  readonly key: string;
  readonly list: TreeList;
}

/** A list with what it was made from. */
export function keptList(version: string, snapshots: readonly TreeSnapshot[], list: TreeList): KeptList {
  return { key: keyOf(version, snapshots), list };
}

function keyOf(version: string, snapshots: readonly TreeSnapshot[]): string {
  return [version, ...snapshots.map(({ hash, pack }) => (pack ? `${pack.name}@${pack.version}:${hash}` : hash))].join(
    ' ',
  );
}

/**
 * The list of complaints as the window shows it before one is opened. Reading sixteen trees takes seconds, so the list is
 * kept under the program's version and the trees' content hashes; anything that does not match is read anew.
 */
export class TreeCards {
  readonly #path: string;
  readonly #version: string;
  readonly #prepared: string | undefined;
  #last: KeptList | null = null;

  /** @param prepared  file of the list as the build made it, for a data folder that has none yet. */
  constructor(dataFolder: string, version: string, prepared?: string) {
    this.#path = join(dataFolder, 'cache', 'complaints.json');
    this.#version = version;
    this.#prepared = prepared;
  }

  /** Cards of all trees that can be read, and a notice for each that cannot. */
  async of(snapshots: readonly TreeSnapshot[]): Promise<TreeList> {
    const key = keyOf(this.#version, snapshots);
    if (this.#last?.key === key) return this.#last.list;
    const kept =
      this.#last ??
      (await this.#kept(this.#path)) ??
      (this.#prepared === undefined ? null : await this.#kept(this.#prepared));
    const list = kept?.key === key ? kept.list : await this.#readAnew(key, snapshots, kept);
    this.#last = { key, list };
    return list;
  }

  /** The list of the last time, when this version of the program wrote it. */
  async #kept(path: string): Promise<KeptList | null> {
    const text = await readIfThere(() => readFile(path, 'utf8'));
    if (text === null) return null;
    try {
      const kept = v.safeParse(v.object({ key: v.string(), list: treeList }), JSON.parse(text));
      return kept.success && kept.output.key.split(' ')[0] === this.#version ? kept.output : null;
    } catch (problem) {
      // Half a file after a crash: it only saves time, so it is written anew.
      if (problem instanceof SyntaxError) return null;
      throw problem;
    }
  }

  /** Trees that have not changed since the last list are not read again: a pack more costs its own trees alone. */
  async #readAnew(key: string, snapshots: readonly TreeSnapshot[], kept: KeptList | null): Promise<TreeList> {
    const list = cardsOf(snapshots, new Map(kept?.list.trees.map(({ hash, card }) => [hash, card])));
    await writeWhole(this.#path, JSON.stringify({ key, list } satisfies KeptList));
    return list;
  }
}

/**
 * Cards of all trees that can be read, and a notice for each that cannot.
 *
 * @param known  cards by content hash that need not be read again.
 */
export function cardsOf(
  snapshots: readonly TreeSnapshot[],
  known: ReadonlyMap<string, TreeList['trees'][number]['card']> = new Map(),
): TreeList {
  const notices: Notice[] = [];
  const trees: TreeList['trees'][number][] = [];
  /** Text of the vocabulary files → what they say; the trees of a folder share one. */
  const vocabularies = new Map<string, Vocabulary | null>();
  const brokenAt = (problems: readonly Problem[]): string => {
    const first = problems.find(({ level }) => level === 'error');
    return first ? ` ${first.file}, line ${first.line}: ${first.message}` : '';
  };
  for (const { id, hash, files, pack } of snapshots) {
    const where = pack ? `${pack.name}/` : '';
    const { 'tree.yaml': treeYaml = '', ...vocabularyFiles } = files;
    const text = JSON.stringify(vocabularyFiles);
    let vocabulary = vocabularies.get(text);
    if (vocabulary === undefined) {
      const read = readVocabulary(vocabularyFiles);
      vocabulary = read.value ?? null;
      vocabularies.set(text, vocabulary);
      if (!vocabulary)
        notices.push({
          code: 'tree-broken',
          message: `The vocabulary of ${pack ? `the pack “${pack.name}”` : 'the trees'} cannot be used until its file is mended.${brokenAt(read.problems)}`,
        });
    }
    if (!vocabulary) continue;
    const before = known.get(hash);
    if (before) {
      trees.push({ hash, card: before, ...(pack ? { pack } : {}) });
      continue;
    }
    const read = readTree({ treeYaml, file: `${where}${id}/tree.yaml`, vocabulary });
    if (read.value) trees.push({ hash, card: treeCard(read.value), ...(pack ? { pack } : {}) });
    else
      notices.push({
        code: 'tree-broken',
        message: `The complaint “${id}”${pack ? ` of the pack “${pack.name}”` : ''} cannot be used until its file is mended.${brokenAt(read.problems)}`,
      });
  }
  // The program's own kinds of tools come first; a pack may add others.
  const kinds = [...vocabularies.values()].flatMap((vocabulary) => vocabulary?.tools ?? []);
  const tools = kinds.filter((kind, i) => kinds.findIndex(({ id }) => id === kind.id) === i);
  return { trees, tools, notices };
}
