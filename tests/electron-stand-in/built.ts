import { ensureBuilt } from '../../electron/start/build.mjs';

/** Before the desktop project of Vitest: the built window and preload are what it opens. */
export default async function setup(): Promise<void> {
  await ensureBuilt(new URL('../..', import.meta.url).pathname);
}
