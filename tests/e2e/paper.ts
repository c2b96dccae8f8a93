import type { Page } from '@playwright/test';

/** A photo as a telephone takes it: larger than the report needs, lying on its side, with a place in it. */
export async function takePhoto(page: Page): Promise<Buffer> {
  const drawn = await page.evaluate(() => {
    const canvas = document.createElement('canvas');
    canvas.width = 1600;
    canvas.height = 800;
    const pen = canvas.getContext('2d')!;
    pen.fillStyle = '#c33';
    pen.fillRect(0, 0, 800, 800);
    pen.fillStyle = '#33c';
    pen.fillRect(800, 0, 800, 800);
    return canvas.toDataURL('image/jpeg').split(',')[1]!;
  });
  const bytes = Buffer.from(drawn, 'base64');
  // Exif, big-endian: an artist whose name is a place, and "turn right to see it upright" (6).
  const place = Buffer.from('SECRET-PLACE', 'latin1');
  const tiff = Buffer.concat([
    Buffer.from('4d4d002a000000080002', 'hex'),
    Buffer.from('013b00020000000c00000026', 'hex'),
    Buffer.from('011200030000000100060000', 'hex'),
    Buffer.alloc(4),
    place,
  ]);
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff]);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([bytes.subarray(0, 2), head, body, bytes.subarray(2)]);
}

/** Titles of a PDF's outline: strings of bytes or of UTF-16, as the PDF standard (ISO 32000) writes them. */
export function titlesIn(pdf: Buffer): string[] {
  const text = pdf.toString('latin1');
  return [...text.matchAll(/\/Title\s*(?:\(((?:\\.|[^\\)])*)\)|<([0-9A-Fa-f]*)>)/g)].map(([, plain, hex]) => {
    const bytes =
      hex === undefined ? Buffer.from((plain ?? '').replace(/\\(.)/g, '$1'), 'latin1') : Buffer.from(hex, 'hex');
    return bytes[0] === 0xfe && bytes[1] === 0xff
      ? Buffer.from(bytes.subarray(2)).swap16().toString('utf16le')
      : bytes.toString('latin1');
  });
}
