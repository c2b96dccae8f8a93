// `npm start`: installs if needed, builds if needed, opens the window. `npm start -- --browser` asks for the browser.
import { spawn } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { appBrowser, hasDisplay, systemOpener } from './browsers.mjs';
import { ensureBuilt } from './build.mjs';
import { electronBinary } from './electron-binary.mjs';
import { ensureInstalled } from './install.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const wantsBrowser = process.argv.includes('--browser');

ensureInstalled(root);
await ensureBuilt(root);

const electron = wantsBrowser ? null : electronBinary(root);
if (electron && hasDisplay()) {
  const window = spawn(electron, [root], { stdio: 'inherit' });
  window.once('exit', (code) => process.exit(code ?? 0));
} else {
  if (!wantsBrowser)
    console.log(
      electron
        ? 'No display: the same program is served for a browser.'
        : 'Electron’s binary is not here: the same program opens in a browser.',
    );
  openInBrowser();
}

function openInBrowser() {
  const server = spawn(process.execPath, [join(root, 'build', 'server', 'main.js')], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  server.once('exit', (code) => process.exit(code ?? 0));
  for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, () => server.kill('SIGTERM'));
  server.stdout.once('data', (data) => {
    const address = String(data).trim();
    if (!hasDisplay()) {
      console.log(`Open this address on this machine, once: ${address}`);
      return;
    }
    const browser = appBrowser();
    const [command, ...args] = browser ? [browser, `--app=${address}`] : [...systemOpener(), address];
    const opened = spawn(command, args, { stdio: 'ignore', detached: true });
    opened.once('error', () =>
      console.log(`No browser could be opened. Open this address on this machine, once: ${address}`),
    );
    opened.unref();
    console.log('Droplight is open. Ctrl+C here ends it; everything recorded is on disk.');
  });
}
