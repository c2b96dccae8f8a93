// Installs the packages when they are missing or no longer those of package-lock.json. Node's own modules alone.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** Fingerprint of what is to be installed: of the lock file, else of package.json. */
function wantedHash(root) {
  const lock = join(root, 'package-lock.json');
  return createHash('sha256')
    .update(readFileSync(existsSync(lock) ? lock : join(root, 'package.json')))
    .digest('hex');
}

/** npm's exit code. */
function runNpm(args, root) {
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  // The optional download of Electron's binary is tried by the starter, with a time limit of its own.
  const env = { ...process.env, ELECTRON_SKIP_BINARY_DOWNLOAD: '1' };
  const ran = spawnSync(npm, args, { cwd: root, stdio: 'inherit', env, shell: process.platform === 'win32' });
  return ran.status ?? 1;
}

function endWith(code) {
  process.exit(code);
}

/**
 * Installs what package-lock.json names unless that is there already; without that file, what package.json allows. Ends the
 * process with a message when it fails. `npm`, `say` and `end` are for tests.
 */
export function ensureInstalled(root, { npm = runNpm, say = console.log, end = endWith } = {}) {
  const stamp = join(root, 'node_modules', '.cache', 'droplight', 'lock');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wantedHash(root)) return;
  const locked = existsSync(join(root, 'package-lock.json'));
  say(
    locked
      ? 'Installing packages (once) …'
      : 'There is no package-lock.json: installing the newest versions that package.json allows (once), which may differ from the tested ones …',
  );
  const code = npm([locked ? 'ci' : 'install', '--no-audit', '--no-fund', '--loglevel=error'], root);
  if (code !== 0) {
    say(
      'The packages could not be installed. Look at the lines above: the network, the disk, or the version of Node (20.19 or later) may be the reason. Then start again.',
    );
    end(code);
    return;
  }
  mkdirSync(dirname(stamp), { recursive: true });
  // Taken again: npm install may have written a lock file.
  writeFileSync(stamp, wantedHash(root));
}
