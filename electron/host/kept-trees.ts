import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { packHeadText, readPackHead } from '../../shared/knowledge/pack/index.ts';
import { drawingsIn } from './pack-files.ts';
import { hashOfFiles, type TreeSnapshot } from './tree-files.ts';
import { isMissing, readIfThere } from './whole-file.ts';

/** What is kept of a tree beside a visit: its files, and what its pack gave to it, so that the pack may go. */
export function keptFiles({ files, pack, drawings = {} }: TreeSnapshot): Record<string, string> {
  return {
    ...files,
    ...(pack ? { 'pack.yaml': packHeadText(pack) } : {}),
    ...Object.fromEntries(Object.entries(drawings).map(([name, svg]) => [`pictures/${name}`, svg])),
  };
}

/** A tree kept beside a visit; null when it is not there or is not what its name says. */
export async function keptSnapshot(visitFolder: string, hash: string): Promise<TreeSnapshot | null> {
  const folder = join(visitFolder, 'trees', hash);
  try {
    const files: Record<string, string> = { 'tree.yaml': await readFile(join(folder, 'tree.yaml'), 'utf8') };
    for (const name of await readdir(join(folder, 'vocabulary')))
      files[`vocabulary/${name}`] = await readFile(join(folder, 'vocabulary', name), 'utf8');
    if (hashOfFiles(files) !== hash) return null;
    const packYaml = await readIfThere(() => readFile(join(folder, 'pack.yaml'), 'utf8'));
    const pack = packYaml === null ? null : readPackHead(packYaml).value;
    return {
      id: /^id: ([a-z0-9-]+)/m.exec(files['tree.yaml']!)?.[1] ?? 'unknown',
      hash,
      files,
      ...(pack ? { pack, drawings: await drawingsIn(folder) } : {}),
    };
  } catch (problem) {
    if (isMissing(problem)) return null;
    throw problem;
  }
}
