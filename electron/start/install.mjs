// Installs the packages when they are missing or no longer those of package-lock.json. Node's own modules alone.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** Fingerprint of the lock file. */
function lockHash(root) {
  return createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex');
}

/**
 * Installs what package-lock.json names unless that is there already. Ends the process with a message when it fails.
 */
export function ensureInstalled(root) {
  const stamp = join(root, 'node_modules', '.cache', 'droplight', 'lock');
  const wanted = lockHash(root);
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;
  console.log('Installing packages (once) …');
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  // The optional download of Electron's binary is tried by the starter, with a time limit of its own.
  const env = { ...process.env, ELECTRON_SKIP_BINARY_DOWNLOAD: '1' };
  const ran = spawnSync(npm, ['ci', '--no-audit', '--no-fund', '--loglevel=error'], {
    cwd: root,
    stdio: 'inherit',
    env,
    shell: process.platform === 'win32',
  });
  if (ran.status !== 0) {
    console.error(
      'The packages could not be installed. Look at the lines above: the network, the disk, or the version of Node (20.19 or later) may be the reason. Then start again.',
    );
    process.exit(ran.status ?? 1);
  }
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, wanted);
}
