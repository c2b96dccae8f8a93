import { randomBytes } from 'node:crypto';
import { mkdir, readdir, readFile, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { HostError, type Notice } from '../../shared/host/host-api.ts';
import {
  packError,
  readPack,
  readPackHead,
  type BuiltIn,
  type PackFile,
  type PackHead,
  type PackProblem,
} from '../../shared/knowledge/pack/index.ts';
import { inTurn } from './in-turn.ts';
import { filesOfZip } from './pack-zip.ts';
import { readTreeFolder, snapshotsOf, type TreeFolder, type TreeSnapshot } from './tree-files.ts';
import { isMissing, readIfThere, writeWhole } from './whole-file.ts';

/** A pack as it lies on disk. */
interface InstalledPack extends PackHead {
  readonly folder: TreeFolder;
  /** File name → SVG text. */
  readonly drawings: Readonly<Record<string, string>>;
}

/** An installed pack by name, for the list. */
export interface PackCard extends PackHead {
  readonly trees: readonly string[];
  readonly drawings: number;
}

/** What came of installing: the pack, or why not; warnings stand beside an installed pack. */
export interface PackInstalled {
  readonly installed: PackCard | null;
  readonly problems: readonly PackProblem[];
}

/** A pack as a zip in base64, or file by file. */
export type PackSource = { readonly zip: string } | { readonly files: readonly { path: string; text: string }[] };

const NAME = /^[a-z0-9]+(-[a-z0-9]+)*$/;

/** Packs of trees from other people: `packs/<name>/`, each as it was checked, changed and removed as a whole. */
export class PackFiles {
  readonly #folder: string;
  readonly #inTurn = inTurn();

  constructor(dataFolder: string) {
    this.#folder = join(dataFolder, 'packs');
  }

  /** Installed packs by name; one that cannot be read any more is named in a notice. */
  async list(): Promise<{ readonly packs: readonly PackCard[]; readonly notices: readonly Notice[] }> {
    const { packs, notices } = await this.#read();
    return { packs: packs.map(cardOf), notices };
  }

  /** Every tree of every pack, with the built-in vocabulary where the pack brings none of its own. */
  async snapshots(vocabulary: Readonly<Record<string, string>>): Promise<TreeSnapshot[]> {
    const { packs } = await this.#read();
    return packs.flatMap(({ name, version, folder, drawings }) =>
      snapshotsOf({ trees: folder.trees, vocabulary: { ...vocabulary, ...folder.vocabulary } }).map((snapshot) => ({
        ...snapshot,
        pack: { name, version },
        drawings: drawingsNamed(snapshot.files['tree.yaml'] ?? '', drawings),
      })),
    );
  }

  /** Checks a pack and keeps it; nothing is written unless all of it holds. Never two at once. */
  install(source: PackSource, replace: boolean, builtIn: BuiltIn): Promise<PackInstalled> {
    return this.#inTurn(() => this.#install(source, replace, builtIn));
  }

  /** Whether a pack is here with exactly these files. */
  async holds(name: string, files: readonly { readonly path: string; readonly text: string }[]): Promise<boolean> {
    const folder = join(this.#folder, name);
    const texts = await Promise.all(
      files.map(async ({ path, text }) => text === (await readIfThere(() => readFile(join(folder, path), 'utf8')))),
    );
    return files.length > 0 && texts.every((same) => same);
  }

  /** @throws {HostError} `no-such-pack`. */
  remove(name: string): Promise<void> {
    return this.#inTurn(async () => {
      const aside = join(this.#folder, `.${name}.${randomBytes(4).toString('hex')}.gone`);
      try {
        // Renamed first, so that a crash leaves the pack whole or gone, never half.
        await rename(join(this.#folder, name), aside);
      } catch (problem) {
        if (!isMissing(problem)) throw problem;
        throw new HostError({
          code: 'no-such-pack',
          message: `There is no pack “${name}” here. Nothing was changed. Open the page again to see the packs that are.`,
        });
      }
      await rm(aside, { recursive: true });
    });
  }

  async #install(source: PackSource, replace: boolean, builtIn: BuiltIn): Promise<PackInstalled> {
    const refused = (problems: readonly PackProblem[]): PackInstalled => ({ installed: null, problems });
    let files: readonly PackFile[];
    if ('zip' in source) {
      const opened = await filesOfZip(Buffer.from(source.zip, 'base64'));
      if (opened.problems.length > 0) return refused(opened.problems);
      files = opened.files;
    } else files = source.files;

    const { value: pack, problems } = readPack(files, builtIn);
    if (!pack) return refused(problems);
    const there = (await this.#read()).packs.find(({ name }) => name === pack.name);
    if (there && !replace)
      return refused([
        packError(
          'pack-exists',
          'pack.yaml',
          `A pack “${pack.name}” is here already (version ${there.version}; this one is version ${pack.version}). Replace it, or give this one another name.`,
        ),
      ]);
    const beside = join(this.#folder, `.${pack.name}.${randomBytes(4).toString('hex')}.new`);
    try {
      // The folder of a tree set always has a vocabulary, even where the program's own is used.
      await mkdir(join(beside, 'vocabulary'), { recursive: true });
      for (const [path, text] of Object.entries(pack.files)) await writeWhole(join(beside, path), text);
      await this.#putInPlace(beside, pack.name);
    } catch (problem) {
      await rm(beside, { recursive: true, force: true });
      throw problem;
    }
    const drawings = Object.keys(pack.files).filter((path) => path.startsWith('pictures/')).length;
    return { installed: { name: pack.name, version: pack.version, trees: pack.trees, drawings }, problems };
  }

  async #putInPlace(beside: string, name: string): Promise<void> {
    await mkdir(this.#folder, { recursive: true });
    const target = join(this.#folder, name);
    const old = `${beside}.old`;
    try {
      await rename(target, old);
    } catch (problem) {
      if (!isMissing(problem)) throw problem;
    }
    await rename(beside, target);
    await rm(old, { recursive: true, force: true });
  }

  async #read(): Promise<{ readonly packs: readonly InstalledPack[]; readonly notices: readonly Notice[] }> {
    const packs: InstalledPack[] = [];
    const notices: Notice[] = [];
    for (const name of await namesIn(this.#folder)) {
      const folder = join(this.#folder, name);
      const broken = (what: string): Notice => ({
        code: 'pack-broken',
        message: `The pack “${name}” cannot be used: ${what} Remove it on the page of the trees and add it again. Visits that began with it keep their trees.`,
      });
      try {
        const { value: head } = readPackHead(await readFile(join(folder, 'pack.yaml'), 'utf8'));
        if (head?.name !== name) {
          notices.push(broken('its pack.yaml has been changed.'));
          continue;
        }
        packs.push({ ...head, folder: await readTreeFolder(folder), drawings: await drawingsIn(folder) });
      } catch (problem) {
        if (!isMissing(problem)) throw problem;
        notices.push(broken('a file of it is missing.'));
      }
    }
    return { packs, notices };
  }
}

function cardOf({ name, version, folder, drawings }: InstalledPack): PackCard {
  return { name, version, trees: [...folder.trees.keys()], drawings: Object.keys(drawings).length };
}

/** Folders that can be a pack; those that begin with a point are being written or removed. */
async function namesIn(folder: string): Promise<string[]> {
  try {
    const entries = await readdir(folder, { withFileTypes: true });
    return entries
      .filter((entry) => entry.isDirectory() && NAME.test(entry.name))
      .map(({ name }) => name)
      .sort();
  } catch (problem) {
    if (isMissing(problem)) return [];
    throw problem;
  }
}

/** Drawings in the `pictures/` of a folder: file name → SVG text; none where there is no such folder. */
export async function drawingsIn(folder: string): Promise<Record<string, string>> {
  const drawings: Record<string, string> = {};
  try {
    for (const { name, isFile } of await plainNames(join(folder, 'pictures')))
      if (isFile && /^[a-z0-9-]+\.svg$/.test(name))
        drawings[name] = await readFile(join(folder, 'pictures', name), 'utf8');
  } catch (problem) {
    if (!isMissing(problem)) throw problem;
  }
  return drawings;
}

/** Names in a folder, and which of them are plain files: a link is not followed out of the folder. */
async function plainNames(folder: string): Promise<readonly { readonly name: string; readonly isFile: boolean }[]> {
  const entries = await readdir(folder, { withFileTypes: true });
  return entries
    .map((entry) => ({ name: entry.name, isFile: entry.isFile() }))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** Drawings of a pack that a tree names; only these go with it. */
export function drawingsNamed(treeYaml: string, all: Readonly<Record<string, string>>): Record<string, string> {
  return Object.fromEntries(Object.entries(all).filter(([name]) => treeYaml.includes(name)));
}
