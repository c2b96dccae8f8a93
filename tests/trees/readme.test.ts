import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { SHIPPED_TREES } from '../../electron/cli/load-trees.ts';
import {
  CHECK_HAZARDS,
  EXCEPTION_CODES,
  formatProblem,
  LINT_RULES,
  lintTree,
  readTree,
  ROLES,
  SITE_KINDS,
  STATUSES,
  VERBAL_SCALE,
  VERDICTS,
} from '../../shared/knowledge/index.ts';
import { CALCULATIONS } from '../../shared/measuring/index.ts';
import { treeFile } from '../../shared/knowledge/schema.ts';
import { casesOf, fixture, fixtureVocabulary } from './fixtures.ts';
import { shippedTrees } from '../shipped-trees.ts';

const readme = readFileSync(`${SHIPPED_TREES}/README.md`, 'utf8');
const blocks = [...readme.matchAll(/```yaml\n([\s\S]*?)```/g)].map(([, text]) => text!);
/** Cells of every row of a table, by the first cell. */
const rows = new Map(
  [...readme.matchAll(/^\| (.+) \|$/gm)].map(([, row]) => {
    const cells = row!.split(' | ').map((cell) => cell.trim());
    return [cells[0]!, cells.slice(1)] as const;
  }),
);
/** Names in back-quotes in the first column, the mark of what must be there left out. */
const fieldsNamed = new Set([...rows.keys()].flatMap((first) => /^`([A-Za-z]+)`/.exec(first)?.[1] ?? []));
const { vocabulary } = await shippedTrees();
const said = (text: string): string[] => {
  const { value, source, problems } = readTree({ treeYaml: text, file: 'README.md', vocabulary: vocabulary! });
  return [...problems, ...(value ? lintTree(value, vocabulary!, source) : [])].map(formatProblem);
};

describe('[KNO-18] how to write a tree', () => {
  it('the smallest tree reads and lints without a word', () => {
    expect(said(blocks[0]!)).toEqual([]);
  });
  it('nothing of the smallest tree can be left out: each list without its entries is a fault', () => {
    for (const key of ['phrases', 'causes', 'checks', 'teaching', 'proofs'])
      expect(
        said(blocks[0]!.replace(new RegExp(`^${key}:\\n(?:[ -].*\\n)+`, 'm'), `${key}: []\n`)).length,
        key,
      ).toBeGreaterThan(0);
  });
  it('the exception that is shown is taken for a tree that needs it', () => {
    const short = blocks[0]!.replace('  - No honk any more\n', '');
    expect(said(short)).toHaveLength(1);
    expect(said(short + blocks[1]!)).toEqual([]);
  });
  it('the scale is the one that the reader uses, with its source', () => {
    for (const [word, value] of VERBAL_SCALE)
      expect(rows.get(`\`${word}\``)?.[0], word).toBe(String(value).replace(/^0/, ''));
    expect(readme).toMatch(
      /Renooij and C\. Witteman[\s\S]*International Journal of Approximate\s+Reasoning 22 \(1999\)/,
    );
  });
  it('every rule stands there with what it looks for', () => {
    for (const { code, level, looksFor } of LINT_RULES)
      expect(rows.get(`\`${code}\`${level === 'warning' ? ' (warning)' : ''}`)?.[0], code).toBe(looksFor);
    for (const code of EXCEPTION_CODES) expect(readme).toContain(`\`${code}\``);
  });
  it('[KNO-19] every calculation stands there with its unit, its meaning and what may be fixed', () => {
    for (const [id, { unit, means, settings }] of Object.entries(CALCULATIONS))
      expect(rows.get(`\`${id}\``), id).toEqual([
        unit,
        means,
        Object.entries<readonly string[]>(settings)
          .map(([setting, allowed]) => `\`${setting}\`: ${allowed.join(', ')}`)
          .join('; ') || '–',
      ]);
  });
  it('every key that a tree, a cause, a check or a stop rule may have is explained', () => {
    const { causes, checks, stopRules } = treeFile.entries;
    const groups = [treeFile.entries, causes.pipe[0].item.entries, stopRules.item.entries];
    const own = checks.pipe[0].item.getter({});
    const shared = checks.pipe[0].item.getter({ shared: 'x' });
    const keys = [...groups, own.entries, shared.entries].flatMap((group) => Object.keys(group));
    expect(keys.length).toBeGreaterThan(50);
    expect(keys.filter((key) => !fieldsNamed.has(key))).toEqual([]);
  });
  it('every word that a field may have is named', () => {
    for (const word of [...ROLES, ...CHECK_HAZARDS, ...SITE_KINDS, ...VERDICTS, ...STATUSES])
      expect(readme, word).toContain(`\`${word}\``);
  });
  it('what an exception is for is said as the rules say it', () => {
    const small = fixtureVocabulary().value!;
    for (const code of casesOf('lint')) {
      const place = rows.get(`\`${code}\``)?.[1] ?? rows.get(`\`${code}\` (warning)`)?.[1];
      const { value } = readTree({ treeYaml: fixture(`lint/${code}/bad.yaml`)!, file: 'bad.yaml', vocabulary: small });
      const places: string[] = [];
      LINT_RULES.find((rule) => rule.code === code)?.check({ tree: value!, vocabulary: small }, (at) =>
        places.push(at),
      );
      const ids: Readonly<Record<string, readonly string[]>> = {
        cause: value!.causes.map(({ id }) => id),
        check: value!.checks.map(({ id }) => id),
        tree: [value!.id],
        'check or stop rule': [...value!.checks, ...value!.stopRules].map(({ id }) => id),
        '`first-cause/second-cause`': value!.causes.flatMap((a) => value!.causes.map((b) => `${a.id}/${b.id}`)),
        '`check/result`': value!.checks.flatMap((check) => check.results.map(({ id }) => `${check.id}/${id}`)),
      };
      for (const at of places) expect(ids[place!], `${code}: ${place ?? 'no row'}`).toContain(at);
    }
  });
});
