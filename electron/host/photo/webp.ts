import { orientationIn, orientationOnly } from './orientation.ts';
import { PhotoFault, type CleanPhoto } from './photo-fault.ts';

const KEPT: ReadonlySet<string> = new Set(['VP8 ', 'VP8L', 'VP8X', 'ALPH', 'ICCP']);
/** Flags of VP8X: Exif and XMP are there. */
const EXIF_FLAG = 0x08;
const XMP_FLAG = 0x04;

/**
 * A WebP without Exif, XMP and chunks that nobody knows; colours and which way is up stay.
 *
 * @throws {PhotoFault} when a chunk is damaged or missing.
 * @source WebP container specification: RIFF chunks of even length, VP8X flags and canvas size; VP8 key frame head
 *   (RFC 6386, 9.1); VP8L head (all memory).
 */
export function cleanWebp(bytes: Buffer): CleanPhoto {
  const end = 8 + (bytes.length >= 12 ? bytes.readUInt32LE(4) : 0);
  if (end > bytes.length || end < 12) throw new PhotoFault('it breaks off');
  const kept: { readonly type: string; readonly body: Buffer }[] = [];
  let orientation = 1;
  for (let at = 12; at < end;) {
    if (at + 8 > end) throw new PhotoFault('it breaks off');
    const type = bytes.toString('latin1', at, at + 4);
    const length = bytes.readUInt32LE(at + 4);
    if (at + 8 + length > end) throw new PhotoFault('a part of it is longer than the file');
    const body = bytes.subarray(at + 8, at + 8 + length);
    if (type === 'EXIF') orientation = orientationIn(starts(body) ? body.subarray(6) : body);
    else if (type === 'ANIM' || type === 'ANMF') throw new PhotoFault('it is a moving picture');
    else if (KEPT.has(type)) kept.push({ type, body });
    at += 8 + length + (length % 2);
  }
  const picture = kept.find(({ type }) => type === 'VP8 ' || type === 'VP8L');
  if (!picture) throw new PhotoFault('there is no picture in it');
  const head = kept.find(({ type }) => type === 'VP8X');
  const size = sizeOf(head ?? picture);
  const upright = head && orientation !== 1;
  const chunks = kept.map(({ type, body }) => {
    if (type !== 'VP8X') return chunk(type, body);
    const flags = Buffer.from(body);
    flags[0] = ((flags[0] ?? 0) & ~(EXIF_FLAG | XMP_FLAG)) | (upright ? EXIF_FLAG : 0);
    return chunk(type, flags);
  });
  const body = Buffer.concat([
    Buffer.from('WEBP', 'latin1'),
    ...chunks,
    ...(upright ? [chunk('EXIF', orientationOnly(orientation))] : []),
  ]);
  return { bytes: chunk('RIFF', body), ...size };
}

/** Some writers put the mark of JPEG in front of the Exif block. */
function starts(body: Buffer): boolean {
  return body.toString('latin1', 0, 6) === 'Exif\0\0';
}

function sizeOf({ type, body }: { readonly type: string; readonly body: Buffer }): {
  readonly width: number;
  readonly height: number;
} {
  if (body.length < 10) throw new PhotoFault('its size is not in it');
  if (type === 'VP8X') return { width: body.readUIntLE(4, 3) + 1, height: body.readUIntLE(7, 3) + 1 };
  if (type === 'VP8L') {
    if (body[0] !== 0x2f) throw new PhotoFault('its head is damaged');
    const bits = body.readUInt32LE(1);
    return { width: (bits & 0x3fff) + 1, height: ((bits >>> 14) & 0x3fff) + 1 };
  }
  if (body.readUIntBE(3, 3) !== 0x9d012a) throw new PhotoFault('its head is damaged');
  return { width: body.readUInt16LE(6) & 0x3fff, height: body.readUInt16LE(8) & 0x3fff };
}

/** A chunk with its length, filled up to an even number of bytes. */
function chunk(type: string, body: Buffer): Buffer {
  const head = Buffer.alloc(8);
  head.write(type, 0, 'latin1');
  head.writeUInt32LE(body.length, 4);
  return Buffer.concat([head, body, Buffer.alloc(body.length % 2)]);
}
