import { fireEvent, screen, waitFor, within } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import type { VisitEventBody } from '../../shared/visit/index.ts';
import { changedFrom, COMPLAINT, found, heading, openWalk, stands, written, type Walk } from './walk.ts';
import { press } from './window.ts';

const AIR = 'air-leaks-when-brake-held';
const CAUSE = 'service-diaphragm';
const FOUND: readonly VisitEventBody[] = [
  found('walk-listen', 'wheel-end', { site: 'left front' }),
  found('soap-chamber', 'rod-side', { site: 'left front' }),
  found('recent-air-work', 'nothing-recent'),
  found('pedal-ramp', 'all-levels'),
];
const ACCEPTED: VisitEventBody = { kind: 'conclusion.accepted', complaint: COMPLAINT, cause: CAUSE };
const STARTED: VisitEventBody = { kind: 'correction.started', complaint: COMPLAINT, cause: CAUSE };
const DONE: VisitEventBody = {
  kind: 'correction.done',
  complaint: COMPLAINT,
  cause: CAUSE,
  partSeen: 'good',
  parts: ['diaphragm'],
  alsoRenewed: [],
};
const causeIn = ({ tree }: Walk, id = CAUSE): Walk['tree']['causes'][number] => {
  const cause = tree.causes.find((each) => each.id === id);
  if (!cause) throw new Error(`No cause "${id}".`);
  return cause;
};
const lastStep = (): Element => [...document.querySelectorAll('ol.steps > li')].at(-1)!;

describe('the conclusion', () => {
  test('names the probable cause, how sure it is and on what, cautions first; taking it is written', async () => {
    const walk = await openWalk(AIR, FOUND);
    const cause = causeIn(walk);
    expect(heading()).toBe(`${cause.name}: left front`);
    const share = Number(document.querySelector('.share .big')?.textContent);
    expect(share).toBeGreaterThan(80);
    expect(share).toBeLessThan(100);
    expect(screen.getByText(/on judged odds, not statistics$/i)).toBeTruthy();

    const caution = screen.getByRole('heading', { name: 'Before anything is done' });
    expect(caution.parentElement?.textContent).toMatch(/licensed mechanic or inspector decides.*local law/i);
    const take = screen.getByRole('button', { name: /take it as the cause/i });
    expect(stands(caution, take)).toBe(true);

    const table = screen.getByRole('table', { name: /each finding, how it speaks for or against/i });
    const lines = within(table).getAllByRole('row').slice(1);
    expect(lines).toHaveLength(FOUND.length);
    expect(lines[1]?.textContent).toMatch(/blows from rod opening or weep holes/i);
    for (const line of lines.slice(0, 2)) expect(line.textContent).toMatch(/for.*\d decibans/i);
    // Each finding carries some of it: left out, the cause is less likely.
    for (const line of lines.slice(0, 2)) expect(Number(line.querySelector('td.end')?.textContent)).toBeLessThan(share);

    walk.host.refusal = 'The disk is full.';
    await press('Enter');
    expect((await screen.findByRole('alert')).textContent).toContain('The disk is full.');
    expect(screen.queryByText(/taken as the probable cause/i)).toBeNull();
    walk.host.refusal = null;
    await press('Enter');
    expect(await written(walk, 'conclusion.accepted')).toMatchObject({ cause: CAUSE });
    expect(await screen.findByText(/taken as the probable cause/i)).toBeTruthy();
    await fireEvent.click(screen.getByRole('button', { name: /start the correction/i }));
    expect(await written(walk, 'correction.started')).toMatchObject({ cause: CAUSE });
    await screen.findByRole('button', { name: /record the correction/i });
    expect(heading()).toBe(cause.name);
  });

  test('a cause that was taken and is no longer in front is not called the probable one', async () => {
    const walk = await openWalk(AIR, [
      ...FOUND,
      ACCEPTED,
      {
        kind: 'finding.changed',
        complaint: COMPLAINT,
        finding: 'f-soap-chamber',
        value: { kind: 'result', result: 'clamp-ring' },
      },
    ]);
    const taken = causeIn(walk);
    expect(heading()).toContain(causeIn(walk, 'chamber-clamp').name);
    expect(screen.queryByText(/taken as the probable cause/i)).toBeNull();
    expect(screen.getByText(/was taken before; the findings now speak/i).textContent).toContain(taken.name);
  });

  test('an owner sees what would settle it and who may, and hands over what can hurt', async () => {
    const walk = await openWalk(AIR, [found('walk-listen', 'wheel-end'), ACCEPTED], { who: 'owner-no-tools' });
    expect(causeIn(walk).hazard).toBe('danger');
    expect(heading()).toBe(causeIn(walk).name);
    const next = screen.getByRole('heading', { name: 'What would settle it' }).closest('section')!;
    expect(next.textContent).toContain(walk.tree.checks.find(({ id }) => id === 'soap-chamber')?.name);
    expect(next.textContent).toMatch(/needs apprentice or more/i);
    expect(
      within(next)
        .getAllByRole('rowheader')
        .map(({ textContent }) => textContent),
    ).toEqual([
      'No bubbles',
      'Bubbles at the clamp ring',
      'Blows from rod opening or weep holes',
      'Bubbles at the hose end',
    ]);
    expect(screen.queryByRole('button', { name: /start the correction|settling check/i })).toBeNull();
    await press('h');
    expect(await written(walk, 'complaint.closed')).toMatchObject({ how: 'handed-over' });
    expect(await screen.findByRole('heading', { level: 1, name: 'Handed over to a mechanic' })).toBeTruthy();
  });
});

