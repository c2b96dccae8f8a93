/** The same program for an ordinary browser: starts the machine side on loopback and prints the address to open. */
import { readFile } from 'node:fs/promises';
import { dataFolder, draftsFolder, sharedFolder } from '../host/data-folder.ts';
import { createHost } from '../host/host.ts';
import { programFolders } from '../host/program-folders.ts';
import { startServer } from './server.ts';

const folders = programFolders(import.meta.url);
const { version } = JSON.parse(await readFile(folders.packageFile, 'utf8')) as { version: string };
const data = dataFolder();
const host = await createHost({
  dataFolder: data,
  draftsFolder: draftsFolder(data),
  sharedFolder: sharedFolder(data),
  treesFolder: folders.trees,
  preparedCards: folders.cards,
  shell: 'browser',
  version,
});
const server = await startServer(host, folders.window, (line) => process.stderr.write(`${line}\n`));

process.stdout.write(`${server.address}\n`);
// Each line on standard input asks for a fresh address; the starter uses it to open the window again.
process.stdin.on('data', () => process.stdout.write(`${server.newAddress()}\n`));
process.stdin.on('error', () => process.stdin.destroy());
for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.once(signal, () => {
    void server.close().then(() => process.exit(0));
  });
}
