import { cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/svelte';
import { tick } from 'svelte';
import { describe, expect, test, vi } from 'vitest';
import App from '../../renderer/app/App.svelte';
import { BENCH_PAGE_IDS } from '../../renderer/presenters/bench/page-ids.ts';
import { atBench, fill, prepareBench, toPage, type } from './bench-window.ts';
import { openWindow, press } from './window.ts';

prepareBench();

describe('the bench', () => {
  test('opens from the yard without a complaint, and goes back', async () => {
    await openWindow();
    await fireEvent.click(screen.getByRole('button', { name: /measuring bench/i }));
    const heading = await screen.findByRole('heading', { level: 1, name: 'Air leak-down' });
    await waitFor(() => {
      expect(document.activeElement).toBe(heading);
    });
    await press('Escape');
    await screen.findByRole('heading', { level: 1, name: /yard is empty/i });
  });

  test('what was typed survives leaving the page and the bench', async () => {
    await atBench('4', 'Leak as a flow');
    await type('Leak rate', '1 1/2');
    await press('2');
    await press('Escape');
    await press('m');
    await screen.findByRole('heading', { level: 1, name: 'Build-up and tanks' });
    await press('4');
    const field = await screen.findByRole<HTMLInputElement>('textbox', { name: 'Leak rate' });
    expect(field.value).toBe('1 1/2');
  });

  test('other units leave typed text as typed; an empty field follows the settings', async () => {
    await atBench('4', 'Leak as a flow');
    await type('Leak rate', '2');
    await press('z');
    expect(screen.getByRole<HTMLInputElement>('textbox', { name: 'Leak rate' }).value).toBe('2');
    expect(screen.getByRole<HTMLSelectElement>('combobox', { name: 'Unit of Leak rate' }).value).toBe('psi/min');
    expect(screen.getByRole<HTMLSelectElement>('combobox', { name: 'Unit of Mean pressure of the test' }).value).toBe(
      'kPa',
    );
  });
});

describe('every page', () => {
  test('is in the list once, says its cautions before its fields, and every field says where its figure is found', async () => {
    await atBench('1', 'Air leak-down');
    const names = within(screen.getByRole('navigation', { name: 'Calculations' }))
      .getAllByRole('listitem')
      .map((item) => item.textContent.replace(/^\s*\d?\s*/, '').trim());
    expect(names).toHaveLength(BENCH_PAGE_IDS.length);
    expect(new Set(names).size).toBe(names.length);
    let fields = 0;
    for (const name of names) {
      await toPage('', name);
      const first = document.querySelector('.sheet .field :is(input, select)');
      const caution = document.querySelector('.sheet .caution');
      // Free air and a hole are arithmetic; its one caution stands where it is needed.
      if (name !== 'Leak as a flow')
        expect(caution!.compareDocumentPosition(first!) & Node.DOCUMENT_POSITION_FOLLOWING, name).toBeTruthy();
      for (const field of document.querySelectorAll('.sheet .field')) {
        const label = field.querySelector('label')!.textContent;
        if (label === 'Open a WAV file') continue;
        const where = field.querySelector('.whereis');
        expect(where?.getAttribute('aria-label'), `${name}: ${label}`).toBe(`Where do I find this? ${label}`);
        expect(field.querySelector('.wheretext')?.textContent.length, `${name}: ${label}`).toBeGreaterThan(15);
        fields++;
      }
    }
    expect(fields).toBeGreaterThan(200);
    // The arrows go round.
    await press('ArrowRight');
    await screen.findByRole('heading', { level: 1, name: 'Air leak-down' });
    await press('ArrowLeft');
    await screen.findByRole('heading', { level: 1, name: names.at(-1)! });
  });

  test('a wrong figure says so beside its field with what is usual; an unusual one is only marked', async () => {
    await atBench('', 'Drips and use');
    await fireEvent.click(screen.getByRole('button', { name: 'Where do I find this? Counted for' }));
    const field = screen.getByRole('textbox', { name: 'Counted for' });
    expect(field.getAttribute('aria-describedby')).toContain('-where');
    await type('Counted for', 'a minute');
    expect(field.getAttribute('aria-invalid')).toBe('true');
    expect(document.getElementById('bench-drip-time-note')?.textContent).toBe(
      '“a minute” is not a number. Usual is 60 s to 600 s.',
    );
    await type('Counted for', '20');
    expect(field.getAttribute('aria-invalid')).toBeNull();
    expect(document.getElementById('bench-drip-time-note')?.textContent).toMatch(/^Unusual: 60 s to 600 s/);
    await type('Counted for', '120');
    expect(document.getElementById('bench-drip-time-note')).toBeNull();
  });

  test('a figure, a table and the whole sheet can be copied; printing asks the window', async () => {
    const copied: string[] = [];
    const print = vi.spyOn(window, 'print').mockImplementation(() => undefined);
    vi.stubGlobal('navigator', { clipboard: { writeText: (text: string) => Promise.resolve(copied.push(text)) } });
    await atBench('', 'Drips and use');
    await fill(['Drops counted', '24'], ['Counted for', '60']);
    await fireEvent.click(screen.getByRole('button', { name: /^Copy Drops a minute/ }));
    await waitFor(() => {
      expect(copied).toEqual(['24']);
    });
    await fireEvent.click(screen.getByRole('button', { name: /Copy the whole sheet/ }));
    await waitFor(() => {
      expect(copied).toHaveLength(2);
    });
    expect(copied[1]).toMatch(/^Drips and use\nDrops counted: 24\nCounted for: 60 s\n/);
    expect(copied[1]).toMatch(/\nDrops a minute 24\n/);
    expect(copied[1]).not.toMatch(/Where do I find|Copy/);
    await press('o');
    expect(print).toHaveBeenCalledOnce();
    print.mockRestore();
  });

  test('fields, marks and a running hold are there again after a reload; rubbish in the store is not taken', async () => {
    const host = await openWindow();
    await press('m');
    await screen.findByRole('heading', { level: 1, name: 'Air leak-down' });
    await type('Pressure on the gauge now', '118');
    await fireEvent.click(screen.getByRole('button', { name: /^Start( space)?$/ }));
    await tick();
    cleanup();
    const { container } = render(App, { host });
    await within(container).findByRole('heading', { level: 1, name: /yard is empty/i });
    await press('m');
    await screen.findByText('running');
    expect(screen.getByRole('list', { name: 'Marks' }).textContent).toMatch(/118 psi/);
    cleanup();
    sessionStorage.setItem('droplight-bench', '{"page":"leak","entries":{"leak.now":{"text":7}}}');
    render(App, { host });
    await screen.findByRole('heading', { level: 1, name: /yard is empty/i });
    await press('m');
    expect((await screen.findByRole<HTMLInputElement>('textbox', { name: 'Pressure on the gauge now' })).value).toBe(
      '',
    );
    expect(screen.queryByText('running')).toBeNull();
  });
});
