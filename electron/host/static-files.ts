import { readFile } from 'node:fs/promises';
import { extname, join, normalize, sep } from 'node:path';
import { isMissing } from './whole-file.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
};

export interface StaticFile {
  readonly type: string;
  readonly body: Buffer;
}

/** Files of the built window and the trees' drawings; nothing outside the two folders, whatever the path says. */
export async function staticFile(
  path: string,
  folders: { readonly window: string; readonly pictures: string },
): Promise<StaticFile | null> {
  let plain: string;
  try {
    plain = decodeURIComponent(path);
  } catch (problem) {
    if (problem instanceof URIError) return null;
    throw problem;
  }
  if (plain.includes('\0') || plain.includes('\\')) return null;
  const picture = /^\/pictures\/([a-z0-9-]+\.svg)$/.exec(plain);
  const folder = picture ? folders.pictures : folders.window;
  const file = join(folder, picture ? picture[1]! : normalize(plain === '/' ? '/index.html' : plain));
  const type = TYPES[extname(file)];
  if (!file.startsWith(folder + sep) || type === undefined) return null;
  try {
    return { type, body: await readFile(file) };
  } catch (problem) {
    if (
      isMissing(problem) ||
      (problem instanceof Error && 'code' in problem && (problem.code === 'EISDIR' || problem.code === 'ENOTDIR'))
    )
      return null;
    throw problem;
  }
}
