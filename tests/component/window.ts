import { configure, fireEvent, render, screen, waitFor } from '@testing-library/svelte';
import App from '../../renderer/app/App.svelte';
import { fakeHost, type FakeHost } from './fake-host.ts';

// This document has no styles: nothing is hidden by them, and looking for it at every question costs a fifth of the time.
// A page that is fetched when it is opened is compiled first.
configure({ defaultHidden: true, asyncUtilTimeout: 10_000 });

/** What a browser has and this document lacks: by day, nothing to scroll. */
export function furnishWindow(): void {
  window.matchMedia = (media: string): MediaQueryList =>
    Object.assign(new EventTarget(), {
      matches: false,
      media,
      onchange: null,
      addListener: () => undefined,
      removeListener: () => undefined,
    });
  window.scrollTo = () => undefined;
  history.replaceState(null, '');
  sessionStorage.clear();
}

/** Draws the whole window over a machine side and waits for the yard. */
export async function openWindow(host?: FakeHost): Promise<FakeHost> {
  furnishWindow();
  const over = host ?? fakeHost();
  render(App, { host: over });
  await screen.findByRole('heading', { level: 1, name: /yard is empty|in the yard/i });
  return over;
}

/** Presses a single key on the page, outside of any field. */
export async function press(key: string, init: KeyboardEventInit = {}): Promise<void> {
  await fireEvent.keyDown(document.body, { key, ...init });
}

/** From the yard to the first question about whether the coach may move. */
export async function beginVisit(words: string, complaint: RegExp): Promise<void> {
  await fireEvent.click(screen.getByRole('button', { name: /begin a visit/i }));
  await fireEvent.input(await screen.findByRole('textbox', { name: 'What is it doing?' }), {
    target: { value: words },
  });
  await fireEvent.input(screen.getByRole('textbox', { name: 'Name or number' }), {
    target: { value: 'Invented coach 12' },
  });
  await fireEvent.click(await screen.findByRole('button', { name: complaint }));
  await screen.findByText(/question 1 of/i);
}

/** Answers every safety question with no. */
export async function nothingToStop(): Promise<void> {
  const heading = (): string => screen.getByRole('heading', { level: 1 }).textContent;
  while (screen.queryByText(/safety first, question/i)) {
    const before = heading();
    await press('2');
    await waitFor(() => {
      if (heading() === before) throw new Error(`“${before}” is still asked.`);
    });
  }
}
