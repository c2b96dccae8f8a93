// A Chromium for the desktop tests: one that is installed, else Debian's where apt and root are at hand, else the test
// runner's own download.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

function run(command, args, root) {
  console.log(`   ${command} ${args.join(' ')}`);
  return (
    spawnSync(command, args, {
      cwd: root,
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    }).status === 0
  );
}

/** Path of the browser that DROPLIGHT_CHROMIUM names, else of one that is installed, else ''. Installs nothing. */
export function findChromium(env = process.env, exists = existsSync) {
  return env.DROPLIGHT_CHROMIUM || (PLACES.find((place) => exists(place)) ?? '');
}

/** Path of the browser, or '' for the one that the test runner downloaded itself. Ends the run when none can be had. */
export function ensureChromium(root) {
  const named = process.env.DROPLIGHT_CHROMIUM;
  if (named) {
    if (existsSync(named)) return named;
    console.error(`DROPLIGHT_CHROMIUM names ${named}, and there is no such file. Correct it or unset it.`);
    process.exit(1);
  }
  const found = PLACES.find((place) => existsSync(place));
  if (found) return found;
  console.log('== No Chromium found: installing one for the desktop tests');
  const rootUser = typeof process.getuid === 'function' && process.getuid() === 0;
  if (
    rootUser &&
    existsSync('/usr/bin/apt-get') &&
    run('apt-get', ['update', '-q'], root) &&
    run('apt-get', ['install', '-y', '-q', '--no-install-recommends', 'chromium'], root)
  ) {
    const installed = PLACES.find((place) => existsSync(place));
    if (installed) return installed;
  }
  if (run('npx', ['playwright', 'install', 'chromium'], root)) return '';
  console.error(
    'No Chromium could be installed. Install Chromium or Chrome, or name one in DROPLIGHT_CHROMIUM, and run npm test again.',
  );
  process.exit(1);
}
