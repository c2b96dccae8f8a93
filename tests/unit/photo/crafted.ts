/** Files made by hand, part by part as their formats say, with a mark in every place that must not be stored. */
import { crc32 } from 'node:zlib';

/** Stands wherever a place, a person or a time could stand. */
export const SECRET = 'SECRET-PLACE';
const secret = Buffer.from(SECRET, 'latin1');

/** An Exif block: which way is up, and a text where GPS data would be. */
export function tiff(orientation: number, order: 'II' | 'MM'): Buffer {
  const little = order === 'II';
  const head = Buffer.alloc(8 + 2 + 2 * 12 + 4);
  const u16 = (value: number, at: number) => (little ? head.writeUInt16LE(value, at) : head.writeUInt16BE(value, at));
  const u32 = (value: number, at: number) => (little ? head.writeUInt32LE(value, at) : head.writeUInt32BE(value, at));
  head.write(order, 0, 'latin1');
  u16(42, 2);
  u32(8, 4);
  u16(2, 8);
  // Artist, ASCII, behind the directory.
  u16(315, 10);
  u16(2, 12);
  u32(secret.length, 14);
  u32(head.length, 18);
  u16(274, 22);
  u16(3, 24);
  u32(1, 26);
  u16(orientation, 30);
  return Buffer.concat([head, secret]);
}

export function segment(code: number, ...body: readonly (Buffer | string)[]): Buffer {
  const inside = Buffer.concat(body.map((each) => (typeof each === 'string' ? Buffer.from(each, 'latin1') : each)));
  const head = Buffer.from([0xff, code, 0, 0]);
  head.writeUInt16BE(inside.length + 2, 2);
  return Buffer.concat([head, inside]);
}

export const FRAME = segment(0xc0, Buffer.from([8, 0, 3, 0, 4, 1, 1, 0x11, 0]));
/** A scan with a stuffed byte, a restart and a filled-up marker in its data. */
export const SCAN = Buffer.concat([
  segment(0xda, Buffer.from([1, 1, 0, 0, 0x3f, 0])),
  Buffer.from([0x12, 0xff, 0x00, 0x34, 0xff, 0xd0, 0x56]),
]);
export const TABLES = segment(0xdb, Buffer.alloc(65, 1));
const JFIF = segment(0xe0, 'JFIF\0', Buffer.from([1, 2, 0, 0, 1, 0, 1, 1, 1]), Buffer.from([9, 9, 9]));
export const PROFILE = segment(0xe2, 'ICC_PROFILE\0', Buffer.from([1, 1, 7, 7]));

/** A JPEG of 4 by 3 points with everything in it that a telephone puts there. */
export function jpeg(orientation = 6, order: 'II' | 'MM' = 'II'): Buffer {
  return Buffer.concat([
    Buffer.from([0xff, 0xd8]),
    JFIF,
    segment(0xe1, 'Exif\0\0', tiff(orientation, order)),
    segment(0xe1, 'http://ns.adobe.com/xap/1.0/\0', secret),
    PROFILE,
    segment(0xe2, 'MPF\0', secret),
    segment(0xed, 'Photoshop 3.0\0', secret),
    segment(0xee, 'Adobe', Buffer.from([0, 100, 0, 0, 0, 0, 1]), secret),
    segment(0xfe, secret),
    TABLES,
    FRAME,
    SCAN,
    Buffer.from([0xff, 0xff]),
    segment(0xc4, Buffer.from([0, ...Array<number>(16).fill(0)])).subarray(1),
    SCAN,
    Buffer.from([0xff, 0xd9]),
    // A second picture behind the end, as some cameras write it.
    Buffer.from([0xff, 0xd8]),
    secret,
  ]);
}

export function pngChunk(type: string, body: Buffer | string): Buffer {
  const named = Buffer.concat([
    Buffer.from(type, 'latin1'),
    typeof body === 'string' ? Buffer.from(body, 'latin1') : body,
  ]);
  const frame = Buffer.alloc(8);
  frame.writeUInt32BE(named.length - 4, 0);
  frame.writeUInt32BE(crc32(named), 4);
  return Buffer.concat([frame.subarray(0, 4), named, frame.subarray(4)]);
}

export const PNG_MARK = Buffer.from('89504e470d0a1a0a', 'hex');
/** One grey point, not filtered, as zlib stores it. */
export const PNG_DATA = Buffer.from('789c6368000000820081', 'hex');

export function pngHead(width: number, height: number): Buffer {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head[8] = 8;
  return pngChunk('IHDR', head);
}

export function png(orientation = 3): Buffer {
  return Buffer.concat([
    PNG_MARK,
    pngHead(1, 1),
    pngChunk('gAMA', Buffer.from([0, 0, 0xb1, 0x8f])),
    pngChunk('tEXt', `Author\0${SECRET}`),
    pngChunk('zTXt', `Comment\0\0${SECRET}`),
    pngChunk('iTXt', `XML:com.adobe.xmp\0\0\0\0\0${SECRET}`),
    pngChunk('tIME', Buffer.alloc(7, 1)),
    pngChunk('eXIf', tiff(orientation, 'MM')),
    pngChunk('prVt', secret),
    pngChunk('IDAT', PNG_DATA),
    pngChunk('IEND', ''),
    secret,
  ]);
}

export function webpChunk(type: string, body: Buffer): Buffer {
  const head = Buffer.alloc(8);
  head.write(type, 0, 'latin1');
  head.writeUInt32LE(body.length, 4);
  return Buffer.concat([head, body, Buffer.alloc(body.length % 2)]);
}

/** Head of a lossy key frame of 5 by 3 points, and a little of its data. */
export const VP8 = Buffer.from([0x10, 0x02, 0x00, 0x9d, 0x01, 0x2a, 5, 0, 3, 0, 0x11, 0x22, 0x33]);

export function webp(orientation = 8, more: readonly Buffer[] = []): Buffer {
  const head = Buffer.from([0x2c, 0, 0, 0, 4, 0, 0, 2, 0, 0]);
  const body = Buffer.concat([
    Buffer.from('WEBP', 'latin1'),
    webpChunk('VP8X', head),
    webpChunk('ICCP', Buffer.from([7, 7, 7])),
    webpChunk('VP8 ', VP8),
    webpChunk('EXIF', tiff(orientation, 'II')),
    webpChunk('XMP ', secret),
    webpChunk('WHAT', secret),
    ...more,
  ]);
  return Buffer.concat([webpChunk('RIFF', body), secret]);
}

/** A PNG of one grey point with nothing in it that has to go. */
export const ONE_POINT = Buffer.concat([PNG_MARK, pngHead(1, 1), pngChunk('IDAT', PNG_DATA), pngChunk('IEND', '')]);
