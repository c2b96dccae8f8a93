import { createHash } from 'node:crypto';
import { readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { HostError } from '../../shared/host/host-api.ts';
import { cleanJpeg } from './photo/jpeg.ts';
import { PhotoFault, type CleanPhoto } from './photo/photo-fault.ts';
import { cleanPng } from './photo/png.ts';
import { cleanWebp } from './photo/webp.ts';
import { isMissing, writeWhole } from './whole-file.ts';

const ENDINGS = { 'image/jpeg': 'jpg', 'image/png': 'png', 'image/webp': 'webp' } as const;
type PhotoType = keyof typeof ENDINGS;
const MOST_BYTES = 12 * 1024 * 1024;
/** A picture of more points fills the memory of whoever opens it, however small its file is. */
const MOST_POINTS = 100_000_000;

const CLEAN: Readonly<Record<PhotoType, (bytes: Buffer) => CleanPhoto>> = {
  'image/jpeg': cleanJpeg,
  'image/png': cleanPng,
  'image/webp': cleanWebp,
};

/** First bytes of each type: a file that only claims to be a picture is not stored. */
const MAGIC: Readonly<Record<PhotoType, (bytes: Buffer) => boolean>> = {
  'image/jpeg': (bytes) => bytes.subarray(0, 3).equals(Buffer.from([0xff, 0xd8, 0xff])),
  'image/png': (bytes) => bytes.subarray(0, 8).equals(Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])),
  'image/webp': (bytes) =>
    bytes.subarray(0, 4).toString('latin1') === 'RIFF' && bytes.subarray(8, 12).toString('latin1') === 'WEBP',
};

/**
 * Photos of visits, named by their content, so that the same one is stored once and a name never means two. What is stored
 * is the picture and which way is up: place, time, person and camera are taken out first.
 */
export class PhotoFiles {
  readonly #visits: string;

  constructor(visits: string) {
    this.#visits = visits;
  }

  /** @throws {HostError} `photo-too-large`, `not-a-photo`, `photo-damaged`. */
  async write(visit: string, type: PhotoType, base64: string): Promise<string> {
    const bytes = Buffer.from(base64, 'base64');
    if (bytes.length > MOST_BYTES)
      throw new HostError({
        code: 'photo-too-large',
        message: `The photo has ${Math.round(bytes.length / 1_048_576)} MB; at most 12 MB are kept. Take a smaller one.`,
      });
    if (!MAGIC[type](bytes))
      throw new HostError({
        code: 'not-a-photo',
        message: `The file says ${type}, but its content is something else. Choose a JPEG, PNG or WebP photo.`,
      });
    const clean = cleaned(type, bytes);
    const name = `${createHash('sha256').update(clean).digest('hex')}.${ENDINGS[type]}`;
    const path = join(this.#visits, visit, 'photos', name);
    const there = await stat(path).catch((problem: unknown) => {
      if (isMissing(problem)) return null;
      throw problem;
    });
    if (!there) await writeWhole(path, clean);
    return name;
  }

  /** @throws {HostError} `no-such-photo`. */
  async read(visit: string, photo: string): Promise<{ type: string; data: string }> {
    const ending = photo.split('.').at(-1);
    const type = Object.entries(ENDINGS).find(([, each]) => each === ending)?.[0] ?? 'image/jpeg';
    try {
      return { type, data: (await readFile(join(this.#visits, visit, 'photos', photo))).toString('base64') };
    } catch (problem) {
      if (isMissing(problem))
        throw new HostError({
          code: 'no-such-photo',
          message: 'This photo is not in the visit’s folder. The finding itself is here.',
        });
      throw problem;
    }
  }
}

/** The picture without what is about something else. @throws {HostError} `photo-damaged`, `photo-too-large`. */
function cleaned(type: PhotoType, bytes: Buffer): Buffer {
  try {
    const { bytes: clean, width, height } = CLEAN[type](bytes);
    if (width < 1 || height < 1) throw new PhotoFault('its size is not in it');
    if (width * height > MOST_POINTS)
      throw new HostError({
        code: 'photo-too-large',
        message: `The photo has ${width} by ${height} points; at most ${MOST_POINTS / 1_000_000} million are kept. Take a smaller one.`,
      });
    return clean;
  } catch (problem) {
    if (!(problem instanceof PhotoFault)) throw problem;
    throw new HostError({
      code: 'photo-damaged',
      message: `The photo cannot be kept: ${problem.message}. What else is in such a file cannot be taken out, so nothing was stored. Take it again, or save it anew as JPEG.`,
    });
  }
}

/** Why the bytes are not as a photo of that name is stored here; null when cleaning them would change nothing. */
export function photoFault(name: string, content: Uint8Array): string | null {
  const ending = name.split('.').at(-1);
  const type = (Object.keys(ENDINGS) as PhotoType[]).find((each) => ENDINGS[each] === ending);
  if (!type) return 'its ending is none of a photo';
  const bytes = Buffer.from(content);
  try {
    return CLEAN[type](bytes).bytes.equals(bytes) ? null : 'it holds more than the picture and which way is up';
  } catch (problem) {
    if (problem instanceof PhotoFault) return problem.message;
    throw problem;
  }
}
