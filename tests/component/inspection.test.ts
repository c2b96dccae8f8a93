import { configure, fireEvent, screen, within } from '@testing-library/svelte';
import { describe, expect, it } from 'vitest';
import { openWalk, type Walk } from './walk.ts';
import { press } from './window.ts';

// A page that is fetched later takes its time on a busy machine.
configure({ asyncUtilTimeout: 15_000 });

const heading = (name: RegExp) => screen.findByRole('heading', { level: 1, name });
const wall = (): HTMLElement => screen.getByRole('complementary', { name: /left against right/ });

async function open(): Promise<Walk> {
  const walk = await openWalk('growl-through-floor-at-speed');
  await press('x');
  await heading(/Part by part/);
  return walk;
}
async function measure(values: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, value] of Object.entries(values))
    await fireEvent.input(screen.getByLabelText(label), { target: { value } });
  await fireEvent.click(screen.getByRole('button', { name: /Record what is typed/ }));
}

describe('the inspection', () => {
  it('[INS-1] [INS-2] [INS-3] parts by place: state, note, and what is not opened yet', async () => {
    const walk = await open();
    await fireEvent.click(screen.getByRole('button', { name: 'Bearings' }));
    const left = await screen.findByRole('group', { name: /^left front/ });
    await fireEvent.click(within(left).getByLabelText('not opened yet'));
    await within(wall()).findByText(/Not opened yet: Bearings, left front/);
    const right = screen.getByRole('group', { name: /^right front/ });
    await fireEvent.click(within(right).getByLabelText('bad'));
    await fireEvent.change(await screen.findByLabelText('Note, Bearings, right front'), {
      target: { value: 'blue rollers' },
    });
    await within(wall()).findByText(/blue rollers/);
    await fireEvent.click(within(screen.getByRole('group', { name: /^left front/ })).getByLabelText('good'));
    expect(await within(wall()).findByText(/Bearings, right front: bad/)).toBeTruthy();
    expect(within(wall()).queryByText(/Not opened yet/)).toBeNull();
    expect(walk.log().filter(({ kind }) => kind === 'inspection.recorded')).toHaveLength(4);
    // A hose has nothing to be opened.
    await fireEvent.click(screen.getByRole('button', { name: 'Brake hose' }));
    expect(screen.queryByLabelText('not opened yet')).toBeNull();
  });

  it('[INS-5] [INS-6] the odd wheel end is named, with the conditions, and the pairs are drawn', async () => {
    await open();
    await press('1');
    await heading(/left against right/);
    await measure({
      'Steer, left': '133',
      'Steer, right': '92',
      'Drive, left': '98',
      'Drive, right': '96',
      'Tag, left': '89',
      'Tag, right': '91',
    });
    await screen.findByText(/Say how the round was taken/);
    await fireEvent.input(screen.getByLabelText('Minutes, first to last'), { target: { value: '4' } });
    await fireEvent.click(screen.getByRole('button', { name: 'Compare the ends' }));
    await heading(/6 wheel ends, one stands out/);
    const why = screen.getByRole('region', { name: 'Why the left front end is marked' });
    expect(
      within(why)
        .getAllByRole('listitem')
        .map(({ textContent }) => textContent.replace(/\s+/g, ' ').trim()),
    ).toEqual([
      '41 °F from its matemarked from 20 °F',
      '39 °F from the middle of allmarked from 30 °F',
      '7.5 times their scatterclear for so many ends',
    ]);
    screen.getByRole('img', { name: /Hub heat by axle.*Steer: left 133 °F, right 92 °F, uneven; Drive/ });
  });

  it('[INS-4] [INS-7] a stroke over its limit makes the part bad, with the limit and its source beside it', async () => {
    await open();
    await press('3');
    await screen.findByLabelText('Steer, left');
    await measure({ 'Steer, left': '2 1/8' });
    await screen.findByText(/Steer, left: Name the chamber and the tank pressure/);
    await fireEvent.change(screen.getAllByLabelText('Chamber')[0]!, { target: { value: 'clamp 24' } });
    await fireEvent.input(screen.getAllByLabelText('Tanks during it, psi')[0]!, { target: { value: '85' } });
    await fireEvent.click(screen.getByRole('button', { name: /Record what is typed/ }));
    await screen.findByText(/Steer, left: Beyond the limit/);
    await within(wall()).findByText(/Brake chamber and pushrod, left front: bad/);
    expect(screen.getAllByText(/393\.47\(e\)/).length).toBeGreaterThan(0);
    await measure({ 'Steer, right': 'a lot' });
    screen.getByText(/“a lot” for steer, right is not a number/);
  });
});
