import prettier from 'eslint-config-prettier';
import jsdoc from 'eslint-plugin-jsdoc';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import tseslint from 'typescript-eslint';

/** Types are checked by the compiler, form by prettier; here stands what neither of them sees. */
export default tseslint.config(
  { ignores: ['build/', 'node_modules/', 'coverage/', 'test-results/', 'playwright-report/'] },
  {
    files: ['**/*.ts'],
    extends: [...tseslint.configs.strictTypeChecked],
    languageOptions: {
      parserOptions: {
        project: [
          './shared/tsconfig.json',
          './electron/tsconfig.json',
          './tests/tsconfig.json',
          './renderer/tsconfig.json',
        ],
        tsconfigRootDir: import.meta.dirname,
      },
    },
    rules: {
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true, allowBoolean: true }],
      '@typescript-eslint/no-confusing-void-expression': [
        'error',
        { ignoreArrowShorthand: true, ignoreVoidReturningFunctions: true },
      ],
      '@typescript-eslint/no-unnecessary-condition': ['error', { allowConstantLoopConditions: true }],
      // noUncheckedIndexedAccess makes every numeric index possibly undefined; inner loops assert with `!` after a bound.
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/consistent-type-imports': 'error',
    },
  },
  {
    files: ['shared/**/*.ts'],
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
