import { fireEvent, screen, within } from '@testing-library/svelte';
import { afterEach, beforeAll, vi } from 'vitest';
import type { FakeHost } from './fake-host.ts';
import { openWindow, press } from './window.ts';

/** Opens the bench from the yard at one of its pages, by its key or by its name in the list. */
export async function atBench(key: string, heading: string, host?: FakeHost): Promise<void> {
  await openWindow(host);
  await press('m');
  await screen.findByRole('heading', { level: 1, name: 'Air leak-down' });
  await toPage(key, heading);
}

/** To another page of the open bench. */
export async function toPage(key: string, heading: string): Promise<void> {
  if (key === '') await fireEvent.click(screen.getByRole('button', { name: new RegExp(`^(\\d )?${heading}$`) }));
  else await press(key);
  await screen.findByRole('heading', { level: 1, name: heading });
}

export async function type(label: string, text: string): Promise<void> {
  await fireEvent.input(screen.getByRole('textbox', { name: label }), { target: { value: text } });
}

/** Fills fields by their labels, in order. */
export async function fill(...fields: readonly (readonly [label: string, text: string])[]): Promise<void> {
  for (const [label, text] of fields) await type(label, text);
}

export async function choose(label: string, value: string): Promise<void> {
  await fireEvent.change(screen.getByRole('combobox', { name: label }), { target: { value } });
}

export async function markByHand(minutes: string, pressure: string): Promise<void> {
  await type('Time since the start', minutes);
  await type('Pressure then', pressure);
  await fireEvent.click(screen.getByRole('button', { name: 'Add this mark' }));
}

export const region = (name: string) => within(screen.getByRole('region', { name }));
export const textOf = (name: string): string => screen.getByRole('region', { name }).textContent.replace(/\s+/g, ' ');
export const reasons = (): (string | undefined)[] =>
  [...document.querySelectorAll<HTMLElement>('[data-reason]')].map((each) => each.dataset['reason']);

/** For the top of a file: the bench is read when it is first asked for, which would count against the first test. */
export function prepareBench(): void {
  beforeAll(async () => {
    await import('../../renderer/screens/bench/BenchScreen.svelte');
  });
  afterEach(() => {
    vi.useRealTimers();
    vi.unstubAllGlobals();
  });
}
