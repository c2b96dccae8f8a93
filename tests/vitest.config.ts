import { svelte } from '@sveltejs/vite-plugin-svelte';
import { svelteTesting } from '@testing-library/svelte/vite';
import { defineConfig } from 'vitest/config';

/** Everything that runs in Node; component tests get a document. Playwright's tests live in tests/e2e. */
export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    // The runner leaves one core free unless told; while it runs there is nothing else to do.
    maxWorkers: '100%',
    projects: [
      {
        test: {
          name: 'node',
          environment: 'node',
          // Nothing here changes what it imports: files that share a process share modules and trees that are read once.
          isolate: false,
          include: ['tests/{unit,property,reference,trees,architecture,start}/**/*.test.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        // electron/main runs here, on a stand-in of the electron module and a real Chromium.
        resolve: {
          alias: [
            { find: /^electron$/, replacement: new URL('electron-stand-in/electron.ts', import.meta.url).pathname },
          ],
        },
        test: {
          name: 'desktop',
          environment: 'node',
          include: ['tests/{contract,electron-main}/**/*.test.ts'],
          globalSetup: ['tests/electron-stand-in/built.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        plugins: [svelte(), svelteTesting()],
        test: {
          name: 'component',
          environment: 'jsdom',
          // Every test draws its own window and takes it away again; compiling all screens once a file was half the time.
          isolate: false,
          include: ['tests/component/**/*.test.ts'],
          setupFiles: ['tests/component/computed-styles.ts'],
          testTimeout: 30_000,
        },
      },
    ],
  },
});
