import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { crc32, deflateRawSync } from 'node:zlib';
import { zipSync } from 'fflate';
import { hashOfFiles } from '../electron/host/tree-files.ts';
import type { HostAnswer } from '../shared/host/host-api.ts';
import { SMALLEST_TREE } from './packs.ts';
import { PNG_DATA, PNG_MARK, pngChunk, pngHead } from './unit/photo/crafted.ts';

/** One call by name, as a carrier takes it. */
type Call = (method: string, request: unknown) => Promise<unknown>;
type TakenIn = HostAnswer<'visits.import'>;

export const sha = (bytes: Uint8Array | string): string => createHash('sha256').update(bytes).digest('hex');

/** A picture of this many dots by what its head says. */
export function png(width: number, height: number, mark = 0): Buffer {
  const picture = pngChunk('IDAT', Buffer.concat([PNG_DATA, Buffer.from([mark])]));
  return Buffer.concat([PNG_MARK, pngHead(width, height), picture, pngChunk('IEND', '')]);
}

/** The made-up tree of the guide, with the program's vocabulary. */
const vocabulary = Object.fromEntries(
  ['limits', 'instruments', 'access', 'layout', 'tools', 'checks'].map((name) => [
    `vocabulary/${name}.yaml`,
    readFileSync(join(import.meta.dirname, `../trees/vocabulary/${name}.yaml`), 'utf8'),
  ]),
);
export const TREE_FILES: Readonly<Record<string, string>> = { 'tree.yaml': SMALLEST_TREE, ...vocabulary };
export const TREE_HASH = hashOfFiles(TREE_FILES);

/** A program that knows this one tree only: looking at sixteen of them takes longer than what is tested. */
export function oneTreeFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'droplight-trees-'));
  mkdirSync(join(folder, 'pictures'));
  for (const [name, yaml] of Object.entries(TREE_FILES)) {
    const path = join(folder, name === 'tree.yaml' ? 'horn-stays-silent/tree.yaml' : name);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, yaml);
  }
  return folder;
}

/** An entry of the visit that the tests send about. */
export const entry = (id: string, body: Readonly<Record<string, unknown>>): Record<string, unknown> => ({
  id,
  v: 1,
  at: '2020-01-01T00:00:00Z',
  by: 'Invented name',
  ...body,
});
export const PHOTO = png(8, 6);
export const PHOTO_FILE = `${sha(PHOTO)}.png`;
export const OPENING = entry('e1', { kind: 'visit.opened', coach: 'Invented coach 7', demo: true });
export const ENTRIES: readonly Record<string, unknown>[] = [
  OPENING,
  entry('e2', { kind: 'person.set', who: 'mechanic' }),
  entry('e3', {
    kind: 'complaint.opened',
    complaint: 'c1',
    tree: 'horn-stays-silent',
    treeHash: TREE_HASH,
    words: 'the horn is silent',
  }),
  entry('e4', { kind: 'photo.added', complaint: 'c1', photo: PHOTO_FILE }),
];

/** Parts of an exported visit before it is zipped; a test bends one of them. */
export interface Parts {
  manifest: Record<string, unknown>;
  files: Map<string, Uint8Array>;
}
const text = (value: string): Uint8Array => Buffer.from(value, 'utf8');
export const lines = (records: readonly unknown[]): string =>
  records.map((record) => `${JSON.stringify(record)}\n`).join('');

/** An exported visit that is in order. */
export function goodParts(records: readonly Record<string, unknown>[] = ENTRIES): Parts {
  const files = new Map<string, Uint8Array>([
    ['visits/v-sent/events-aa00.jsonl', text(lines(records))],
    [`photos/${PHOTO_FILE}`, PHOTO],
    ...Object.entries(TREE_FILES).map(([name, yaml]): [string, Uint8Array] => [
      `trees/${TREE_HASH}/${name}`,
      text(yaml),
    ]),
  ]);
  return {
    manifest: {
      format: 'droplight-exchange/1',
      kind: 'visit',
      made: '2020-01-02T00:00:00Z',
      program: '0',
      visits: [{ visit: 'v-sent', photos: [PHOTO_FILE], trees: [TREE_HASH] }],
    },
    files,
  };
}

/** Zips parts, with the list of the files as they are unless the manifest brings one. */
export function zipParts({ manifest, files }: Parts): Buffer {
  const list = [...files].map(([path, bytes]) => ({ path, bytes: bytes.length, sha256: sha(bytes) }));
  const head = text(JSON.stringify({ ...manifest, files: manifest['files'] ?? list }));
  return Buffer.from(zipSync({ ...Object.fromEntries(files), 'manifest.json': head }, { level: 1 }));
}

