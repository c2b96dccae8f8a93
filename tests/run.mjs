// `npm test`: everything, in the order in which a fault is cheapest to read. Installs what is missing first.
// Plain JavaScript on Node's own modules alone, because it runs before anything is installed.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { ensureInstalled } from '../electron/start/install.mjs';
import { ensureChromium } from './chromium.mjs';

const root = new URL('..', import.meta.url).pathname;
const reports = join(root, 'test-results');

/** Ends the whole run when a step has failed. */
function endIfFailed(name, code) {
  if (code === 0) return;
  console.error(`\n${name} failed (exit ${code}). Nothing after it was run.`);
  process.exit(typeof code === 'number' ? code : 1);
}

const seconds = (started) => ((Date.now() - started) / 1000).toFixed(1);

/** Runs one step with its output shown. */
function step(name, command, args, env = {}) {
  const started = Date.now();
  console.log(`\n== ${name}`);
  const ran = spawnSync(command, args, { cwd: root, stdio: 'inherit', env: { ...process.env, ...env } });
  if (ran.error) throw ran.error;
  endIfFailed(name, ran.status ?? ran.signal);
  console.log(`== ${name}: ${seconds(started)} s`);
}

/** Takes one npm script after the other from a list, without holding up anybody; what each says is shown when it ends. */
async function lane(scripts) {
  for (let next = scripts.shift(); next; next = scripts.shift()) {
    const [name, script] = next;
    const started = Date.now();
    const said = [];
    const code = await new Promise((resolve, reject) => {
      const run = spawn('npm', ['run', '-s', script], { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] });
      for (const stream of [run.stdout, run.stderr]) stream.on('data', (data) => said.push(data));
      run.once('error', reject);
      run.once('close', (status, signal) => resolve(status ?? signal));
    });
    console.log(`\n== ${name}\n${Buffer.concat(said).toString().trimEnd()}\n== ${name}: ${seconds(started)} s`);
    endIfFailed(name, code);
  }
}

ensureInstalled(root);
rmSync(reports, { recursive: true, force: true });
const chromium = ensureChromium(root);

// Two lanes for two cores take from one list, the longest first, so that neither waits for the other: none of these writes
// what another reads. The trees are linted below, by a test that starts the command.
const checks = [
  ['types', 'check:types'],
  ['format', 'check:format'],
  ['lint', 'check:lint'],
  ['build', 'build'],
  ['who imports whom', 'check:deps'],
  ['unused code', 'check:unused'],
];
await Promise.all([lane(checks), lane(checks)]);
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
