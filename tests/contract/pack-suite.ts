import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { strToU8, zipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { HostAnswer } from '../../shared/host/host-api.ts';
import { DRAWING, goodPack, packYaml, SMALLEST_TREE, zipOf } from '../packs.ts';
import { first, type Call, type Reached } from './host-suite.ts';

type Installed = HostAnswer<'packs.install'>;
type Listed = HostAnswer<'trees.list'>;

const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');
const link = { os: 3, attrs: (0o120777 * 0x10000) >>> 0 } as const;

/** A zip whose only entry says that it is smaller than it is, in both places where a zip says so. */
function lyingZip(): string {
  const zip = Buffer.from(zipSync({ 'pictures/big.svg': new Uint8Array(900_000) }));
  const listed = zip.lastIndexOf(Buffer.from([0x50, 0x4b, 0x01, 0x02]));
  zip.writeUInt32LE(500, listed + 24);
  zip.writeUInt32LE(500, 22);
  return zip.toString('base64');
}

/** A zip whose list at the end names another file than the entry itself. */
function twoNames(): string {
  const zip = Buffer.from(zipSync({ 'pack.yaml': strToU8(packYaml()) }));
  zip.write('evil.yaml', 30, 'utf8');
  return zip.toString('base64');
}

function encrypted(): string {
  const zip = Buffer.from(zipSync({ 'pack.yaml': strToU8(packYaml()) }));
  zip.writeUInt16LE(1, zip.lastIndexOf(Buffer.from([0x50, 0x4b, 0x01, 0x02])) + 8);
  return zip.toString('base64');
}

const drawn = (svg: string): Record<string, string> => ({ ...goodPack(), 'pictures/horn.svg': svg });
const inSvg = (inside: string): string => `<svg xmlns="http://www.w3.org/2000/svg">\n${inside}</svg>`;
const many = (count: number, text: string): Record<string, string> =>
  Object.fromEntries(Array.from({ length: count }, (_, i) => [`pictures/a${i}.svg`, text]));

/** What is wrong, as a zip or as files, and the code of the refusal. */
const HOSTILE: readonly (readonly [string, { zip: string } | { files: Record<string, string> }, string])[] = [
  ['no zip at all', { zip: base64(strToU8('not a zip, only words that are long enough')) }, 'not-a-zip'],
  ['half a zip', { zip: zipOf(goodPack()).slice(0, 400) }, 'not-a-zip'],
  ['a path that climbs out (zip)', { zip: zipOf({ ...goodPack(), '../../evil/tree.yaml': 'x' }) }, 'unsafe-path'],
  ['a folder entry that climbs out', { zip: zipOf(goodPack(), { '../up/': new Uint8Array(0) }) }, 'unsafe-path'],
  ['a path that climbs out (files)', { files: { ...goodPack(), 'a/../../tree.yaml': 'x' } }, 'unsafe-path'],
  ['a path from the top', { files: { ...goodPack(), '/etc/tree.yaml': 'x' } }, 'unsafe-path'],
  ['a path with a drive', { files: { ...goodPack(), 'C:/tree.yaml': 'x' } }, 'unsafe-path'],
  ['a path with a backslash', { zip: zipOf({ ...goodPack(), '..\\evil.yaml': 'x' }) }, 'unsafe-path'],
  ['a symbolic link', { zip: zipOf(goodPack(), { 'pictures/a.svg': [strToU8('/etc/passwd'), link] }) }, 'link-in-zip'],
  ['an encrypted entry', { zip: encrypted() }, 'encrypted'],
  ['two names for one entry', { zip: twoNames() }, 'zip-damaged'],
  ['too many files (zip)', { zip: zipOf(many(401, DRAWING)) }, 'too-many-files'],
  ['too many files (files)', { files: many(401, DRAWING) }, 'too-many-files'],
  ['a file that unpacks to 20 MB', { zip: zipOf({}, { 'pictures/a.svg': new Uint8Array(20e6) }) }, 'file-too-large'],
  ['files that unpack to 9 MB', { zip: zipOf(many(10, 'x'.repeat(900_000))) }, 'pack-too-large'],
  ['files of 9 MB', { files: many(10, 'x'.repeat(900_000)) }, 'pack-too-large'],
  ['a size that is a lie', { zip: lyingZip() }, 'size-is-a-lie'],
  ['a name with a space', { files: { ...goodPack(), 'my tree/tree.yaml': SMALLEST_TREE } }, 'name-not-allowed'],
  ['a name in capitals', { files: { ...goodPack(), 'pictures/Horn.svg': DRAWING } }, 'name-not-allowed'],
  ['a hidden file', { files: { ...goodPack(), '.DS_Store': 'x' } }, 'name-not-allowed'],
  ['a program', { files: { ...goodPack(), 'install.js': 'x' } }, 'file-not-allowed'],
  ['a file too deep', { files: { ...goodPack(), 'a/b/tree.yaml': SMALLEST_TREE } }, 'file-not-allowed'],
  ['a vocabulary that there is not', { files: { ...goodPack(), 'vocabulary/limit.yaml': '[]' } }, 'file-not-allowed'],
  ['no pack.yaml', { files: { 'horn-stays-silent/tree.yaml': SMALLEST_TREE } }, 'no-pack-file'],
  ['no tree', { files: { 'pack.yaml': packYaml() } }, 'no-trees'],
  ['a pack.yaml with a command', { files: { ...goodPack(), 'pack.yaml': `${packYaml()}run: rm\n` } }, 'unknown-key'],
  ['a name that is a path', { files: { ...goodPack(), 'pack.yaml': packYaml('../x') } }, 'wrong-form'],
  ['bytes that are no text', { zip: zipOf({}, { 'pack.yaml': new Uint8Array([0xff, 0xfe, 0xff]) }) }, 'not-text'],
  [
    'a text nested without end',
    { files: { ...goodPack(), 'pack.yaml': '['.repeat(200_000) } },
    'yaml-resource-exhaustion',
  ],
  ['a drawing with a DOCTYPE', { files: drawn(`<!DOCTYPE svg>\n${DRAWING}`) }, 'unsafe-drawing'],
  ['a drawing with an entity', { files: drawn(inSvg('<text>&own;</text>')) }, 'unsafe-drawing'],
  ['a drawing with a script', { files: drawn(inSvg('<script>alert(1)</script>')) }, 'unsafe-drawing'],
  ['a drawing with an event', { files: drawn(inSvg('<path d="M0 0" onload="x()"/>')) }, 'unsafe-drawing'],
  ['a drawing with a link', { files: drawn(inSvg('<a href="https://x.example"><path/></a>')) }, 'unsafe-drawing'],
  ['a drawing with a picture', { files: drawn(inSvg('<image href="https://x.example/a.png"/>')) }, 'unsafe-drawing'],
  ['a drawing with foreign content', { files: drawn(inSvg('<foreignObject></foreignObject>')) }, 'unsafe-drawing'],
  ['an outside fill', { files: drawn(inSvg('<path fill="url(https://x.example/#a)"/>')) }, 'unsafe-drawing'],
  ['an outside style', { files: drawn(inSvg('<style>@import "//x.example";</style>')) }, 'unsafe-drawing'],
  ['a style cut in two', { files: drawn(inSvg('<style>@im<!-- -->port "//x.example";</style>')) }, 'unsafe-drawing'],
  ['a style in disguise', { files: drawn(inSvg('<style>p{fill:u&#114;l(//x.example)}</style>')) }, 'unsafe-drawing'],
  ['a drawing that is none', { files: drawn('<html></html>') }, 'unsafe-drawing'],
];

/** What every carrier must do with packs of trees and with drafts, refusals included. */
export function describePacks(carrier: string, reach: () => Promise<Reached>): void {
  describe(`packs of trees, ${carrier}`, () => {
    let reached: Reached;
    let call: Call;
    beforeEach(async () => {
      reached = await reach();
      call = reached.call;
    });
    afterEach(() => reached.close());

    const filesOf = (files: Readonly<Record<string, string>>) => ({
      files: Object.entries(files).map(([path, text]) => ({ path, text })),
    });
    const install = async (files: Readonly<Record<string, string>>, replace = false): Promise<Installed> =>
      (await call('packs.install', { source: filesOf(files), replace })) as Installed;
    const listed = async (): Promise<Listed> => (await call('trees.list', {})) as Listed;
    const folder = (): string => join(reached.home, 'packs');

    it('[PACK-1] a zip and a folder are installed, listed with name and version, and removed', async () => {
      const before = (await listed()).trees.length;
      const source = {
        zip: zipOf(Object.fromEntries(Object.entries(goodPack()).map(([p, t]) => [`My Pack/${p}`, t]))),
      };
      const card = { name: 'yard-notes', version: 1, trees: ['horn-stays-silent'], drawings: 1 };
      expect(await call('packs.install', { source, replace: false })).toEqual({ installed: card, problems: [] });
      expect(await install(goodPack('other-notes', 7))).toMatchObject({ installed: { version: 7 }, problems: [] });
      expect(await call('packs.list', {})).toMatchObject({ packs: [{ name: 'other-notes' }, card], notices: [] });
      const { trees } = await listed();
      expect(trees).toHaveLength(before + 2);
      expect(trees.slice(-2).map(({ card: { id }, pack }) => [id, pack?.name, pack?.version])).toEqual([
        ['horn-stays-silent', 'other-notes', 7],
        ['horn-stays-silent', 'yard-notes', 1],
      ]);
      expect(await call('packs.remove', { name: 'other-notes' })).toEqual({ removed: 'other-notes' });
      expect(readdirSync(folder())).toEqual(['yard-notes']);
      expect((await listed()).trees).toHaveLength(before + 1);
      await expect(call('packs.remove', { name: 'other-notes' })).rejects.toMatchObject({ code: 'no-such-pack' });
      await expect(call('packs.remove', { name: '../visits' })).rejects.toMatchObject({ code: 'bad-request' });
    });

    it.each(HOSTILE)('[PACK-2] refuses %s, says where, and keeps nothing', async (_, came, code) => {
      const source = 'zip' in came ? came : filesOf(came.files);
      const { installed, problems } = (await call('packs.install', { source, replace: true })) as Installed;
      expect(installed).toBeNull();
      expect(problems.map((problem) => problem.code)).toContain(code);
      for (const { file, message } of problems) {
        expect(file).not.toBe('');
        expect(message).toMatch(/^["“<\p{L}].*[.…]$/su);
      }
      expect(existsSync(folder())).toBe(false);
    });

    it('[PACK-3] a tree that does not hold is named with file and line, and the pack is refused whole', async () => {
      const tree = SMALLEST_TREE.replace(/^id: .*/m, 'id: horn-two').replace('hazard: nuisance', 'hazard: harmful');
      const line = tree.split('\n').findIndex((each) => each.includes('harmful')) + 1;
      const answer = await install({ ...goodPack(), 'horn-two/tree.yaml': tree });
      expect(answer.installed).toBeNull();
      expect(answer.problems).toMatchObject([{ level: 'error', file: 'horn-two/tree.yaml', line }]);
      const unlinted = SMALLEST_TREE.replace(/^teaching:[^]*?^stopRules/m, 'teaching: []\n\nstopRules');
      const lint = await install({ ...goodPack(), 'horn-stays-silent/tree.yaml': unlinted });
      expect(lint).toMatchObject({
        installed: null,
        problems: [{ code: 'teaching-order', file: 'horn-stays-silent/tree.yaml' }],
      });
      const bare = Object.fromEntries(Object.entries(goodPack()).filter(([path]) => !path.startsWith('pictures/')));
      expect(await install(bare)).toMatchObject({ installed: null, problems: [{ code: 'missing-picture' }] });
      expect(existsSync(folder())).toBe(false);
    });

    it('[PACK-4] the same name again is refused unless told to replace, and then replaces the whole pack', async () => {
      await install(goodPack());
      const again = { ...goodPack('yard-notes', 2), 'horn-stays-silent/tree.yaml': SMALLEST_TREE };
      expect(await install(again)).toMatchObject({ installed: null, problems: [{ code: 'pack-exists' }] });
      expect(await call('packs.list', {})).toMatchObject({ packs: [{ version: 1 }] });
      const without = Object.fromEntries(Object.entries(again).filter(([path]) => !path.startsWith('pictures/')));
      expect(await install(without, true)).toMatchObject({ installed: { version: 2, drawings: 0 } });
      expect(readdirSync(folder())).toEqual(['yard-notes']);
      expect(existsSync(join(folder(), 'yard-notes', 'pictures'))).toBe(false);
    });

    it('[PACK-5] a visit keeps tree, drawings and name of the pack when the pack is gone', async () => {
      await install(goodPack());
      const { hash, card } = (await listed()).trees.at(-1)!;
      await call('visits.create', { visit: 'v-1', first });
      const opened = {
        ...first,
        id: 'c',
        kind: 'complaint.opened',
        complaint: 'c',
        tree: card.id,
        treeHash: hash,
        words: '',
      };
      await call('visits.append', { visit: 'v-1', events: [opened] });
      const before = await call('trees.read', { hash });
      expect(before).toMatchObject({ pack: { name: 'yard-notes', version: 1 }, drawings: { 'horn.svg': DRAWING } });
      await call('packs.remove', { name: 'yard-notes' });
      await expect(call('trees.read', { hash })).rejects.toMatchObject({ code: 'no-such-tree' });
      expect(await call('trees.snapshot', { visit: 'v-1', hash })).toEqual(before);
    });

    it('[PACK-6] a tree with the id of a built-in one stands beside it', async () => {
      const { trees } = await listed();
      const { id } = trees[0]!.card;
      const own = SMALLEST_TREE.replace(/^id: .*/m, `id: ${id}`);
      expect(await install({ 'pack.yaml': packYaml(), [`${id}/tree.yaml`]: own })).toMatchObject({ problems: [] });
      const both = (await listed()).trees.filter(({ card }) => card.id === id);
      expect(both.map(({ pack }) => pack?.name)).toEqual([undefined, 'yard-notes']);
      expect(both[0]).toEqual(trees[0]);
    });

    it('[PACK-7] a pack that is broken on disk is named and costs nothing else', async () => {
      await install(goodPack());
      const count = (await listed()).trees.length;
      mkdirSync(join(folder(), 'half'), { recursive: true });
      writeFileSync(join(folder(), 'yard-notes', 'pack.yaml'), packYaml('another'));
      const { trees, notices } = await listed();
      expect(trees).toHaveLength(count - 1);
      expect(notices.map(({ code, message }) => [code, message.slice(0, 22)])).toEqual([
        ['pack-broken', 'The pack “half” cannot'],
        ['pack-broken', 'The pack “yard-notes” '],
      ]);
      expect(await call('packs.remove', { name: 'half' })).toEqual({ removed: 'half' });
    });

    it('[PACK-8] a draft is read again when its file changes, with what is wrong at its line', async () => {
      const drafts = join(reached.home, 'drafts');
      expect(await call('trees.draft', { id: null, seen: null })).toEqual({ folder: drafts, drafts: [], tree: null });
      mkdirSync(join(drafts, 'horn-stays-silent'), { recursive: true });
      const file = join(drafts, 'horn-stays-silent', 'tree.yaml');
      writeFileSync(file, SMALLEST_TREE);
      const id = 'horn-stays-silent';
      const whole = (await call('trees.draft', { id, seen: null })) as HostAnswer<'trees.draft'>;
      expect(whole).toMatchObject({ drafts: [{ id, errors: 0 }], tree: { snapshot: { id }, problems: [] } });
      const seen = whole.tree!.snapshot.hash;
      expect(await call('trees.draft', { id, seen })).toMatchObject({ tree: null });
      const slip = SMALLEST_TREE.replace('hazard: nuisance', 'hazard: harmful');
      writeFileSync(file, slip);
      const line = slip.split('\n').findIndex((each) => each.includes('harmful')) + 1;
      expect(await call('trees.draft', { id, seen })).toMatchObject({
        drafts: [{ id, errors: 1 }],
        tree: {
          problems: [{ level: 'error', file: `${id}/tree.yaml`, line, excerpt: { text: '    hazard: harmful' } }],
        },
      });
      expect(readFileSync(file, 'utf8')).toBe(slip);
      await expect(call('trees.draft', { id: '../packs', seen: null })).rejects.toMatchObject({ code: 'bad-request' });
      rmSync(drafts, { recursive: true });
    });
  });
}
