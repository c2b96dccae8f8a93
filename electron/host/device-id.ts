import { createHash, randomBytes } from 'node:crypto';
import { readFile, rename } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { isMissing, readIfThere, writeWhole } from './whole-file.ts';

/**
 * Name of this machine as a writer: every device writes event files of its own, so that two can share a folder. It is
 * kept beside the settings under a name made from the machine's own, so that two machines with the same data folder are two
 * writers. A machine that is given another name is a new writer, which harms nothing.
 *
 * @param machine  name of the machine; the system's unless given.
 */
export async function deviceId(folder: string, machine = hostname()): Promise<string> {
  const own = createHash('sha256').update(machine).digest('hex').slice(0, 12);
  const path = join(folder, `device-id-${own}`);
  const known = await read(path);
  if (known !== null) return known;
  // Before two machines could share a data folder there was one name in it; whoever comes first goes on with it.
  const before = join(folder, 'device-id');
  if ((await read(before)) !== null) {
    try {
      await rename(before, path);
    } catch (problem) {
      if (!isMissing(problem)) throw problem;
    }
    const taken = await read(path);
    if (taken !== null) return taken;
  }
  const made = randomBytes(6).toString('hex');
  await writeWhole(path, `${made}\n`);
  return made;
}

async function read(path: string): Promise<string | null> {
  const text = (await readIfThere(() => readFile(path, 'utf8')))?.trim() ?? '';
  return /^[0-9a-f]{12}$/.test(text) ? text : null;
}
