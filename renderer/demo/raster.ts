/** A small drawing made of dots, written as a PNG: the photos of the invented visit are made with it, no file comes along. */

/** Red, green and blue, 0 to 255. */
type Ink = readonly [number, number, number];

/** Letters of 5 by 7 dots, a row a number, the left dot the highest bit; only those that a drawing needs. */
const LETTERS: Readonly<Record<string, readonly number[]>> = {
  D: [30, 17, 17, 17, 17, 17, 30],
  E: [31, 16, 16, 30, 16, 16, 31],
  I: [14, 4, 4, 4, 4, 4, 14],
  N: [17, 25, 21, 19, 17, 17, 17],
  T: [31, 4, 4, 4, 4, 4, 4],
  V: [17, 17, 17, 17, 17, 10, 4],
};

/** Dots of at most sixteen inks; the first one is the ground. */
export class Raster {
  readonly width: number;
  readonly height: number;
  readonly #inks: readonly Ink[];
  readonly #dots: Uint8Array;

  constructor(width: number, height: number, inks: readonly Ink[]) {
    this.width = width;
    this.height = height;
    this.#inks = inks;
    this.#dots = new Uint8Array(width * height);
  }

  /** Every dot of a region (left, top, right, bottom) for which `inside` holds gets the ink. */
  #fill(
    ink: number,
    [left, top, right, bottom]: readonly [number, number, number, number],
    inside: (x: number, y: number) => boolean,
  ): void {
    for (let y = Math.max(0, Math.floor(top)); y <= Math.min(this.height - 1, bottom); y++)
      for (let x = Math.max(0, Math.floor(left)); x <= Math.min(this.width - 1, right); x++)
        if (inside(x, y)) this.#dots[y * this.width + x] = ink;
  }

  box(left: number, top: number, width: number, height: number, ink: number): void {
    this.#fill(ink, [left, top, left + width - 1, top + height - 1], () => true);
  }

  /** A disc, or with `inner` a ring. */
  disc(cx: number, cy: number, radius: number, ink: number, inner = 0): void {
    this.#fill(ink, [cx - radius, cy - radius, cx + radius, cy + radius], (x, y) => {
      const r = Math.hypot(x - cx, y - cy);
      return r <= radius && r >= inner;
    });
  }

  /** A straight stroke with round ends. */
  stroke(x0: number, y0: number, x1: number, y1: number, wide: number, ink: number): void {
    const length = Math.hypot(x1 - x0, y1 - y0) || 1;
    const reach = [
      Math.min(x0, x1) - wide,
      Math.min(y0, y1) - wide,
      Math.max(x0, x1) + wide,
      Math.max(y0, y1) + wide,
    ] as const;
    this.#fill(ink, reach, (x, y) => {
      const along = Math.max(0, Math.min(1, ((x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / length ** 2));
      return Math.hypot(x - x0 - along * (x1 - x0), y - y0 - along * (y1 - y0)) <= wide / 2;
    });
  }

  /** A word of the letters above, `size` dots a dot. */
  word(text: string, left: number, top: number, size: number, ink: number): void {
    Array.from(text).forEach((letter, i) => {
      (LETTERS[letter] ?? []).forEach((row, y) => {
        for (let x = 0; x < 5; x++)
          if (row & (16 >> x)) this.box(left + (6 * i + x) * size, top + y * size, size, size, ink);
      });
    });
  }

  /** The drawing as a PNG with a palette, four bits a dot, not compressed. @source ISO/IEC 15948, RFC 1950, RFC 1951. */
  png(): Uint8Array<ArrayBuffer> {
    const wide = Math.ceil(this.width / 2);
    const rows = new Uint8Array((wide + 1) * this.height);
    for (let y = 0; y < this.height; y++)
      for (let x = 0; x < this.width; x++)
        rows[y * (wide + 1) + 1 + (x >> 1)]! |= this.#dots[y * this.width + x]! << (x % 2 === 0 ? 4 : 0);
    const head = [...number(this.width), ...number(this.height), 4, 3, 0, 0, 0];
    return Uint8Array.from([
      ...[137, 80, 78, 71, 13, 10, 26, 10],
      ...chunk('IHDR', head),
      ...chunk('PLTE', this.#inks.flat()),
      ...chunk('IDAT', stored(rows)),
      ...chunk('IEND', []),
    ]);
  }
}

function number(value: number): number[] {
  return [24, 16, 8, 0].map((shift) => (value >>> shift) & 255);
}

function chunk(name: string, data: readonly number[]): number[] {
  const body = [...Array.from(name, (letter) => letter.charCodeAt(0)), ...data];
  return [...number(data.length), ...body, ...number(crc(body))];
}

/** Bytes in the form that PNG wants, as they are: a zlib stream of stored blocks. */
function stored(bytes: Uint8Array): number[] {
  const out = [0x78, 0x01];
  let a = 1;
  let b = 0;
  for (let at = 0; at < bytes.length; at += 0xffff) {
    const part = bytes.subarray(at, at + 0xffff);
    const { length } = part;
    out.push(at + length === bytes.length ? 1 : 0, length & 255, length >> 8, ~length & 255, (~length >> 8) & 255);
    for (const byte of part) {
      out.push(byte);
      a = (a + byte) % 65_521;
      b = (b + a) % 65_521;
    }
  }
  return [...out, b >> 8, b & 255, a >> 8, a & 255];
}

function crc(bytes: readonly number[]): number {
  let value = 0xffffffff;
  for (const byte of bytes) {
    value ^= byte;
    for (let bit = 0; bit < 8; bit++) value = (value >>> 1) ^ (value & 1 ? 0xedb88320 : 0);
  }
  return ~value >>> 0;
}
