import { beforeAll, describe, expect, it } from 'vitest';
import type { Tree, Vocabulary } from '../../../../shared/knowledge/index.ts';
import {
  compileTree,
  outlineOf,
  outlineText,
  pagesOf,
  type CompiledTree,
  type OutlineEntry,
  type Page,
} from '../../../../shared/planning/index.ts';
import { cause, check, stopRule, tree } from '../small-tree.ts';
import { blank } from './walked.ts';
import { shippedTrees } from '../../../shipped-trees.ts';

let vocabulary: Vocabulary;
let shipped: readonly Tree[];
let small: CompiledTree;
let large: CompiledTree;
beforeAll(async () => {
  const loaded = await shippedTrees();
  if (!loaded.vocabulary) throw new Error('The shipped vocabulary cannot be read.');
  vocabulary = loaded.vocabulary;
  shipped = [...loaded.trees.values()].flatMap(({ value }) => value ?? []);
  const made = tree(
    [cause('left', 40, { name: 'Left hose' }), cause('right', 60, { name: 'Right hose' })],
    [
      check(
        'listen',
        ['loud', 'quiet', 'faint'],
        [
          [0.9, 0.05, 0.05],
          [0.1, 0.45, 0.45],
        ],
        {
          name: 'Listen at the hoses',
          cautions: ['Chock both ways.'],
          settles: ['left', 'right'],
        },
      ),
    ],
    { unlistedShare: 0.02, stopRules: [stopRule('smoke', 'stay-put'), stopRule('pulls', 'creep-to-safe-place')] },
  );
  small = compileTree(blank(made, vocabulary, 'owner-basic-tools'), { threshold: 0 });
  large = compileTree(blank(shipped[0]!, vocabulary, 'mechanic'), { threshold: 0.03 });
});

function everyEntry(whole: OutlineEntry): OutlineEntry[] {
  return whole.entries.flatMap((entry) => [entry, ...everyEntry(entry)]);
}

describe('the outline', () => {
  it('[PLA-29] says in nested numbered lines what the tree says: cautions before the check, safety questions first', () => {
    const lines = outlineText(small).split('\n');
    expect(lines[0]).toBe('Small: for an owner with basic tools.');
    expect(lines[1]).toMatch(/^Nothing here says that the coach is in order\./);
    const at = (start: string) => lines.findIndex((line) => line.startsWith(start));
    expect(lines[at('S1 ')]).toBe('S1 Safety question: smoke?');
    expect(lines[at('  S1.1 ')]).toBe('  S1.1 If yes:');
    expect(lines[at('  S1.1 ') + 1]).toMatch(/^ {4}Stop here\. Stay put\./);
    expect(lines[at('  S1.3 ') + 1]).toBe('    Go on at S2.');
    expect(lines[at('  S2.3 ') + 1]).toBe('    Go on at 1.');
    expect(lines[at('1 ')]).toBe('1 Caution: Chock both ways.');
    expect(lines[at('1 ') + 1]).toMatch(/^ {2}Check: Listen at the hoses\. 5 min\. Asked now because/);
    expect(at('1 ')).toBeGreaterThan(at('S2 '));
    expect(lines[at('  1.1 ')]).toMatch(/^ {2}1\.1 If loud \(\d+ in 100\):$/);
    expect(lines.slice(at('  1.1 '), at('  1.2 ')).join('\n')).toMatch(/Caution: .*\n.*Probable cause: Left hose/);
    // Two results that say the same lead to the same place.
    expect(lines[at('  1.3 ') + 1]).toBe('    Go on at 1.2.');
  });
  it('[PLA-29] has every branch once, and each entry’s number is its parent’s with one more', () => {
    for (const compiled of [small, large]) {
      const entries = everyEntry(outlineOf(compiled));
      const branches = compiled.nodes.reduce((sum, node) => sum + (node.kind === 'step' ? node.branches.length : 0), 0);
      const triage = compiled.nodes.filter((node) => node.kind === 'step' && node.ask.kind === 'triage').length;
      // Each question after the first and the first step stand on their own as well as behind the "no" before them.
      expect(entries.length).toBe(branches + triage + 1);
      expect(new Set(entries.map(({ number }) => number)).size).toBe(entries.length);
      for (const entry of entries)
        entry.entries.forEach((each, i) => {
          expect(each.number).toBe(`${entry.number}.${i + 1}`);
          expect(each.level).toBe(entry.level + 1);
        });
      const numbers = new Set(entries.map(({ number }) => number));
      for (const { goesOnAt } of entries) if (goesOnAt !== undefined) expect(numbers).toContain(goesOnAt);
    }
  });
  it('[PLA-22] states how much leaves the paper, or that nothing does', () => {
    expect(outlineText(large)).toMatch(/\d+ in 100 coaches leave the paper/);
    expect(outlineText(small)).toContain('Every path is printed to its end.');
  });
});

