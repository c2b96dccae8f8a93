// `npm test`: everything, in the order in which a fault is cheapest to read. Installs what is missing first.
// Plain JavaScript on Node's own modules alone, because it runs before anything is installed.
import { spawnSync } from 'node:child_process';
import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { ensureInstalled } from '../electron/start/install.mjs';
import { ensureChromium } from './chromium.mjs';

const root = new URL('..', import.meta.url).pathname;
const reports = join(root, 'test-results');

/** Runs one step with its output shown; ends the whole run with its exit code when it fails. */
function step(name, command, args, env = {}) {
  const started = Date.now();
  console.log(`\n== ${name}`);
  const ran = spawnSync(command, args, { cwd: root, stdio: 'inherit', env: { ...process.env, ...env } });
  if (ran.error) throw ran.error;
  if (ran.status !== 0) {
    console.error(`\n${name} failed (exit ${ran.status ?? ran.signal}). Nothing after it was run.`);
    process.exit(ran.status ?? 1);
  }
  console.log(`== ${name}: ${((Date.now() - started) / 1000).toFixed(1)} s`);
}

ensureInstalled(root);
rmSync(reports, { recursive: true, force: true });
const chromium = ensureChromium(root);

step('format', 'npm', ['run', '-s', 'check:format']);
step('lint', 'npm', ['run', '-s', 'check:lint']);
step('types', 'npm', ['run', '-s', 'check:types']);
step('who imports whom', 'npm', ['run', '-s', 'check:deps']);
step('unused code', 'npm', ['run', '-s', 'check:unused']);
step('trees', 'npm', ['run', '-s', 'lint:trees']);
step('build', 'npm', ['run', '-s', 'build']);
step(
  'unit, property, reference, knowledge, contract, component and main process tests',
  'npx',
  [
    'vitest',
    'run',
    '--config',
    'tests/vitest.config.ts',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${join(reports, 'vitest.json')}`,
  ],
  { DROPLIGHT_CHROMIUM: chromium },
);
step('desktop tests in Chromium', 'npx', ['playwright', 'test', '--config', 'tests/e2e/playwright.config.ts'], {
  DROPLIGHT_CHROMIUM: chromium,
  PLAYWRIGHT_JSON_OUTPUT_NAME: join(reports, 'playwright.json'),
});

const { countTests } = await import('./count.mjs');
if (!existsSync(reports)) throw new Error('The test runners left no report: nothing can be counted.');
console.log(`\n${countTests(reports)}`);
