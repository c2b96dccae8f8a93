import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { formatProblem, readTree } from '../../shared/knowledge/index.ts';
import { casesOf, fixture, fixtureVocabulary } from './fixtures.ts';

const shared = fixtureVocabulary().value!;

/** Everything that the reader says about a case: about its tree, or about the vocabulary files it brings along. */
function said(name: string): string {
  const tree = fixture(`reading/${name}/tree.yaml`);
  const { problems, value } =
    tree === null
      ? fixtureVocabulary(`reading/${name}`)
      : readTree({ treeYaml: tree, file: `reading/${name}/tree.yaml`, vocabulary: shared });
  expect(value, 'a case of this folder must not be readable').toBeNull();
  return problems.map((problem) => `${formatProblem(problem)}\n`).join('');
}

/** Codes that the modules of shared/knowledge report while reading; the lint has fixtures of its own. */
function codesInSource(): string[] {
  const folder = new URL('../../shared/knowledge/', import.meta.url);
  const text = readdirSync(folder)
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(new URL(name, folder), 'utf8'))
    .join('\n');
  const reported = [...text.matchAll(/(?:\.error|#report)\(\s*(?:'error',\s*)?'([a-z]+(?:-[a-z]+)+)'/g)].map(
    (found) => found[1]!,
  );
  return [...new Set([...reported, 'wrong-type', 'wrong-form', 'out-of-range', 'not-allowed-value'])].sort();
}

describe('[KNO-1] what the reader says about a fault', () => {
  const cases = casesOf('reading');
  it.each(cases)('%s: exactly as in expected.txt, with file, line and column', (name) => {
    const message = said(name);
    expect(message).toBe(fixture(`reading/${name}/expected.txt`));
    expect(message).toMatch(/^reading\/[a-z-]+\/[a-z]+\.yaml:\d+:\d+ error [a-z-]+: /);
  });
  it('has a case for every fault that the reader knows', () => {
    const shown = cases.map((name) => fixture(`reading/${name}/expected.txt`) ?? '').join('');
    // A missing file has no folder: tests/unit/knowledge/read-tree.test.ts holds it.
    const without = codesInSource().filter((code) => code !== 'missing-file' && !shown.includes(` error ${code}: `));
    expect(without).toEqual([]);
  });
});
