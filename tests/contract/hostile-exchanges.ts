import { deflateRawSync } from 'node:zlib';
import { strToU8, zipSync } from 'fflate';
import { hashOfFiles } from '../../electron/host/tree-files.ts';
import { jpeg } from '../unit/photo/crafted.ts';
import {
  entry,
  ENTRIES,
  goodParts,
  lines,
  OPENING,
  PHOTO_FILE,
  png,
  rawParts,
  rawZip,
  sha,
  TREE_HASH,
  zipParts,
  type Parts,
} from '../exchange.ts';

const LOG = 'visits/v-sent/events-aa00.jsonl';
const LINK = 0o120777;

/** A visit with something bent. */
function bent(bend: (parts: Parts) => void): Buffer {
  const parts = goodParts();
  bend(parts);
  return zipParts(parts);
}
const withFile = (path: string, content: Uint8Array | string): Buffer =>
  bent(({ files }) => files.set(path, typeof content === 'string' ? strToU8(content) : content));
const withManifest = (change: Record<string, unknown>): Buffer =>
  bent(({ manifest }) => Object.assign(manifest, change));
const withEntry = (record: unknown): Buffer => withFile(LOG, lines([...ENTRIES, record]));
/** The good visit written by hand, and more entries. */
const raw = (...more: Parameters<typeof rawZip>[0]): Buffer => rawZip([...rawParts(goodParts()), ...more]);
const visitOf = (photos: readonly string[], trees: readonly string[] = [TREE_HASH], visit = 'v-sent'): unknown => [
  { visit, photos, trees },
];

/** A photo in the place of the good one. */
function withPhoto(bytes: Uint8Array, name = `${sha(bytes)}.png`): Buffer {
  const parts = goodParts(
    ENTRIES.map((record) => (record['photo'] === undefined ? record : { ...record, photo: name })),
  );
  parts.files.delete(`photos/${PHOTO_FILE}`);
  parts.files.set(`photos/${name}`, bytes);
  parts.manifest['visits'] = visitOf([name]);
  return zipParts(parts);
}

/** A drawing of a pack with something in it, kept beside the visit with its tree. */
const withDrawing = (inside: string): Buffer =>
  bent(({ files }) => {
    files.set(`trees/${TREE_HASH}/pack.yaml`, strToU8('format: droplight-pack/1\nname: yard-notes\nversion: 1\n'));
    files.set(
      `trees/${TREE_HASH}/pictures/horn.svg`,
      strToU8(`<svg xmlns="http://www.w3.org/2000/svg">${inside}</svg>`),
    );
  });

/** Sixty photos of nearly twelve million zeros each: 60 kB that want to be 700 MB. Deflated once. */
function bomb(): Buffer {
  const zeros = new Uint8Array(11_900_000);
  const packed = deflateRawSync(zeros);
  return rawZip(Array.from({ length: 60 }, (_, i) => ({ path: `photos/${sha(String(i))}.png`, bytes: zeros, packed })));
}

const nested = (depth: number): unknown => (depth === 0 ? 'x' : [nested(depth - 1)]);

