import { fireEvent, screen, waitFor, within } from '@testing-library/svelte';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { tick } from 'svelte';
import { press } from './window.ts';
import { changedFrom, checkOf, chosen, found, heading, openWalk, stands, written, type Walk } from './walk.ts';

const AIR = 'air-leaks-when-brake-held';
const field = (): HTMLInputElement => screen.getByRole<HTMLInputElement>('textbox', { name: /./, hidden: false });
const judge = async (text: string): Promise<void> => {
  await fireEvent.input(field(), { target: { value: text } });
  await fireEvent.click(screen.getByRole('button', { name: 'Judge this reading' }));
};
const note = (): HTMLTextAreaElement => screen.getByRole<HTMLTextAreaElement>('textbox', { name: /note for this/i });
const site = (place: string): HTMLInputElement => screen.getByRole<HTMLInputElement>('radio', { name: place });
const findings = (walk: Walk): readonly unknown[] => walk.log().filter(({ kind }) => kind === 'finding.recorded');

afterEach(() => {
  vi.useRealTimers();
});

describe('a check', () => {
  test('cautions stand before the steps; the finding is on disk before the sheet changes, with its place and note', async () => {
    const walk = await openWalk(AIR, [chosen('soap-chamber')]);
    const check = checkOf(walk.tree, 'soap-chamber');
    expect(heading()).toBe(check.name);
    const cautions = screen.getByRole('heading', { name: 'Before you start' });
    const steps = screen.getAllByRole('listitem').filter((item) => item.parentElement?.classList.contains('steps'));
    expect(check.cautions.length).toBeGreaterThan(0);
    expect(steps).toHaveLength(check.steps.length);
    expect(stands(cautions, steps[0]!)).toBe(true);
    expect(stands(steps.at(-1)!, screen.getByRole('button', { name: /bubbles at the hose end/i }))).toBe(true);

    await press('w');
    const why = screen.getByRole('region', { name: 'Why this check' });
    expect(within(why).getAllByRole('rowheader')).toHaveLength(check.results.length);
    expect(within(why).getByText(/judged odds, not statistics/i)).toBeTruthy();

    await fireEvent.click(site('left front'));
    await press('j');
    await fireEvent.input(note(), { target: { value: 'foam at the barb' } });
    let letGo = (): void => undefined;
    const held = new Promise<void>((resolve) => (letGo = resolve));
    const call = walk.host.call.bind(walk.host);
    walk.host.call = async (method, request) => {
      if (method === 'visits.append') await held;
      return call(method, request);
    };
    await press('4');
    await press('4');
    await new Promise((resolve) => setTimeout(resolve, 30));
    expect(heading()).toBe(check.name);
    expect(findings(walk)).toHaveLength(0);
    letGo();
    await changedFrom(check.name);
    expect(walk.last()).toMatchObject({
      kind: 'finding.recorded',
      check: 'soap-chamber',
      value: { kind: 'result', result: 'at-hose' },
      site: 'left front',
      note: 'foam at the barb',
    });
    expect(screen.queryByRole('textbox', { name: /note for this/i })).toBeNull();
    await new Promise((resolve) => setTimeout(resolve, 30));
    expect(findings(walk)).toHaveLength(1);
  });

  test('a finding that decides leads from the check to the conclusion', async () => {
    const place = { site: 'left front' };
    const asked = [found('recent-air-work', 'nothing-recent'), found('pedal-ramp', 'all-levels')];
    const walk = await openWalk(AIR, [found('walk-listen', 'wheel-end', place), ...asked, chosen('soap-chamber')]);
    const check = checkOf(walk.tree, 'soap-chamber');
    await fireEvent.click(site('left front'));
    await fireEvent.click(screen.getByRole('button', { name: /blows from rod opening/i }));
    await changedFrom(check.name);
    expect(heading()).toMatch(/: left front$/);
    expect(screen.getByRole('button', { name: /take it as the cause/i })).toBeTruthy();
    await waitFor(() => {
      expect(document.querySelector('p.vh[role=status]')?.textContent).toBe('Recorded.');
    });
  });

  test('a refused write leaves everything as it was typed', async () => {
    const walk = await openWalk(AIR, [chosen('soap-chamber')]);
    const before = walk.log().length;
    await fireEvent.click(site('right drive'));
    await press('j');
    await fireEvent.input(note(), { target: { value: 'dry all round' } });
    walk.host.refusal = 'The disk is full.';
    await fireEvent.click(screen.getByRole('button', { name: /no bubbles/i }));
    expect((await screen.findByRole('alert')).textContent).toContain('The disk is full.');
    expect(heading()).toBe(checkOf(walk.tree, 'soap-chamber').name);
    expect(site('right drive').checked).toBe(true);
    expect(note().value).toBe('dry all round');
    expect(walk.log()).toHaveLength(before);
    walk.host.refusal = null;
    await fireEvent.click(screen.getByRole('button', { name: /no bubbles/i }));
    expect(await written(walk, 'finding.recorded')).toMatchObject({ site: 'right drive', note: 'dry all round' });
    expect(walk.log()).toHaveLength(before + 1);
    await waitFor(() => {
      expect(screen.queryByRole('alert')).toBeNull();
    });
  });

  test('not sure takes a leaning, by the number that stands on it; what cannot be done says so; another can be done first', async () => {
    const walk = await openWalk(AIR, [chosen('static-rate')]);
    const check = checkOf(walk.tree, 'static-rate');
    await press('n');
    expect(screen.getByRole('heading', { name: /not sure\. what does it look like/i })).toBeTruthy();
    expect(screen.getByRole('button', { name: new RegExp(`^2\\s*${check.results[1]!.label}`, 'i') })).toBeTruthy();
    await press('2');
    expect(await written(walk, 'finding.recorded')).toMatchObject({
      check: 'static-rate',
      value: { kind: 'not-sure', leaning: check.results[1]!.id },
    });
    await changedFrom(check.name);

    const next = heading();
    const offered = walk.tree.checks.find(({ name }) => name === next);
    await press('c');
    await waitFor(() => {
      expect(findings(walk)).toHaveLength(2);
    });
    expect(walk.last()).toMatchObject({ check: offered?.id, value: { kind: 'cant-do' } });
    await changedFrom(next);
    const third = heading();
    await fireEvent.click(screen.getByRole('button', { name: /do another check first/i }));
    expect(await screen.findByRole('heading', { level: 1, name: 'All open checks' })).toBeTruthy();
    await press('Escape');
    await screen.findByRole('heading', { level: 1, name: third });
    expect(findings(walk)).toHaveLength(2);
  });

  test('the timer counts, goes on when something else is written, and says when it is over', async () => {
    const walk = await openWalk(AIR, [chosen('applied-rate')]);
    vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval', 'Date'] });
    const timer = screen.getByRole('group', { name: /^timer, 1 min/i });
    const left = (): string => within(timer).getByRole('status').textContent;
    const after = async (seconds: number): Promise<void> => {
      vi.advanceTimersByTime(seconds * 1000);
      await tick();
    };
    const said = (): string => [...document.querySelectorAll('p[role=status]')].map((each) => each.textContent).join();
    expect(left()).toBe('1:00');
    await press(' ');
    await after(20);
    expect(left()).toBe('0:40');
    await after(10);
    expect(said()).toContain('Half time.');
    await fireEvent.click(screen.getAllByTitle('Say that it is like this now')[0]!);
    expect(await written(walk, 'access.set')).toBeTruthy();
    await tick();
    expect(left()).toBe('0:30');
    await press(' ');
    await after(60);
    expect(left()).toBe('0:30');
    await fireEvent.click(within(timer).getByRole('button', { name: /start the timer/i }));
    await after(29);
    expect(said()).toContain('Ten seconds left.');
    await after(2);
    expect(left()).toBe('0:00');
    expect(said()).toContain('Time is up. Read now.');
    expect(within(timer).getByRole('button', { name: /start again/i })).toBeTruthy();
  });
});

