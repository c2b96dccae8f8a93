import { crc32 } from 'node:zlib';
import type { FileHandle } from 'node:fs/promises';
import { Inflate } from 'fflate';
import { packError, unsafePathWhy, type PackProblem } from '../../shared/knowledge/pack/index.ts';

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

/** A zip wherever it lies: only the parts that are needed are read. */
export interface ZipBytes {
  readonly size: number;
  /** Exactly these bytes; asked for inside of `size` only. */
  read(at: number, length: number): Promise<Buffer>;
}

/** What a zip may hold, and how a refusal speaks of it. */
export interface ZipRules {
  readonly zipBytes: number;
  readonly files: number;
  readonly unpackedBytes: number;
  readonly fileBytes: number;
  /** What the zip is, inside a sentence: "the pack". */
  readonly what: string;
  /** How to get a good one: "Make the pack anew from its folder." */
  readonly again: string;
  /** How to get a smaller one: "Split the pack in two." */
  readonly smaller: string;
}

/** One file of a zip as its list names it. */
export interface ZipEntry {
  readonly path: string;
  readonly method: number;
  readonly crc: number;
  readonly packed: number;
  readonly size: number;
  readonly offset: number;
}

/** A zip in memory. */
export function zipInMemory(zip: Buffer): ZipBytes {
  return { size: zip.length, read: (at, length) => Promise.resolve(zip.subarray(at, at + length)) };
}

/** A zip on disk, read part by part. */
export async function zipOnDisk(file: FileHandle): Promise<ZipBytes> {
  const { size } = await file.stat();
  return {
    size,
    read: async (at, length) => {
      const bytes = Buffer.alloc(length);
      let got = 0;
      while (got < length) {
        const { bytesRead } = await file.read(bytes, got, length - got, at + got);
        // Somebody cut the file off while it was read: what is missing stays zero and is found by its checksum.
        if (bytesRead === 0) break;
        got += bytesRead;
      }
      return bytes;
    },
  };
}

/** The files that a zip lists, or why it is refused; folders are left out. Nothing is unpacked. */
export async function zipEntries(
  zip: ZipBytes,
  rules: ZipRules,
): Promise<{ readonly entries: readonly ZipEntry[]; readonly problems: PackProblem[] }> {
  const refused = (...problems: PackProblem[]) => ({ entries: [], problems });
  if (zip.size > rules.zipBytes)
    return refused(
      packError(
        'zip-too-large',
        rules.what,
        `The zip has ${megabytes(zip.size)}; at most ${megabytes(rules.zipBytes)} are taken. ${rules.smaller}`,
      ),
    );
  const tail = await zip.read(Math.max(0, zip.size - END_BYTES - 0xffff), Math.min(zip.size, END_BYTES + 0xffff));
  const end = endOf(tail);
  if (end < 0)
    return refused(
      packError('not-a-zip', rules.what, 'The file is no zip, or its end is missing. Make it, or copy it, anew.'),
    );
  const count = tail.readUInt16LE(end + 10);
  const listBytes = tail.readUInt32LE(end + 12);
  const at = tail.readUInt32LE(end + 16);
  if (tail.readUInt16LE(end + 4) !== 0 || tail.readUInt16LE(end + 8) !== count || count === 0xffff || at === 0xffffffff)
    return refused(
      packError(
        'zip-not-plain',
        rules.what,
        `The zip is spread over several files or is of the 64-bit kind. ${rules.again}`,
      ),
    );
  if (count > rules.files)
    return refused(
      packError(
        'too-many-files',
        rules.what,
        `The zip lists ${count} entries; at most ${rules.files} are taken. ${rules.smaller}`,
      ),
    );
  if (at + listBytes > zip.size) return refused(damaged(rules.what, rules));
  const list = await zip.read(at, listBytes);
  const entries: ZipEntry[] = [];
  const problems: PackProblem[] = [];
  let place = 0;
  for (let i = 0; i < count; i++) {
    if (place + LISTED_BYTES > list.length || list.readUInt32LE(place) !== LISTED)
      return refused(damaged(rules.what, rules));
    const nameBytes = list.readUInt16LE(place + 28);
    const next = place + LISTED_BYTES + nameBytes + list.readUInt16LE(place + 30) + list.readUInt16LE(place + 32);
    if (next > list.length) return refused(damaged(rules.what, rules));
    const path = list.toString('utf8', place + LISTED_BYTES, place + LISTED_BYTES + nameBytes);
    const flags = list.readUInt16LE(place + 8);
    const kind = (list.readUInt32LE(place + 38) >>> 16) & KIND;
    const entry: ZipEntry = {
      path,
      method: list.readUInt16LE(place + 10),
      crc: list.readUInt32LE(place + 16),
      packed: list.readUInt32LE(place + 20),
      size: list.readUInt32LE(place + 24),
      offset: list.readUInt32LE(place + 42),
    };
    place = next;
    const fault = faultOf(entry, { flags, kind }, rules);
    if (fault) problems.push(fault);
    else if (!path.endsWith('/')) entries.push(entry);
    else if (entry.size > 0 || kind === REGULAR) problems.push(damaged(path, rules));
  }
  if (problems.length > 0) return refused(...problems);
  if (entries.reduce((sum, { size }) => sum + size, 0) > rules.unpackedBytes) return refused(unpacksTooLarge(rules));
  const shared = sharedBytes(entries);
  return shared ? refused(damaged(shared.path, rules)) : { entries, problems };
}

