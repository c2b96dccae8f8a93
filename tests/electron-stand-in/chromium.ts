import { chromium, type Browser } from '@playwright/test';
import { findChromium } from '../chromium.mjs';

let running: Promise<Browser> | null = null;

/** The Chromium behind the stand-in: one for all programs of a test file, found as the desktop tests find theirs. */
export function theBrowser(): Promise<Browser> {
  const executablePath = findChromium();
  running ??= chromium.launch({
    ...(executablePath === '' ? {} : { executablePath }),
    // As in the desktop tests: root in a container has no sandbox to give, and the browser itself asks for nothing.
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
  return running;
}

/** Ends it, if it was started. */
export async function closeBrowser(): Promise<void> {
  const browser = await running;
  running = null;
  await browser?.close();
}
