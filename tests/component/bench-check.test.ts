import { fireEvent, screen, within } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import { CALCULATION_HOMES, fixedChoices } from '../../renderer/presenters/bench/calculation-sheets.ts';
import { Bench } from '../../renderer/state/bench.svelte.ts';
import { choose, fill, markByHand, prepareBench, type } from './bench-window.ts';
import { press } from './window.ts';
import { changedFrom, checkOf, chosen, heading, openWalk, stands, type Walk } from './walk.ts';

prepareBench();

const take = async (): Promise<void> => {
  await fireEvent.click(await screen.findByRole('button', { name: 'Take it as the reading' }));
  await screen.findByText(/give or take/, { selector: '.judge p' });
};
const measureHere = async (): Promise<void> => {
  await fireEvent.click(await screen.findByRole('button', { name: /Measure it here/ }));
  await screen.findByRole('heading', { name: /What you see, and what it makes/ });
};
interface Recorded {
  readonly value: {
    readonly reading: { readonly value: number; readonly unit: string; readonly worked: { observations: unknown[] } };
  };
  readonly site?: string;
}
const recorded = (walk: Walk): Recorded =>
  walk.log().findLast(({ kind }) => kind === 'finding.recorded') as unknown as Recorded;

describe('a check that names a calculation', () => {
  test('the sheet opens inside it, settles what the check says, and its figure with its own give or take is judged', async () => {
    const walk = await openWalk('air-leaks-when-brake-held', [chosen('static-rate')]);
    const check = checkOf(walk.tree, 'static-rate');
    expect(check.calculation).toEqual({ use: 'leak-down', set: { brake: 'released' } });
    await measureHere();
    expect(heading()).toBe(check.name);
    const cautions = screen.getAllByRole('heading', { name: 'Before you start' });
    expect(stands(cautions.at(-1)!, screen.getByRole('button', { name: /^Start/ }))).toBe(true);
    const brake = screen.getByRole<HTMLSelectElement>('combobox', { name: 'Service brake' });
    expect([brake.value, brake.disabled]).toEqual(['released', true]);
    // 118 to 116 psi in 2 minutes: 1 psi/min. One look is 1/√3, two looks √2, over two minutes: 0.41; 2 is the edge of the
    // first band, 2.4 standard uncertainties away.
    await markByHand('0', '118');
    await markByHand('2', '115.5');
    await take();
    const judged = screen.getByRole('region', { name: /Too close to call/ });
    expect(judged.textContent).toMatch(/1\.3 psi\/min.*give or take 0\.8/);
    expect(within(judged).getByText(/Worked out of 3 entries/)).toBeTruthy();
    await press('Enter');
    expect(await screen.findByText(/1\.3 psi\/min/)).toBeTruthy();
    const { reading } = recorded(walk).value;
    expect(reading.value).toBeCloseTo(1.25, 6);
    expect(reading.worked).toEqual({
      calculation: 'leak-down',
      observations: [
        { what: 'Service brake', said: 'Released: pedal free, parking brake off' },
        { what: 'After 0 s', said: '118 psi' },
        { what: 'After 2 min', said: '115.5 psi' },
      ],
      uncertainty: expect.closeTo(Math.SQRT2 / Math.sqrt(3) / 2, 4) as unknown,
    });
    // On the trail.
    await press('t');
    const entry = (await screen.findByText(/Worked out of 3 entries/)).closest('li')!;
    expect(entry.textContent).toMatch(/After 2 min: 115\.5 psi/);
  });

  test('what was seen for one check is not there for the next; what the coach is stays', () => {
    const bench = new Bench();
    const { seen } = CALCULATION_HOMES['leak-down'];
    const released = fixedChoices({ use: 'leak-down', set: { brake: 'released' } });
    const held = fixedChoices({ use: 'leak-down', set: { brake: 'held' } });
    bench.beginFor('c-1 static-rate', seen, released);
    bench.type('leak.now', '118', 'psi');
    bench.type('flow.volume', '4000', 'in³');
    bench.choose('leak.gauge', 'test');
    bench.marks = [{ timeS: 0, pressurePsi: 118 }];
    bench.holdFrom = 5;
    expect(bench.beginFor('c-1 static-rate', seen, released)).toBe(false);
    expect(bench.marks).toHaveLength(1);
    expect(bench.beginFor('c-1 applied-rate', seen, held)).toBe(true);
    expect(bench.marks).toEqual([]);
    expect(bench.holdFrom).toBeNull();
    expect(bench.entry('leak.now').text).toBe('');
    expect(bench.entry('flow.volume').text).toBe('4000');
    expect(bench.choices['leak.gauge']).toBe('test');
    // Marks made on the bench with the pedal free are not those of the held check that is come back to.
    bench.choose('leak.brake', 'released');
    bench.marks = [{ timeS: 0, pressurePsi: 118 }];
    expect(bench.beginFor('c-1 applied-rate', seen, held)).toBe(true);
    expect(bench.marks).toEqual([]);
    expect(bench.choices['leak.brake']).toBe('held');
  });

  test('how a difference is told is put back on coming back, and nothing typed goes', () => {
    const bench = new Bench();
    const { seen } = CALCULATION_HOMES['gauge-against-gauge'];
    const either = fixedChoices({ use: 'gauge-against-gauge', set: { as: 'either-way' } });
    bench.beginFor('c-1 gauges', seen, either);
    bench.type('pair.pressure.first.1', '90', 'psi');
    bench.choose('pair.as', 'first-over-second');
    expect(bench.beginFor('c-1 gauges', seen, either)).toBe(false);
    expect(bench.choices['pair.as']).toBe('either-way');
    expect(bench.entry('pair.pressure.first.1').text).toBe('90');
  });

  test('a leak-down of the bench is offered to the check of its own brake alone', async () => {
    const walk = await openWalk('air-leaks-when-brake-held');
    const rates = walk.tree.checks.filter(({ calculation }) => calculation?.use === 'leak-down');
    expect(rates.map(({ calculation }) => calculation?.set['brake']).sort()).toEqual(['held', 'released']);
    const offered = (): (string | undefined)[] =>
      screen
        .getAllByRole('button', { name: /^[\d.]+ psi\/min, give or take/ })
        .map(({ textContent }) => rates.find(({ name }) => textContent.includes(name))?.calculation?.set['brake']);
    await press('m');
    await screen.findByRole('heading', { level: 1, name: 'Air leak-down' });
    await markByHand('0', '118');
    await markByHand('2', '115.5');
    expect(offered()).toEqual(['released']);
    await choose('Service brake', 'held');
    expect(offered()).toEqual(['held']);
  });

  test('the hotter end becomes the place of the finding', async () => {
    const walk = await openWalk('growl-through-floor-at-speed', [chosen('hub-heat')]);
    await measureHere();
    await fill(
      ['First to last reading', '4'],
      ['Steer axle, left', '120'],
      ['Steer axle, right', '125'],
      ['Axle 2, left', '130'],
      ['Axle 2, right', '218'],
    );
    await take();
    await press('Enter');
    await changedFrom(checkOf(walk.tree, 'hub-heat').name);
    expect(recorded(walk)).toMatchObject({ site: 'right drive', value: { reading: { value: 88, unit: 'degF-diff' } } });
    expect(JSON.stringify(recorded(walk).value.reading.worked.observations)).toContain('Axle 2 right is hot');
  });

  test('what is still missing is said; the typed way stays open by the same key', async () => {
    await openWalk('weak-engine-brake', [
      { kind: 'layout.set', feature: 'engine-brake-in-neutral', value: true },
      chosen('rundown'),
    ]);
    await press('y');
    await screen.findByRole('heading', { name: /What you see, and what it makes/ });
    const chocks = screen.getByText(/Parking brake set, wheels chocked at the front and at the back/);
    expect(stands(chocks, screen.getByRole('textbox', { name: 'Engine brake off, run 1' }))).toBe(true);
    await fill(['Engine brake off, run 1', '6'], ['Engine brake off, run 2', '6.2']);
    expect(screen.getAllByText(/Still needed: Engine brake on, run 1/)).toHaveLength(2);
    await type('Engine brake on, run 1', '0.4');
    expect(screen.getAllByText(/below 1 s the thumb decides/)).toHaveLength(2);
    expect(screen.queryByRole('button', { name: 'Take it as the reading' })).toBeNull();
    await type('Engine brake on, run 1', '3.05');
    await take();
    // 0.5·√((0.2/3.05)² + (0.2/√2/6.1)²) is 0.0348 (GUM, in Python).
    expect(screen.getByRole('region', { name: /brakes well/ }).textContent).toMatch(
      /brakes well 0\.5, give or take 0\.07/,
    );
    await press('a');
    // Read again: what was seen is still there to be mended.
    expect((await screen.findByRole<HTMLInputElement>('textbox', { name: 'Engine brake on, run 1' })).value).toBe(
      '3.05',
    );
    await press('y');
    expect(screen.getByRole('textbox', { name: /divided by off/i })).toBeTruthy();
  });

  test('a figure of the bench is used as the finding of the open complaint', async () => {
    const walk = await openWalk('oil-drip-under-engine');
    const sheet = heading();
    await press('m');
    await screen.findByRole('heading', { level: 1, name: 'Air leak-down' });
    await fireEvent.click(screen.getByRole('button', { name: 'Drips and use' }));
    await screen.findByRole('heading', { level: 1, name: 'Drips and use' });
    expect(screen.queryByRole('heading', { name: 'Use as finding' })).toBeNull();
    await fill(['Drops counted', '24'], ['Counted for', '60']);
    const check = walk.tree.checks.find(({ calculation }) => calculation?.use === 'drip-count')!;
    await fireEvent.click(screen.getByRole('button', { name: new RegExp(`24 drops/min.*${check.name}`) }));
    await screen.findByRole('heading', { level: 1, name: check.name });
    expect(heading()).not.toBe(sheet);
    expect(await screen.findByText(/24 drops\/min/)).toBeTruthy();
    expect(walk.last()).toMatchObject({
      kind: 'reading.taken',
      check: check.id,
      reading: { value: 24, unit: 'drops/min', worked: { calculation: 'drip-count' } },
    });
    expect(walk.log().some(({ kind }) => kind === 'finding.recorded')).toBe(false);
  });
});
