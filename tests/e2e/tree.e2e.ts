import type { Page } from '@playwright/test';
import { loadTrees } from '../../electron/cli/load-trees.ts';
import {
  compileTree,
  defaultCosts,
  outlineOf,
  type CompiledTree,
  type OutlineEntry,
} from '../../shared/planning/index.ts';
import { lookOver } from './look.ts';
import { begin, expect, nothingToStop, test } from './shell.ts';

const DRAWN_UP = { timeout: 90_000 };
// Hundreds of places, each looked at: slow on a busy machine, and that is not a fault.
test.describe.configure({ timeout: 180_000 });

/** From the yard to the drawn tree of the growl, safety questions answered, nothing found yet. */
async function inTree(page: Page, address: string, depth = '0.02'): Promise<void> {
  await begin(page, address, 'humming under my feet above 50');
  await nothingToStop(page);
  await page.keyboard.press('y');
  await expect(page.getByRole('heading', { level: 1, name: 'The tree' })).toBeVisible();
  await page.getByLabel('Follow ways taken by').selectOption(depth);
  await expect(page.getByRole('tree')).toBeVisible(DRAWN_UP);
}

/** The same tree made here, from the files: what has to be on the paper. */
async function expected(): Promise<CompiledTree> {
  const { trees, vocabulary } = await loadTrees({ only: ['growl-through-floor-at-speed'] });
  const tree = trees.get('growl-through-floor-at-speed')?.value;
  if (!tree || !vocabulary) throw new Error('The tree cannot be read; run npm run lint:trees.');
  const costs = defaultCosts('mechanic');
  const nothing = { layout: {}, findings: [], stopAnswers: {}, corrections: [], access: [], costs };
  return compileTree({ tree, vocabulary, who: 'mechanic', ...nothing });
}

/** Texts of every entry by number, as one line each. */
function textsOf(whole: OutlineEntry): Map<string, string> {
  const texts = new Map<string, string>();
  const add = ({ number, lines, entries }: OutlineEntry): void => {
    texts.set(number, `${number} ${lines.join(' ')}`.trim());
    entries.forEach(add);
  };
  add(whole);
  return texts;
}

test('the drawn tree by keyboard alone, and the window is not blocked while it is drawn up', async ({
  page,
  address,
}) => {
  await begin(page, address, 'humming under my feet above 50');
  await nothingToStop(page);
  await page.keyboard.press('y');
  await expect(page.getByText(/Drawing up the tree: \d+ steps worked out/)).toBeVisible(DRAWN_UP);
  // The key works at once, although seconds of work are still ahead.
  const light = await page.locator('html').getAttribute('data-light');
  await page.keyboard.press('d');
  await expect(page.locator('html')).not.toHaveAttribute('data-light', light ?? '', { timeout: 2000 });
  const tree = page.getByRole('tree');
  await expect(tree).toBeVisible(DRAWN_UP);
  const says = (): Promise<string | null> =>
    tree.evaluate((svg) => {
      const id = svg.getAttribute('aria-activedescendant') ?? '';
      return document.getElementById(id)?.getAttribute('aria-label') ?? null;
    });
  expect(await says()).toContain('The work stands here.');
  await page.keyboard.press('ArrowRight');
  await expect(tree).toBeFocused();
  const first = await says();
  await page.keyboard.press('ArrowDown');
  expect(await says()).not.toBe(first);
  await page.keyboard.press('Enter');
  await expect(page.locator('#node-name')).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(tree).toBeFocused();
  const width = Number(await tree.getAttribute('width'));
  await page.keyboard.press('+');
  expect(Number(await tree.getAttribute('width'))).toBeGreaterThan(width);
  await page.keyboard.press('ArrowLeft');
  expect(await says()).not.toMatch(/loudest/i);
  await page.keyboard.press('/');
  await expect(page.getByLabel(/Find in the tree/)).toBeFocused();
  await page.keyboard.type('loudest');
  await page.keyboard.press('Enter');
  await expect.poll(says).toMatch(/loudest/i);
  await page.keyboard.press('Escape');
  await page.keyboard.press('l');
  await expect(page.getByText('the work stands here')).toBeVisible();
});

test('the printed tree has every end with its whole text, on as many sheets as pages', async ({ page, address }) => {
  await inTree(page, address);
  await page.keyboard.press('o');
  await expect(page.getByRole('heading', { level: 1, name: 'The tree on paper' })).toBeVisible();
  const compiled = await expected();
  const leaves = compiled.nodes.filter(({ kind }) => kind === 'leaf');
  for (const paper of ['a4', 'letter'] as const) {
    await page.getByLabel('Paper').selectOption(paper);
    await page.emulateMedia({ media: 'print' });
    const printed = await page.evaluate(() => {
      const rows = [...document.querySelectorAll<HTMLElement>('.paper-rows p')];
      const texts: Record<string, string> = {};
      for (const row of rows) {
        if (row.classList.contains('cut')) continue;
        const entry = row.dataset['entry'] ?? '';
        texts[entry] = `${texts[entry] ?? ''} ${row.textContent.trim()}`.trim();
      }
      const sheets = [...document.querySelectorAll<HTMLElement>('.paper-page')];
      return {
        texts,
        pages: sheets.length,
        highest: Math.max(...sheets.map((sheet) => sheet.getBoundingClientRect().height)),
        widest: Math.max(
          ...rows.map((row) => {
            const range = document.createRange();
            range.selectNodeContents(row);
            return range.getBoundingClientRect().right - row.getBoundingClientRect().left;
          }),
        ),
        shown: rows.every((row) => row.checkVisibility()),
        others: ['.head', '.rooms', '.paper-head', 'footer'].filter((name) =>
          document.querySelector(name)?.checkVisibility(),
        ),
      };
    });
    expect(printed.shown).toBe(true);
    expect(printed.others).toEqual([]);
    // Printable millimetres of the sheet inside the margins of print.css, at 96 px an inch.
    const [width, height] = paper === 'a4' ? [210 - 34, 297 - 25] : [215.9 - 34, 279.4 - 25];
    expect((printed.widest * 25.4) / 96).toBeLessThanOrEqual(width);
    expect((printed.highest * 25.4) / 96).toBeLessThanOrEqual(height);
    const wanted = textsOf(outlineOf(compiled));
    let ends = 0;
    for (const [number, text] of wanted) {
      expect(printed.texts[number], `entry ${number}`).toBe(text);
      if (text.includes('Probable cause:')) ends++;
      if (text.includes('Probable cause:')) expect(text).toMatch(/Caution: .+ Next test/s);
    }
    expect(ends).toBe(leaves.length);
    expect(Object.values(printed.texts).filter((text) => text.includes('Continue in the program.'))).toHaveLength(
      leaves.filter((leaf) => leaf.kind === 'leaf' && leaf.end === 'continue').length,
    );
    expect(printed.texts['']).toMatch(/\d+ in 100 coaches leave the paper/);
    const pdf = await page.pdf({ preferCSSPageSize: true });
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(printed.pages);
    await page.emulateMedia({ media: 'screen' });
  }
});

test('the tree, its list and its paper: axe finds nothing, by day and by night, narrow and wide', async ({
  page,
  address,
}) => {
  // The shallow tree has every kind of place too, and axe looks at each element.
  await inTree(page, address, '0.05');
  await lookOver(page, 'tree');
  await page.keyboard.press('l');
  await expect(page.getByRole('region', { name: 'The tree as a list' })).toBeVisible();
  await lookOver(page, 'list');
  await page.keyboard.press('o');
  await expect(page.locator('.paper-page').first()).toBeVisible();
  await lookOver(page, 'paper');
});