describe('the correction', () => {
  test('cautions first; nothing is written before the part was judged and the minutes can be read', async () => {
    const walk = await openWalk(AIR, [...FOUND, ACCEPTED, STARTED]);
    const cause = causeIn(walk);
    expect(heading()).toBe(cause.name);
    const before = walk.log().length;
    const caution = screen.getByRole('heading', { name: 'Before you start' });
    expect(caution.parentElement?.textContent).toMatch(/workshop manual of this coach outranks every figure here/i);
    const recordIt = screen.getByRole('button', { name: /record the correction/i });
    const bad = screen.getByRole<HTMLInputElement>('radio', { name: /bad, i saw it/i });
    expect(stands(caution, bad)).toBe(true);

    await press('Enter');
    expect((await screen.findByRole('alert')).textContent).toMatch(/say first how the part looked/i);
    await press('1');
    expect(bad.checked).toBe(true);
    await waitFor(() => {
      expect(screen.queryByRole('alert')).toBeNull();
    });
    const minutes = screen.getByRole<HTMLInputElement>('textbox', { name: /minutes of work/i });
    await fireEvent.input(minutes, { target: { value: 'an hour' } });
    await fireEvent.click(recordIt);
    expect((await screen.findByRole('alert')).textContent).toMatch(/“an hour” is not a number of minutes/i);
    expect(minutes.value).toBe('an hour');
    expect(walk.log()).toHaveLength(before);

    const [part] = screen.getAllByRole<HTMLInputElement>('checkbox');
    await fireEvent.click(part!);
    await fireEvent.input(minutes, { target: { value: '95' } });
    const note = screen.getByRole<HTMLTextAreaElement>('textbox', { name: 'Note' });
    await fireEvent.input(note, { target: { value: 'torn at the bead' } });
    walk.host.refusal = 'The disk is full.';
    await fireEvent.click(recordIt);
    expect((await screen.findByRole('alert')).textContent).toContain('The disk is full.');
    expect([bad.checked, part?.checked, minutes.value, note.value]).toEqual([true, true, '95', 'torn at the bead']);
    walk.host.refusal = null;
    await fireEvent.click(recordIt);
    expect(await written(walk, 'correction.done')).toMatchObject({
      cause: CAUSE,
      partSeen: 'bad',
      parts: [cause.correction.parts[0]],
      alsoRenewed: [],
      minutes: 95,
      note: 'torn at the bead',
    });
    expect(await screen.findByRole('heading', { level: 1, name: 'Is the complaint gone?' })).toBeTruthy();
  });

  test('leads back to checking without a correction', async () => {
    const walk = await openWalk(AIR, [...FOUND, ACCEPTED, STARTED]);
    await fireEvent.click(screen.getByRole('button', { name: /back to checking/i }));
    expect(await written(walk, 'checking.resumed')).toBeTruthy();
    await waitFor(() => {
      expect(screen.queryByRole('button', { name: /record the correction/i })).toBeNull();
    });
  });
});

