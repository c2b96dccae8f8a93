import { fireEvent, screen, waitFor, within } from '@testing-library/svelte';
import { expect, test } from 'vitest';
import { changedFrom, checkOf, COMPLAINT, found, openWalk, reading, written, type Walk } from './walk.ts';
import { press } from './window.ts';

const AIR = 'air-leaks-when-brake-held';
const rows = (): HTMLElement[] =>
  screen.getAllByRole('listitem').filter((row) => row.closest('.trail-list > li') === row);
const belief = (): string => document.querySelector('.beliefs')?.textContent ?? '';

async function atFindings(...laidOut: Parameters<typeof openWalk>): Promise<Walk> {
  const walk = await openWalk(...laidOut);
  await press('t');
  await screen.findByRole('heading', { level: 1, name: 'Findings' });
  return walk;
}

test('an answer and a reading can be changed, keep their place, and the belief follows', async () => {
  const walk = await atFindings(AIR, [found('walk-listen', 'nothing'), found('static-rate', reading(0.3, 'psi/min'))]);
  const listen = checkOf(walk.tree, 'walk-listen');
  const rate = checkOf(walk.tree, 'static-rate');
  const first = walk.log().length;
  expect(rows()).toHaveLength(2);
  expect(rows()[0]?.textContent).toContain('Nothing to hear');
  expect(rows()[0]?.textContent).toContain('Mina');
  expect(rows()[1]?.textContent).toContain('0.3 psi/min');
  const before = belief();

  await fireEvent.click(screen.getByRole('button', { name: `Change this answer of ${listen.name}` }));
  const now = within(rows()[0]!).getByRole('button', { name: 'Nothing to hear' });
  expect(now.getAttribute('aria-pressed')).toBe('true');
  walk.host.refusal = 'The disk is full.';
  await fireEvent.click(within(rows()[0]!).getByRole('button', { name: 'At one wheel' }));
  expect((await screen.findByRole('alert')).textContent).toContain('The disk is full.');
  expect(now.getAttribute('aria-pressed')).toBe('true');
  expect(belief()).toBe(before);
  walk.host.refusal = null;
  await fireEvent.click(within(rows()[0]!).getByRole('button', { name: 'At one wheel' }));
  expect(await written(walk, 'finding.changed')).toMatchObject({
    finding: 'f-walk-listen',
    value: { kind: 'result', result: 'wheel-end' },
  });
  await waitFor(() => {
    expect(rows()[0]?.querySelector('b')?.textContent).toBe('At one wheel');
  });
  expect(belief()).not.toBe(before);

  await fireEvent.click(screen.getByRole('button', { name: `Change this answer of ${rate.name}` }));
  const field = screen.getByRole<HTMLInputElement>('textbox', { name: 'Reading as it should be' });
  expect(field.value).toBe('0.3');
  await fireEvent.change(screen.getByRole('combobox', { name: 'Unit' }), { target: { value: 'kPa/min' } });
  await fireEvent.input(field, { target: { value: '4000' } });
  await fireEvent.click(screen.getByRole('button', { name: 'Change the reading' }));
  expect((await screen.findByRole('alert')).textContent).toMatch(/4000 kPa\/min is outside what this check expects/i);
  expect(field.value).toBe('4000');
  expect(walk.log()).toHaveLength(first + 1);
  await fireEvent.input(field, { target: { value: '4' } });
  await fireEvent.keyDown(field, { key: 'Enter' });
  await waitFor(() => {
    expect(walk.log()).toHaveLength(first + 2);
  });
  expect(walk.last()).toMatchObject({
    kind: 'finding.changed',
    finding: 'f-static-rate',
    value: { kind: 'reading', reading: { value: 4, unit: 'kPa/min' } },
  });
  await waitFor(() => {
    expect(rows()[1]?.querySelector('b')?.textContent).toBe('4 kPa/min (0.6 psi/min)');
  });
  expect(rows()[0]?.textContent).toContain(listen.name);
});

