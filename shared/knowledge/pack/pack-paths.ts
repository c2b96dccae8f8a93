import { nearestText } from '../names.ts';
import { packError, type PackProblem } from './pack-problem.ts';

/** Files of a vocabulary; a pack may bring its own in place of the built-in one of that name. */
export const VOCABULARY_NAMES = ['limits', 'instruments', 'access', 'layout', 'tools', 'checks', 'road'] as const;

const PART = /^[a-z0-9-]+$/;

/** Why a path does not stay inside the folder that it is unpacked to, whatever system that is on; null when it does. */
export function unsafePathWhy(path: string): string | null {
  const parts = path.replace(/\/$/, '').split('/');
  return path.includes('\0')
    ? 'holds a zero byte'
    : path.includes('\\')
      ? 'holds a backslash'
      : path.startsWith('/') || /^[a-zA-Z]:/.test(path)
        ? 'begins at the top of a disk'
        : parts.some((part) => part === '..' || part === '.' || part === '')
          ? 'holds an empty step, "." or ".."'
          : null;
}

/**
 * Whether a path of a pack stays inside its folder.
 *
 * @returns the fault, or null.
 */
export function unsafePath(path: string): PackProblem | null {
  const why = unsafePathWhy(path);
  return why === null
    ? null
    : packError(
        'unsafe-path',
        path,
        `The path ${why}. A pack holds plain paths below its own folder, such as "horn-stays-silent/tree.yaml". Make the pack anew from its folder.`,
      );
}

/**
 * The one folder that everything lies in, as when a folder is zipped whole; '' when pack.yaml lies at the top, or there
 * is no such folder.
 */
export function topFolder(paths: readonly string[]): string {
  if (paths.includes('pack.yaml')) return '';
  const tops = new Set(paths.map((path) => path.slice(0, path.indexOf('/') + 1)));
  const [top] = tops;
  return tops.size === 1 && top !== undefined && top !== '' && paths.includes(`${top}pack.yaml`) ? top : '';
}

/**
 * Whether a file may lie in a pack: pack.yaml, vocabulary/NAME.yaml, pictures/NAME.svg and TREE/tree.yaml, names in
 * lower-case letters, digits and hyphens.
 *
 * @param path  below the top folder.
 */
export function misplacedFile(path: string): PackProblem | null {
  const parts = path.split('/');
  const stems = parts.map((part, i) => (i === parts.length - 1 ? part.replace(/\.[^.]*$/, '') : part));
  if (stems.some((stem) => !PART.test(stem)))
    return packError(
      'name-not-allowed',
      path,
      'A name holds something else than a to z, 0 to 9 and hyphens. Rename it, or take it out of the pack.',
    );
  const [folder, name] = parts;
  if (path === 'pack.yaml') return null;
  if (parts.length === 2 && folder === 'pictures' && name!.endsWith('.svg')) return null;
  if (parts.length === 2 && folder === 'vocabulary' && name!.endsWith('.yaml')) {
    const stem = stems[1]!;
    if (VOCABULARY_NAMES.some((each) => each === stem)) return null;
    return packError(
      'file-not-allowed',
      path,
      `"${stem}" is no file of a vocabulary.${nearestText(stem, VOCABULARY_NAMES)} Allowed: ${VOCABULARY_NAMES.join(', ')}. Rename it, or take it out.`,
    );
  }
  if (parts.length === 2 && name === 'tree.yaml' && folder !== 'pictures' && folder !== 'vocabulary') return null;
  return packError(
    'file-not-allowed',
    path,
    'This file has no place in a pack. Allowed: pack.yaml, TREE/tree.yaml, vocabulary/NAME.yaml and pictures/NAME.svg. Take it out.',
  );
}
