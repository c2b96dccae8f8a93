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
    rolldownOptions: {
      // The domain does nothing by being imported, and the window gets trees read: what it does not call is left out.
      treeshake: { moduleSideEffects: (id) => !/[\\/](shared|node_modules[\\/]yaml)[\\/]/.test(id) },
    },
  },
});
