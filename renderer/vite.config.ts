import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';

/** The window: own files only, nothing inline, so that the content security policy can be strict. */
export default defineConfig({
  root: import.meta.dirname,
  base: './',
  plugins: [svelte()],
  build: {
    outDir: '../build/renderer',
    emptyOutDir: true,
    target: 'chrome120',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
});
