import { fireEvent, screen, waitFor, within } from '@testing-library/svelte';
import { beforeAll, describe, expect, test } from 'vitest';
import { loadSnapshot } from '../../renderer/state/trees.ts';
import { deckOf, givesAway, type Card, type Drill } from '../../shared/practice/drills/index.ts';
import { fakeHost, type FakeHost } from './fake-host.ts';
import { openWindow, press } from './window.ts';

const TREE = 'air-leaks-when-brake-held';
let deck: readonly Card[];
let title: string;
beforeAll(async () => {
  // The pages are fetched when they are first opened; fetched before, no test waits for that.
  await Promise.all([
    import('../../renderer/screens/practice/PracticeScreen.svelte'),
    import('../../renderer/screens/drills/DrillsScreen.svelte'),
    import('../../renderer/screens/drills/ProgressScreen.svelte'),
  ]);
  const host = fakeHost();
  const { trees } = await host.call('trees.list', {});
  const { hash, card } = trees.find((each) => each.card.id === TREE)!;
  title = card.title;
  const { tree } = loadSnapshot(await host.call('trees.read', { hash }));
  deck = deckOf(tree!.tree, tree!.vocabulary, { who: 'apprentice' });
});

async function toDrills(host: FakeHost = fakeHost()): Promise<FakeHost> {
  await openWindow(host);
  await press('x');
  await screen.findByRole('heading', { level: 1, name: /who is practising|practice/i });
  return host;
}
async function begin(host?: FakeHost): Promise<FakeHost> {
  const over = await toDrills(host);
  await fireEvent.input(screen.getByRole('textbox'), { target: { value: 'Invented apprentice' } });
  await fireEvent.click(screen.getByRole('button', { name: 'Begin to practise' }));
  await screen.findByRole('heading', { level: 1, name: 'Practice' });
  await press('l');
  await screen.findByRole('heading', { level: 1, name: 'What will you drill?' });
  return over;
}
/** Lays out the cards of one kind; gives the first of them. */
async function start<D extends Drill>(drill: D): Promise<Extract<Card, { drill: D }>> {
  const kind = { apart: '2', outcome: '3', picture: '4', limit: '5' }[drill];
  await press(kind);
  await fireEvent.click(screen.getByRole('button', { name: new RegExp(title) }));
  await screen.findByRole('button', { name: /I do not know/ });
  const first = deck.find((card) => card.drill === drill);
  // Chosen by its kind just now.
  return first as Extract<Card, { drill: D }>;
}
const sheet = (): string => screen.getByRole('main').textContent;
const logOf = (host: FakeHost): Record<string, unknown>[] => [...host.learners.values()][0] ?? [];

describe('one card of each drill, by keyboard', () => {
  test('[DRI-4] tell these two apart: a check, then what it would show; both are judged and said', async () => {
    const host = await begin();
    const card = await start('apart');
    expect(screen.getByRole('heading', { level: 1 }).textContent).toContain(card.first.name);
    for (const { decibans } of card.options)
      if (decibans >= 1) expect(sheet()).not.toContain(`${decibans.toFixed(1)} dB`);
    const right = card.options.findIndex(({ accepted }) => accepted);
    await press(String(right + 1));
    await screen.findByText(/Suppose that it is this/);
    await press('0');
    await screen.findByText(/Which of these checks tells the two apart best/);
    await press(String(right + 1));
    const result = card.options[right]!.results.findIndex(({ accepted }) => accepted);
    await press(String(result + 1));
    await screen.findByRole('heading', { level: 1, name: 'Right' });
    const table = screen.getByRole('table', { name: 'How well each of them tells the two apart' });
    const row = within(table).getByRole('row', { name: new RegExp('right, your choice') });
    expect(row.textContent).toContain(card.options[right]!.name);
    expect(row.textContent).toContain(`${card.options[right]!.decibans.toFixed(1)} dB`);
    expect(sheet()).toContain('judged here, not counted');
    expect(logOf(host).at(-1)).toMatchObject({ kind: 'drill.answered', card: card.id, outcome: 'right', tree: TREE });
    await press('Enter');
    await screen.findByRole('button', { name: /I do not know/ });
    expect(screen.getByRole('heading', { level: 1 }).textContent).not.toContain(card.second.name);
  });

  test('[DRI-5] what would you see: shares come with the answer, not before', async () => {
    const host = await begin();
    const card = await start('outcome');
    expect(sheet()).not.toMatch(/in 100/);
    const wrong = card.options.findIndex(({ accepted }) => !accepted);
    await press(String(wrong + 1));
    await screen.findByRole('heading', { level: 1, name: 'Not this time' });
    for (const { share } of card.options) expect(sheet()).toContain(`${Math.round(share * 100)} in 100`);
    expect(sheet()).toMatch(/comes back in 1 minute\b/);
    expect(logOf(host).at(-1)).toMatchObject({ outcome: 'wrong', helped: false });
  });

  test('[DRI-3] [DRI-6] read the picture: no word of the answer in drawing or alternative; in words it comes back sooner', async () => {
    const host = await begin();
    const card = await start('picture');
    const image = await screen.findByRole('img', { name: /its words taken away/ });
    const bare = decodeURIComponent(image.getAttribute('src') ?? '');
    expect(bare).toMatch(/^data:image\/svg\+xml,<svg/);
    expect(bare).not.toMatch(/<(text|title|desc)\b/);
    expect(sheet()).not.toContain(card.title);
    for (const { label, accepted } of card.options)
      if (accepted) expect(givesAway(image.getAttribute('alt') ?? '', label)).toBe(false);
    await press('w');
    expect(await screen.findByText(card.alt)).toBeTruthy();
    await press(String(card.options.findIndex(({ accepted }) => accepted) + 1));
    await screen.findByRole('heading', { level: 1, name: 'Right' });
    expect(screen.getByRole('img', { name: card.alt }).getAttribute('src')).toContain(encodeURIComponent('<title'));
    expect(logOf(host).at(-1)).toMatchObject({ outcome: 'right', helped: true });
  });

  test('[DRI-7] know the limit: what is no figure stays and is said; the source comes with the answer', async () => {
    const host = await begin();
    const card = await start('limit');
    expect(sheet()).not.toContain(card.limit.source);
    const field = screen.getByRole('textbox', { name: 'The figure' });
    await fireEvent.input(field, { target: { value: 'a few' } });
    await fireEvent.submit(field.closest('form')!);
    expect((await screen.findByRole('alert')).textContent).toContain('“a few” is not a figure');
    expect(field).toHaveProperty('value', 'a few');
    expect(logOf(host)).toHaveLength(1);
    await fireEvent.input(field, { target: { value: String(card.figure.low) } });
    await fireEvent.change(screen.getByRole('combobox', { name: 'Unit' }), { target: { value: card.figure.unit } });
    await fireEvent.submit(field.closest('form')!);
    await screen.findByRole('heading', { level: 1, name: 'Right' });
    expect(sheet()).toContain(card.limit.source);
    expect(sheet()).toContain(card.limit.value);
  });
});

