// Types of the three programs without a window, by the native compiler, which takes a tenth of the time; the window's
// are looked at by svelte-check. The name `tsc` would be either compiler's, so the file is named.
import { spawnSync } from 'node:child_process';

const compiler = new URL('../node_modules/typescript-native/bin/tsc', import.meta.url).pathname;
// shared without Node and without a document, electron without a document, then everything with the tests.
for (const program of ['shared', 'electron', 'tests']) {
  const { status, error } = spawnSync(process.execPath, [compiler, '-p', program], { stdio: 'inherit' });
  if (error) throw error;
  if (status !== 0) process.exit(status ?? 1);
}
