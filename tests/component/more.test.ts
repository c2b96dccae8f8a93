import { fireEvent, screen, within } from '@testing-library/svelte';
import { expect, test } from 'vitest';
import { beginVisit, openWindow, press } from './window.ts';
import { furnishWorker } from './worker.ts';

test('the dock leads to every page that the row of rooms leads to', async () => {
  furnishWorker();
  await openWindow();
  await beginVisit('it growls through the floor', /^1\s*growl through the floor/i);
  const dock = screen.getByRole('navigation', { name: 'One glance away' });
  for (const [button, heading] of [
    [/all open checks/i, /all open checks/i],
    [/^\d\s*the tree/i, /^the tree$/i],
    [/^\d\s*who is working/i, /who is working/i],
    [/how this coach is built/i, /how is this coach built/i],
    [/^\d\s*another complaint/i, /what is it doing/i],
    [/^settings.*light/i, /^settings$/i],
    [/all keys/i, /all keys/i],
    [/to the yard/i, /visit in the yard/i],
  ] as const) {
    await fireEvent.click(within(dock).getByRole('button', { name: 'More' }));
    await screen.findByRole('heading', { level: 1, name: 'More of this visit' });
    await fireEvent.click(screen.getByRole('button', { name: button }));
    expect(await screen.findByRole('heading', { level: 1, name: heading })).toBeTruthy();
  }
});

test('the footer names only keys that work on the sheet in front', async () => {
  await openWindow();
  await beginVisit('it growls through the floor', /^1\s*growl through the floor/i);
  const legend = (): string => screen.getByRole('list', { name: 'Keys' }).textContent;
  expect(legend()).toContain('not sure');
  expect(legend()).not.toContain('can’t do it');
  await press('t');
  await screen.findByRole('heading', { level: 1, name: /finding/i });
  expect(legend()).not.toContain('not sure');
});
