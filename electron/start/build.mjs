// Builds window and machine side into build/, unless nothing has changed since the last time.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const SOURCES = ['shared', 'electron', 'renderer', 'package-lock.json'];

/** Fingerprint of everything that goes into the build. */
function sourceHash(root) {
  const hash = createHash('sha256');
  const add = (path) => {
    if (statSync(path).isDirectory()) for (const name of readdirSync(path).sort()) add(join(path, name));
    else hash.update(path.slice(root.length)).update(readFileSync(path));
  };
  // The lock file may be missing where packages were installed without one.
  for (const source of SOURCES) if (existsSync(join(root, source))) add(join(root, source));
  return hash.digest('hex');
}

/** Builds what is not up to date. */
export async function ensureBuilt(root) {
  const stamp = join(root, 'build', 'stamp');
  const wanted = sourceHash(root);
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;
  console.log('Building …');
  // The bundler makes a larger, talkative window when a test runner's environment is around it.
  const before = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  try {
    await buildAll(root);
  } finally {
    if (before === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = before;
  }
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, wanted);
}

/** Window, machine side for both shells, and what is prepared for the first start. */
async function buildAll(root) {
  const { build } = await import('vite');
  const external = [/^node:/, 'electron'];
  const machine = (entry, out, format) => ({
    configFile: false,
    root,
    logLevel: 'error',
    ssr: { noExternal: true },
    build: {
      ssr: entry,
      outDir: out,
      emptyOutDir: true,
      target: 'node20',
      minify: false,
      rollupOptions: { external, output: { format, entryFileNames: format === 'cjs' ? '[name].cjs' : '[name].js' } },
    },
  });
  await build({ configFile: join(root, 'renderer', 'vite.config.ts'), logLevel: 'error' });
  await build(machine(join(root, 'electron/main/main.ts'), join(root, 'build/main'), 'es'));
  await build(machine(join(root, 'electron/preload/preload.ts'), join(root, 'build/preload'), 'cjs'));
  await build(machine(join(root, 'electron/server/main.ts'), join(root, 'build/server'), 'es'));
  await build(machine(join(root, 'electron/cli/prepare-cards.ts'), join(root, 'build/cli'), 'es'));
  await import(pathToFileURL(join(root, 'build/cli/prepare-cards.js')).href);
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  await ensureBuilt(join(dirname(fileURLToPath(import.meta.url)), '..', '..'));
}
