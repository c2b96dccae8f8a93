// Electron's binary: there, fetched once with a limit, or known not to be had.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const LIMIT_MS = 20_000;

/**
 * Path of the binary, or null. A fetch that failed or took longer than 20 s is not tried again for the same version.
 * `fetchBinary(folder)` is given the folder of the package; tests pass their own.
 */
export function electronBinary(root, fetchBinary = fetchOnce) {
  const folder = join(root, 'node_modules', 'electron');
  if (!existsSync(join(folder, 'package.json'))) return null;
  const found = binaryIn(folder);
  if (found) return found;
  const { version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const stamp = join(root, 'node_modules', '.cache', 'droplight', 'no-electron');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === version) return null;
  fetchBinary(folder);
  const fetched = binaryIn(folder);
  if (fetched) return fetched;
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, version);
  return null;
}

/** The package's own way to fetch it, when the package has one. */
function fetchOnce(folder) {
  const script = join(folder, 'install.js');
  if (!existsSync(script)) return;
  console.log('Fetching the desktop shell (once, at most 20 s) …');
  const env = { ...process.env };
  delete env.ELECTRON_SKIP_BINARY_DOWNLOAD;
  spawnSync(process.execPath, [script], { cwd: folder, stdio: 'ignore', timeout: LIMIT_MS, env });
}

function binaryIn(folder) {
  const named = join(folder, 'path.txt');
  if (!existsSync(named)) return null;
  const path = join(folder, 'dist', readFileSync(named, 'utf8').trim());
  return existsSync(path) ? path : null;
}