test('a finding is taken back and put back; a note goes to its own finding', async () => {
  const walk = await atFindings(AIR, [
    found('walk-listen', 'nothing', { site: 'left front', note: 'wind from the north' }),
    found('static-rate', reading(0.3, 'psi/min')),
  ]);
  const listen = checkOf(walk.tree, 'walk-listen');
  const rate = checkOf(walk.tree, 'static-rate');
  const recorded = walk.log().find((entry) => entry['finding'] === 'f-walk-listen');
  expect(rows()[0]?.textContent).toContain('left front');
  expect(rows()[0]?.textContent).toContain('wind from the north');

  await fireEvent.click(screen.getByRole('button', { name: `Take it back: ${listen.name}` }));
  expect(await written(walk, 'event.taken-back')).toMatchObject({ event: recorded?.['id'] });
  await waitFor(() => {
    expect(rows()).toHaveLength(1);
  });
  expect(rows()[0]?.textContent).toContain(rate.name);
  await fireEvent.click(screen.getByRole('button', { name: /put it back/i }));
  expect(await written(walk, 'event.put-back')).toMatchObject({ event: recorded?.['id'] });
  await waitFor(() => {
    expect(rows()).toHaveLength(2);
  });

  await fireEvent.click(screen.getByRole('button', { name: `Change this answer of ${listen.name}` }));
  await fireEvent.input(screen.getByRole('textbox', { name: 'Add a note' }), { target: { value: 'for the first' } });
  await fireEvent.click(screen.getByRole('button', { name: `Change this answer of ${rate.name}` }));
  const other = screen.getByRole<HTMLTextAreaElement>('textbox', { name: 'Add a note' });
  expect(other.value).toBe('');
  await fireEvent.click(screen.getByRole('button', { name: 'Add the note' }));
  await fireEvent.input(other, { target: { value: 'needle steady' } });
  await fireEvent.click(screen.getByRole('button', { name: 'Add the note' }));
  expect(await written(walk, 'note.added')).toMatchObject({ finding: 'f-static-rate', text: 'needle steady' });
  expect(walk.log().filter(({ kind }) => kind === 'note.added')).toHaveLength(1);
  await waitFor(() => {
    expect(within(rows()[1]!).getByText('needle steady')).toBeTruthy();
  });
  expect(other.value).toBe('');
});

test('entries of the log that cannot be used are counted, named and explained', async () => {
  await atFindings(AIR, [
    found('no-such-check', 'nothing'),
    { kind: 'proof.recorded', complaint: COMPLAINT, outcome: 'gone' },
    found('walk-listen', 'nothing'),
  ]);
  expect(rows()).toHaveLength(1);
  const summary = screen.getByText('2 entries of the log are kept but not used');
  const list = within(summary.parentElement!).getAllByRole('listitem');
  expect(list[0]?.textContent).toMatch(/finding\.recorded: The tree has no check "no-such-check"/);
  expect(list[1]?.textContent).toMatch(/proof\.recorded: It does not fit where the complaint stood then/);
});

test('a closed complaint keeps its answers until it is opened again; a note can be added', async () => {
  const walk = await atFindings(AIR, [
    found('walk-listen', 'nothing'),
    { kind: 'complaint.closed', complaint: COMPLAINT, how: 'handed-over' },
  ]);
  await fireEvent.click(screen.getByRole('button', { name: /change this answer/i }));
  expect(screen.getByText(/this complaint is closed\. open it again to change an answer/i)).toBeTruthy();
  expect(screen.queryByRole('button', { name: 'At one wheel' })).toBeNull();
  expect(screen.queryByRole('button', { name: 'Not sure after all' })).toBeNull();
  await fireEvent.input(screen.getByRole('textbox', { name: 'Add a note' }), {
    target: { value: 'seen again in June' },
  });
  await fireEvent.click(screen.getByRole('button', { name: 'Add the note' }));
  expect(await written(walk, 'note.added')).toMatchObject({ text: 'seen again in June' });
  await waitFor(() => {
    expect(within(rows()[0]!).getByText('seen again in June')).toBeTruthy();
  });
});

test('[INF-17] [INF-19] two findings that one cause does not explain: each with its cause, the cheaper one is done again', async () => {
  const walk = await atFindings(AIR, [found('soap-chamber', 'rod-side'), found('walk-listen', 'driver-area')]);
  const listen = checkOf(walk.tree, 'walk-listen');
  const note = within(screen.getByRole('region', { name: 'One cause does not explain both findings' }));
  const [chamber, ear] = note.getAllByRole('listitem').map(({ textContent }) => textContent);
  expect(chamber).toContain(checkOf(walk.tree, 'soap-chamber').name);
  expect(chamber).toMatch(/diaphragm.* would explain it/i);
  expect(ear).toContain(listen.name);
  expect(ear).toMatch(/foot valve.* would explain it/i);
  expect(
    note.getByText(/If two things may be wrong at once, that gets \d+ in 100 of the belief, on judged odds/),
  ).toBeTruthy();
  await fireEvent.click(note.getByRole('button', { name: `Look again: ${listen.name} (${listen.minutes} min)` }));
  expect(await written(walk, 'check.chosen')).toMatchObject({ check: 'walk-listen' });
  expect(await screen.findByRole('heading', { level: 1, name: /listen/i })).toBeTruthy();
  // Looked at again with the other result they fit together, and the note is gone.
  await press(String(listen.results.findIndex(({ id }) => id === 'wheel-end') + 1));
  expect(await written(walk, 'finding.recorded')).toMatchObject({ value: { kind: 'result', result: 'wheel-end' } });
  await press('t');
  await screen.findByRole('heading', { level: 1, name: 'Findings' });
  expect(screen.queryByRole('region', { name: /one cause does not explain/i })).toBeNull();
});

