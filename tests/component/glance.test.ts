import { fireEvent, screen, waitFor, within } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
// Pages that come later in the window are read once, before the first test waits for one.
import '../../renderer/demo/write-demo.ts';
import '../../renderer/screens/HistoryScreen.svelte';
import '../../renderer/screens/VisitScreen.svelte';
import { fakeHost } from './fake-host.ts';
import { checkOf, COMPLAINT, found, heading, layOut, loaded, openWalk, reading, written } from './walk.ts';
import { openWindow, press } from './window.ts';

const AIR = 'air-leaks-when-brake-held';
const at = (name: string | RegExp): Promise<HTMLElement> => screen.findByRole('heading', { level: 1, name });

describe('stop first', () => {
  test('opens with s from every page of the visit; a refused yes stays unsaid; a yes halts', async () => {
    const walk = await openWalk(AIR);
    for (const page of [null, 't', 'b', 'k', 'v', 'p', '?'] as const) {
      if (page !== null) {
        const before = heading();
        await press(page);
        await waitFor(() => {
          expect(heading()).not.toBe(before);
        });
      }
      await press('s');
      await at(/stop first: has something turned up/i);
    }
    const rule = walk.tree.stopRules.find(({ verdict }) => verdict === 'stay-put');
    const caution = screen.getByRole('heading', { name: /burning, loose or not braking: do not read on/i });
    const group = [...document.querySelectorAll('fieldset')].find(
      (each) => each.querySelector('legend')?.textContent === rule?.ask,
    )!;
    expect(caution.compareDocumentPosition(group) & Node.DOCUMENT_POSITION_FOLLOWING).toBeTruthy();
    expect(document.querySelectorAll('fieldset')).toHaveLength(walk.tree.stopRules.length);
    const choice = (name: RegExp): HTMLInputElement => within(group).getByRole<HTMLInputElement>('radio', { name });
    expect(choice(/no, i looked/i).checked).toBe(true);

    walk.host.refusal = 'The disk is full.';
    await fireEvent.click(choice(/^yes$/i));
    expect((await screen.findByRole('alert')).textContent).toContain('The disk is full.');
    expect(choice(/^yes$/i).checked).toBe(false);
    expect(choice(/no, i looked/i).checked).toBe(true);
    walk.host.refusal = null;
    await fireEvent.click(choice(/^yes$/i));
    expect(await written(walk, 'stop.answered')).toMatchObject({ rule: rule?.id, answer: 'yes' });
    await at('Stay put');
    expect(screen.getByText(/it alone decides, whatever the odds/i)).toBeTruthy();
  });

  test('a closed complaint is not answered any more, and says so', async () => {
    const walk = await openWalk(AIR, [{ kind: 'complaint.closed', complaint: COMPLAINT, how: 'left-open' }]);
    expect(heading()).toBe('Left open');
    await press('s');
    await at(/stop first/i);
    expect(screen.getByText(/this complaint is closed\. open it again/i)).toBeTruthy();
    const groups = [...document.querySelectorAll('fieldset')];
    expect(groups).toHaveLength(walk.tree.stopRules.length);
    expect(groups.every(({ disabled }) => disabled)).toBe(true);
  });
});

describe('the yard', () => {
  test('says of every visit what was said, where it stands, and whether it may move', async () => {
    const open = await layOut(AIR);
    const halted = await layOut(AIR, [found('static-rate', reading(3.4, 'psi/min'))]);
    const closed = await layOut(AIR, [{ kind: 'complaint.closed', complaint: COMPLAINT, how: 'handed-over' }]);
    open.host.logs.set('v-2', halted.host.logs.get('v-1')!);
    open.host.logs.set('v-3', closed.host.logs.get('v-1')!);
    await openWindow(open.host);
    expect(heading()).toBe('3 visits in the yard');
    const rows = within(screen.getByRole('list', { name: 'Visits, newest first' })).getAllByRole('listitem');
    await waitFor(() => {
      expect(rows[2]?.textContent).toContain('Handed over to somebody who can look further');
    });
    expect(rows[0]?.textContent).toContain(`${open.tree.title}: as the owner said it`);
    expect(rows[0]?.textContent).toContain('Being checked. May it move: creep to a safe place.');
    expect(rows[1]?.textContent).toContain('Halted by a stop rule. May it move: stay put.');
    expect(rows[2]?.textContent).not.toContain('May it move');
    expect(within(rows[1]!).getByRole('button', { name: /^open the visit of invented coach 12/i })).toBeTruthy();
    await press('2');
    await at('Stay put');
  });

  test('the invented visit is marked as invented, and shows the whole job', async () => {
    const host = fakeHost();
    await openWindow(host);
    host.refusal = 'The disk is full.';
    await press('e');
    await screen.findByRole('alert');
    // It stays: nothing that follows the refusal takes it away.
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(screen.getByRole('alert').textContent).toContain('The disk is full.');
    expect(host.logs.size).toBe(0);
    host.refusal = null;
    await press('e');
    await at('Invented coach (demo)');
    expect(host.logs.size).toBe(3);
    for (const log of host.logs.values())
      expect(log[0]).toMatchObject({ kind: 'visit.opened', demo: true, coachId: [...host.coaches.keys()][0] });
    // The one in front is the newest, with its three complaints, and what it holds the coach to.
    const complaints = screen.getByRole('list', { name: 'Complaints of this visit' });
    expect(within(complaints).getAllByRole('button')).toHaveLength(3);
    screen.getByRole('img', { name: /Drive verdict: stay put/i });
    await fireEvent.click(await screen.findByRole('button', { name: /Its history/ }));
    await at('Earlier visits');
    const past = await screen.findByRole('list', { name: 'Visits of this coach, newest first' });
    await waitFor(() => {
      expect(within(past).getAllByRole('button')).toHaveLength(3);
    });
    await fireEvent.click(within(past).getAllByRole('button')[0]!);
    expect(await screen.findByText(/invented for show/i)).toBeTruthy();
    await fireEvent.click(await screen.findByRole('button', { name: 'Yard' }));
    await at('3 visits in the yard');
    expect(screen.getAllByText(/^invented for show/i)).toHaveLength(3);
    expect(screen.queryByRole('button', { name: /invented visit/i })).toBeNull();
  });
});

