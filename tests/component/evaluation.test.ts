import { fireEvent, screen, within } from '@testing-library/svelte';
import { expect, test } from 'vitest';
import kept from '../../renderer/data/evaluation.json' with { type: 'json' };
import { openWindow } from './window.ts';

test('[EVA-6] how good it is: what the figures are not comes first, a line a complaint, and the picked one opens its table', async () => {
  await openWindow();
  await fireEvent.click(screen.getByRole('button', { name: 'Settings' }));
  await fireEvent.click(await screen.findByRole('button', { name: /how good is this/i }));
  await screen.findByRole('heading', { level: 1, name: 'How good is this?' });
  expect(screen.getAllByRole('heading', { level: 2 })[0]?.textContent).toBe('What these figures are not');

  const [main] = screen.getAllByRole('table');
  const lines = within(main!).getAllByRole('button');
  expect(lines).toHaveLength(kept.trees.length);
  const tree = kept.trees.find(({ tree: id }) => id === 'growl-through-floor-at-speed')!;
  const cost = (way: string): string => tree.ways.find((each) => each.way === way)!.cost.toFixed(0);
  const line = within(main!).getByRole('button', { name: /growl/i });
  const row = within(line.closest('tr')!);
  const bars = row.getAllByRole('listitem').map(({ textContent }) => textContent);
  expect(bars[0]).toMatch(new RegExp(`this program.*\\b${cost('this program')}$`));
  expect(bars[1]).toMatch(new RegExp(`taught order.*\\b${cost('taught order')}$`));
  expect(bars[2]).toMatch(new RegExp(`swapping parts.*\\b${cost('likeliest part first')}$`));
  const right = (way: string): string => (tree.ways.find((each) => each.way === way)!.right * 100).toFixed(0);
  expect(row.getByText(`every check: ${right('every check')}`)).toBeTruthy();

  await fireEvent.click(line);
  expect(line.getAttribute('aria-expanded')).toBe('true');
  const full = within(screen.getByRole('group', { name: /growl.*everything measured/i }));
  const ours = full.getByRole('row', { name: /^This program/ });
  const score = tree.ways.find(({ way }) => way === 'this program')!;
  expect(ours.textContent).toContain(`${score.cost.toFixed(0)} ± ${(2 * score.costError).toFixed(0)}`);
  expect(ours.textContent).toContain(score.wrongParts.toFixed(2));
  expect(full.getByText(`${tree.least.proven.toFixed(0)} min`)).toBeTruthy();
  // Another one that is picked takes its place.
  await fireEvent.click(lines.find((each) => each !== line)!);
  expect(screen.getAllByRole('group', { name: /everything measured/ })).toHaveLength(1);
  expect(line.getAttribute('aria-expanded')).toBe('false');

  await fireEvent.click(screen.getByText(/small models whose best plan is known/));
  await fireEvent.click(screen.getByRole('button', { name: 'm5-slow-air-imperfect' }));
  expect(screen.queryByRole('group', { name: /everything measured/ })).toBeNull();
  expect(screen.getByText('Dearer when its numbers are off by 0.5')).toBeTruthy();
  // The program, the best plan and the rule for larger trees are columns of their own; what lies between the last two is said.
  const slow = kept.models.find(({ model }) => model === 'm5-slow-air-imperfect')!;
  expect(slow.rule).toBeGreaterThan(slow.optimum);
  const cells = within(screen.getByRole('button', { name: slow.model }).closest('tr')!).getAllByRole('cell');
  expect(cells.slice(0, 3).map(({ textContent }) => textContent)).toEqual(
    [slow.ours, slow.optimum, slow.rule].map((cost) => cost.toFixed(1)),
  );
  const gap = `${((100 * (slow.rule - slow.optimum)) / slow.optimum).toFixed(1)} in 100`;
  expect(screen.getByText('That rule dearer than the best possible').nextElementSibling?.textContent).toBe(gap);
});
