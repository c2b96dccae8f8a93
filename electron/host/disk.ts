import { open } from 'node:fs/promises';

/** A file that is being written. */
interface Writing {
  appendFile(data: string | Uint8Array): Promise<void>;
  /** Done when what was written is on the disk itself. */
  sync(): Promise<void>;
  close(): Promise<void>;
}

/**
 * How files are opened that must not be lost. There is one of it; a test puts another in its place whose disk is full, or
 * whose current fails in the middle of a line.
 */
export interface Disk {
  /** @param flags  "a" to append, "wx" for a file that must be new. */
  open(path: string, flags: 'a' | 'wx'): Promise<Writing>;
}

export const realDisk: Disk = { open };

/**
 * Makes the names in a folder last through a loss of power, as a file's own flush does not (fsync(2), Linux man-pages: "an
 * explicit fsync() on a file descriptor for the directory is also needed"; from memory). Windows cannot open a folder so.
 */
export async function flushFolder(path: string): Promise<void> {
  if (process.platform === 'win32') return;
  const folder = await open(path, 'r');
  try {
    await folder.sync();
  } finally {
    await folder.close();
  }
}
