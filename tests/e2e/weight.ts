import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Page } from '@playwright/test';

const ASSETS = new URL('../../build/renderer/assets/', import.meta.url).pathname;

/** Keeps account of the scripts and styles, workers' too, that a page fetches from now on; gives their sum, kB compressed. */
export function weighed(page: Page): () => number {
  const fetched = new Set<string>();
  const note = (address: string): void => {
    const name = basename(new URL(address).pathname);
    if (/\.(js|css)$/.test(name)) fetched.add(name);
  };
  page.on('request', (request) => note(request.url()));
  page.on('worker', (worker) => note(worker.url()));
  return () => [...fetched].reduce((sum, name) => sum + gzipSync(readFileSync(join(ASSETS, name))).length / 1000, 0);
}
