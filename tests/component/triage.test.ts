import { fireEvent, screen, waitFor, within } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import type { FakeHost } from './fake-host.ts';
import { beginVisit, openWindow, press } from './window.ts';

const heading = (): string => screen.getByRole('heading', { level: 1 }).textContent;
const logOf = (host: FakeHost): readonly { readonly kind: string; readonly [field: string]: unknown }[] =>
  [...host.logs.values()][0] ?? [];

async function inTriage(): Promise<FakeHost> {
  const host = await openWindow();
  await beginVisit('it growls through the floor', /^1\s*growl through the floor/i);
  return host;
}

describe('safety questions', () => {
  test('one question at a time, cautions first, with a verdict that is always on the page', async () => {
    await inTriage();
    expect(screen.getAllByRole('heading', { level: 1 })).toHaveLength(1);
    const caution = screen.getByRole('heading', { name: 'While you walk round' });
    const yes = screen.getByRole('button', { name: /yes/i });
    expect(caution.compareDocumentPosition(yes) & Node.DOCUMENT_POSITION_FOLLOWING).toBeTruthy();
    expect(
      screen.getByRole('img', { name: /^drive verdict: (stay put|creep to a safe place|drive and book a repair)/i }),
    ).toBeTruthy();
  });

  test('the heading of a new question takes the focus', async () => {
    await inTriage();
    const before = heading();
    await press('2');
    await waitFor(() => {
      expect(heading()).not.toBe(before);
    });
    await waitFor(() => {
      expect(document.activeElement).toBe(screen.getByRole('heading', { level: 1 }));
    });
  });

  test('an answer is on disk before the next question, and undo asks it again', async () => {
    const host = await inTriage();
    const first = heading();
    await press('2');
    await screen.findByText(/question 2 of/i);
    expect(logOf(host).at(-1)).toMatchObject({ kind: 'stop.answered', answer: 'no' });
    await press('u');
    await screen.findByText(/question 1 of/i);
    expect(heading()).toBe(first);
    expect(logOf(host).at(-1)).toMatchObject({ kind: 'event.taken-back' });
  });

  test('a refused answer leaves the question standing', async () => {
    const host = await inTriage();
    const first = heading();
    host.refusal = 'The disk is full.';
    await press('1');
    expect((await screen.findByRole('alert')).textContent).toContain('The disk is full.');
    expect(heading()).toBe(first);
    host.refusal = null;
    await press('2');
    await screen.findByText(/question 2 of/i);
    expect(screen.queryByRole('alert')).toBeNull();
  });

  test('a yes that fires stay put halts, says why and who decides, and going on keeps the verdict', async () => {
    const host = await inTriage();
    for (let asked = 0; asked < 20 && logOf(host).every((event) => event['answer'] !== 'yes'); asked += 1) {
      // The first question of this complaint is one that keeps the coach where it stands or lets it creep; either halts.
      await press('1');
      await waitFor(() => {
        expect(logOf(host).some((event) => event['answer'] === 'yes')).toBe(true);
      });
    }
    const stop = await screen.findByRole('heading', { level: 1, name: /stay put|creep to a safe place/i });
    const words = stop.textContent;
    expect(screen.getByText(/it alone decides/i)).toBeTruthy();
    expect(screen.getByText(/licensed mechanic or inspector has the last word/i)).toBeTruthy();
    await fireEvent.click(screen.getByRole('button', { name: /go on where it stands/i }));
    await waitFor(() => {
      expect(logOf(host).at(-1)?.kind).toBe('halt.acknowledged');
    });
    expect(screen.getByRole('img', { name: new RegExp(`^drive verdict: ${words}`, 'i') })).toBeTruthy();
  });
});

describe('pages that are one glance away', () => {
  test('who works can be changed at any time and is written to the visit', async () => {
    const host = await inTriage();
    await press('p');
    await fireEvent.click(await screen.findByRole('radio', { name: 'Mechanic' }));
    await fireEvent.click(screen.getByRole('button', { name: /work like this/i }));
    await waitFor(() => {
      expect(logOf(host).at(-1)).toMatchObject({ kind: 'person.set', who: 'mechanic' });
    });
    await screen.findByText(/question 1 of/i);
  });

  test('single letters can be switched off; Escape still goes back', async () => {
    const host = await inTriage();
    await fireEvent.click(
      within(screen.getByRole('navigation', { name: 'This visit' })).getByRole('button', { name: 'Settings' }),
    );
    await fireEvent.click(await screen.findByRole('checkbox', { name: /single letters/i }));
    await waitFor(() => {
      expect(host.settings.singleKeys).toBe(false);
    });
    await press('Escape');
    await screen.findByText(/question 1 of/i);
    await press('2');
    await press('?');
    expect(logOf(host).filter(({ kind }) => kind === 'stop.answered')).toHaveLength(0);
    expect(screen.queryByRole('heading', { name: 'All keys' })).toBeNull();
  });

  test('the key page opens with ? and the browser goes back from it', async () => {
    await inTriage();
    await press('?');
    expect(await screen.findByRole('heading', { level: 1, name: 'All keys' })).toBeTruthy();
    history.back();
    await screen.findByText(/question 1 of/i);
  });

  test('what nobody knows about the coach stays open, and can be set', async () => {
    const host = await inTriage();
    await press('v');
    expect(await screen.findByRole('heading', { level: 1, name: /how is this coach built/i })).toBeTruthy();
    const group = screen.getAllByRole('group')[0];
    if (!group) throw new Error('The page asks nothing about the coach.');
    expect(within(group).getByRole<HTMLInputElement>('radio', { name: 'not known' }).checked).toBe(true);
    const [first] = within(group).getAllByRole('radio');
    await fireEvent.click(first!);
    await waitFor(() => {
      expect(logOf(host).at(-1)?.kind).toBe('layout.set');
    });
  });
});
