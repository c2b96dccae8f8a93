import { configure, fireEvent, screen, within } from '@testing-library/svelte';
import { describe, expect, it } from 'vitest';
import type { VisitEventBody } from '../../shared/visit/index.ts';
import { layOut, openWalk } from './walk.ts';
import { openWindow, press } from './window.ts';

// A page that is fetched later takes its time on a busy machine.
configure({ asyncUtilTimeout: 15_000 });

const GROWL = 'growl-through-floor-at-speed';
const BEGUN: VisitEventBody = {
  kind: 'air-test.begun',
  setup: { builtYear: 1988, system: 'dual', springBrakes: true, towedUnits: 0 },
};
const heading = (name: RegExp) => screen.findByRole('heading', { level: 1, name });
const list = (): HTMLElement => screen.getByRole('complementary', { name: /Steps and what they hold/ });
const step = async (name: RegExp): Promise<void> => {
  await press('i');
  await fireEvent.click(await screen.findByRole('button', { name }));
};
async function figures(values: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, value] of Object.entries(values))
    await fireEvent.input(screen.getByLabelText(label), { target: { value } });
  await fireEvent.click(screen.getByRole('button', { name: /Record as read/ }));
}

describe('the air test', () => {
  it('[AIR-1] asks what the limits hang on, then goes step by step; nothing is begun before all of it is known', async () => {
    const walk = await openWalk(GROWL);
    await press('i');
    await heading(/Which limits hold/);
    const begin = screen.getByRole<HTMLButtonElement>('button', { name: 'Begin the air test' });
    expect(begin.disabled).toBe(true);
    screen.getByText(/Still needed: the year of build/);
    await fireEvent.input(screen.getByLabelText('Year of build'), { target: { value: '1988' } });
    await fireEvent.click(screen.getByLabelText(/Two: dual system/));
    await fireEvent.click(screen.getByLabelText(/Spring chambers/));
    await fireEvent.click(begin);
    await heading(/wheels chocked/);
    expect(walk.last()).toMatchObject(BEGUN);
    await press('1');
    await heading(/Cut-out and cut-in/);
    await figures({ 'stops rising at': '125', 'takes up again at': '100' });
    expect(await screen.findAllByText(/Within the limit/)).toHaveLength(2);
    screen.getByText(/121 S5.1.1.1, bus/);
    await fireEvent.click(await screen.findByRole('button', { name: /Go on/ }));
    await heading(/foot off/);
  });

  it('[AIR-2] [AIR-3] [AIR-5] a loss beyond the limit holds the coach: on the sheet and in the head of the complaint', async () => {
    const walk = await openWalk(GROWL, [BEGUN]);
    await step(/Loss with the pedal held/);
    await heading(/pedal held/);
    await figures({ 'after the first drop': '120', 'at the end': 'much' });
    screen.getByText(/“much” for “at the end” is not a number/);
    await figures({ 'after the first drop': '120', 'at the end': '100' });
    await screen.findByText(/Beyond the limit/);
    within(list()).getByText('Stay put');
    within(list()).getByText(/pedal held the air goes down faster/);
    screen.getByRole('img', { name: /Drive verdict: Stay put.*pedal held/ });
    expect(walk.last()).toMatchObject({
      kind: 'air-test.recorded',
      step: 'applied-leak',
      readings: { start: { value: 120, unit: 'psi' }, end: { value: 100, unit: 'psi' } },
    });
    await press('u');
    await within(list()).findByText(/Nothing so far/);
    expect(screen.queryByRole('img', { name: /Drive verdict: Stay put/ })).toBeNull();
  });

  it('[AIR-6] the watch runs on in a window that is opened anew', async () => {
    const { host } = await layOut(GROWL, [BEGUN, { kind: 'air-test.timer-started', step: 'released-leak' }]);
    const log = [...host.logs.values()][0]!;
    log.push({ ...log.pop()!, at: new Date(Date.now() - 75_000).toISOString() });
    await openWindow(host);
    await press('1');
    await screen.findByRole('button', { name: /^Work/ });
    await step(/Loss with the foot off/);
    await screen.findByText(/Time is up/);
    await press(' ');
    expect(Number(screen.getByLabelText<HTMLInputElement>('watched for').value)).toBeGreaterThanOrEqual(75);
  });

  it('[AIR-3] the walk-round can be done before it, and what is wrong there holds the coach', async () => {
    await openWalk(GROWL);
    await step(/^Every wheel/);
    await heading(/Every wheel/);
    await press('2');
    await within(list()).findByText(/A licensed mechanic or inspector has the last word/);
    within(list()).getByText(/Walk-round: a wheel nut is loose/);
    await press('1');
    await within(list()).findByText(/Nothing so far/);
  });
});
