import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { DraftFiles } from '../../../electron/host/draft-files.ts';
import { TREE_FILES } from '../../exchange.ts';
import { DRAWING, goodPack } from '../../packs.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'droplight-drafts-'));
  mkdirSync(join(folder, 'horn-stays-silent'));
  mkdirSync(join(folder, 'pictures'));
  writeFileSync(join(folder, 'horn-stays-silent', 'tree.yaml'), goodPack()['horn-stays-silent/tree.yaml']!);
});
afterEach(() => rmSync(folder, { recursive: true }));

it('[PACK-8] a draft brings the drawings that it names, and is another one when a drawing changes', async () => {
  const vocabulary = Object.fromEntries(Object.entries(TREE_FILES).filter(([name]) => name !== 'tree.yaml'));
  const drafts = new DraftFiles(folder);
  const only = async () => (await drafts.all(vocabulary))[0]!.snapshot;
  expect((await only()).drawings).toBeUndefined();
  writeFileSync(join(folder, 'pictures', 'horn.svg'), DRAWING);
  writeFileSync(join(folder, 'pictures', 'not-named.svg'), DRAWING);
  const first = await only();
  expect(first.drawings).toEqual({ 'horn.svg': DRAWING });
  const drawn = DRAWING.replace('M2 10', 'M4 10');
  writeFileSync(join(folder, 'pictures', 'horn.svg'), drawn);
  const second = await only();
  expect(second.drawings).toEqual({ 'horn.svg': drawn });
  expect(second.hash).not.toBe(first.hash);
  // A link is not followed out of the folder.
  rmSync(join(folder, 'pictures', 'horn.svg'));
  writeFileSync(join(folder, 'outside'), DRAWING);
  symlinkSync(join(folder, 'outside'), join(folder, 'pictures', 'horn.svg'));
  expect((await only()).drawings).toBeUndefined();
});