describe('the proof', () => {
  test('gone closes the complaint with what was found, done and not looked at; it can be opened again', async () => {
    const walk = await openWalk(AIR, [...FOUND, ACCEPTED, STARTED, DONE]);
    const caution = screen.getByRole('heading', { name: 'Before you start' });
    const steps = walk.tree.proofs
      .filter(({ after }) => after === '*' || after === CAUSE)
      .flatMap((proof) => proof.steps);
    expect(document.querySelectorAll('ol.steps > li')).toHaveLength(steps.length);
    expect(stands(caution, document.querySelector('ol.steps > li')!)).toBe(true);
    expect(stands(lastStep(), screen.getByRole('button', { name: /gone, and proven/i }))).toBe(true);
    expect(screen.getAllByText('It counts as proven when:').length).toBeGreaterThan(0);

    const note = screen.getByRole<HTMLTextAreaElement>('textbox', { name: /what you saw or measured/i });
    await fireEvent.input(note, { target: { value: '1 psi in two minutes' } });
    walk.host.refusal = 'The disk is full.';
    await press('1');
    expect((await screen.findByRole('alert')).textContent).toContain('The disk is full.');
    expect(note.value).toBe('1 psi in two minutes');
    walk.host.refusal = null;
    await press('1');
    expect(await written(walk, 'proof.recorded')).toMatchObject({ outcome: 'gone', note: '1 psi in two minutes' });
    expect(await screen.findByRole('heading', { level: 1, name: 'Cured and proven' })).toBeTruthy();
    const sheet = screen.getByRole('region', { name: 'Cured and proven' });
    expect(sheet.textContent).toMatch(/blows from rod opening or weep holes/i);
    expect(sheet.textContent.replace(/\s+/g, ' ')).toContain(
      `${causeIn(walk).name} diaphragm; part seen good; proof: complaint gone`,
    );
    expect(sheet.textContent).toMatch(
      new RegExp(`${walk.tree.checks.length - FOUND.length} checks of this list were not made`),
    );
    expect(sheet.textContent).toMatch(/what was not\s+looked at is not known/i);
    expect(document.body.textContent).not.toMatch(/\b(?<!that a coach )is safe\b/i);

    await fireEvent.click(screen.getByRole('button', { name: /it is back: open again/i }));
    expect(await written(walk, 'complaint.reopened')).toBeTruthy();
    await changedFrom('Cured and proven');
    expect(screen.queryByRole('button', { name: /open again/i })).toBeNull();
  });

  test('still there goes back to checking, and a cause whose part was seen good is out', async () => {
    const walk = await openWalk(AIR, [...FOUND, ACCEPTED, STARTED, DONE]);
    await fireEvent.click(screen.getByRole('button', { name: /still there/i }));
    expect(await written(walk, 'proof.recorded')).toMatchObject({ outcome: 'still-there' });
    await changedFrom('Is the complaint gone?');
    expect(heading()).not.toContain(causeIn(walk).name);
    await press('b');
    await screen.findByRole('heading', { level: 1, name: 'Belief now' });
    const every = screen.getByText('Every cause').parentElement!;
    const row = within(every)
      .getAllByRole('listitem')
      .find(({ textContent }) => textContent.startsWith(causeIn(walk).name));
    expect(row?.querySelector('b')?.textContent).toBe('0');
  });

  test('not yet known writes nothing, and the yard says that the proof is open', async () => {
    const walk = await openWalk(AIR, [...FOUND, ACCEPTED, STARTED, DONE]);
    const before = walk.log().length;
    await press('3');
    await screen.findByRole('heading', { level: 1, name: /visit in the yard/i });
    expect(await screen.findByText(/corrected, the proof is still open/i)).toBeTruthy();
    expect(walk.log()).toHaveLength(before);
    await press('1');
    expect(await screen.findByRole('heading', { level: 1, name: 'Is the complaint gone?' })).toBeTruthy();
  });
});
