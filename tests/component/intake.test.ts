import { fireEvent, render, screen, waitFor, within } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import App from '../../renderer/app/App.svelte';
import { HostError } from '../../shared/host/host-api.ts';
import { fakeHost } from './fake-host.ts';
import { beginVisit, furnishWindow, openWindow, press } from './window.ts';

describe('the yard', () => {
  test('an empty yard says so and offers to begin', async () => {
    await openWindow();
    expect(screen.getByRole('heading', { level: 1 }).textContent).toContain('The yard is empty');
    expect(screen.getByRole('button', { name: /begin a visit/i })).toBeTruthy();
    expect(screen.getAllByRole('heading', { level: 1 })).toHaveLength(1);
  });

  test('an invented visit is marked as invented and opens by its number', async () => {
    const host = fakeHost();
    host.logs.set('v-1', [
      {
        id: 'e1',
        v: 1,
        at: '2026-05-13T08:00:00.000Z',
        by: '',
        kind: 'visit.opened',
        coach: 'Invented coach 3',
        demo: true,
      },
    ]);
    await openWindow(host);
    expect(screen.getByRole('heading', { level: 1 }).textContent).toContain('One visit');
    expect(screen.getByText(/invented for show/i)).toBeTruthy();
    await press('1');
    expect(await screen.findByRole('heading', { level: 1, name: 'Invented coach 3' })).toBeTruthy();
  });

  test('a machine side that does not answer is said in its own words', async () => {
    furnishWindow();
    render(App, {
      host: {
        call: () =>
          Promise.reject(new HostError({ code: 'no-machine-side', message: 'The machine side does not answer.' })),
      },
    });
    expect((await screen.findByRole('alert')).textContent).toContain('The machine side does not answer.');
  });
});

describe('the intake', () => {
  test('own words bring up the complaint with the matched words marked', async () => {
    await openWindow();
    await press('a');
    await fireEvent.input(await screen.findByRole('textbox', { name: 'What is it doing?' }), {
      target: { value: 'it growls through the floor and hums louder the faster I go' },
    });
    const first = (await screen.findAllByRole('listitem')).find((item) => item.classList.contains('best'));
    expect(first).toBeTruthy();
    expect(within(first!).getByText(/growl through the floor/i)).toBeTruthy();
    expect([...first!.querySelectorAll('mark')].map((mark) => mark.textContent.toLowerCase()).join(' ')).toMatch(
      /growl|hum|louder|faster/,
    );
  });

  test('words that fit nothing say what to do, and every complaint is offered', async () => {
    const host = fakeHost();
    await openWindow(host);
    await press('a');
    await fireEvent.input(await screen.findByRole('textbox', { name: 'What is it doing?' }), {
      target: { value: 'zzqx' },
    });
    expect(await screen.findByText(/say it another way, or choose below/i)).toBeTruthy();
    expect(within(screen.getByRole('list', { name: 'All complaints' })).getAllByRole('listitem')).toHaveLength(
      (await host.call('trees.list', {})).trees.length,
    );
  });

  test('letters typed into the field are text, not keys', async () => {
    await openWindow();
    await press('a');
    const field = await screen.findByRole('textbox', { name: 'What is it doing?' });
    await fireEvent.keyDown(field, { key: 'd' });
    expect(document.documentElement.dataset['light']).toBe('day');
    await press('d');
    await waitFor(() => {
      expect(document.documentElement.dataset['light']).toBe('night');
    });
  });

  test('stop first stands beside the question from the start', async () => {
    await openWindow();
    await press('a');
    expect(await screen.findByRole('heading', { name: /burning, loose or not braking/i })).toBeTruthy();
  });

  test('taking a complaint writes the visit, who works, and the words as they were typed', async () => {
    const host = await openWindow();
    await beginVisit('it growls through the floor', /^1\s*growl through the floor/i);
    const [log] = [...host.logs.values()];
    expect(log?.map(({ kind }) => kind)).toEqual(['visit.opened', 'person.set', 'complaint.opened']);
    expect(log?.[0]).toMatchObject({ coach: 'Invented coach 12', demo: false });
    expect(log?.[2]).toMatchObject({ tree: 'growl-through-floor-at-speed', words: 'it growls through the floor' });
  });

  test('a refused write is shown and the words stay in the field', async () => {
    const host = await openWindow();
    host.refusal = 'The disk is full.';
    await press('a');
    const field = await screen.findByRole<HTMLTextAreaElement>('textbox', { name: 'What is it doing?' });
    await fireEvent.input(field, { target: { value: 'it growls through the floor' } });
    await fireEvent.click(await screen.findByRole('button', { name: /^1\s*growl through the floor/i }));
    expect((await screen.findByRole('alert')).textContent).toContain('The disk is full.');
    expect(screen.getByRole<HTMLTextAreaElement>('textbox', { name: 'What is it doing?' }).value).toBe(
      'it growls through the floor',
    );
    expect(host.logs.size).toBe(0);
  });
});

describe('two complaints in one sentence', () => {
  const both = 'leaks air when I brake and it growls through the floor';
  test('both are offered, each with its own words', async () => {
    await openWindow();
    await press('a');
    await fireEvent.input(await screen.findByRole('textbox', { name: 'What is it doing?' }), {
      target: { value: both },
    });
    const offer = (await screen.findByRole('heading', { name: 'Sounds like two things' })).parentElement;
    expect(within(offer!).getAllByRole('listitem')).toHaveLength(2);
    expect(within(offer!).getByText('“leaks air when I brake”')).toBeTruthy();
    expect(within(offer!).getByText('“it growls through the floor”')).toBeTruthy();
  });

  test('one key opens both in one visit, and one step leads to the other', async () => {
    const host = await openWindow();
    await press('a');
    await fireEvent.input(await screen.findByRole('textbox', { name: 'What is it doing?' }), {
      target: { value: both },
    });
    await screen.findByRole('heading', { name: 'Sounds like two things' });
    await press('b');
    await screen.findByText(/question 1 of/i);
    const [log] = [...host.logs.values()];
    expect(log?.filter(({ kind }) => kind === 'visit.opened')).toHaveLength(1);
    expect(
      log?.filter(({ kind }) => kind === 'complaint.opened').map((event) => [event['tree'], event['words']]),
    ).toEqual([
      ['air-leaks-when-brake-held', 'leaks air when I brake'],
      ['growl-through-floor-at-speed', 'it growls through the floor'],
    ]);
    await fireEvent.click(screen.getByRole('button', { name: /^To: growl through the floor/i }));
    expect(await screen.findByRole('button', { name: /^To: air escapes/i })).toBeTruthy();
    await fireEvent.click(screen.getByRole('button', { name: 'More' }));
    expect(await screen.findByRole('button', { name: /air escapes.*leaks air when I brake/i })).toBeTruthy();
  });

  test('one complaint is offered as one', async () => {
    await openWindow();
    await press('a');
    await fireEvent.input(await screen.findByRole('textbox', { name: 'What is it doing?' }), {
      target: { value: 'it growls through the floor and hums' },
    });
    await screen.findAllByRole('listitem');
    expect(screen.queryByRole('heading', { name: 'Sounds like two things' })).toBeNull();
  });
});
