import { lstat, readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { inFileOrder, lintTree, readTree, readVocabulary, type Problem } from '../../shared/knowledge/index.ts';
import { PACK_LIMITS } from '../../shared/knowledge/pack/index.ts';
import { drawingsIn, drawingsNamed } from './pack-files.ts';
import { hashOfFiles, type TreeSnapshot } from './tree-files.ts';
import { isMissing } from './whole-file.ts';

/** A tree that somebody is writing: its files as they are now, and what is wrong with them. */
export interface Draft {
  readonly snapshot: TreeSnapshot;
  readonly problems: readonly Problem[];
}

const ID = /^[a-z0-9]+(-[a-z0-9]+)*$/;
const MOST_DRAFTS = 60;

/**
 * The folder of the trees that somebody is writing: `<id>/tree.yaml`, with or without a `vocabulary/` and `pictures/` of its own. It is
 * looked at when the window asks; a tree is read and linted again only when one of its files has changed.
 */
export class DraftFiles {
  readonly folder: string;
  readonly #known = new Map<string, Draft>();

  constructor(folder: string) {
    this.folder = folder;
  }

  /** Every draft, by name. @param builtIn  the vocabulary of the program, where the folder brings no file of that name. */
  async all(builtIn: Readonly<Record<string, string>>): Promise<readonly Draft[]> {
    const vocabulary = { ...builtIn, ...(await this.#vocabulary()) };
    const pictures = await drawingsIn(this.folder);
    const drafts: Draft[] = [];
    for (const id of await this.#ids()) {
      const treeYaml = await textOf(join(this.folder, id, 'tree.yaml'));
      if (treeYaml === null) continue;
      const files = { 'tree.yaml': treeYaml, ...vocabulary };
      const drawings = drawingsNamed(treeYaml, pictures);
      // A drawing that is drawn anew shows as soon as a line that is written anew.
      const hash = hashOfFiles({ ...files, ...drawings });
      let draft = this.#known.get(id);
      if (draft?.snapshot.hash !== hash) {
        draft = {
          snapshot: { id, hash, files, ...(Object.keys(drawings).length > 0 ? { drawings } : {}) },
          problems: problemsOf(id, treeYaml, vocabulary),
        };
        this.#known.set(id, draft);
      }
      drafts.push(draft);
    }
    return drafts;
  }

  async #ids(): Promise<string[]> {
    try {
      const entries = await readdir(this.folder, { withFileTypes: true });
      return entries
        .filter((entry) => entry.isDirectory() && ID.test(entry.name))
        .map(({ name }) => name)
        .filter((name) => name !== 'vocabulary' && name !== 'pictures')
        .sort()
        .slice(0, MOST_DRAFTS);
    } catch (problem) {
      if (isMissing(problem)) return [];
      throw problem;
    }
  }

  async #vocabulary(): Promise<Record<string, string>> {
    const files: Record<string, string> = {};
    try {
      for (const name of (await readdir(join(this.folder, 'vocabulary'))).sort()) {
        const text = /^[a-z]+\.yaml$/.test(name) ? await textOf(join(this.folder, 'vocabulary', name)) : null;
        if (text !== null) files[`vocabulary/${name}`] = text;
      }
    } catch (problem) {
      if (!isMissing(problem)) throw problem;
    }
    return files;
  }
}

/** Text of a plain file of sensible size; null where there is none. A link is not followed out of the folder. */
async function textOf(path: string): Promise<string | null> {
  try {
    const stats = await lstat(path);
    return stats.isFile() && stats.size <= PACK_LIMITS.fileBytes ? await readFile(path, 'utf8') : null;
  } catch (problem) {
    if (isMissing(problem)) return null;
    throw problem;
  }
}

/** What is wrong with a draft. */
function problemsOf(id: string, treeYaml: string, files: Readonly<Record<string, string>>): readonly Problem[] {
  const { value: vocabulary, problems } = readVocabulary(files);
  if (!vocabulary) return problems;
  const read = readTree({ treeYaml, file: `${id}/tree.yaml`, vocabulary });
  if (!read.value) return [...problems, ...read.problems];
  lintTree(read.value, vocabulary, read.source);
  if (read.value.id !== id)
    read.source.error(
      'id-is-not-the-folder',
      ['id'],
      `"${read.value.id}" lies in the folder "${id}". Make the two the same.`,
    );
  return inFileOrder([...problems, ...read.source.problems]);
}