describe('belief', () => {
  test('every cause and the unlisted ones have a share, what can hurt is marked, and the verdict stands beside', async () => {
    const walk = await openWalk(AIR, [found('walk-listen', 'driver-area')]);
    const sheet = heading();
    await press('b');
    await at('Belief now');
    const rows = within(document.querySelector<HTMLElement>('.beliefs')!).getAllByRole('listitem');
    expect(rows.at(-1)?.textContent).toContain('Not in the list');
    const first = walk.tree.causes.find(({ name }) => rows[0]?.textContent.includes(name));
    expect(first?.id).toBe('foot-valve');
    expect(first?.hazard).toBe('danger');
    expect(within(rows[0]!).getByText('can hurt someone if ignored')).toBeTruthy();
    const every = within(screen.getByText('Every cause').parentElement!).getAllByRole('listitem');
    expect(every).toHaveLength(walk.tree.causes.length + 1);
    const shares = every.map((row) => Number(row.querySelector('b')?.textContent.replace(/under 1/i, '0')));
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    expect(Math.abs(shares.reduce((sum, share) => sum + share, 0) - 100)).toBeLessThan(8);
    const wall = screen.getByRole('complementary', { name: /may it move/i });
    expect(wall.textContent).toMatch(/licensed mechanic or inspector has the last word, and so has local law/i);
    await press('Escape');
    await at(sheet);
  });
});

describe('settings', () => {
  test('units change what readings show; a refused change says that it was not written', async () => {
    const walk = await openWalk(AIR, [found('static-rate', reading(0.5, 'psi/min'))]);
    const nav = screen.getByRole('navigation', { name: 'This visit' });
    const settings = async (): Promise<void> => {
      await fireEvent.click(within(nav).getByRole('button', { name: 'Settings' }));
      await at('Settings');
    };
    await settings();
    expect(screen.getByText(/lie in the data folder\. nothing leaves this machine/i)).toBeTruthy();
    await fireEvent.click(screen.getByRole('radio', { name: 'kPa, mm, °C' }));
    await waitFor(() => {
      expect(walk.host.settings.units).toBe('metric');
    });
    await press('t');
    await at('Findings');
    expect(document.querySelector('.trail-list b')?.textContent).toBe('0.5 psi/min (3.4 kPa/min)');
    await settings();
    await fireEvent.click(screen.getByRole('radio', { name: 'psi, inch, °F' }));
    await waitFor(() => {
      expect(walk.host.settings.units).toBe('us');
    });
    await fireEvent.click(screen.getByRole('radio', { name: 'Night' }));
    await waitFor(() => {
      expect(document.documentElement.dataset['light']).toBe('night');
    });
    expect(walk.host.settings.light).toBe('night');
    walk.host.refusal = 'The disk is full.';
    await fireEvent.click(screen.getByRole('radio', { name: 'Day' }));
    expect((await screen.findByRole('alert')).textContent).toMatch(/not written\. the disk is full/i);
    expect(walk.host.settings.light).toBe('night');
    await press('t');
    await at('Findings');
    expect(document.querySelector('.trail-list b')?.textContent).toBe('0.5 psi/min');
  });
});

