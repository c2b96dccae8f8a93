import { open, rm, rename, mkdir, type FileHandle } from 'node:fs/promises';
import { dirname } from 'node:path';
import { Zip, ZipDeflate, ZipPassThrough } from 'fflate';

/** Writes a zip to a file entry by entry, so that only one of them is ever in memory; the file is there when it is whole. */
export class ZipWriter {
  readonly #file: FileHandle;
  readonly #path: string;
  readonly #zip: Zip;
  #parts: Uint8Array[] = [];
  #bytes = 0;

  private constructor(file: FileHandle, path: string) {
    this.#file = file;
    this.#path = path;
    this.#zip = new Zip((problem, part) => {
      if (problem) throw problem;
      this.#parts.push(part);
    });
  }

  /**
   * Writes a zip whole or not at all.
   *
   * @param fill  adds the entries.
   * @returns the size of the file.
   */
  static async write(path: string, fill: (zip: ZipWriter) => Promise<void>): Promise<number> {
    await mkdir(dirname(path), { recursive: true });
    const file = await open(`${path}.new`, 'w');
    const zip = new ZipWriter(file, path);
    try {
      await fill(zip);
      return await zip.#end();
    } catch (problem) {
      await file.close();
      await rm(`${path}.new`, { force: true });
      throw problem;
    }
  }

  /** @param packed  false for what is packed already, such as photos. */
  async add(path: string, bytes: Uint8Array, packed: boolean): Promise<void> {
    const entry = packed ? new ZipDeflate(path, { level: 6 }) : new ZipPassThrough(path);
    this.#zip.add(entry);
    entry.push(bytes, true);
    await this.#flush();
  }

  async #end(): Promise<number> {
    this.#zip.end();
    await this.#flush();
    await this.#file.sync();
    await this.#file.close();
    await rename(`${this.#path}.new`, this.#path);
    return this.#bytes;
  }

  async #flush(): Promise<void> {
    const parts = this.#parts;
    this.#parts = [];
    for (const part of parts) {
      await this.#file.appendFile(part);
      this.#bytes += part.length;
    }
  }
}
