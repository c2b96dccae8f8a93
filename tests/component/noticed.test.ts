import { fireEvent, screen, waitFor } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import type { FakeHost } from './fake-host.ts';
import { beginVisit, nothingToStop, openWindow, press } from './window.ts';

const QUESTION = 'What have you already noticed?';
const heading = (): string => screen.getByRole('heading', { level: 1 }).textContent;
const logOf = (host: FakeHost): readonly { readonly kind: string; readonly [field: string]: unknown }[] =>
  [...host.logs.values()][0] ?? [];

async function asked(words = 'it growls through the floor, swells when I lean right'): Promise<FakeHost> {
  const host = await openWindow();
  await beginVisit(words, /^1\s*growl through the floor/i);
  await nothingToStop();
  await screen.findByRole('heading', { level: 1, name: QUESTION });
  return host;
}
const box = (name: RegExp): HTMLInputElement => screen.getByRole<HTMLInputElement>('checkbox', { name });

describe('what has already been noticed', () => {
  test('safety comes first: during the safety questions the page is nowhere, not even from More', async () => {
    await openWindow();
    await beginVisit('it growls through the floor, swells when I lean right', /^1\s*growl through the floor/i);
    expect(screen.queryByText(QUESTION)).toBeNull();
    // The window goes to the work a moment after the sheet has changed; a hand is never so quick.
    await new Promise((resolve) => setTimeout(resolve));
    await fireEvent.click(screen.getByRole('button', { name: 'More' }));
    await fireEvent.click(await screen.findByRole('button', { name: /what you have already noticed/i }));
    await screen.findByText(/safety first, question 1 of/i);
  });

  test('what the words say is offered first, marked, and not ticked', async () => {
    const host = await asked();
    expect(box(/clearly louder in one direction/i).checked).toBe(false);
    expect(screen.getAllByRole('checkbox')[0]).toBe(box(/clearly louder in one direction/i));
    expect(document.querySelector('main mark')?.textContent).toBe('swells when I lean right');
    expect(logOf(host).some(({ kind }) => kind === 'finding.recorded')).toBe(false);
  });

  test('what is ticked is recorded as findings in one go, and the question does not come again', async () => {
    const host = await asked();
    await press('1');
    await fireEvent.click(box(/little by little/i));
    await press('Enter');
    await waitFor(() => {
      expect(heading()).not.toBe(QUESTION);
    });
    const found = logOf(host).filter(({ kind }) => kind === 'finding.recorded');
    expect(found.map((event) => [event['check'], event['value']])).toEqual(
      expect.arrayContaining([
        ['sway', { kind: 'result', result: 'swells-one-way' }],
        ['how-it-came', { kind: 'result', result: 'growing' }],
      ]),
    );
    expect(found).toHaveLength(2);
    expect(logOf(host).at(-1)?.kind).toBe('noticed.asked');
  });

  test('two results of one question exclude each other, and a tick can be taken away', async () => {
    await asked();
    await fireEvent.click(box(/little by little/i));
    await fireEvent.click(box(/from one drive to the next/i));
    expect(box(/little by little/i).checked).toBe(false);
    expect(box(/from one drive to the next/i).checked).toBe(true);
    await fireEvent.click(box(/from one drive to the next/i));
    expect(box(/from one drive to the next/i).checked).toBe(false);
    expect(screen.getByRole<HTMLButtonElement>('button', { name: /record what is ticked/i }).disabled).toBe(true);
  });

  test('none of these records nothing and goes on; undo asks again; More asks once more', async () => {
    const host = await asked();
    await press('0');
    await waitFor(() => {
      expect(heading()).not.toBe(QUESTION);
    });
    expect(logOf(host).some(({ kind }) => kind === 'finding.recorded')).toBe(false);
    await press('u');
    await screen.findByRole('heading', { level: 1, name: QUESTION });
    await press('0');
    await waitFor(() => {
      expect(heading()).not.toBe(QUESTION);
    });
    // The window goes to the work a moment after the sheet has changed; a hand is never so quick.
    await new Promise((resolve) => setTimeout(resolve));
    await fireEvent.click(screen.getByRole('button', { name: 'More' }));
    await fireEvent.click(await screen.findByRole('button', { name: /what you have already noticed/i }));
    await screen.findByRole('heading', { level: 1, name: QUESTION });
    await press('Escape');
    await waitFor(() => {
      expect(heading()).not.toBe(QUESTION);
    });
  });

  test('a finding that fires a stop rule halts', async () => {
    const host = await asked('it growls through the floor and there is grinding in it');
    await press('1');
    await press('Enter');
    await screen.findByRole('button', { name: /go on where it stands/i });
    expect(logOf(host).find(({ kind }) => kind === 'finding.recorded')).toMatchObject({
      check: 'how-loud',
      value: { kind: 'result', result: 'grind-or-knock' },
    });
  });

  test('a refused write leaves the page and its ticks', async () => {
    const host = await asked();
    await press('1');
    host.refusal = 'The disk is full.';
    await press('Enter');
    expect((await screen.findByRole('alert')).textContent).toContain('The disk is full.');
    expect(heading()).toBe(QUESTION);
    expect(box(/clearly louder in one direction/i).checked).toBe(true);
  });
});
