import { existsSync } from 'node:fs';
import { defineConfig } from '@playwright/test';

const named = process.env['DROPLIGHT_CHROMIUM'];
const executablePath =
  named !== undefined && named !== '' ? named : existsSync('/usr/bin/chromium') ? '/usr/bin/chromium' : undefined;

/** Desktop tests: the built window over the browser shell, in a real Chromium. */
export default defineConfig({
  testDir: '.',
  testMatch: '*.e2e.ts',
  outputDir: '../../test-results/desktop',
  // Every test has a machine side and a data folder of its own.
  workers: 2,
  fullyParallel: true,
  // On a busy shared machine one repeat is allowed; a test that needed it is printed as flaky.
  retries: process.env['CI'] === undefined ? 0 : 1,
  timeout: 180_000,
  expect: { timeout: 15_000 },
  reporter: [
    ['list'],
    ['json', { outputFile: process.env['PLAYWRIGHT_JSON_OUTPUT_NAME'] ?? '../../test-results/playwright.json' }],
  ],
  use: {
    viewport: { width: 1440, height: 1000 },
    launchOptions: {
      ...(executablePath === undefined ? {} : { executablePath }),
      // Root in a container has no sandbox to give; background traffic of the browser itself is switched off.
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
});
