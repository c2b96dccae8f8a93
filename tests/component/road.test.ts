import { configure, fireEvent, screen, within } from '@testing-library/svelte';
import { describe, expect, it } from 'vitest';
import type { FakeHost } from './fake-host.ts';
import { beginVisit, openWindow, press } from './window.ts';

// A page that is fetched later takes its time on a busy machine.
configure({ asyncUtilTimeout: 15_000 });

const heading = (name: RegExp) => screen.findByRole('heading', { level: 1, name });
const kinds = (host: FakeHost): string[] => [...host.logs.values()][0]!.map(({ kind }) => kind);

/** A visit whose safety questions are answered with no. */
async function ready(): Promise<FakeHost> {
  const host = await openWindow();
  await beginVisit('growl through the floor', /Growl through the floor/);
  for (let asked = 0; asked < 40 && screen.queryByText(/Safety first, question/); asked++) {
    const before = kinds(host).length;
    await fireEvent.click(screen.getByRole('button', { name: /No, I looked/ }));
    for (let wait = 0; wait < 50 && kinds(host).length === before; wait++) await Promise.resolve();
  }
  return host;
}
async function begin(driver: string, writer: string): Promise<void> {
  await fireEvent.input(screen.getByLabelText('Who drives'), { target: { value: driver } });
  await fireEvent.input(screen.getByLabelText('Who writes'), { target: { value: writer } });
  await fireEvent.click(screen.getByRole('button', { name: 'Begin the drive' }));
}
const pad = (row: string, choice: string | RegExp): HTMLElement =>
  within(screen.getByRole('group', { name: row })).getByRole('button', { name: choice });

describe('the road test', () => {
  it('[ROA-2] is refused with the reason while safety questions are open', async () => {
    await openWindow();
    await beginVisit('growl through the floor', /Growl through the floor/);
    await press('r');
    await heading(/Road test/);
    screen.getByText(/No road test now/);
    screen.getByText(/safety questions are not answered yet/);
    expect(screen.queryByRole('button', { name: 'Begin the drive' })).toBeNull();
    screen.getByText(/Whoever drives never touches it/);
  });

  it('[ROA-1] [ROA-3] [ROA-6] one drive: the crew, touches, undo, and what it says is offered and counts only when confirmed', async () => {
    const host = await ready();
    await press('r');
    await heading(/Road test/);
    screen.getByText(/air test and the walk-round of this visit are not complete/);
    await begin('Ada', ' ada');
    await screen.findByText(/One name stands for both/);
    expect(kinds(host)).not.toContain('road.begun');
    await begin('Ada', 'Ben');
    await heading(/under way/);
    screen.getByText(/Whoever drives never touches this sheet/);

    await fireEvent.click(pad('Coolant', '190 °F'));
    await screen.findByText(/Coolant: 190 °F/);
    await press('2');
    await screen.findByRole('group', { name: 'Pulling' });
    await fireEvent.click(pad('Pulling', 'more'));
    await screen.findByText(/Noise, pulling: more/);
    await fireEvent.click(pad('Loudest', 'at the front'));
    await screen.findByText(/Noise, loudest: at the front/);
    await press('u');
    await screen.findByText(/Noise, pulling: more/);
    expect(pad('Loudest', 'at the front').getAttribute('aria-pressed')).toBe('false');
    await fireEvent.click(pad('Loudest', 'over the drive or tag axle'));
    await screen.findByText(/Noise, loudest: over the drive/);
    await press('0');

    await heading(/Is it so/);
    const boxes = screen.getAllByRole<HTMLInputElement>('checkbox');
    expect(boxes.map(({ checked }) => checked)).toEqual([false, false]);
    expect(kinds(host).filter((kind) => kind === 'finding.recorded')).toEqual([]);
    screen.getByRole('img', { name: /Coolant from 190 °F to 190 °F.*Every entry stands in the table/ });
    expect(within(screen.getByRole('table')).getAllByRole('row')).toHaveLength(4);
    await press('2');
    await press('Enter');
    await screen.findByText(/Record what is ticked/);
    const recorded = [...host.logs.values()][0]!.filter(({ kind }) => kind === 'finding.recorded');
    expect(recorded).toMatchObject([{ check: 'load-change', value: { kind: 'result', result: 'louder-pull' } }]);
    expect(screen.getAllByRole('checkbox')).toHaveLength(1);
  });

  it('[ROA-4] a sign ends the drive, holds the coach, and is let go only with words', async () => {
    await ready();
    await press('r');
    await heading(/Road test/);
    await begin('Ada', 'Ben');
    await heading(/under way/);
    await fireEvent.click(screen.getByRole('button', { name: 'Low-air warning' }));
    await screen.findByText(/Stop where it is safe and stay there/);
    await press('0');
    await heading(/Road test, ended/);
    await screen.findByText(/No road test now/);
    screen.getByRole('img', { name: /Drive verdict: Stay put/ });
    const write = screen.getByRole<HTMLButtonElement>('button', { name: /It was looked into/ });
    expect(write.disabled).toBe(true);
    await fireEvent.input(screen.getByLabelText(/what was found and done/), {
      target: { value: 'line mended, air holds' },
    });
    await fireEvent.click(write);
    await screen.findByRole('button', { name: 'Begin the drive' });
  });

  it('keeps what was typed when writing is refused', async () => {
    const host = await ready();
    await press('r');
    await heading(/Road test/);
    host.refusal = 'The disk is full.';
    await begin('Ada', 'Ben');
    await screen.findByText(/The disk is full/);
    expect(screen.getByLabelText<HTMLInputElement>('Who drives').value).toBe('Ada');
  });
});
