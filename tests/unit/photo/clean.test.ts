import { crc32 } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cleanJpeg } from '../../../electron/host/photo/jpeg.ts';
import { orientationIn, orientationOnly } from '../../../electron/host/photo/orientation.ts';
import { PhotoFault } from '../../../electron/host/photo/photo-fault.ts';
import { cleanPng } from '../../../electron/host/photo/png.ts';
import { cleanWebp } from '../../../electron/host/photo/webp.ts';
import {
  FRAME,
  jpeg,
  png,
  PNG_DATA,
  PNG_MARK,
  pngChunk,
  pngHead,
  PROFILE,
  SCAN,
  SECRET,
  segment,
  TABLES,
  tiff,
  VP8,
  webp,
  webpChunk,
} from './crafted.ts';

const FORMATS = [
  ['JPEG', jpeg, cleanJpeg],
  ['PNG', png, cleanPng],
  ['WebP', webp, cleanWebp],
] as const;
const has = (bytes: Buffer, part: Buffer | string): boolean => bytes.includes(part);

describe('[HOST-19] what is taken out of a photo', () => {
  it.each(FORMATS)('%s: every place where a secret can stand', (_, made, clean) => {
    expect(has(made(), SECRET)).toBe(true);
    expect(has(clean(made()).bytes, SECRET)).toBe(false);
  });

  it.each(FORMATS)(
    '%s: a photo that is clean already comes back as it is, so that its name stays',
    (_, made, clean) => {
      const once = clean(made()).bytes;
      expect(clean(once).bytes.equals(once)).toBe(true);
    },
  );

  it.each(FORMATS)('%s: which way is up stays, and is not written where it is upright', (name, made, clean) => {
    for (const orientation of [2, 3, 6, 8]) {
      const block = orientationOnly(orientation);
      expect(orientationIn(block)).toBe(orientation);
      expect(has(clean(made(orientation)).bytes, block)).toBe(true);
    }
    expect(has(clean(made(1)).bytes, { JPEG: 'Exif', PNG: 'eXIf', WebP: 'EXIF' }[name])).toBe(false);
  });
});

describe('[HOST-19] what stays', () => {
  it('JPEG: tables, frame, every scan with stuffed bytes and restarts, colour profile and colour transform', () => {
    const { bytes, width, height } = cleanJpeg(jpeg());
    for (const part of [TABLES, FRAME, SCAN, PROFILE, 'Adobe']) expect(has(bytes, part)).toBe(true);
    expect(bytes.toString('latin1').split(SCAN.toString('latin1'))).toHaveLength(3);
    expect([width, height]).toEqual([4, 3]);
    expect(bytes.subarray(-2)).toEqual(Buffer.from([0xff, 0xd9]));
  });

  it('JPEG: the head without the small copy in it, then which way is up', () => {
    const { bytes } = cleanJpeg(jpeg());
    expect(bytes.subarray(2, 20)).toEqual(
      Buffer.concat([
        Buffer.from([0xff, 0xe0, 0, 16]),
        Buffer.from('JFIF\0'),
        Buffer.from([1, 2, 0, 0, 1, 0, 1, 0, 0]),
      ]),
    );
    expect(bytes.subarray(20, 22)).toEqual(Buffer.from([0xff, 0xe1]));
  });

  it('PNG: head, data and colours, each with a right check sum', () => {
    // Check value of the CRC-32 of ISO 3309 for "123456789".
    expect(crc32('123456789')).toBe(0xcbf43926);
    const { bytes } = cleanPng(png());
    expect(
      bytes.equals(
        Buffer.concat([
          PNG_MARK,
          pngHead(1, 1),
          pngChunk('eXIf', orientationOnly(3)),
          pngChunk('gAMA', Buffer.from([0, 0, 0xb1, 0x8f])),
          pngChunk('IDAT', PNG_DATA),
          pngChunk('IEND', ''),
        ]),
      ),
    ).toBe(true);
  });

  it('WebP: picture and colours; flags and length fit what is left', () => {
    const { bytes, width, height } = cleanWebp(webp());
    expect(bytes.readUInt32LE(4)).toBe(bytes.length - 8);
    expect(has(bytes, VP8)).toBe(true);
    expect(has(bytes, 'ICCP')).toBe(true);
    // Colour profile and Exif, no XMP.
    expect(bytes[20]).toBe(0x28);
    expect([width, height]).toEqual([5, 3]);
    expect(cleanWebp(webp(1)).bytes[20]).toBe(0x20);
  });

  it('WebP: one without the extended head is measured by its picture', () => {
    const lossy = webpChunk('RIFF', Buffer.concat([Buffer.from('WEBP'), webpChunk('VP8 ', VP8)]));
    expect(cleanWebp(lossy)).toMatchObject({ width: 5, height: 3 });
    // 0x2f, then 14 bits of width − 1 and 14 bits of height − 1: 4 and 2.
    const bits = Buffer.alloc(10);
    bits[0] = 0x2f;
    bits.writeUInt32LE(4 | (2 << 14), 1);
    const lossless = webpChunk('RIFF', Buffer.concat([Buffer.from('WEBP'), webpChunk('VP8L', bits)]));
    expect(cleanWebp(lossless)).toMatchObject({ width: 5, height: 3 });
  });
});

