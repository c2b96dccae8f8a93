import { randomBytes } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { readIfThere, writeWhole } from './whole-file.ts';

/**
 * Name of this machine as a writer: every device writes event files of its own, so that two can share a folder. It is
 * kept beside the settings, not in a visit, because visits may lie on a shared drive.
 */
export async function deviceId(folder: string): Promise<string> {
  const path = join(folder, 'device-id');
  const known = await readIfThere(() => readFile(path, 'utf8'));
  if (known !== null && /^[0-9a-f]{12}$/.test(known.trim())) return known.trim();
  const made = randomBytes(6).toString('hex');
  await writeWhole(path, `${made}\n`);
  return made;
}
