import { crc32 } from 'node:zlib';
import { Inflate } from 'fflate';
import {
  fileTooLarge,
  PACK_LIMITS,
  packError,
  packTooLarge,
  unsafePath,
  type PackFile,
  type PackProblem,
} from '../../shared/knowledge/pack/index.ts';

/*
 * A zip from somebody else. The list at its end is read here and not by the inflating package, because what is refused
 * stands only there: kinds of entries (a symbolic link is one), declared sizes, encryption. Layout and field numbers:
 * APPNOTE.TXT, the .ZIP File Format Specification 6.3, sections 4.3.7, 4.3.12, 4.3.16, 4.4 (from memory).
 */
const END = 0x06054b50;
const LISTED = 0x02014b50;
const LOCAL = 0x04034b50;
const END_BYTES = 22;
const LISTED_BYTES = 46;
const LOCAL_BYTES = 30;
const STORED = 0;
const DEFLATED = 8;
/** Kind bits of a Unix mode, in the upper half of an entry's outer attributes. */
const KIND = 0o170000;
const REGULAR = 0o100000;
const FOLDER = 0o040000;
/** Bytes fed to the inflater at once; what comes out of one piece is at most about a thousand times that. */
const PIECE = 4096;

interface Entry {
  readonly path: string;
  readonly method: number;
  readonly crc: number;
  readonly packed: number;
  readonly size: number;
  readonly offset: number;
}

/** Files of a zip as text, or why it is refused. Nothing is written anywhere. */
export function filesOfZip(zip: Buffer): { readonly files: readonly PackFile[]; readonly problems: PackProblem[] } {
  const refused = (...problems: PackProblem[]) => ({ files: [], problems });
  if (zip.length > PACK_LIMITS.zipBytes)
    return refused(
      packError(
        'zip-too-large',
        'the pack',
        `The zip has ${(zip.length / 1_048_576).toFixed(1)} MB; at most ${PACK_LIMITS.zipBytes / 1_048_576} MB are taken. Split the pack in two.`,
      ),
    );
  const listed = entriesOf(zip);
  if (listed.problems.length > 0) return refused(...listed.problems);
  const declared = listed.entries.reduce((sum, { size }) => sum + size, 0);
  if (declared > PACK_LIMITS.unpackedBytes) return refused(packTooLarge());

  const files: PackFile[] = [];
  let all = 0;
  for (const entry of listed.entries) {
    const bytes = unpacked(zip, entry, PACK_LIMITS.unpackedBytes - all);
    if (!(bytes instanceof Uint8Array)) return refused(bytes);
    all += bytes.length;
    files.push({ path: entry.path, text: textOf(bytes) });
  }
  return { files, problems: [] };
}

function entriesOf(zip: Buffer): { readonly entries: readonly Entry[]; readonly problems: PackProblem[] } {
  const refused = (...problems: PackProblem[]) => ({ entries: [], problems });
  const end = endOf(zip);
  if (end < 0)
    return refused(packError('not-a-zip', 'the pack', 'The file is no zip, or its end is missing. Make it anew.'));
  const count = zip.readUInt16LE(end + 10);
  const at = zip.readUInt32LE(end + 16);
  if (zip.readUInt16LE(end + 4) !== 0 || zip.readUInt16LE(end + 8) !== count || count === 0xffff || at === 0xffffffff)
    return refused(
      packError(
        'zip-not-plain',
        'the pack',
        'The zip is spread over several files or is of the 64-bit kind. Zip the folder anew, plainly.',
      ),
    );
  if (count > PACK_LIMITS.files)
    return refused(
      packError(
        'too-many-files',
        'the pack',
        `The zip lists ${count} entries; at most ${PACK_LIMITS.files} are taken. Split the pack in two.`,
      ),
    );
  const entries: Entry[] = [];
  const problems: PackProblem[] = [];
  let place = at;
  for (let i = 0; i < count; i++) {
    if (place + LISTED_BYTES > end || zip.readUInt32LE(place) !== LISTED) return refused(damaged('the pack'));
    const nameBytes = zip.readUInt16LE(place + 28);
    const next = place + LISTED_BYTES + nameBytes + zip.readUInt16LE(place + 30) + zip.readUInt16LE(place + 32);
    if (next > end) return refused(damaged('the pack'));
    const path = zip.toString('utf8', place + LISTED_BYTES, place + LISTED_BYTES + nameBytes);
    const flags = zip.readUInt16LE(place + 8);
    const kind = (zip.readUInt32LE(place + 38) >>> 16) & KIND;
    const entry: Entry = {
      path,
      method: zip.readUInt16LE(place + 10),
      crc: zip.readUInt32LE(place + 16),
      packed: zip.readUInt32LE(place + 20),
      size: zip.readUInt32LE(place + 24),
      offset: zip.readUInt32LE(place + 42),
    };
    place = next;
    const folder = path.endsWith('/');
    const unsafe = unsafePath(path);
    if (unsafe) problems.push(unsafe);
    else if (kind !== 0 && kind !== REGULAR && kind !== FOLDER)
      problems.push(
        packError(
          'link-in-zip',
          path,
          'The entry is a symbolic link or a device, not a file. Put the file itself in its place.',
        ),
      );
    else if ((flags & 1) !== 0)
      problems.push(packError('encrypted', path, 'The entry is encrypted. Zip the folder without a password.'));
    else if (entry.method !== STORED && entry.method !== DEFLATED)
      problems.push(
        packError(
          'zip-not-plain',
          path,
          `The entry is packed by method ${entry.method}; stored (0) and deflated (8) are taken. Zip the folder anew, plainly.`,
        ),
      );
    else if (entry.size > PACK_LIMITS.fileBytes) problems.push(fileTooLarge(path));
    else if (!folder) entries.push(entry);
    else if (entry.size > 0 || kind === REGULAR) problems.push(damaged(path));
  }
  return { entries, problems };
}

