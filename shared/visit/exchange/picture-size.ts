import { LONGEST_SIDE, MOST_PIXELS } from './limits.ts';

interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * What is wrong with a photo by its ending, first bytes and declared size; null when nothing is.
 *
 * Where each kind says its size: PNG, IHDR chunk (ISO/IEC 15948, 11.2.2); JPEG, frame header (ITU-T T.81, B.2.2); WebP,
 * RFC 9649, section 2. All from memory.
 */
export function pictureFault(bytes: Uint8Array, ending: string): { code: string; message: string } | null {
  const size = ending === 'png' ? pngSize(bytes) : ending === 'jpg' ? jpegSize(bytes) : webpSize(bytes);
  if (!size)
    return {
      code: 'wrong-type',
      message: `The file ends in .${ending}, but its content is something else, or is cut off. Take it out of the visit and export it anew.`,
    };
  const { width, height } = size;
  return width * height > MOST_PIXELS || Math.max(width, height) > LONGEST_SIDE || width * height === 0
    ? {
        code: 'picture-too-large',
        message: `The picture says that it is ${width} by ${height} dots; at most ${MOST_PIXELS / 1e6} million and ${LONGEST_SIDE} on a side are taken. Make it smaller.`,
      }
    : null;
}

function pngSize(bytes: Uint8Array): Size | null {
  const magic = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
  if (bytes.length < 24 || magic.some((byte, i) => bytes[i] !== byte) || latin(bytes, 12, 4) !== 'IHDR') return null;
  return { width: big(bytes, 16, 4), height: big(bytes, 20, 4) };
}

function jpegSize(bytes: Uint8Array): Size | null {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return null;
  for (let at = 2; at + 9 < bytes.length;) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1]!;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    // C0 to CF are frame headers but for C4, C8 and CC.
    if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker))
      return { height: big(bytes, at + 5, 2), width: big(bytes, at + 7, 2) };
    const alone = marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7);
    const length = alone ? 0 : big(bytes, at + 2, 2);
    if (!alone && length < 2) return null;
    at += 2 + length;
  }
  return null;
}

function webpSize(bytes: Uint8Array): Size | null {
  if (bytes.length < 30 || latin(bytes, 0, 4) !== 'RIFF' || latin(bytes, 8, 4) !== 'WEBP') return null;
  switch (latin(bytes, 12, 4)) {
    case 'VP8X':
      return { width: little(bytes, 24, 3) + 1, height: little(bytes, 27, 3) + 1 };
    case 'VP8 ':
      return { width: little(bytes, 26, 2) & 0x3fff, height: little(bytes, 28, 2) & 0x3fff };
    case 'VP8L': {
      const bits = little(bytes, 21, 4);
      return { width: (bits & 0x3fff) + 1, height: ((bits >>> 14) & 0x3fff) + 1 };
    }
    default:
      return null;
  }
}

function latin(bytes: Uint8Array, at: number, length: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + length));
}

function big(bytes: Uint8Array, at: number, length: number): number {
  return bytes.subarray(at, at + length).reduce((sum, byte) => sum * 256 + byte, 0);
}

function little(bytes: Uint8Array, at: number, length: number): number {
  return bytes.subarray(at, at + length).reduceRight((sum, byte) => sum * 256 + byte, 0);
}
