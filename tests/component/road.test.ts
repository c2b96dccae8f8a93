import { configure, fireEvent, screen, within } from '@testing-library/svelte';
import { describe, expect, it } from 'vitest';
import { openWalk, type Walk } from './walk.ts';
import { press } from './window.ts';

// A page that is fetched later takes its time on a busy machine.
configure({ asyncUtilTimeout: 15_000 });

const GROWL = 'growl-through-floor-at-speed';
const heading = (name: RegExp) => screen.findByRole('heading', { level: 1, name });
const kinds = (walk: Walk): string[] => walk.log().map(({ kind }) => kind);

async function begin(driver: string, writer: string): Promise<void> {
  await fireEvent.input(screen.getByLabelText('Who drives'), { target: { value: driver } });
  await fireEvent.input(screen.getByLabelText('Who writes'), { target: { value: writer } });
  await fireEvent.click(screen.getByRole('button', { name: 'Begin the drive' }));
}
const pad = (row: string, choice: string | RegExp): HTMLElement =>
  within(screen.getByRole('group', { name: row })).getByRole('button', { name: choice });

/** The entry that was made last, as it stands on the sheet. */
const last = (words: RegExp): Promise<HTMLElement> =>
  within(screen.getByRole('group', { name: 'Last entry' })).findByText(words);

describe('the road test', () => {
  it('[ROA-2] is refused with the reason while safety questions are open', async () => {
    await openWalk(GROWL, [], { answers: null });
    await press('r');
    await heading(/Road test/);
    screen.getByText(/No road test now/);
    screen.getByText(/safety questions are not answered yet/);
    expect(screen.queryByRole('button', { name: 'Begin the drive' })).toBeNull();
    screen.getByText(/Whoever drives never touches it/);
  });

  it('[ROA-1] [ROA-3] [ROA-6] one drive: the crew, touches, undo, and what it says is offered and counts only when confirmed', async () => {
    const walk = await openWalk(GROWL);
    await press('r');
    await heading(/Road test/);
    screen.getByText(/air test and the walk-round of this visit are not complete/);
    await begin('Ada', ' ada');
    await screen.findByText(/One name stands for both/);
    expect(kinds(walk)).not.toContain('road.begun');
    await begin('Ada', 'Ben');
    await heading(/under way/);
    screen.getByText(/Whoever drives never touches this sheet/);

    await fireEvent.click(pad('Coolant', '190 °F'));
    await last(/Coolant: 190 °F/);
    await press('2');
    await screen.findByRole('group', { name: 'Pulling' });
    await fireEvent.click(pad('Pulling', 'more'));
    await last(/Noise, pulling: more/);
    await fireEvent.click(pad('Loudest', 'at the front'));
    await last(/Noise, loudest: at the front/);
    await press('u');
    await last(/Noise, pulling: more/);
    expect(pad('Loudest', 'at the front').getAttribute('aria-pressed')).toBe('false');
    await fireEvent.click(pad('Loudest', 'over the drive or tag axle'));
    await last(/Noise, loudest: over the drive/);
    await press('0');

    await heading(/Is it so/);
    const boxes = screen.getAllByRole<HTMLInputElement>('checkbox');
    expect(boxes.map(({ checked }) => checked)).toEqual([false, false]);
    expect(kinds(walk).filter((kind) => kind === 'finding.recorded')).toEqual([]);
    screen.getByRole('img', { name: /Coolant from 190 °F to 190 °F.*Every entry stands in the table/ });
    expect(within(screen.getByRole('table')).getAllByRole('row')).toHaveLength(4);
    await press('2');
    await press('Enter');
    await screen.findByText(/Record what is ticked/);
    const recorded = walk.log().filter(({ kind }) => kind === 'finding.recorded');
    expect(recorded).toMatchObject([{ check: 'load-change', value: { kind: 'result', result: 'louder-pull' } }]);
    expect(screen.getAllByRole('checkbox')).toHaveLength(1);
  });

  it('[ROA-4] a sign ends the drive, holds the coach, and is let go only with words', async () => {
    await openWalk(GROWL);
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
    const walk = await openWalk(GROWL);
    await press('r');
    await heading(/Road test/);
    walk.host.refusal = 'The disk is full.';
    await begin('Ada', 'Ben');
    await screen.findByText(/The disk is full/);
    expect(screen.getByLabelText<HTMLInputElement>('Who drives').value).toBe('Ada');
  });
});