describe('the pages', () => {
  const sizes = [
    { rows: 60, columns: 96 },
    { rows: 40, columns: 70 },
    { rows: 90, columns: 120 },
  ] as const;
  const own = (pages: readonly Page[]) => pages.flatMap(({ rows }) => rows.filter(({ cut }) => !cut));

  it.each(sizes)('[PLA-30] $rows rows of $columns: no page is longer, no row is wider', (size) => {
    const pages = pagesOf(large, size);
    expect(pages.length).toBeGreaterThan(3);
    pages.forEach(({ page, rows }, i) => {
      expect(page).toBe(i + 1);
      expect(rows.length).toBeGreaterThan(0);
      expect(rows.length).toBeLessThanOrEqual(size.rows);
      for (const { text } of rows) expect(text.length).toBeLessThanOrEqual(size.columns);
    });
  });
  it.each(sizes)('[PLA-30] $rows rows of $columns: every entry is printed once and in full', (size) => {
    const rows = own(pagesOf(large, size));
    for (const entry of everyEntry(outlineOf(large))) {
      const printed = rows.filter((row) => row.entry === entry.number).map(({ text }) => text.trim());
      expect(printed.join(' ').replaceAll(' ', '')).toBe(
        `${entry.number} ${entry.lines.join(' ')}`.replaceAll(' ', ''),
      );
    }
  });
  it.each(sizes)('[PLA-30] $rows rows of $columns: both sides of a cut name the other’s page', (size) => {
    const pages = pagesOf(large, size);
    const cuts = pages.flatMap(({ page, rows }) =>
      rows.flatMap(({ cut, entry, text }) => (cut ? [{ ...cut, entry, text, on: page }] : [])),
    );
    const forward = cuts.filter(({ kind }) => kind === 'on');
    const back = cuts.filter(({ kind }) => kind === 'back');
    expect(forward.length).toBeGreaterThan(2);
    expect(back.length).toBe(forward.length);
    for (const { entry, on, page, text } of forward) {
      expect(text).toContain(`Page ${page} `);
      expect(back.filter((each) => each.entry === entry && each.on === page && each.page === on)).toHaveLength(1);
    }
    for (const { page, entry, on } of cuts.filter(({ kind }) => kind === 'see')) {
      const target = everyEntry(outlineOf(large)).find(({ number }) => number === entry)!.goesOnAt!;
      expect(pages[page - 1]!.rows.some((row) => row.entry === target && !row.cut)).toBe(true);
      expect(on).toBeGreaterThan(0);
    }
  });
  it('[PLA-30] what fits is followed on its page', () => {
    expect(pagesOf(small, { rows: 200, columns: 96 })).toHaveLength(1);
  });
  it('[PLA-30] a page that cannot hold a single entry is refused with what is needed', () => {
    expect(() => pagesOf(large, { rows: 8, columns: 96 })).toThrow(/8 rows .* cannot hold entry .* needs \d+ rows/);
    expect(() => pagesOf(large, { rows: 60, columns: 20 })).toThrow(/at least 40/);
  });
});
