import { crc32 } from 'node:zlib';
import { orientationIn, orientationOnly } from './orientation.ts';
import { PhotoFault, type CleanPhoto } from './photo-fault.ts';

/** Chunks that make the picture and its colours. Everything else is about something else and goes. */
const KEPT: ReadonlySet<string> = new Set([
  'IHDR',
  'PLTE',
  'IDAT',
  'IEND',
  'tRNS',
  'gAMA',
  'cHRM',
  'sRGB',
  'iCCP',
  'sBIT',
  'bKGD',
]);

/**
 * A PNG without text, Exif, time, animation and whatever follows its end; colours and which way is up stay.
 *
 * @throws {PhotoFault} when a chunk is damaged or missing.
 * @source W3C PNG specification, third edition: chunks, CRC, order, eXIf (memory).
 */
export function cleanPng(bytes: Buffer): CleanPhoto {
  const kept: Buffer[] = [bytes.subarray(0, 8)];
  let orientation = 1;
  let size: { readonly width: number; readonly height: number } | null = null;
  let picture = false;
  let at = 8;
  for (;;) {
    if (at + 12 > bytes.length) throw new PhotoFault('it breaks off');
    const length = bytes.readUInt32BE(at);
    const end = at + 12 + length;
    if (end > bytes.length) throw new PhotoFault('a part of it is longer than the file');
    const type = bytes.toString('latin1', at + 4, at + 8);
    const body = bytes.subarray(at + 8, end - 4);
    if (crc32(bytes.subarray(at + 4, end - 4)) !== bytes.readUInt32BE(end - 4))
      throw new PhotoFault(`a part of it (${/^[A-Za-z]{4}$/.test(type) ? type : 'unnamed'}) is damaged`);
    if ((size === null) !== (type === 'IHDR')) throw new PhotoFault('its head is missing or there twice');
    if (type === 'IHDR') {
      if (length !== 13) throw new PhotoFault('its size is not in it');
      size = { width: body.readUInt32BE(0), height: body.readUInt32BE(4) };
    } else if (type === 'eXIf') orientation = orientationIn(body);
    else if (type === 'IDAT') picture = true;
    if (KEPT.has(type)) kept.push(bytes.subarray(at, end));
    at = end;
    if (type === 'IEND') break;
  }
  if (!size || !picture) throw new PhotoFault('there is no picture in it');
  if (orientation !== 1) kept.splice(2, 0, chunk('eXIf', orientationOnly(orientation)));
  return { bytes: Buffer.concat(kept), ...size };
}

/** A chunk with its length and its check sum. */
function chunk(type: string, body: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(type, 'latin1'), body]);
  const frame = Buffer.alloc(8);
  frame.writeUInt32BE(body.length, 0);
  frame.writeUInt32BE(crc32(named), 4);
  return Buffer.concat([frame.subarray(0, 4), named, frame.subarray(4)]);
}
