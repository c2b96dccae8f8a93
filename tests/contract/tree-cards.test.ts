import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import { keptList, TreeCards } from '../../electron/host/tree-cards.ts';
import { hashOfFiles, readTreeFolder, snapshotsOf, type TreeSnapshot } from '../../electron/host/tree-files.ts';

let shipped: readonly TreeSnapshot[];
let home: string;
beforeAll(async () => {
  const ids = ['air-leaks-when-brake-held', 'weak-engine-brake'];
  shipped = snapshotsOf(await readTreeFolder(join(import.meta.dirname, '../../trees'))).filter(({ id }) =>
    ids.includes(id),
  );
});
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'droplight-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

const kept = (): string => join(home, 'cache', 'complaints.json');

it('[HOST-13] a complaint is listed with what the search needs, and the list is kept for the next start', async () => {
  const list = await new TreeCards(home, '1').of(shipped);
  expect(list.notices).toEqual([]);
  expect(list.trees.map(({ hash, card }) => [hash, card.id])).toEqual(shipped.map(({ hash, id }) => [hash, id]));
  expect(list.trees[0]?.card.phrases.length).toBeGreaterThan(10);
  expect(list.tools.length).toBeGreaterThan(5);
  // The kept list is what the next start reads: a word changed there shows.
  writeFileSync(kept(), readFileSync(kept(), 'utf8').replace(list.trees[0]!.card.title, 'Changed title'));
  expect((await new TreeCards(home, '1').of(shipped)).trees[0]?.card.title).toBe('Changed title');
});

it('[HOST-13] a list of other trees, of another version, or half a file is read anew', async () => {
  const { title } = (await new TreeCards(home, '1').of(shipped)).trees[0]!.card;
  writeFileSync(kept(), readFileSync(kept(), 'utf8').replace(title, 'Changed title'));
  expect((await new TreeCards(home, '2').of(shipped)).trees[0]?.card.title).toBe(title);
  expect((await new TreeCards(home, '1').of(shipped.slice(1))).trees.map(({ card }) => card.id)).toEqual([
    'weak-engine-brake',
  ]);
  writeFileSync(kept(), '{"key": "1');
  expect((await new TreeCards(home, '1').of(shipped)).trees[0]?.card.title).toBe(title);
});

it('[HOST-13] a tree with an error is named with its place, and the others are listed', async () => {
  const [first, second] = shipped;
  const files = { ...first!.files, 'tree.yaml': first!.files['tree.yaml']!.replace(/^title: .*$/m, 'title: 7') };
  const broken = { id: first!.id, hash: hashOfFiles(files), files };
  const list = await new TreeCards(home, '1').of([broken, second!]);
  expect(list.trees.map(({ card }) => card.id)).toEqual([second!.id]);
  expect(list.notices.map(({ message }) => message)).toEqual([
    expect.stringMatching(/“air-leaks-when-brake-held” cannot be used.*tree\.yaml, line \d+: /),
  ]);
});

it('[HOST-17] an empty data folder takes the list that the build made, and reads only the tree that is another one', async () => {
  const prepared = join(home, 'prepared.json');
  const list = await new TreeCards(home, '1').of(shipped);
  const marked = list.trees.map(({ card, ...tree }) => ({ ...tree, card: { ...card, title: `prepared ${card.id}` } }));
  writeFileSync(prepared, JSON.stringify(keptList('1', shipped, { ...list, trees: marked })));
  rmSync(kept());
  const titles = async (version: string, of: readonly TreeSnapshot[]): Promise<string[]> =>
    (await new TreeCards(home, version, prepared).of(of)).trees.map(({ card }) => card.title);
  expect(await titles('1', shipped)).toEqual(marked.map(({ card }) => card.title));
  const [first, second] = shipped;
  const files = { ...first!.files, 'tree.yaml': first!.files['tree.yaml']!.replace(/^title: .*$/m, 'title: Another') };
  expect(await titles('1', [{ id: first!.id, hash: hashOfFiles(files), files }, second!])).toEqual([
    'Another',
    `prepared ${second!.id}`,
  ]);
  // Another version may show a card differently.
  rmSync(kept());
  expect(await titles('2', shipped)).toEqual(list.trees.map(({ card }) => card.title));
});
