import { packError, type BuiltIn, type PackProblem } from '../../shared/knowledge/pack/index.ts';
import { plainFiles } from './exchange-folder.ts';
import type { PackFiles } from './pack-files.ts';
import { textOfBytes } from './zip-entries.ts';

/**
 * Puts the packs of a backup where there are none of their names; each is checked as one that is installed. One that does
 * not hold any more is named and left out: the rest of the backup does not wait for it.
 *
 * @param folder  `packs/` of the backup.
 */
export async function restorePacks(
  folder: string,
  packs: PackFiles,
  builtIn: BuiltIn,
): Promise<{ readonly packs: readonly string[]; readonly remarks: PackProblem[] }> {
  const { files } = await plainFiles(folder, () => true, Infinity);
  const names = [...new Set([...files.keys()].map((path) => path.split('/')[0]!))].sort();
  const restored: string[] = [];
  const remarks: PackProblem[] = [];
  for (const name of names) {
    const own = [...files].flatMap(([path, bytes]) => {
      const text = path.startsWith(`${name}/`) ? textOfBytes(bytes) : null;
      return text === null ? [] : [{ path: path.slice(name.length + 1), text }];
    });
    if (await packs.holds(name, own)) continue;
    const { installed, problems } = await packs.install({ files: own }, false, builtIn);
    const wrong = problems.find(({ level }) => level === 'error');
    if (installed) restored.push(installed.name);
    else if (wrong)
      remarks.push({
        ...packError(
          wrong.code === 'pack-exists' ? 'stays-as-it-is' : 'pack-left-out',
          `packs/${name}/${wrong.file}`,
          wrong.code === 'pack-exists'
            ? 'The pack of this name here is another and stays; the backup still has its own.'
            : `The pack is left out: ${wrong.message}`,
        ),
        level: 'warning',
      });
  }
  return { packs: restored, remarks };
}