describe('a reading', () => {
  test('out of range it is doubted and stays; in another unit it is judged; near a limit it is too close to call', async () => {
    const walk = await openWalk(AIR, [chosen('static-rate')]);
    const before = walk.log().length;
    for (const [typed, doubt] of [
      ['', /type the reading first/i],
      ['about two', /“about two” is not a number/i],
      ['2100', /2100 psi\/min is outside what this check expects/i],
    ] as const) {
      await judge(typed);
      expect((await screen.findByRole('alert')).textContent).toMatch(doubt);
      expect(field().value).toBe(typed);
      expect(field().getAttribute('aria-invalid')).toBe('true');
    }
    expect(walk.log()).toHaveLength(before);

    await press('j');
    await fireEvent.input(note(), { target: { value: 'both needles' } });
    await fireEvent.change(screen.getByRole('combobox', { name: 'Unit' }), { target: { value: 'kPa/min' } });
    // 13.8 kPa/min is 2.0 psi/min, the limit itself.
    await fireEvent.input(screen.getByRole('textbox', { name: /brakes released/i }), { target: { value: '13,8' } });
    await fireEvent.keyDown(screen.getByRole('textbox', { name: /brakes released/i }), { key: 'Enter' });
    expect(await screen.findByRole('heading', { name: /too close to call with this/i })).toBeTruthy();
    expect(walk.last()).toMatchObject({ kind: 'reading.taken', reading: { value: 13.8, unit: 'kPa/min' } });
    expect(findings(walk)).toHaveLength(0);
    const judged = screen.getByRole('region', { name: /too close to call/i });
    expect(judged.textContent).toContain('13.8 kPa/min (2 psi/min)');
    expect(judged.textContent).toMatch(/for the advice to\s+drive, the worse side counts/i);
    expect(note().value).toBe('both needles');

    await press('a');
    const again = await screen.findByRole<HTMLInputElement>('textbox', { name: /brakes released/i });
    await waitFor(() => {
      expect(document.activeElement).toBe(again);
    });
    expect(again.value).toBe('');
    expect(note().value).toBe('both needles');
    walk.host.refusal = 'The disk is full.';
    await fireEvent.input(again, { target: { value: '23.5' } });
    await fireEvent.click(screen.getByRole('button', { name: 'Judge this reading' }));
    expect((await screen.findByRole('alert')).textContent).toContain('The disk is full.');
    expect(again.value).toBe('23.5');
    walk.host.refusal = null;
    await fireEvent.click(screen.getByRole('button', { name: 'Judge this reading' }));
    expect(await screen.findByRole('heading', { level: 2, name: 'too much' })).toBeTruthy();
    expect(screen.getByRole('button', { name: /record this reading/i })).toBeTruthy();
    await press('Enter');
    // More than 2 psi a minute is a stop rule: the finding is on disk and halts.
    expect(await screen.findByRole('heading', { level: 1, name: 'Stay put' })).toBeTruthy();
    expect(walk.last()).toMatchObject({
      kind: 'finding.recorded',
      check: 'static-rate',
      value: { kind: 'reading', reading: { value: 23.5, unit: 'kPa/min' } },
      note: 'both needles',
    });
  });

  test('read from a rule it shows the mark as well; the place and what is typed outlast a change of units', async () => {
    const walk = await openWalk(AIR, [chosen('stroke')]);
    await fireEvent.click(site('left drive'));
    await fireEvent.input(field(), { target: { value: '-0.6' } });
    await press('z');
    await waitFor(() => {
      expect(walk.host.settings.units).toBe('metric');
    });
    await press('z');
    await waitFor(() => {
      expect(walk.host.settings.units).toBe('us');
    });
    expect(field().value).toBe('-0.6');
    expect(site('left drive').checked).toBe(true);
    await fireEvent.click(screen.getByRole('button', { name: 'Judge this reading' }));
    const judged = await screen.findByRole('region', { name: /a quarter inch to an inch in hand/i });
    expect(judged.textContent).toContain('−0.6 in (about −5/8 in)');
    expect(judged.textContent).toContain('give or take 0.125 in');
    await press('z');
    await waitFor(() => {
      expect(judged.textContent).toContain('−0.6 in (−15.2 mm)');
    });
    await press('z');
    await press('Enter');
    expect(await written(walk, 'finding.recorded')).toMatchObject({
      value: { kind: 'reading', reading: { value: -0.6, unit: 'in' } },
      site: 'left drive',
    });
    await press('t');
    await screen.findByRole('heading', { level: 1, name: 'Findings' });
    expect(screen.getByText('−0.6 in (about −5/8 in)')).toBeTruthy();
  });

  test('typed in millimetres it shows the inches and their mark', async () => {
    await openWalk(AIR, [chosen('stroke')]);
    await fireEvent.change(screen.getByRole('combobox', { name: 'Unit' }), { target: { value: 'mm' } });
    await judge('-12.7');
    const judged = await screen.findByRole('region', { name: /a quarter inch to an inch in hand/i });
    expect(judged.textContent).toContain('−12.7 mm = −0.5 in (−1/2 in)');
  });

  test('where sources differ about a limit both are named, with what is taken', async () => {
    await openWalk(AIR, [chosen('static-rate')]);
    const limits = screen.getByRole('region', { name: 'Limits that the bands rest on' });
    expect(limits.textContent).toContain('less than 2 psi in 1 minute');
    expect(limits.textContent).toMatch(/at this limit the sources differ/i);
    const others = within(limits).getByRole('list', { name: /what others say about loss with brakes released/i });
    expect(others.textContent).toContain('not more than 2 psi in 1 minute');
    expect(others.textContent).toMatch(/49 CFR 570\.57.*from memory/);
    expect(limits.textContent).toContain('Taken here: less than 2 psi; a loss of exactly 2 psi counts as too much.');
  });
});
