import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { readVocabulary, type ReadResult, type Vocabulary } from '../../shared/knowledge/index.ts';

const HERE = new URL('.', import.meta.url).pathname;

/** The folders of one kind, in the order of their names: "lint" has one for each rule, "reading" one for each fault. */
export function casesOf(kind: 'lint' | 'reading'): string[] {
  return readdirSync(HERE + kind, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name)
    .sort();
}

/** Text of a fixture, or null where a case does not have that file. */
export function fixture(path: string): string | null {
  return existsSync(HERE + path) ? readFileSync(HERE + path, 'utf8') : null;
}

/**
 * The small vocabulary that all fixtures share; a file of the same name in `folder` takes the place of the shared one.
 *
 * @param folder  "reading/some-case", or nothing for the shared files alone.
 */
export function fixtureVocabulary(folder?: string): ReadResult<Vocabulary> {
  const files = readdirSync(`${HERE}vocabulary`).map((name): [string, string] => {
    const own = folder === undefined ? null : fixture(`${folder}/${name}`);
    return own === null ? [`vocabulary/${name}`, fixture(`vocabulary/${name}`)!] : [`${folder!}/${name}`, own];
  });
  return readVocabulary(Object.fromEntries(files));
}
