import { realDisk, type Disk } from '../../../electron/host/disk.ts';

/** How a disk fails: after so many bytes of a write, when it is told to flush, or when a file is opened. */
export type Failure =
  | { readonly at: 'byte'; readonly byte: number; readonly code: string }
  | { readonly at: 'flush' | 'open'; readonly code: string }
  /** The current goes: what was written is there, and nothing ever answers. */
  | { readonly at: 'power'; readonly byte: number };

/** The real disk until it is told to fail. */
export class FailingDisk implements Disk {
  failure: Failure | null = null;
  /** Resolves when the current has gone. */
  readonly dark: Promise<void>;
  #goDark: () => void = () => undefined;

  constructor() {
    this.dark = new Promise((resolve) => {
      this.#goDark = resolve;
    });
  }

  async open(path: string, flags: 'a' | 'wx'): ReturnType<Disk['open']> {
    const { failure } = this;
    if (failure?.at === 'open') throw systemError(failure.code);
    const file = await realDisk.open(path, flags);
    return {
      appendFile: async (data) => {
        if (failure?.at !== 'byte' && failure?.at !== 'power') return file.appendFile(data);
        await file.appendFile(Buffer.from(data).subarray(0, failure.byte));
        if (failure.at === 'byte') throw systemError(failure.code);
        await file.close();
        this.#goDark();
        return new Promise(() => undefined);
      },
      sync: () => (failure?.at === 'flush' ? Promise.reject(systemError(failure.code)) : file.sync()),
      close: () => file.close(),
    };
  }
}

function systemError(code: string): Error {
  return Object.assign(new Error(`${code}: the test's disk fails, write`), { code });
}