describe('all open checks', () => {
  test('best first with what each tells, found by name; what cannot be done says why; choosing is written', async () => {
    const walk = await openWalk(AIR, [found('walk-listen', 'nothing')], { who: 'owner-no-tools' });
    await press('k');
    await at('All open checks');
    const offered = within(screen.getByRole('list', { name: 'Checks you can do now' })).getAllByRole('listitem');
    expect(offered.length).toBeGreaterThan(2);
    expect(offered[0]?.textContent).toMatch(/Tells “.+” from “.+”\./);
    for (const row of offered) {
      const check = walk.tree.checks.find(({ name }) => name === row.querySelector('h2')?.textContent);
      expect(check?.who).toBe('owner-no-tools');
    }
    const blocked = within(screen.getByRole('list', { name: 'Checks that cannot be done now' }));
    const soap = blocked.getByRole('heading', { name: checkOf(walk.tree, 'soap-chamber').name }).closest('li');
    expect(soap?.textContent).toMatch(/needs apprentice or more\./i);
    expect(screen.queryByRole('heading', { name: checkOf(walk.tree, 'walk-listen').name })).toBeNull();

    const wanted = checkOf(walk.tree, 'static-rate').name;
    await fireEvent.input(screen.getByRole('textbox', { name: /find a check by name/i }), {
      target: { value: 'foot-OFF loss' },
    });
    expect(within(screen.getByRole('list', { name: 'Checks you can do now' })).getAllByRole('listitem')).toHaveLength(
      1,
    );
    walk.host.refusal = 'The disk is full.';
    await press('1');
    expect((await screen.findByRole('alert')).textContent).toContain('The disk is full.');
    expect(heading()).toBe('All open checks');
    walk.host.refusal = null;
    await press('1');
    expect(await written(walk, 'check.chosen')).toMatchObject({ check: 'static-rate' });
    await at(wanted);
    expect(screen.getByText('Chosen by you.', { exact: false })).toBeTruthy();
  });

  test('nothing can be chosen while the safety questions are open, and the page says so', async () => {
    const walk = await openWalk(AIR, [], { answers: null });
    const before = walk.log().length;
    await press('k');
    await at('All open checks');
    expect(screen.getByText(/the safety questions come first\. answer them, then choose/i)).toBeTruthy();
    const first = screen.getAllByRole<HTMLButtonElement>('button', { name: /^do this/i })[0];
    expect(first?.disabled).toBe(true);
    await press('1');
    await press('Escape');
    await screen.findByText(/safety first, question 1 of/i);
    expect(walk.log()).toHaveLength(before);
  });
});

describe('how the coach is built', () => {
  test('"not known" is written and not asked again; what is known is written as its value', async () => {
    const walk = await openWalk('weak-engine-brake', [found('right-conditions', 'weak')]);
    const { vocabulary } = await loaded(walk.host, 'weak-engine-brake');
    const retarder = vocabulary.layout.find(({ id }) => id === 'retarder');
    expect(heading()).toBe(retarder?.ask);
    walk.host.refusal = 'The disk is full.';
    await press('n');
    expect((await screen.findByRole('alert')).textContent).toContain('The disk is full.');
    expect(heading()).toBe(retarder?.ask);
    walk.host.refusal = null;
    await press('n');
    expect(await written(walk, 'layout.set')).toMatchObject({ feature: 'retarder', value: null });
    await waitFor(() => {
      expect(heading()).not.toBe(retarder?.ask);
    });
    const next = heading();
    await press('t');
    await at('Findings');
    await press('Escape');
    await at(next);
    await fireEvent.click(screen.getByRole('button', { name: 'Yard' }));
    await at(/visit in the yard/i);
    await press('1');
    await at(next);

    await press('u');
    await at(retarder?.ask ?? '');
    await press('1');
    expect(await written(walk, 'layout.set')).toMatchObject({ feature: 'retarder', value: 'compression' });
  });

  test('KNO-20: a coach that has both machines is answered with both, and can be changed under Coach', async () => {
    const walk = await openWalk('weak-engine-brake', [found('right-conditions', 'weak')]);
    await press('a');
    const these = await screen.findByRole('button', { name: /It has these/ });
    expect(these).toHaveProperty('disabled', true);
    await press('1');
    await press('2');
    await press('3');
    expect(screen.getByRole('button', { pressed: true }).textContent).toContain('none');
    await press('1');
    await press('2');
    await fireEvent.click(these);
    expect(await written(walk, 'layout.set')).toMatchObject({ feature: 'retarder', value: ['compression', 'other'] });
    await press('v');
    const flap = await screen.findByRole('checkbox', { name: /a flap/ });
    expect(flap).toHaveProperty('checked', true);
    await fireEvent.click(flap);
    await waitFor(() => {
      expect(walk.log().at(-1)).toMatchObject({ kind: 'layout.set', value: 'compression' });
    });
  });
});
