import { randomBytes } from 'node:crypto';
import { mkdir, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import { realDisk, type Disk } from './disk.ts';

/** Writes a whole file so that a crash leaves the old or the new one, never half: written beside, flushed, renamed. */
export async function writeWhole(path: string, content: string | Uint8Array, disk: Disk = realDisk): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  const beside = `${path}.${randomBytes(4).toString('hex')}.new`;
  try {
    await writeFlushed(beside, content, disk);
    await rename(beside, path);
  } catch (problem) {
    await rm(beside, { force: true });
    throw problem;
  }
}

/** Writes a file that must be new; done when it is on the disk. */
export async function writeFlushed(path: string, content: string | Uint8Array, disk: Disk): Promise<void> {
  const file = await disk.open(path, 'wx');
  try {
    await file.appendFile(content);
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Content of a file, or null when there is none. */
export async function readIfThere(read: () => Promise<string>): Promise<string | null> {
  try {
    return await read();
  } catch (problem) {
    if (isMissing(problem)) return null;
    throw problem;
  }
}

/** Whether the system says that a file or folder does not exist. */
export function isMissing(problem: unknown): boolean {
  return problem instanceof Error && 'code' in problem && problem.code === 'ENOENT';
}
