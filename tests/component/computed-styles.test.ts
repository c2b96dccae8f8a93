import { screen } from '@testing-library/svelte';
import { beforeEach, expect, it } from 'vitest';
import { workedOut } from './computed-styles.ts';
import { beginVisit, nothingToStop, openWindow, press } from './window.ts';

beforeEach(async () => void (await openWindow()));

const looked = ['display', 'visibility'] as const;
const said = (style: CSSStyleDeclaration): readonly string[] => looked.map((name) => style.getPropertyValue(name));

/** Elements whose shared style is another than the one worked out for them, and how many were looked at. */
function differing(): { readonly wrong: readonly string[]; readonly all: number } {
  const all = [...document.querySelectorAll('*')];
  const wrong = all.filter((each) => said(window.getComputedStyle(each)).join() !== said(workedOut(each)).join());
  return { wrong: wrong.map((each) => each.outerHTML.slice(0, 120)), all: all.length };
}

it('elements that share a style have it: a check, its findings, the bench', async () => {
  await beginVisit('hissing when I stand on it', /^(1 )?Air escapes/);
  await nothingToStop();
  let all = 0;
  for (const key of ['t', 'm']) {
    await press(key);
    await screen.findAllByRole('heading', { level: 1 });
    const found = differing();
    expect(found.wrong).toEqual([]);
    all += found.all;
  }
  expect(all).toBeGreaterThan(150);
});

it('what changes on an element or around it changes its style', () => {
  const button = screen.getByRole('button', { name: /begin a visit/i });
  expect(window.getComputedStyle(button).display).toBe('inline-block');
  button.hidden = true;
  expect(window.getComputedStyle(button).display).toBe('none');
  button.hidden = false;
  button.style.setProperty('display', 'none');
  expect(window.getComputedStyle(button).display).toBe('none');
  button.style.removeProperty('display');
  expect(window.getComputedStyle(button).display).toBe('inline-block');
  button.parentElement!.style.setProperty('visibility', 'hidden');
  expect(window.getComputedStyle(button).visibility).toBe('hidden');
  expect(screen.queryByRole('button', { name: /begin a visit/i, hidden: false })).toBeNull();
});

it('a style sheet in the document is read', () => {
  const button = screen.getByRole('button', { name: 'Settings' });
  const sheet = document.createElement('style');
  sheet.textContent = 'button { display: none; }';
  document.head.append(sheet);
  expect(window.getComputedStyle(button).display).toBe('none');
  sheet.remove();
  expect(window.getComputedStyle(button).display).toBe('inline-block');
});