/** What is wrong, the file, the code of the refusal, and a piece of its sentence that is its own. */
export const HOSTILE: readonly (readonly [string, () => Buffer, string, RegExp])[] = [
  ['no zip at all', () => Buffer.from('no zip, only words that are long enough'), 'not-a-zip', /no zip/],
  ['nothing', () => Buffer.alloc(1), 'not-a-zip', /end is missing/],
  ['a zip cut off in the middle', () => zipParts(goodParts()).subarray(0, 9000), 'not-a-zip', /end is missing/],
  ['a zip that lost its beginning', () => zipParts(goodParts()).subarray(500), 'zip-damaged', /contradicts itself/],
  ['a path that climbs out', () => raw({ path: '../../evil.jsonl', bytes: strToU8('x') }), 'unsafe-path', /"\.\."/],
  [
    'a path that climbs out from inside',
    () => raw({ path: 'visits/../../x', bytes: strToU8('x') }),
    'unsafe-path',
    /"\.\."/,
  ],
  [
    'a path from the top of the disk',
    () => raw({ path: '/etc/passwd', bytes: strToU8('x') }),
    'unsafe-path',
    /top of a disk/,
  ],
  ['a path with a drive', () => raw({ path: 'C:/x.jsonl', bytes: strToU8('x') }), 'unsafe-path', /top of a disk/],
  ['a path with a backslash', () => raw({ path: 'photos\\..\\x', bytes: strToU8('x') }), 'unsafe-path', /backslash/],
  ['a path with a zero byte', () => raw({ path: 'photos/x\0.png', bytes: strToU8('x') }), 'unsafe-path', /zero byte/],
  [
    'a symbolic link',
    () => raw({ path: 'photos/a.png', bytes: strToU8('/etc/passwd'), mode: LINK }),
    'link-in-zip',
    /symbolic link/,
  ],
  ['a device', () => raw({ path: 'photos/a.png', bytes: strToU8(''), mode: 0o060666 }), 'link-in-zip', /device/],
  ['an encrypted entry', () => raw({ path: 'photos/a.png', bytes: strToU8('x'), flags: 1 }), 'encrypted', /encrypted/],
  [
    'an unusual packing',
    () => raw({ path: 'photos/a.png', bytes: strToU8('x'), method: 12 }),
    'zip-not-plain',
    /method 12/,
  ],
  [
    'a file of 20 MB of zeros',
    () => raw({ path: 'photos/a.png', bytes: new Uint8Array(20e6) }),
    'file-too-large',
    /12 MB/,
  ],
  ['700 MB out of 60 kB', bomb, 'unpacks-too-large', /640 MB when unpacked/],
  [
    'entries over the same bytes',
    () => raw({ path: 'photos/a.png', bytes: strToU8('x'), over: 0 }),
    'zip-damaged',
    /contradicts itself/,
  ],
  [
    'a size that is a lie',
    () => rawZip(rawParts(goodParts()).map((each) => (each.path === LOG ? { ...each, size: 50 } : each))),
    'size-is-a-lie',
    /says that the file has 50 bytes/,
  ],
  [
    'two names for one entry',
    () =>
      rawZip(
        rawParts(goodParts()).map((each) =>
          each.path === LOG ? { ...each, localPath: 'visits/v-sent/events-bb00.jsonl' } : each,
        ),
      ),
    'zip-damaged',
    /contradicts itself/,
  ],
  [
    'the same name twice',
    () => raw({ path: LOG, bytes: strToU8(lines([OPENING])) }),
    'file-twice',
    /holds this file twice/,
  ],
  [
    'too many files',
    () => raw(...Array.from({ length: 4001 }, (_, i) => ({ path: `photos/${i}`, bytes: strToU8('') }))),
    'too-many-files',
    /at most 4000/,
  ],
  ['no manifest', () => Buffer.from(zipSync({ [LOG]: strToU8(lines(ENTRIES)) })), 'no-manifest', /no manifest\.json/],
  [
    'a manifest that is no JSON',
    () => Buffer.from(zipSync({ 'manifest.json': strToU8('{"format":') })),
    'manifest-damaged',
    /cannot be read/,
  ],
  ['a manifest without a list', () => withManifest({ files: 'all' }), 'manifest-damaged', /“files”/],
  [
    'a zip of something else',
    () => withManifest({ format: 'holiday-photos/1' }),
    'not-an-exchange',
    /made by something else/,
  ],
  [
    'a newer form of the file',
    () => withManifest({ format: 'droplight-exchange/2' }),
    'newer-format',
    /newer Droplight made this file/,
  ],
  ['a backup in place of a visit', () => withManifest({ kind: 'backup' }), 'other-kind', /backup of a whole machine/],
  [
    'two visits',
    () => withManifest({ visits: [visitOf([]), visitOf([])].flat() }),
    'manifest-damaged',
    /exactly one visit/,
  ],
  [
    'a practice log by its form',
    () => withManifest({ format: 'droplight-practice/1' }),
    'practice-log',
    /simulated coach/,
  ],
  [
    'a practice log by its place',
    () => withFile('practice/run-1.jsonl', lines([OPENING])),
    'practice-log',
    /practice page/,
  ],
  [
    'a practice log by its entries',
    () => withEntry(entry('e8', { kind: 'practice.begun', code: 'A1' })),
    'practice-log',
    /“practice\.begun”/,
  ],
  [
    'a file that was changed on the way',
    () => {
      const parts = goodParts();
      parts.manifest['files'] = [...parts.files].map(([path, bytes]) => ({
        path,
        bytes: bytes.length,
        sha256: sha(path === LOG ? 'other' : bytes),
      }));
      return zipParts(parts);
    },
    'wrong-hash',
    /not what the list says/,
  ],
  [
    'a file that the list does not name',
    () => raw({ path: 'visits/v-sent/events-cc00.jsonl', bytes: strToU8(lines([])) }),
    'not-in-the-list',
    /does not name this file/,
  ],
  [
    'a file of the list that is missing',
    () => {
      const parts = goodParts();
      const all = rawParts(parts);
      return rawZip(all.filter(({ path }) => path !== LOG));
    },
    'file-missing',
    /not in the zip/,
  ],
  ['a program', () => withFile('run.exe', 'MZ'), 'file-not-allowed', /no place in an exported visit/],
  ['settings in a visit', () => withFile('settings.json', '{}'), 'file-not-allowed', /no place in an exported visit/],
  [
    'a writer with a foreign name',
    () => withFile('visits/v-sent/events-Mina.jsonl', ''),
    'foreign-id',
    /WRITER in hex digits/,
  ],
  [
    'a visit with a foreign name',
    () => withFile('visits/V_Sent/events-aa00.jsonl', lines([OPENING])),
    'foreign-id',
    /small letters, digits and hyphens/,
  ],
  [
    'another visit beside the one of the list',
    () => withFile('visits/v-other/events-aa00.jsonl', lines([OPENING])),
    'foreign-id',
    /its list does not name/,
  ],
  [
    'a coach that the visit does not speak of',
    () => withFile('coaches/k-1/events-aa00.jsonl', lines([entry('k1', { kind: 'coach.named', name: 'x' })])),
    'foreign-id',
    /does not speak of this coach/,
  ],
  [
    'an entry with a foreign id',
    () => withEntry(entry('../e9', { kind: 'person.set', who: 'mechanic' })),
    'not-an-entry',
    /“id” is/,
  ],
  ['an entry that is no JSON', () => withFile(LOG, `${lines(ENTRIES)}{"id":\n`), 'not-an-entry', /it is no JSON/],
  [
    'an entry nested a thousand deep',
    () => withEntry(entry('e9', { kind: 'odd.thing', deep: nested(1000) })),
    'not-an-entry',
    /more than 20 deep/,
  ],
  [
    'an entry of a megabyte',
    () => withEntry(entry('e9', { kind: 'odd.thing', text: 'x'.repeat(1_000_000) })),
    'entry-too-large',
    /at most 131072/,
  ],
  [
    'an entry that does not hold',
    () =>
      withEntry(
        entry('e9', { kind: 'finding.recorded', complaint: 'c1', finding: 'f', check: 'x', value: { kind: 'guess' } }),
      ),
    'not-an-event',
    /cannot be used/,
  ],
  [
    'an entry of a newer version',
    () => withEntry({ ...entry('e9', { kind: 'person.set', who: 'mechanic' }), v: 2 }),
    'newer-version',
    /log version 2/,
  ],
  [
    'one id with two meanings',
    () => withEntry({ ...OPENING, coach: 'Another coach' }),
    'entry-twice',
    /says two different things/,
  ],
  ['a log without an end', () => withFile(LOG, lines(ENTRIES).slice(0, -20)), 'log-cut-off', /cut off/],
  ['a log that is no text', () => withFile(LOG, Buffer.from([0xff, 0xfe, 0x00, 0x0a])), 'not-text', /UTF-8/],
  ['a visit that begins nowhere', () => withFile(LOG, lines(ENTRIES.slice(1))), 'no-opening', /begins nowhere/],
  ['a visit that begins twice', () => withEntry({ ...OPENING, id: 'e0' }), 'two-openings', /begins 2 times/],
  [
    'a script in a note',
    () => withEntry(entry('e9', { kind: 'note.added', complaint: 'c1', text: 'see <script>alert(1)</script>' })),
    'script-in-text',
    /<script/,
  ],
  [
    'a script behind a link',
    () => withEntry(entry('e9', { kind: 'note.added', complaint: 'c1', text: '[open](jav&#x61;script:alert(1))' })),
    'script-in-text',
    /javascript:/,
  ],
  [
    'a script in an event attribute',
    () => withEntry(entry('e9', { kind: 'note.added', complaint: 'c1', text: '<img src=x onerror=alert(1)>' })),
    'script-in-text',
    /onerror/,
  ],
  [
    'a script in the Markdown of a tree',
    () => bent((parts) => hidden(parts, 'ask: <iframe src="https://elsewhere.example">')),
    'script-in-text',
    /<iframe/,
  ],
  [
    'a script in a drawing',
    () => withDrawing('<script>alert(1)</script>'),
    'unsafe-drawing',
    /<script> is not allowed/,
  ],
  [
    'a drawing that loads something',
    () => withDrawing('<image href="https://elsewhere.example/x.png"/>'),
    'unsafe-drawing',
    /<image> is not allowed/,
  ],
  [
    'a tree that was changed',
    () => bent(({ files }) => files.set(`trees/${TREE_HASH}/tree.yaml`, strToU8('id: horn-stays-silent\n'))),
    'wrong-tree',
    /not the one that its name says/,
  ],
  [
    'a tree that cannot be read',
    () => bent((parts) => hidden(parts, 'no-such-key: 1')),
    'tree-not-readable',
    /cannot read the tree/,
  ],
  [
    'a tree that is missing',
    () =>
      bent(({ manifest, files }) => {
        manifest['visits'] = visitOf([PHOTO_FILE], []);
        files.set(LOG, strToU8(lines(ENTRIES).replace(TREE_HASH, 'f'.repeat(64))));
        for (const path of [...files.keys()]) if (path.startsWith('trees/')) files.delete(path);
      }),
    'tree-missing',
    /neither in the file nor/,
  ],
  ['a huge picture', () => withPhoto(png(60_000, 60_000)), 'picture-too-large', /60000 by 60000/],
  [
    'a picture that is a page',
    () => withPhoto(strToU8('<html>not a picture at all, but long enough</html>')),
    'wrong-type',
    /content is something else/,
  ],
  [
    'a picture of another kind than its ending',
    () => {
      const bytes = png(4, 4);
      return withPhoto(bytes, `${sha(bytes)}.jpg`);
    },
    'wrong-type',
    /ends in \.jpg/,
  ],
  [
    'a photo that tells where it was taken',
    () => {
      const bytes = jpeg();
      return withPhoto(bytes, `${sha(bytes)}.jpg`);
    },
    'photo-not-clean',
    /holds more than the picture/,
  ],
  ['a photo that breaks off', () => withPhoto(png(4, 4).subarray(0, -12)), 'photo-not-clean', /breaks off/],
  [
    'a learner in a visit',
    () => withFile('learners/l-1/events-0a.jsonl', lines([entry('l1', { kind: 'learner.opened', name: 'x' })])),
    'file-not-allowed',
    /no place in an exported visit/,
  ],
  [
    'a photo under another name',
    () => withPhoto(png(4, 4), `${'0'.repeat(64)}.png`),
    'wrong-hash',
    /named by the SHA-256/,
  ],
  [
    'a drawing in place of a photo',
    () => withFile('photos/a.svg', '<svg/>'),
    'wrong-type',
    /nothing else is taken as one/,
  ],
  [
    'a photo that no entry names',
    () =>
      bent(({ files, manifest }) => {
        const bytes = png(5, 5);
        files.set(`photos/${sha(bytes)}.png`, bytes);
        manifest['visits'] = visitOf([PHOTO_FILE, `${sha(bytes)}.png`]);
      }),
    'file-not-asked-for',
    /belong to no entry/,
  ],
];

/** The tree with a line more, under its right hash, so that only the line is wrong. */
function hidden(parts: Parts, line: string): void {
  const { files, manifest } = parts;
  const texts = Object.fromEntries(
    [...files]
      .filter(([path]) => path.startsWith('trees/'))
      .map(([path, bytes]) => [path.slice(71), Buffer.from(bytes).toString('utf8')]),
  );
  texts['tree.yaml'] = `${texts['tree.yaml']}\n${line}\n`;
  const hash = hashOfFiles(texts);
  for (const path of [...files.keys()]) if (path.startsWith('trees/')) files.delete(path);
  for (const [name, text] of Object.entries(texts)) files.set(`trees/${hash}/${name}`, strToU8(text));
  files.set(LOG, strToU8(lines(ENTRIES).replace(TREE_HASH, hash)));
  manifest['visits'] = visitOf([PHOTO_FILE], [hash]);
}