test('[PLA-20] a coach that has to stay is not sent on the road to look again at what was found there', async () => {
  const onTheRoad = [found('surface-swap', 'changes-much'), found('speed-sweep', 'walking-pace')];
  const nuts = { kind: 'stop.answered', complaint: COMPLAINT, rule: 'wheel-nut-moves-hand-wrench' } as const;
  const walk = await atFindings('growl-through-floor-at-speed', [
    ...onTheRoad,
    { ...nuts, answer: 'yes' },
    { kind: 'halt.acknowledged', complaint: COMPLAINT },
  ]);
  const note = within(screen.getByRole('region', { name: 'One cause does not explain both findings' }));
  expect(note.queryByRole('button')).toBeNull();
  const reasons = within(note.getByRole('list', { name: 'Neither can be looked at again now' }))
    .getAllByRole('listitem')
    .map(({ textContent }) => textContent);
  expect(reasons).toHaveLength(2);
  for (const id of ['surface-swap', 'speed-sweep'])
    expect(reasons.find((each) => each.startsWith(checkOf(walk.tree, id).name))).toMatch(/would have to drive/);
});

test('[INF-17] [PLA-20] neither can be looked at again by whom works now: each with its own reason; by a mechanic one can', async () => {
  const walk = await atFindings(AIR, [found('chamber-opened', 'both-sound'), found('soap-chamber', 'rod-side')], {
    who: 'owner-no-tools',
  });
  const region = (): HTMLElement => screen.getByRole('region', { name: 'One cause does not explain both findings' });
  const [opened, soap] = ['chamber-opened', 'soap-chamber'].map((id) => checkOf(walk.tree, id));
  const reasons = within(within(region()).getByRole('list', { name: 'Neither can be looked at again now' }));
  expect(reasons.getAllByRole('listitem').map(({ textContent }) => textContent)).toEqual([
    `${opened!.name}Needs mechanic or more.`,
    `${soap!.name}Needs apprentice or more.`,
  ]);
  expect(within(region()).getByText(/both count as they were found/)).toBeTruthy();
  expect(within(region()).queryByRole('button')).toBeNull();
  // A mechanic takes over, with the tools that a mechanic has: then one of them can, and the reasons are gone.
  await press('p');
  await fireEvent.click(await screen.findByRole('radio', { name: 'Mechanic' }));
  await fireEvent.click(screen.getByRole('button', { name: /^Work like this/ }));
  await changedFrom('Who is working, with what?');
  expect(walk.last()).toMatchObject({ kind: 'person.set', who: 'mechanic' });
  await press('t');
  await waitFor(() => expect(within(region()).getByRole('button', { name: /^Look again: / })).toBeTruthy());
  expect(within(region()).queryByText(/Neither can be looked at/)).toBeNull();
});

test('[PLA-19] after a real fault that was not all of it, what it explained is set aside and stays in the list', async () => {
  const cause = 'service-diaphragm';
  await atFindings(AIR, [
    found('soap-chamber', 'rod-side'),
    found('pedal-ramp', 'light-only'),
    { kind: 'correction.started', complaint: COMPLAINT, cause },
    { kind: 'correction.done', complaint: COMPLAINT, cause, partSeen: 'bad', parts: [], alsoRenewed: [] },
    { kind: 'proof.recorded', complaint: COMPLAINT, outcome: 'still-there' },
  ]);
  const [aside, stands] = rows();
  expect(aside?.textContent).toMatch(/rod/i);
  expect(aside?.textContent).toContain('Set aside: the cause that was put right explains it');
  expect(stands?.textContent).toMatch(/light/i);
  expect(stands?.textContent).not.toContain('Set aside');
});
