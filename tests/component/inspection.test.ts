import { configure, fireEvent, screen, within } from '@testing-library/svelte';
import { describe, expect, it } from 'vitest';
// Pages that come later in the window are read once, before the first test waits for one.
import '../../renderer/screens/HandOverScreen.svelte';
import '../../renderer/screens/InspectionScreen.svelte';
import '../../renderer/screens/plan/ExplainScreen.svelte';
import '../../renderer/screens/plan/PartsScreen.svelte';
import '../../renderer/screens/plan/PlanScreen.svelte';
import '../../renderer/screens/plan/ProofsScreen.svelte';
import '../../renderer/screens/VisitScreen.svelte';
import { EVENT_VERSION, newEventId, type VisitEventBody } from '../../shared/visit/index.ts';
import { fakeHost } from './fake-host.ts';
import { openWalk, type Walk } from './walk.ts';
import { openWindow, press } from './window.ts';

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
    // On the part, and as the reason of the verdict.
    expect((await within(wall()).findAllByText(/blue rollers/)).length).toBeGreaterThan(0);
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

  it('[INS-8] holds a visit without a complaint: said on the hub, in the plan and in the report, all reached from the hub', async () => {
    const host = fakeHost();
    const bodies: readonly VisitEventBody[] = [
      { kind: 'visit.opened', coach: 'Invented coach 9', demo: true },
      {
        kind: 'inspection.recorded',
        entry: 'seal@left front',
        item: 'seal',
        site: 'left front',
        state: 'bad',
        readings: [],
        note: 'runs down the tyre',
      },
    ];
    host.logs.set(
      'v-9',
      bodies.map((body, i) => ({
        ...{ id: newEventId(1 + i, i, 'seed'), v: EVENT_VERSION, at: `2026-05-13T08:0${i}:00.000Z`, by: 'Mina' },
        ...body,
      })),
    );
    await openWindow(host);
    await press('1');
    await heading(/Invented coach 9/);
    const said = /Inspection: hub seal, left front: found bad, “runs down the tyre”/;
    expect((await screen.findAllByText(said)).length).toBe(1);
    screen.getByRole('img', { name: /Drive verdict: Stay put/i });
    const rooms = screen.getByRole('list', { name: 'Rooms of this visit' });
    await fireEvent.click(within(rooms).getByRole('button', { name: /^\d?Plan/ }));
    await heading(/What is done, in this order/);
    expect(screen.getAllByText(/Stay put/i).length).toBeGreaterThan(0);
    await press('1');
    await press('e');
    await heading(/The seal lets oil out of the hub/);
    await press('Escape');
    await heading(/What is done/);
    await press('l');
    await heading(/Parts, ordered once/);
    await press('Escape');
    await heading(/What is done/);
    await press('r');
    await heading(/Proof and reminders/);
    await press('Escape');
    await heading(/What is done/);
    await press('H');
    await heading(/Hand-over: Invented coach 9/);
    const report = screen.getByRole('region', { name: 'The report' });
    expect(within(report).getAllByText(/Stay put/i).length).toBe(1);
    within(report).getByText(said);
    await press('Escape');
    await heading(/^Invented coach 9/);
  });
});