describe('[HOST-19] which way is up', () => {
  it('is read in either byte order, and is 1 where the block does not say or is damaged', () => {
    expect(orientationIn(tiff(6, 'II'))).toBe(6);
    expect(orientationIn(tiff(6, 'MM'))).toBe(6);
    expect(orientationIn(tiff(9, 'MM'))).toBe(1);
    expect(orientationIn(tiff(6, 'MM').subarray(0, 30))).toBe(1);
    expect(orientationIn(Buffer.from('XX'))).toBe(1);
    const far = tiff(6, 'MM');
    far.writeUInt32BE(0xfffffff0, 4);
    expect(orientationIn(far)).toBe(1);
  });
});

describe('[HOST-19] what is refused, with the reason', () => {
  const cut = (bytes: Buffer, part: Buffer): Buffer => bytes.subarray(0, bytes.indexOf(part) + part.length - 2);
  const swapped = (bytes: Buffer, at: number, value: number): Buffer => {
    const copy = Buffer.from(bytes);
    copy[at] = value;
    return copy;
  };
  const plain = (...chunks: readonly Buffer[]): Buffer => Buffer.concat([PNG_MARK, ...chunks]);
  it.each([
    ['a JPEG that breaks off in its picture', () => cleanJpeg(cut(jpeg(), SCAN)), /breaks off in the middle/],
    ['a JPEG that breaks off before it', () => cleanJpeg(jpeg().subarray(0, 60)), /breaks off|longer than the file/],
    [
      'a JPEG with a part longer than the file',
      () => cleanJpeg(Buffer.concat([Buffer.from([0xff, 0xd8]), Buffer.from([0xff, 0xe1, 0xff, 0xff, 0])])),
      /longer than the file/,
    ],
    [
      'a JPEG with a part shorter than its length',
      () => cleanJpeg(Buffer.from([0xff, 0xd8, 0xff, 0xe1, 0, 1, 0xff, 0xd9])),
      /longer than the file/,
    ],
    ['a JPEG without a picture', () => cleanJpeg(Buffer.from([0xff, 0xd8, 0xff, 0xd9])), /no picture/],
    ['a JPEG inside of a JPEG', () => cleanJpeg(Buffer.from([0xff, 0xd8, 0xff, 0xd8, 0xff, 0xd9])), /marker \(d8\)/],
    [
      'a JPEG whose frame has no size',
      () =>
        cleanJpeg(
          Buffer.concat([Buffer.from([0xff, 0xd8]), segment(0xc0, Buffer.from([8])), SCAN, Buffer.from([0xff, 0xd9])]),
        ),
      /size/,
    ],
    ['a PNG with a wrong check sum', () => cleanPng(swapped(png(), 20, 9)), /\(IHDR\) is damaged/],
    ['a PNG that breaks off', () => cleanPng(png().subarray(0, 50)), /breaks off|longer than the file/],
    ['a PNG without a picture', () => cleanPng(plain(pngHead(1, 1), pngChunk('IEND', ''))), /no picture/],
    [
      'a PNG without a head',
      () => cleanPng(plain(pngChunk('IDAT', PNG_DATA), pngChunk('IEND', ''))),
      /head is missing/,
    ],
    ['a PNG with two heads', () => cleanPng(plain(pngHead(1, 1), pngHead(9, 9), pngChunk('IEND', ''))), /there twice/],
    ['a WebP that breaks off', () => cleanWebp(webp().subarray(0, 40)), /breaks off/],
    ['a WebP with a part longer than the file', () => cleanWebp(swapped(webp(), 16, 0xff)), /longer than the file/],
    ['a WebP without a picture', () => cleanWebp(webpChunk('RIFF', Buffer.from('WEBP'))), /no picture/],
    ['a moving WebP', () => cleanWebp(webp(1, [webpChunk('ANMF', VP8)])), /moving picture/],
    [
      'a WebP with a damaged head',
      () => cleanWebp(webpChunk('RIFF', Buffer.concat([Buffer.from('WEBP'), webpChunk('VP8 ', Buffer.alloc(12))]))),
      /head is damaged/,
    ],
  ])('%s', (_, run, reason) => {
    expect(run).toThrow(PhotoFault);
    expect(run).toThrow(reason);
  });

  it.each(FORMATS)(
    '%s: however it is damaged or cut, it is refused or clean, and nothing else happens',
    (_, made, clean) => {
      const whole = made();
      fc.assert(
        fc.property(
          fc.nat(whole.length),
          fc.array(fc.tuple(fc.nat(whole.length - 1), fc.nat(255)), { maxLength: 4 }),
          (length, hits) => {
            const damaged = Buffer.from(whole.subarray(0, length));
            for (const [at, value] of hits) if (at < damaged.length) damaged[at] = value;
            try {
              clean(damaged);
            } catch (problem) {
              expect(problem).toBeInstanceOf(PhotoFault);
            }
          },
        ),
        { numRuns: 400, seed: 11 },
      );
    },
  );
});
