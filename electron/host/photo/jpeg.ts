import { orientationIn, orientationOnly } from './orientation.ts';
import { PhotoFault, type CleanPhoto } from './photo-fault.ts';

const EXIF = Buffer.from('Exif\0\0', 'latin1');
const JFIF = Buffer.from('JFIF\0', 'latin1');
const ICC = Buffer.from('ICC_PROFILE\0', 'latin1');
const ADOBE = Buffer.from('Adobe', 'latin1');

const SOI = 0xd8;
const EOI = 0xd9;
const SOS = 0xda;
const COM = 0xfe;

/**
 * A JPEG without Exif, XMP, IPTC, comments, small copies and whatever follows its end; colour profile, colour
 * transform and which way is up stay.
 *
 * @throws {PhotoFault} when it cannot be followed from its start to its end.
 * @source ITU-T T.81, annex B: markers, segments, entropy-coded data (memory).
 */
export function cleanJpeg(bytes: Buffer): CleanPhoto {
  const kept: Buffer[] = [];
  let orientation = 1;
  let size: { readonly width: number; readonly height: number } | null = null;
  let scans = 0;
  let at = 2;
  for (;;) {
    const marker = markerAt(bytes, at);
    at = marker.after;
    if (marker.code === EOI) break;
    if (marker.code === SOI || (marker.code >= 0xd0 && marker.code <= 0xd7) || marker.code <= 0x01)
      throw new PhotoFault(`a marker (${marker.code.toString(16)}) stands where none may stand`);
    const length = at + 2 <= bytes.length ? bytes.readUInt16BE(at) : 0;
    if (length < 2 || at + length > bytes.length) throw new PhotoFault('a part of it is longer than the file');
    const body = bytes.subarray(at + 2, at + length);
    at += length;
    if (marker.code === 0xe1 && starts(body, EXIF)) orientation = orientationIn(body.subarray(EXIF.length));
    if (isFrame(marker.code)) {
      if (body.length < 6) throw new PhotoFault('its size is not in it');
      size = { height: body.readUInt16BE(1), width: body.readUInt16BE(3) };
    }
    const stays = keptBody(marker.code, body);
    if (stays) kept.push(segment(marker.code, stays));
    if (marker.code === SOS) {
      scans += 1;
      const end = endOfScan(bytes, at);
      kept.push(bytes.subarray(at, end));
      at = end;
    }
  }
  if (!size || scans === 0) throw new PhotoFault('there is no picture in it');
  const upright = orientation === 1 ? [] : [segment(0xe1, Buffer.concat([EXIF, orientationOnly(orientation)]))];
  // Which way is up comes right behind the head, where every reader looks for it.
  const head = kept[0]?.[1] === 0xe0 ? 1 : 0;
  return {
    bytes: Buffer.concat([
      Buffer.from([0xff, SOI]),
      ...kept.slice(0, head),
      ...upright,
      ...kept.slice(head),
      Buffer.from([0xff, EOI]),
    ]),
    ...size,
  };
}

function markerAt(bytes: Buffer, from: number): { readonly code: number; readonly after: number } {
  if (bytes[from] !== 0xff) throw new PhotoFault('it breaks off, or a part of it is damaged');
  let at = from + 1;
  // A marker may be filled up with any number of these in front.
  while (bytes[at] === 0xff) at += 1;
  const code = bytes[at];
  if (code === undefined) throw new PhotoFault('it breaks off');
  return { code, after: at + 1 };
}

/** What of a segment stays: null = nothing. */
function keptBody(code: number, body: Buffer): Buffer | null {
  if (code === COM) return null;
  if (code < 0xe0 || code > 0xef) return body;
  // The small copy inside of the head may show what was cut off the picture.
  if (code === 0xe0 && starts(body, JFIF) && body.length >= 14)
    return Buffer.concat([body.subarray(0, 12), Buffer.from([0, 0])]);
  if (code === 0xe2 && starts(body, ICC)) return body;
  if (code === 0xee && starts(body, ADOBE)) return body.subarray(0, 12);
  return null;
}

function isFrame(code: number): boolean {
  return code >= 0xc0 && code <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(code);
}

function segment(code: number, body: Buffer): Buffer {
  const head = Buffer.from([0xff, code, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([head, body]);
}

/** Where the coded data of a scan ends: at the first marker that is neither a stuffed byte nor a restart. */
function endOfScan(bytes: Buffer, from: number): number {
  for (let at = bytes.indexOf(0xff, from); at >= 0; at = bytes.indexOf(0xff, at + 1)) {
    const next = bytes[at + 1];
    if (next === undefined) break;
    if (next !== 0 && next !== 0xff && !(next >= 0xd0 && next <= 0xd7)) return at;
  }
  throw new PhotoFault('it breaks off in the middle of the picture');
}

function starts(body: Buffer, mark: Buffer): boolean {
  return body.subarray(0, mark.length).equals(mark);
}
