import { defineConfig } from 'eslint/config';
import prettier from 'eslint-config-prettier';
import jsdoc from 'eslint-plugin-jsdoc';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import tseslint from 'typescript-eslint';

/**
 * Markup and docstrings: what neither the compiler, nor prettier, nor the rules on types see. Those rules stand in
 * tests/architecture/oxlint.json: the same ones as typescript-eslint's strictTypeChecked, in a tenth of its time.
 */
export default defineConfig(
  { ignores: ['build/', 'node_modules/', 'coverage/', 'test-results/', 'playwright-report/'] },
  {
    files: ['shared/**/*.ts'],
    languageOptions: { parser: tseslint.parser },
    plugins: { jsdoc },
    rules: {
      'jsdoc/require-jsdoc': [
        'error',
        { publicOnly: true, require: { FunctionDeclaration: true, ClassDeclaration: true } },
      ],
    },
  },
  ...svelte.configs.recommended,
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: {
      parserOptions: { parser: tseslint.parser, extraFileExtensions: ['.svelte'] },
      globals: globals.browser,
    },
    rules: {
      'svelte/no-at-html-tags': 'error',
      // Domain data arrives whole and is replaced, never changed in place ($state.raw).
      'svelte/prefer-svelte-reactivity': 'off',
    },
  },
  { files: ['**/*.mjs', '**/*.cjs', 'eslint.config.js'], languageOptions: { globals: globals.node } },
  prettier,
);
