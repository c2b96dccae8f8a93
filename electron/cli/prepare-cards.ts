/** Run by the build: the list of complaints as the window shows it, so that the first start need not read every tree. */
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { programFolders } from '../host/program-folders.ts';
import { cardsOf, keptList } from '../host/tree-cards.ts';
import { readTreeFolder, snapshotsOf } from '../host/tree-files.ts';

const { trees, packageFile, cards } = programFolders(import.meta.url);
const { version } = JSON.parse(await readFile(packageFile, 'utf8')) as { version: string };
const snapshots = snapshotsOf(await readTreeFolder(trees));
await mkdir(dirname(cards), { recursive: true });
await writeFile(cards, JSON.stringify(keptList(version, snapshots, cardsOf(snapshots))));