test('a refused answer is said, and the card stays as it was', async () => {
  const host = await begin();
  const card = await start('outcome');
  host.refusal = 'The disk is full.';
  await press('1');
  expect((await screen.findByRole('alert')).textContent).toContain('The disk is full.');
  expect(screen.getByRole('heading', { level: 1 }).textContent).toContain(card.cause.name.slice(1));
  host.refusal = null;
  await press('1');
  await screen.findByRole('button', { name: /The next card/ });
  expect(logOf(host)).toHaveLength(2);
});

test('[DRI-12] progress in words and tables; deleting asks first and removes everything of the learner', async () => {
  const host = await begin();
  const card = await start('outcome');
  for (let i = 0; i < 3; i++) {
    await press('n');
    await screen.findByRole('button', { name: /The next card/ });
    await press('Enter');
    await screen.findByRole('button', { name: /I do not know/ });
  }
  await press('i');
  await screen.findByRole('heading', { level: 1, name: 'What is solid, what is shaky' });
  const complaint = screen.getAllByRole('row').find((row) => row.querySelector('th')?.textContent.trim() === title);
  expect(complaint?.textContent).toMatch(/Shaky\s*0 of 3/);
  const cause = screen.getAllByRole('row').find((row) => row.textContent.includes(card.cause.name));
  expect(cause?.textContent).toMatch(/Too few to say\s*0 of 1/);
  expect(screen.getAllByRole('table').map((table) => table.previousElementSibling?.textContent)).toEqual([
    'Complaints',
    'Causes',
    'Checks',
  ]);

  await fireEvent.click(screen.getByRole('button', { name: /Delete everything of Invented apprentice/ }));
  expect(host.learners.size).toBe(1);
  await fireEvent.click(screen.getByRole('button', { name: /Keep it/ }));
  expect(host.learners.size).toBe(1);
  await fireEvent.click(screen.getByRole('button', { name: /Delete everything of Invented apprentice/ }));
  await fireEvent.click(await screen.findByRole('button', { name: /Delete Invented apprentice for good/ }));
  await screen.findByRole('heading', { level: 1, name: 'Nobody is practising' });
  await waitFor(() => expect(sheet()).toContain('Everything of Invented apprentice is deleted: 1 file.'));
  expect(host.learners.size).toBe(0);
  expect(host.logs.size).toBe(0);
});

test('the only learner goes on where they were; a second one has cards of their own', async () => {
  const host = await begin();
  await start('limit');
  await press('n');
  await screen.findByRole('button', { name: /The next card/ });
  expect(screen.getByRole('complementary').textContent).toMatch(/1 answer, 1\s+card/);
  await fireEvent.click(screen.getByRole('button', { name: /Somebody else/ }));
  await fireEvent.input(await screen.findByRole('textbox', { name: 'Somebody else' }), {
    target: { value: 'Invented second' },
  });
  await fireEvent.click(screen.getByRole('button', { name: 'Begin to practise' }));
  await waitFor(() =>
    expect(screen.getByRole('complementary').textContent).toMatch(/Invented second.*0 answers, 0\s+cards/s),
  );
  expect(host.learners.size).toBe(2);
});
