import { cleanup, fireEvent, screen, waitFor, within } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import { readEvent, replay } from '../../shared/visit/index.ts';
import {
  changedFrom,
  checkOf,
  chosen,
  COMPLAINT,
  heading,
  loaded,
  openWalk,
  written,
  type Entry,
  type Walk,
} from './walk.ts';
import { openWindow, press } from './window.ts';

const GROWL = 'growl-through-floor-at-speed';
const AIR = 'air-leaks-when-brake-held';
const PLACES = ['left front', 'right front', 'left drive', 'right drive', 'left tag', 'right tag'];

const table = (): HTMLElement => screen.getByRole('table', { name: /place by place$/ });
const rows = (): readonly string[] =>
  within(table())
    .getAllByRole('rowheader')
    .map(({ textContent }) => textContent.trim().replace(/\s+/g, ' '));
const pick = (place: string): HTMLSelectElement =>
  within(table()).getByRole<HTMLSelectElement>('combobox', { name: new RegExp(`${place}$`) });
const reading = (place: string): HTMLInputElement =>
  within(table()).getByRole<HTMLInputElement>('textbox', { name: new RegExp(`${place}$`) });
const said = (): string =>
  [...screen.getByRole('region', { name: 'One result a place' }).querySelectorAll('[role=status]')]
    .map(({ textContent }) => textContent)
    .join();
const recorded = (walk: Walk): readonly Entry[] => walk.log().filter(({ kind }) => kind === 'finding.recorded');
/** The complaint as the log on the disk makes it. */
async function complaintOf(walk: Walk, tree: string) {
  const known = await loaded(walk.host, tree);
  const visit = replay(
    walk.log().map((line) => readEvent(line)),
    new Map([[known.hash, known]]),
  );
  return visit.complaints.find(({ id }) => id === COMPLAINT)!;
}

describe('one result a place', () => {
  test('by keys alone: every place of this coach, the rest in one press, all recorded and taken back in one press', async () => {
    const walk = await openWalk(GROWL, [
      { kind: 'layout.set', feature: 'tag-axle', value: false },
      chosen('spin-feel'),
    ]);
    const check = checkOf(walk.tree, 'spin-feel');
    const before = walk.log().length;
    await press('g');
    expect(document.activeElement).toBe(screen.getByRole('heading', { name: 'One result a place' }));
    // No tag axle, no rows of a tag axle.
    expect(rows()).toEqual(PLACES.slice(0, 4));
    expect(said()).toContain('Places left empty are not recorded.');
    await press('1');
    expect(walk.log()).toHaveLength(before);
    await fireEvent.change(pick('left front'), { target: { value: 'rough-front' } });
    expect(said()).toContain('One place so far');
    await press('e');
    expect(pick('right drive').value).toBe('smooth');
    expect(pick('left front').value).toBe('rough-front');
    expect(said()).toMatch(/^Left front stands out: “gritty or growling at a front wheel” is the least to be expected/);
    expect(rows()[0]).toBe('left front stands out');
    await fireEvent.change(pick('right drive'), { target: { value: '' } });
    await press('Enter');
    await changedFrom(check.name);
    expect(walk.log()).toHaveLength(before + 3);
    expect(recorded(walk).map(({ site, value }) => [site, value])).toEqual([
      ['left front', { kind: 'result', result: 'rough-front' }],
      ['right front', { kind: 'result', result: 'smooth' }],
      ['left drive', { kind: 'result', result: 'smooth' }],
    ]);
    // The minutes of the check are spent once.
    const complaint = await complaintOf(walk, GROWL);
    expect(complaint.trail.map(({ minutes }) => minutes > 0)).toEqual([true, false, false]);
    // One line in the trail.
    await press('t');
    await screen.findByRole('heading', { level: 1, name: 'Findings' });
    expect(
      screen.getByText(
        'Left front: gritty or growling at a front wheel; right front and left drive: all turn smoothly',
        {
          selector: '.trail-list b',
        },
      ),
    ).toBeTruthy();
    expect(screen.getByRole('button', { name: `Take it back: ${check.name}, right front` })).toBeTruthy();
    await press('u');
    await waitFor(() => {
      expect(walk.log()).toHaveLength(before + 6);
    });
    expect((await complaintOf(walk, GROWL)).trail).toEqual([]);
    // What was filled in is there again, to be put right.
    await press('Escape');
    await waitFor(() => {
      expect(pick('left front').value).toBe('rough-front');
    });
    await press('U');
    await waitFor(() => {
      expect(walk.log()).toHaveLength(before + 9);
    });
    expect((await complaintOf(walk, GROWL)).trail).toHaveLength(3);
    // One wheel was left out: the check can be gone on with, and says what stands so far.
    await press('Enter');
    await press('k');
    await fireEvent.click(await screen.findByRole('button', { name: `Go on: 1 place left: ${check.name}` }));
    await waitFor(() => {
      expect(heading()).toBe(check.name);
    });
    await press('g');
    expect(pick('left front').value).toBe('');
    expect(rows()[0]).toBe('left front so far: Gritty or growling at a front wheel');
  });

  test('readings: a doubtful one records nothing, a refusal and a reload lose nothing, a place past the limit halts', async () => {
    const walk = await openWalk(AIR, [chosen('stroke')]);
    const check = checkOf(walk.tree, 'stroke');
    const before = walk.log().length;
    await press('g');
    expect(rows()).toEqual(PLACES);
    expect(screen.queryByRole('button', { name: /all the rest/i })).toBeNull();
    reading('left front').focus();
    await fireEvent.input(reading('left front'), { target: { value: '-0.6' } });
    await fireEvent.keyDown(reading('left front'), { key: 'Enter' });
    expect(document.activeElement).toBe(reading('right front'));
    await fireEvent.input(reading('right front'), { target: { value: '-0.5' } });
    await fireEvent.input(reading('left drive'), { target: { value: 'about half' } });
    await fireEvent.click(screen.getByRole('button', { name: /record all of it/i }));
    expect((await screen.findByRole('alert')).textContent).toContain('look at left drive first');
    expect(reading('left drive').getAttribute('aria-invalid')).toBe('true');
    await fireEvent.input(reading('left drive'), { target: { value: '0.6' } });
    expect(said()).toMatch(
      /^Left drive stands out: “a quarter inch or more past it” \(0\.6 in\) is the least .*The middle of all is −0\.5 in\./,
    );
    walk.host.refusal = 'The disk is full.';
    await fireEvent.click(screen.getByRole('button', { name: /record all of it/i }));
    expect((await screen.findByRole('alert')).textContent).toContain('The disk is full.');
    expect(walk.log()).toHaveLength(before);
    expect(reading('left drive').value).toBe('0.6');
    walk.host.refusal = null;

    // The window is loaded afresh.
    const kept = sessionStorage.getItem('droplight-round') ?? '';
    cleanup();
    await openWindow(walk.host);
    sessionStorage.setItem('droplight-round', kept);
    const yard = heading();
    await press('1');
    await changedFrom(yard);
    expect(reading('left front').value).toBe('-0.6');
    await fireEvent.click(screen.getByRole('button', { name: /record all of it/i }));
    await changedFrom(check.name);
    expect(recorded(walk).map(({ site }) => site)).toEqual(['left drive', 'left front', 'right front']);
    expect(recorded(walk)[0]?.['value']).toEqual({ kind: 'reading', reading: { value: 0.6, unit: 'in' } });
  });

  test('a result whose words name no place asks for it; then it is recorded with the place', async () => {
    const walk = await openWalk(GROWL, [chosen('bearing-look')]);
    const check = checkOf(walk.tree, 'bearing-look');
    const before = walk.log().length;
    await press('5');
    expect((await screen.findByRole('alert')).textContent).toMatch(/say at which place it is first/i);
    expect(walk.log()).toHaveLength(before);
    const place = screen.getByRole<HTMLInputElement>('radio', { name: 'left drive' });
    await fireEvent.click(place);
    expect(screen.queryByRole('alert')).toBeNull();
    await press('5');
    expect(await written(walk, 'finding.recorded')).toMatchObject({
      check: 'bearing-look',
      value: { kind: 'result', result: 'starved-pitted' },
      site: 'left drive',
    });
    await changedFrom(check.name);
  });
});

