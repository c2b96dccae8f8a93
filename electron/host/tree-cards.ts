import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import * as v from 'valibot';
import { treeList, type Notice, type TreeList } from '../../shared/host/host-api.ts';
import { readTree, readVocabulary, treeCard, type Problem, type Vocabulary } from '../../shared/knowledge/index.ts';
import type { TreeSnapshot } from './tree-files.ts';
import { readIfThere, writeWhole } from './whole-file.ts';

/**
 * The list of complaints as the window shows it before one is opened. Reading sixteen trees takes seconds, so the list is
 * kept under the program's version and the trees' content hashes; anything that does not match is read anew.
 */
export class TreeCards {
  readonly #path: string;
  readonly #version: string;
  #last: { readonly key: string; readonly list: TreeList } | null = null;

  constructor(dataFolder: string, version: string) {
    this.#path = join(dataFolder, 'cache', 'complaints.json');
    this.#version = version;
  }

  /** Cards of all trees that can be read, and a notice for each that cannot. */
  async of(snapshots: readonly TreeSnapshot[]): Promise<TreeList> {
    const key = [this.#version, ...snapshots.map(({ hash }) => hash)].join(' ');
    if (this.#last?.key === key) return this.#last.list;
    const list = (await this.#kept(key)) ?? (await this.#readAnew(key, snapshots));
    this.#last = { key, list };
    return list;
  }

  async #kept(key: string): Promise<TreeList | null> {
    const text = await readIfThere(() => readFile(this.#path, 'utf8'));
    if (text === null) return null;
    try {
      const kept = v.safeParse(v.object({ key: v.literal(key), list: treeList }), JSON.parse(text));
      return kept.success ? kept.output.list : null;
    } catch (problem) {
      // Half a file after a crash: it only saves time, so it is written anew.
      if (problem instanceof SyntaxError) return null;
      throw problem;
    }
  }

  async #readAnew(key: string, snapshots: readonly TreeSnapshot[]): Promise<TreeList> {
    const list = cardsOf(snapshots);
    await writeWhole(this.#path, JSON.stringify({ key, list }));
    return list;
  }
}

/** Cards of all trees that can be read, and a notice for each that cannot. */
export function cardsOf(snapshots: readonly TreeSnapshot[]): TreeList {
  const notices: Notice[] = [];
  const trees: TreeList['trees'][number][] = [];
  /** Text of the vocabulary files → what they say; the trees of a folder share one. */
  const vocabularies = new Map<string, Vocabulary | null>();
  const brokenAt = (problems: readonly Problem[]): string => {
    const first = problems.find(({ level }) => level === 'error');
    return first ? ` ${first.file}, line ${first.line}: ${first.message}` : '';
  };
  for (const { id, hash, files } of snapshots) {
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
          message: `The vocabulary of the trees cannot be used until its file is mended.${brokenAt(read.problems)}`,
        });
    }
    if (!vocabulary) continue;
    const read = readTree({ treeYaml, file: `${id}/tree.yaml`, vocabulary });
    if (read.value) trees.push({ hash, card: treeCard(read.value) });
    else
      notices.push({
        code: 'tree-broken',
        message: `The complaint “${id}” cannot be used until its file is mended.${brokenAt(read.problems)}`,
      });
  }
  const tools = [...vocabularies.values()].find((each) => each !== null)?.tools ?? [];
  return { trees, tools, notices };
}
