// `npm start`: installs if needed, builds if needed, opens the window. `npm start -- --browser` asks for the browser.
import { spawn } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { appBrowser, hasDisplay, systemOpener } from './browsers.mjs';
import { ensureBuilt } from './build.mjs';
import { electronBinary } from './electron-binary.mjs';
import { ensureInstalled } from './install.mjs';
import { browserCommand, wayToOpen } from './way-to-open.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const wantsBrowser = process.argv.includes('--browser');
const display = hasDisplay();

ensureInstalled(root);
await ensureBuilt(root);

// Without a display, or when a browser is asked for, the shell is not fetched either.
const binary = wantsBrowser || !display ? null : electronBinary(root);
const { electron, message } = wayToOpen({ wantsBrowser, electron: binary, display });
if (message) console.log(message);
if (electron) {
  const window = spawn(electron, [root], { stdio: 'inherit' });
  window.once('exit', (code) => process.exit(code ?? 0));
} else openInBrowser();

function openInBrowser() {
  const server = spawn(process.execPath, [join(root, 'build', 'server', 'main.js')], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  server.once('exit', (code) => process.exit(code ?? 0));
  for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, () => server.kill('SIGTERM'));
  server.stdout.once('data', (data) => {
    const { command, opened, byHand } = browserCommand(String(data).trim(), {
      display,
      browser: appBrowser(),
      opener: systemOpener(),
    });
    if (!command) {
      console.log(byHand);
      return;
    }
    const [program, ...args] = command;
    const browser = spawn(program, args, { stdio: 'ignore', detached: true });
    browser.once('error', () => console.log(byHand));
    browser.once('spawn', () => console.log(opened));
    browser.unref();
  });
}