/** An entry of a zip written by hand, where a test has to lie. */
export interface RawEntry {
  readonly path: string;
  readonly bytes: Uint8Array;
  /** What the list says in place of the truth. */
  readonly size?: number;
  readonly method?: number;
  readonly flags?: number;
  readonly mode?: number;
  /** Name in the entry itself. */
  readonly localPath?: string;
  /** Points to the entry of this number in place of its own. */
  readonly over?: number;
  /** Deflated bytes that are there already. */
  readonly packed?: Uint8Array;
}

/** Writes a zip by hand. */
export function rawZip(entries: readonly RawEntry[]): Buffer {
  const parts: Buffer[] = [];
  const offsets: number[] = [];
  const list: Buffer[] = [];
  let at = 0;
  for (const { path, bytes, size, method = 8, flags = 0, mode = 0, localPath = path, over, packed } of entries) {
    const body =
      over === undefined ? Buffer.from(packed ?? (method === 8 ? deflateRawSync(bytes) : bytes)) : Buffer.alloc(0);
    const crc = crc32(bytes);
    const name = Buffer.from(localPath, 'utf8');
    const offset = over === undefined ? at : offsets[over]!;
    offsets.push(offset);
    const packedBytes = over === undefined ? body.length : Buffer.from(deflateRawSync(bytes)).length;
    if (over === undefined) {
      const local = Buffer.alloc(30);
      local.writeUInt32LE(0x04034b50, 0);
      local.writeUInt16LE(method, 8);
      local.writeUInt32LE(crc, 14);
      local.writeUInt32LE(body.length, 18);
      local.writeUInt32LE(size ?? bytes.length, 22);
      local.writeUInt16LE(name.length, 26);
      parts.push(local, name, body);
      at += 30 + name.length + body.length;
    }
    const listedName = Buffer.from(path, 'utf8');
    const listed = Buffer.alloc(46);
    listed.writeUInt32LE(0x02014b50, 0);
    listed.writeUInt16LE(flags, 8);
    listed.writeUInt16LE(method, 10);
    listed.writeUInt32LE(crc, 16);
    listed.writeUInt32LE(packedBytes, 20);
    listed.writeUInt32LE(size ?? bytes.length, 24);
    listed.writeUInt16LE(listedName.length, 28);
    listed.writeUInt32LE((mode * 0x10000) >>> 0, 38);
    listed.writeUInt32LE(offset, 42);
    list.push(listed, listedName);
  }
  const listBytes = Buffer.concat(list);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(entries.length, 8);
  end.writeUInt16LE(entries.length, 10);
  end.writeUInt32LE(listBytes.length, 12);
  end.writeUInt32LE(at, 16);
  return Buffer.concat([...parts, listBytes, end]);
}

/** Parts as entries of a zip written by hand. */
export function rawParts(parts: Parts): RawEntry[] {
  const list = [...parts.files].map(([path, bytes]) => ({ path, bytes: bytes.length, sha256: sha(bytes) }));
  const manifest = text(JSON.stringify({ ...parts.manifest, files: parts.manifest['files'] ?? list }));
  return [...[...parts.files].map(([path, bytes]) => ({ path, bytes })), { path: 'manifest.json', bytes: manifest }];
}

/** Hands a file over in pieces of a size, and takes it in. */
export async function takeIn(
  call: Call,
  zip: Uint8Array,
  method: 'visits.import' | 'backup.restore' = 'visits.import',
  piece = 3_000_000,
): Promise<TakenIn> {
  for (let at = 0; at === 0 || at < zip.length; at += piece)
    await call('exchange.send', {
      upload: 'u-1',
      at,
      data: Buffer.from(zip.subarray(at, at + piece)).toString('base64'),
    });
  // What a carrier answers is what the machine side has sent.
  return (await call(method, { upload: 'u-1' })) as TakenIn;
}

/** Makes a file and takes it away piece by piece, as a window does. */
export async function madeFile(
  call: Call,
  method: 'visits.export' | 'backup.write',
  request: unknown = {},
): Promise<{ readonly bytes: Buffer; readonly answer: HostAnswer<'visits.export'> }> {
  const answer = (await call(method, request)) as HostAnswer<'visits.export'>;
  const parts: Buffer[] = [];
  for (let at: number | null = 0; at !== null;) {
    const piece = (await call('exchange.fetch', { name: answer.name, at })) as HostAnswer<'exchange.fetch'>;
    parts.push(Buffer.from(piece.data, 'base64'));
    at = piece.next;
  }
  return { bytes: Buffer.concat(parts), answer };
}