function faultOf(
  entry: ZipEntry,
  { flags, kind }: { readonly flags: number; readonly kind: number },
  rules: ZipRules,
): PackProblem | null {
  const { path } = entry;
  const why = unsafePathWhy(path);
  if (why !== null)
    return packError(
      'unsafe-path',
      path,
      `The path ${why}. Only plain paths below the zip’s own folder are taken. ${rules.again}`,
    );
  if (kind !== 0 && kind !== REGULAR && kind !== FOLDER)
    return packError(
      'link-in-zip',
      path,
      `The entry is a symbolic link or a device, not a file. Put the file itself in its place. ${rules.again}`,
    );
  if ((flags & 1) !== 0)
    return packError('encrypted', path, `The entry is encrypted; only plain entries are taken. ${rules.again}`);
  if (entry.method !== STORED && entry.method !== DEFLATED)
    return packError(
      'zip-not-plain',
      path,
      `The entry is packed by method ${entry.method}; stored (0) and deflated (8) are taken. ${rules.again}`,
    );
  return entry.size > rules.fileBytes
    ? packError(
        'file-too-large',
        path,
        `The file has more than ${megabytes(rules.fileBytes)}; more is not taken. Make it smaller, or take it out.`,
      )
    : null;
}

/** All files together are beyond the limit. */
export function unpacksTooLarge(rules: ZipRules): PackProblem {
  return packError(
    'unpacks-too-large',
    rules.what,
    `The zip has more than ${megabytes(rules.unpackedBytes)} when unpacked; more is not taken. ${rules.smaller}`,
  );
}

/** Two entries over the same bytes: a small file that unpacks to a large one many times over. */
function sharedBytes(entries: readonly ZipEntry[]): ZipEntry | null {
  let free = 0;
  for (const entry of [...entries].sort((a, b) => a.offset - b.offset)) {
    if (entry.offset < free) return entry;
    free = entry.offset + LOCAL_BYTES + Buffer.byteLength(entry.path) + entry.packed;
  }
  return null;
}

/** Where the record at the end begins; it may be followed by a comment. -1 when there is none. */
function endOf(tail: Buffer): number {
  for (let at = tail.length - END_BYTES; at >= 0; at--)
    if (tail.readUInt32LE(at) === END && at + END_BYTES + tail.readUInt16LE(at + 20) === tail.length) return at;
  return -1;
}

/**
 * Bytes of one entry. What comes out is counted while it comes out: a declared size is only a claim.
 *
 * @param left  bytes that may still come out of the whole zip.
 */
export async function unpackedEntry(
  zip: ZipBytes,
  entry: ZipEntry,
  left: number,
  rules: ZipRules,
): Promise<Uint8Array | PackProblem> {
  const { offset, path } = entry;
  if (offset + LOCAL_BYTES > zip.size) return damaged(path, rules);
  const local = await zip.read(offset, LOCAL_BYTES);
  if (local.readUInt32LE(0) !== LOCAL) return damaged(path, rules);
  const nameBytes = local.readUInt16LE(26);
  const from = offset + LOCAL_BYTES + nameBytes + local.readUInt16LE(28);
  if (from + entry.packed > zip.size) return damaged(path, rules);
  // Two names for one entry: some programs would unpack the one, some the other.
  if ((await zip.read(offset + LOCAL_BYTES, nameBytes)).toString('utf8') !== path) return damaged(path, rules);
  const body = await zip.read(from, entry.packed);
  const bytes = entry.method === STORED ? body : inflated(body, Math.min(entry.size, left));
  if (bytes === null || bytes.length !== entry.size)
    return packError(
      'size-is-a-lie',
      path,
      `The zip says that the file has ${entry.size} bytes; what comes out is something else. ${rules.again}`,
    );
  return crc32(bytes) === entry.crc ? bytes : damaged(path, rules);
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

function damaged(path: string, { again }: ZipRules): PackProblem {
  return packError('zip-damaged', path, `The zip contradicts itself here or is damaged. ${again}`);
}

function megabytes(bytes: number): string {
  return `${Number((bytes / 1_048_576).toFixed(1))} MB`;
}

/** Bytes as text; null when they are no UTF-8. */
export function textOfBytes(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch (problem) {
    if (problem instanceof TypeError) return null;
    throw problem;
  }
}
