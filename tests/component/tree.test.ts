import { fireEvent, screen, waitFor, within } from '@testing-library/svelte';
import { beforeEach, describe, expect, test } from 'vitest';
import { found, openWalk } from './walk.ts';
import { press } from './window.ts';
import { furnishWorker } from './worker.ts';

beforeEach(() => furnishWorker());

/** Into a visit with four findings, made in another order than the tree would ask. */
async function inVisit(): Promise<void> {
  await openWalk('growl-through-floor-at-speed', [
    found('how-it-came', 'growing'),
    found('speed-sweep', 'rises-evenly'),
    found('load-change', 'no-change'),
    found('sway', 'swells-one-way'),
  ]);
  await screen.findByRole('button', { name: /why this one/i });
}
async function inTree(): Promise<HTMLElement> {
  await inVisit();
  await press('y');
  expect(await screen.findByRole('heading', { level: 1, name: 'The tree' })).toBeTruthy();
  // The shallow tree is enough here, and a third of the work.
  await fireEvent.change(screen.getByLabelText('Follow ways taken by'), { target: { value: '0.05' } });
  return screen.findByRole('tree', {}, { timeout: 25_000 });
}
const current = (tree: HTMLElement): Element => {
  const node = document.getElementById(tree.getAttribute('aria-activedescendant') ?? '');
  if (!node) throw new Error('The drawing names no current place.');
  return node;
};
const says = (tree: HTMLElement): string => current(tree).getAttribute('aria-label') ?? '';