/** Where the record at the end begins; it may be followed by a comment. -1 when there is none. */
function endOf(zip: Buffer): number {
  for (let at = zip.length - END_BYTES; at >= Math.max(0, zip.length - END_BYTES - 0xffff); at--)
    if (zip.readUInt32LE(at) === END && at + END_BYTES + zip.readUInt16LE(at + 20) === zip.length) return at;
  return -1;
}

/** Bytes of one entry. What comes out is counted while it comes out: a declared size is only a claim. */
function unpacked(zip: Buffer, entry: Entry, left: number): Uint8Array | PackProblem {
  const { offset, path } = entry;
  if (offset + LOCAL_BYTES > zip.length || zip.readUInt32LE(offset) !== LOCAL) return damaged(path);
  const nameBytes = zip.readUInt16LE(offset + 26);
  const from = offset + LOCAL_BYTES + nameBytes + zip.readUInt16LE(offset + 28);
  // Two names for one entry: some programs would unpack the one, some the other.
  if (zip.toString('utf8', offset + LOCAL_BYTES, offset + LOCAL_BYTES + nameBytes) !== path) return damaged(path);
  if (from + entry.packed > zip.length) return damaged(path);
  const body = zip.subarray(from, from + entry.packed);
  const bytes = entry.method === STORED ? body : inflated(body, Math.min(entry.size, left));
  if (bytes === null || bytes.length !== entry.size)
    return packError(
      'size-is-a-lie',
      path,
      `The zip says that the file has ${entry.size} bytes; what comes out is something else. Make the pack anew.`,
    );
  return crc32(bytes) === entry.crc ? bytes : damaged(path);
}

/** @returns null as soon as more than `most` bytes have come out, or when the stream is broken. */
function inflated(body: Uint8Array, most: number): Uint8Array | null {
  const parts: Uint8Array[] = [];
  let size = 0;
  const end = { seen: false };
  const stream = new Inflate((part, final) => {
    size += part.length;
    if (size <= most) parts.push(part.slice());
    if (final) end.seen = true;
  });
  for (let at = 0; at < body.length && size <= most; at += PIECE) {
    const last = at + PIECE >= body.length;
    try {
      stream.push(body.subarray(at, at + PIECE), last);
    } catch (problem) {
      // The inflater throws errors with a number for broken data; the entry is then refused by name.
      if (problem instanceof Error && 'code' in problem && typeof problem.code === 'number') return null;
      throw problem;
    }
  }
  return size > most || !end.seen ? null : Buffer.concat(parts);
}

function damaged(path: string): PackProblem {
  return packError('zip-damaged', path, 'The zip contradicts itself here or is damaged. Make the pack anew.');
}

function textOf(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch (problem) {
    if (problem instanceof TypeError) return null;
    throw problem;
  }
}
