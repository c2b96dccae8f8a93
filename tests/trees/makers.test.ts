import { hash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = new URL('../..', import.meta.url).pathname;
/** Not written here: what others made, and what a build leaves behind. */
const SKIPPED = new Set([
  '.git',
  'node_modules',
  'build',
  'coverage',
  'test-results',
  'playwright-report',
  'package-lock.json',
]);
const BINARY = /\.(png|woff2|jpg|ico)$/;

const hashOf = (name: string): string => hash('sha256', name, 'hex');
const names = new Set(
  readFileSync(new URL('makers.sha256', import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#')),
);

function filesBelow(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    if (SKIPPED.has(entry.name)) return [];
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return filesBelow(path);
    return entry.isFile() && !BINARY.test(entry.name) ? [path] : [];
  });
}

/** The words of a line in lower case, and every two that stand side by side; "someWord" counts as it stands and as two. */
function termsOf(line: string): string[] {
  const parted = line.replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2');
  return (parted === line ? [line] : [line, parted]).flatMap((text) => {
    const words = text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
    return [...words, ...words.slice(1).map((word, i) => `${words[i]!} ${word}`)];
  });
}

/** Looks for the names of a list. A line or a term that stands at many places is looked at once. */
function lookerFor(among: ReadonlySet<string>): (text: string) => { line: number; term: string }[] {
  const terms = new Map<string, boolean>();
  const isName = (term: string): boolean => {
    let known = terms.get(term);
    if (known === undefined) terms.set(term, (known = among.has(hashOf(term))));
    return known;
  };
  const lines = new Map<string, readonly string[]>();
  const namesOf = (line: string): readonly string[] => {
    let known = lines.get(line);
    if (known === undefined) lines.set(line, (known = [...new Set(termsOf(line).filter(isName))]));
    return known;
  };
  return (text) => text.split('\n').flatMap((line, i) => namesOf(line).map((term) => ({ line: i + 1, term })));
}

describe('[KNO-15] no maker and no brand is named', () => {
  const files = filesBelow(root).map((path) => relative(root, path));

  it('anywhere: trees, code, pictures, tests, documents and the names of files', () => {
    expect(files).toContain('trees/air-leaks-when-brake-held/tree.yaml');
    expect(files.length).toBeGreaterThan(300);
    const namesIn = lookerFor(names);
    const found = files.flatMap((file) =>
      [...namesIn(file).map(({ term }) => ({ line: 0, term })), ...namesIn(readFileSync(join(root, file), 'utf8'))].map(
        ({ line, term }) => `${file}:${line} names "${term}". Say what the part is or does instead.`,
      ),
    );
    expect(found).toEqual([]);
  });
  it('the list is a list of hashes, each once', () => {
    const lines = readFileSync(new URL('makers.sha256', import.meta.url), 'utf8')
      .trim()
      .split('\n');
    const hashes = lines.filter((line) => !line.startsWith('#'));
    expect(hashes.filter((line) => !/^[0-9a-f]{64}$/.test(line))).toEqual([]);
    expect(new Set(hashes).size).toBe(hashes.length);
    expect(hashes.length).toBeGreaterThan(300);
  });
  const madeUp = new Set([hashOf('wagonwright'), hashOf('iron wheel')]);
  it.each([
    ['A Wagonwright chamber.', 1, 'wagonwright'],
    ['two lines\nmade by WAGONWRIGHT’s sons', 2, 'wagonwright'],
    ['const wagonwrightValve = 1;', 1, 'wagonwright'],
    ['trees/iron-wheel-hub.svg', 1, 'iron wheel'],
    ['an Iron Wheel hub', 1, 'iron wheel'],
    ['ironWheel.ts', 1, 'iron wheel'],
  ])('finds a made-up name in %j', (text, line, term) => {
    expect(lookerFor(madeUp)(text)).toEqual([{ line, term }]);
  });
  it('leaves parts of other words alone', () => {
    expect(lookerFor(madeUp)('wagonwrights of iron wheels')).toEqual([]);
  });
});