describe('[KNO-30] how many cylinders there are', () => {
  const BRAKE = 'weak-engine-brake';
  const cylinders = (n: number): readonly string[] => Array.from({ length: n }, (_, i) => `cylinder ${i + 1}`);
  const asked = (): HTMLSelectElement => screen.getByRole('combobox', { name: 'Cylinders of the diesel' });
  const offered = (): readonly string[] =>
    screen
      .getAllByRole<HTMLInputElement>('radio')
      .flatMap(({ value }) => (value.startsWith('cylinder') ? [value] : []));

  test('is asked where the places are cylinders; as many are offered, in the table too; it can be taken back', async () => {
    const walk = await openWalk(BRAKE, [chosen('overhead-look')]);
    expect(asked().selectedOptions[0]?.textContent).toBe('Not said: 8 are offered');
    expect(offered()).toEqual(cylinders(8));
    await fireEvent.change(asked(), { target: { value: '6' } });
    await waitFor(() => expect(offered()).toEqual(cylinders(6)));
    expect(walk.last()).toMatchObject({ kind: 'layout.set', feature: 'cylinders', value: '6' });
    await press('g');
    expect(rows()).toEqual(cylinders(6));
    await press('u');
    await waitFor(() => expect(rows()).toEqual(cylinders(8)));
    expect(asked().value).toBe('');
  });

  test('is not asked where the places are others; a number of the profile is shown', async () => {
    await openWalk(GROWL, [chosen('spin-feel')]);
    expect(screen.queryByRole('combobox', { name: 'Cylinders of the diesel' })).toBeNull();
    cleanup();
    await openWalk(BRAKE, [{ kind: 'layout.set', feature: 'cylinders', value: '5' }, chosen('overhead-look')]);
    expect(asked().value).toBe('5');
    expect(offered()).toEqual(cylinders(5));
  });
});