describe('the tree', () => {
  test('says that it is being drawn up, then begins where the work stands, on the way really taken', async () => {
    await inVisit();
    await press('y');
    await screen.findByText(/drawing up the tree/i);
    const tree = await screen.findByRole('tree', {}, { timeout: 25_000 });
    expect(screen.queryByText(/drawing up the tree/i)).toBeNull();
    expect(says(tree)).toContain('The work stands here.');
    const taken = within(tree)
      .getAllByRole('treeitem')
      .filter((node) => node.getAttribute('aria-label')?.includes('On the way taken.'));
    const answers = taken.map((node) => node.getAttribute('aria-label'));
    for (const found of ['a tone that climbs evenly', 'the same in all three', 'If no: '])
      expect(
        answers.some((words) => words?.includes(found)),
        found,
      ).toBe(true);
    // Never by colour alone: a mark on each place, and a thicker line.
    expect(taken.every((node) => node.querySelector('.passed') !== null)).toBe(true);
    const widths = (selector: string): number[] =>
      [...tree.querySelectorAll(selector)].map((path) => Number(path.getAttribute('stroke-width')));
    expect(Math.min(...widths('.br.on'))).toBeGreaterThanOrEqual(5);
  });

  test('arrows go along the branch and to the next one, and Enter shows what the place says', async () => {
    const tree = await inTree();
    const start = says(tree);
    await press('ArrowRight');
    const first = says(tree);
    expect(first).not.toBe(start);
    expect(document.activeElement).toBe(tree);
    await press('ArrowDown');
    expect(says(tree)).not.toBe(first);
    await press('ArrowUp');
    expect(says(tree)).toBe(first);
    await press('ArrowLeft');
    expect(says(tree)).toBe(start);
    await press('Enter');
    const title = screen.getByRole('heading', { level: 2, name: /.+/ });
    const detail = title.closest('section')!;
    expect(start).toContain(title.textContent.trim());
    await waitFor(() => {
      expect(document.activeElement).toBe(title);
    });
    // Cautions come before the forks, and every fork has its share.
    const caution = within(detail).getByRole('heading', { name: 'Before you start' });
    const table = within(detail).getByRole('table');
    expect(caution.compareDocumentPosition(table) & Node.DOCUMENT_POSITION_FOLLOWING).toBeTruthy();
    const shares = within(table)
      .getAllByRole('row')
      .slice(1)
      .map((row) => Number(within(row).getAllByRole('cell')[0]?.textContent));
    const total = shares.reduce((sum, share) => sum + share, 0);
    expect(total).toBeGreaterThanOrEqual(97);
    expect(total).toBeLessThanOrEqual(103);
  });

  test('an end names cause, next test and caution', async () => {
    const tree = await inTree();
    const end = within(tree)
      .getAllByRole('treeitem')
      .find((node) => /(probable cause|so far): /i.test(node.getAttribute('aria-label') ?? ''));
    expect(end).toBeDefined();
    // A touch goes there, a second one shows what the place says.
    await fireEvent.click(end!);
    await fireEvent.click(current(tree));
    expect(says(tree)).toBe(end!.getAttribute('aria-label'));
    const name = screen.getByRole('heading', { level: 2, name: /.+/ });
    const detail = name.closest('section')!;
    expect(within(detail).getByText('Probable cause')).toBeTruthy();
    expect(within(detail).getByText('Next test')).toBeTruthy();
    expect(within(detail).getByRole('heading', { name: 'Caution' })).toBeTruthy();
  });

  test('space folds a branch with the number of ends behind it, and right opens it again', async () => {
    const tree = await inTree();
    const places = (): number => within(tree).getAllByRole('treeitem').length;
    const before = places();
    await press(' ');
    expect(current(tree).getAttribute('aria-expanded')).toBe('false');
    expect(places()).toBeLessThan(before);
    expect(Number(current(tree).querySelector('.count-text')?.textContent)).toBeGreaterThan(0);
    await press('ArrowRight');
    expect(current(tree).getAttribute('aria-expanded')).toBe('true');
    expect(places()).toBe(before);
  });

  test('plus and minus change the size', async () => {
    const tree = await inTree();
    const width = (): number => Number(tree.getAttribute('width'));
    const before = width();
    await press('+');
    expect(width()).toBeCloseTo(before * 1.25, 6);
    await press('-');
    expect(width()).toBeCloseTo(before, 6);
  });

  test('the list says the same, with the way taken in words', async () => {
    await inTree();
    await press('l');
    const list = screen.getByRole('region', { name: 'The tree as a list' });
    expect(within(list).getByText('the work stands here')).toBeTruthy();
    expect(within(list).getAllByText('taken').length).toBeGreaterThan(4);
    expect(within(list).getByText(/in 100 coaches leave the paper|every path is printed/i)).toBeTruthy();
  });

  test('another role gets another tree', async () => {
    await inTree();
    await fireEvent.change(screen.getByLabelText('For'), { target: { value: 'owner-no-tools' } });
    await screen.findByText(/drawing up the tree/i);
    await screen.findByRole('tree', {}, { timeout: 25_000 });
    await press('l');
    expect(screen.getByText(/for an owner without tools/i)).toBeTruthy();
  });

  test('a tree that cannot be drawn up says so and what to do', async () => {
    class Broken extends EventTarget {
      postMessage(): void {
        setTimeout(() => this.dispatchEvent(new ErrorEvent('error', { message: 'no such script' })), 0);
      }
      terminate(): void {
        this.dispatchEvent(new Event('ended'));
      }
    }
    await inVisit();
    Object.assign(window, { Worker: Broken });
    await press('y');
    expect((await screen.findByRole('alert')).textContent).toMatch(/cannot be drawn.*no such script.*on disk/i);
  });

  test('on paper every page names itself, and cuts name each other’s page', async () => {
    await inTree();
    await press('o');
    const pages = await screen.findAllByRole('region', { name: /^Page \d+ of \d+$/ });
    expect(pages.length).toBeGreaterThan(3);
    const text = (n: number): string => pages[n]?.textContent ?? '';
    const cut = /Page (\d+) goes on from (\S+?)(?=\s|Page|S\d|$)/.exec(text(0));
    expect(cut).not.toBeNull();
    expect(text(Number(cut?.[1]) - 1)).toContain('From page 1, ');
  });
});
