import { configure, fireEvent, screen, within } from '@testing-library/svelte';
import { describe, expect, it } from 'vitest';
import { fakeHost } from './fake-host.ts';
import { beginVisit, openWindow, press } from './window.ts';

// A page that is fetched later takes its time on a busy machine.
configure({ asyncUtilTimeout: 15_000 });

const heading = (name: RegExp) => screen.findByRole('heading', { level: 1, name });

/** To the air test of a coach of 1988 with two needles and spring chambers. */
async function beginTest(): Promise<void> {
  await press('i');
  await heading(/Which limits hold/);
  await fireEvent.input(screen.getByLabelText('Year of build'), { target: { value: '1988' } });
  await fireEvent.click(screen.getByLabelText(/Two: dual system/));
  await fireEvent.click(screen.getByLabelText(/Spring chambers/));
  await fireEvent.click(screen.getByRole('button', { name: 'Begin the air test' }));
  await heading(/wheels chocked/);
}
async function figures(values: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, value] of Object.entries(values))
    await fireEvent.input(screen.getByLabelText(label), { target: { value } });
  await fireEvent.click(screen.getByRole('button', { name: /Record as read/ }));
}
const list = (): HTMLElement => screen.getByRole('complementary', { name: /Steps and what they hold/ });

describe('the air test', () => {
  it('[AIR-1] asks what the limits hang on, then goes step by step; nothing is begun before all of it is known', async () => {
    await openWindow();
    await beginVisit('growl through the floor', /Growl through the floor/);
    await press('i');
    await heading(/Which limits hold/);
    expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Begin the air test' }).disabled).toBe(true);
    screen.getByText(/Still needed: the year of build/);
    await beginTest();
    await press('1');
    await heading(/Cut-out and cut-in/);
    await figures({ 'stops rising at': '125', 'takes up again at': '100' });
    expect(await screen.findAllByText(/Within the limit/)).toHaveLength(2);
    screen.getByText(/121 S5.1.1.1, bus/);
    await fireEvent.click(await screen.findByRole('button', { name: /Go on/ }));
    await heading(/foot off/);
  });

  it('[AIR-2] [AIR-3] [AIR-5] a loss beyond the limit holds the coach: said on the sheet and in the head of the complaint', async () => {
    const host = await openWindow();
    await beginVisit('growl through the floor', /Growl through the floor/);
    await beginTest();
    await fireEvent.click(within(list()).getByRole('button', { name: /Loss with the pedal held/ }));
    await heading(/pedal held/);
    await figures({ 'after the first drop': '120', 'at the end': 'much' });
    screen.getByText(/“much” for “at the end” is not a number/);
    await figures({ 'after the first drop': '120', 'at the end': '100' });
    await screen.findByText(/Beyond the limit/);
    within(list()).getByText('Stay put');
    within(list()).getByText(/pedal held the air goes down faster/);
    screen.getByRole('img', { name: /Drive verdict: Stay put.*pedal held/ });
    expect([...host.logs.values()][0]!.at(-1)).toMatchObject({
      kind: 'air-test.recorded',
      step: 'applied-leak',
      readings: { start: { value: 120, unit: 'psi' }, end: { value: 100, unit: 'psi' } },
    });
    await press('u');
    await within(list()).findByText(/Nothing so far/);
    screen.getByRole('img', { name: /Drive verdict: Creep/ });
  });

  it('[AIR-6] the watch runs on when the window is opened anew', async () => {
    const host = fakeHost();
    await openWindow(host);
    await beginVisit('growl through the floor', /Growl through the floor/);
    await beginTest();
    await fireEvent.click(within(list()).getByRole('button', { name: /Loss with the foot off/ }));
    await fireEvent.click(await screen.findByRole('button', { name: /Start the watch/ }));
    await screen.findByRole('button', { name: /Read now/ });
    // As if it had been started 75 seconds ago, in a window that was closed since.
    const [log] = [...host.logs.values()];
    const started = log!.findIndex(({ kind }) => kind === 'air-test.timer-started');
    log![started] = { ...log![started]!, at: new Date(Date.now() - 75_000).toISOString() };
    document.body.innerHTML = '';
    await openWindow(host);
    await fireEvent.click(await screen.findByRole('button', { name: /Invented coach 12/ }));
    await screen.findByText(/question 1 of/i);
    await press('i');
    await fireEvent.click(await screen.findByRole('button', { name: /Loss with the foot off/ }));
    await screen.findByText(/Time is up/);
    await press(' ');
    expect(Number(screen.getByLabelText<HTMLInputElement>('watched for').value)).toBeGreaterThanOrEqual(75);
  });

  it('[AIR-3] the walk-round can be done before it, and what is wrong there holds the coach', async () => {
    await openWindow();
    await beginVisit('growl through the floor', /Growl through the floor/);
    await press('i');
    await fireEvent.click(await screen.findByRole('button', { name: /^Every wheel/ }));
    await heading(/Every wheel/);
    await press('2');
    await within(list()).findByText(/A licensed mechanic or inspector has the last word/);
    within(list()).getByText(/Walk-round: a wheel nut is loose/);
    await press('1');
    await within(list()).findByText(/Nothing so far/);
  });
});
