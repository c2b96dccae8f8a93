import { fireEvent, screen, waitFor, within } from '@testing-library/svelte';
import { beforeEach, describe, expect, test } from 'vitest';
// Pages that come later in the window are read once, before the first test waits for one.
import '../../renderer/screens/ArrivalScreen.svelte';
import '../../renderer/screens/bench/BenchScreen.svelte';
import '../../renderer/screens/CoachesScreen.svelte';
import '../../renderer/screens/CoachProfileScreen.svelte';
import '../../renderer/screens/HistoryScreen.svelte';
import '../../renderer/screens/VisitScreen.svelte';
import { EVENT_VERSION, newEventId, type VisitEventBody } from '../../shared/visit/index.ts';
import { fakeHost, type FakeHost } from './fake-host.ts';
import { changedFrom, heading, layOut, openWalk } from './walk.ts';
import { openWindow, press } from './window.ts';

const COACH = 'c-known';
const at = '2026-05-13T08:00:00.000Z';

/** A coach on the fake disk, with what is known of it. */
function putCoach(
  host: FakeHost,
  known: readonly (readonly [string, string | number | boolean | readonly string[], string?])[] = [],
): void {
  host.coaches.set(COACH, [
    { id: newEventId(1, 0, 'seed'), v: 1, at, by: '', kind: 'coach.opened', name: 'Invented coach 7', demo: false },
    ...known.map(([field, value, unit], i) => ({
      ...{ id: newEventId(2 + i, i, 'seed'), v: 1, at, by: 'Mina', kind: 'coach.set', field, value },
      ...(unit === undefined ? {} : { unit }),
    })),
  ]);
}
const log = (host: FakeHost): readonly { kind: string; [key: string]: unknown }[] => host.coaches.get(COACH) ?? [];
const visitLog = (host: FakeHost): readonly { kind: string; [key: string]: unknown }[] =>
  [...host.logs.values()].at(-1) ?? [];

async function openProfile(host: FakeHost): Promise<void> {
  await openWindow(host);
  await press('v');
  await fireEvent.click(await screen.findByRole('button', { name: /Invented coach 7/ }));
  await screen.findByRole('heading', { level: 1, name: 'Invented coach 7' });
}
/** From any page of a visit to its hub; on a check the key w asks why. */
async function toHub(): Promise<void> {
  await fireEvent.click(
    within(screen.getByRole('navigation', { name: 'This visit' })).getByRole('button', { name: /^Visit/ }),
  );
}
/** Opens the section of a field and its editor. */
async function edit(words: string): Promise<HTMLElement> {
  await fireEvent.click(screen.getByRole('button', { name: `Set: ${words}` }));
  return screen.findByRole('form', { name: words });
}

describe('coaches', () => {
  test('a profile begins with a name and is listed', async () => {
    const host = await openWindow();
    await press('v');
    expect(await screen.findByText(/No coach has a profile yet/)).toBeTruthy();
    await fireEvent.input(screen.getByRole('textbox', { name: /Name or number/ }), {
      target: { value: 'The blue one' },
    });
    await fireEvent.click(screen.getByRole('button', { name: 'Make a profile' }));
    await screen.findByRole('heading', { level: 1, name: 'The blue one' });
    expect([...host.coaches.values()][0]).toMatchObject([{ kind: 'coach.opened', name: 'The blue one', demo: false }]);
    await press('Escape');
    expect(await screen.findByRole('button', { name: /The blue one/ })).toBeTruthy();
  });

  test('a field says what uses it; a refusal keeps what was typed; a good figure is on the disk', async () => {
    const host = fakeHost();
    putCoach(host);
    await openProfile(host);
    await fireEvent.input(screen.getByRole('textbox', { name: /Find a field/ }), { target: { value: 'drive axle' } });
    expect(screen.getAllByText(/Used by: Bench: What turns how fast/).length).toBeGreaterThan(0);
    const editor = await edit('Ratio of the drive axle');
    const field = within(editor).getByLabelText('Ratio of the drive axle');
    await fireEvent.input(field, { target: { value: '41' } });
    await fireEvent.submit(editor);
    expect(within(editor).getByRole('alert').textContent).toMatch(
      /41 to 1 is outside what a coach has \(2 to 8 to 1\)/,
    );
    expect(field).toHaveProperty('value', '41');
    expect(log(host)).toHaveLength(1);
    await fireEvent.input(field, { target: { value: '4.1' } });
    await fireEvent.submit(editor);
    expect(await screen.findByText('4.1 to 1')).toBeTruthy();
    expect(log(host).at(-1)).toMatchObject({ kind: 'coach.set', field: 'ratio.axle', value: 4.1, unit: 'to-1' });
    await press('u');
    await waitFor(() => expect(screen.queryByText('4.1 to 1')).toBeNull());
    expect(log(host).at(-1)?.kind).toBe('event.taken-back');
  });

  test('a refusal of the disk keeps the editor open with what was typed', async () => {
    const host = fakeHost();
    putCoach(host);
    await openProfile(host);
    await fireEvent.input(screen.getByRole('textbox', { name: /Find a field/ }), { target: { value: 'drive axle' } });
    const editor = await edit('Ratio of the drive axle');
    await fireEvent.input(within(editor).getByLabelText('Ratio of the drive axle'), { target: { value: '4.1' } });
    host.refusal = 'The disk is full.';
    await fireEvent.submit(editor);
    expect((await screen.findByText('The disk is full.')).closest('[role=alert]')).toBeTruthy();
    expect(within(editor).getByLabelText('Ratio of the drive axle')).toHaveProperty('value', '4.1');
  });

  describe('[KNO-20] several kinds at once', () => {
    const ASK = /^What holds the coach back downhill/;
    const opened = async (how: 'Set' | 'Change'): Promise<HTMLElement> => {
      await fireEvent.click(await screen.findByRole('button', { name: new RegExp(`^${how}: ${ASK.source.slice(1)}`) }));
      return screen.findByRole('form', { name: ASK });
    };
    const boxes = (editor: HTMLElement): HTMLElement[] => within(editor).getAllByRole('checkbox');
    const shown = (editor: HTMLElement): boolean[] =>
      within(editor)
        .getAllByRole<HTMLInputElement>('checkbox')
        .map(({ checked }) => checked);
    const known = async (words: RegExp): Promise<void> => {
      expect((await screen.findByText(words, { selector: '.known' })).textContent).toMatch(words);
    };
    const open = async (host: FakeHost): Promise<void> => {
      await openProfile(host);
      await fireEvent.input(screen.getByRole('textbox', { name: /Find a field/ }), { target: { value: 'downhill' } });
    };

    test('two are kept and read back, one is taken away, and one that stands alone takes the place of both', async () => {
      const host = fakeHost();
      putCoach(host);
      await open(host);
      let editor = await opened('Set');
      expect(document.activeElement).toBe(boxes(editor)[0]);
      await fireEvent.click(boxes(editor)[1]!);
      await fireEvent.click(boxes(editor)[0]!);
      await fireEvent.submit(editor);
      await known(/barks through the exhaust and a flap/);
      // In the order of the vocabulary, however they were ticked.
      expect(log(host).at(-1)).toMatchObject({ field: 'layout.retarder', value: ['compression', 'other'] });
      editor = await opened('Change');
      expect(shown(editor)).toEqual([true, true, false]);
      await fireEvent.click(boxes(editor)[0]!);
      await fireEvent.submit(editor);
      await known(/^a flap in the exhaust pipe/);
      expect(log(host).at(-1)).toMatchObject({ field: 'layout.retarder', value: 'other' });
      editor = await opened('Change');
      await fireEvent.click(boxes(editor)[2]!);
      expect(shown(editor)).toEqual([false, false, true]);
      await fireEvent.submit(editor);
      await known(/^none/);
      expect(log(host).at(-1)).toMatchObject({ field: 'layout.retarder', value: 'none' });
      await press('u');
      await known(/^a flap in the exhaust pipe/);
    });

    test('nothing ticked: refused where nothing was known, else not known any more; both can be taken back', async () => {
      const host = fakeHost();
      putCoach(host);
      await open(host);
      let editor = await opened('Set');
      await fireEvent.submit(editor);
      expect(within(editor).getByRole('alert').textContent).toMatch(/nothing is chosen\. Choose what it has/);
      expect(log(host)).toHaveLength(1);
      await fireEvent.click(boxes(editor)[0]!);
      await fireEvent.click(boxes(editor)[1]!);
      await fireEvent.submit(editor);
      await known(/barks through the exhaust and a flap/);
      editor = await opened('Change');
      await fireEvent.click(boxes(editor)[0]!);
      await fireEvent.click(boxes(editor)[1]!);
      expect(within(editor).getByRole('status').textContent).toMatch(/Nothing is ticked.*not known any more/);
      await fireEvent.submit(editor);
      await known(/^not known/);
      expect(log(host).at(-1)).toMatchObject({ kind: 'coach.cleared', field: 'layout.retarder' });
      await press('u');
      await known(/barks through the exhaust and a flap/);
    });

    test('a visit begun for it starts with both', async () => {
      const host = fakeHost();
      putCoach(host, [['layout.retarder', ['compression', 'other']]]);
      await openProfile(host);
      await press('a');
      await screen.findByRole('heading', { level: 1, name: 'The coach has arrived' });
      await fireEvent.input(screen.getByLabelText(/What the owner says/), {
        target: { value: 'the engine brake is weak' },
      });
      await fireEvent.click(await screen.findByRole('button', { name: /^Open (the|1) complaint/ }));
      await screen.findByText(/question 1 of/i);
      expect(visitLog(host)).toContainEqual(
        expect.objectContaining({ kind: 'layout.set', feature: 'retarder', value: ['compression', 'other'] }),
      );
    });
  });

  test('a visit begun for a coach starts with its layout, and the bench with its figures', async () => {
    const host = fakeHost();
    putCoach(host, [
      ['layout.engine', 'two-stroke'],
      ['ratio.axle', 4.1, 'to-1'],
    ]);
    await openProfile(host);
    await press('m');
    await fireEvent.click(await screen.findByRole('button', { name: /What turns how fast/ }));
    expect(await screen.findByLabelText('Axle ratio')).toHaveProperty('value', '4.1');
    expect(screen.getByText(/filled from the profile of Invented coach 7/)).toBeTruthy();
    await press('Escape');
    await screen.findByRole('heading', { level: 1, name: 'Invented coach 7' });
    await press('a');
    await screen.findByRole('heading', { level: 1, name: 'The coach has arrived' });
    await fireEvent.input(screen.getByLabelText(/What the owner says/), {
      target: { value: 'it growls through the floor at speed\nhissing when I stand on the brake' },
    });
    await fireEvent.click(await screen.findByRole('button', { name: /Open 2 complaints/ }));
    await screen.findByText(/question 1 of/i);
    expect(visitLog(host).map(({ kind }) => kind)).toEqual([
      'visit.opened',
      'person.set',
      'layout.set',
      'complaint.opened',
      'complaint.opened',
    ]);
    expect(visitLog(host)[0]).toMatchObject({ coach: 'Invented coach 7', coachId: COACH });
    expect(visitLog(host)[2]).toMatchObject({ feature: 'engine', value: 'two-stroke' });
    expect(
      visitLog(host)
        .slice(3)
        .map(({ tree }) => tree),
    ).toEqual(['growl-through-floor-at-speed', 'air-leaks-when-brake-held']);
  });
});

describe('the hub of a visit', () => {
  test('shows each complaint with its standing, makes a profile, and offers back what was learned', async () => {
    const walk = await openWalk('oil-drip-under-engine', [
      { kind: 'layout.set', feature: 'engine', value: 'four-stroke' },
      { kind: 'layout.set', feature: 'cylinders', value: '6' },
    ]);
    await toHub();
    await screen.findByRole('heading', { level: 1, name: 'Invented coach 12' });
    const complaint = within(screen.getByRole('list', { name: 'Complaints of this visit' })).getByRole('button');
    expect(complaint.textContent).toMatch(
      /Oil drips under the engine.*as the owner said it.*Being checked.*May it move/s,
    );
    await fireEvent.click(await screen.findByRole('button', { name: /Make a profile from this visit/ }));
    expect(await screen.findByText(/2 fields? known/)).toBeTruthy();
    expect(walk.last()).toMatchObject({ kind: 'coach.linked' });
    const [id, coach] = [...walk.host.coaches][0]!;
    expect(coach[1]).toMatchObject({ kind: 'coach.set', field: 'layout.engine', value: 'four-stroke' });
    expect(coach[2]).toMatchObject({ kind: 'coach.set', field: 'engine.cylinders', value: 6 });
    await walk.host.call('coaches.append', {
      coach: id,
      events: [{ ...coach[1]!, id: newEventId(Date.now() + 5, 1, 'zz'), value: 'two-stroke' }],
    });
    await press('t');
    await press('w');
    expect(await screen.findByText(/where the profile says two stroke/)).toBeTruthy();
    await fireEvent.click(screen.getByRole('button', { name: 'Keep it in the profile' }));
    await waitFor(() => expect(screen.queryByText(/where the profile says/)).toBeNull());
    expect(walk.host.coaches.get(id)?.at(-1)).toMatchObject({ field: 'layout.engine', value: 'four-stroke' });
  });
});

describe('the arrival', () => {
  const choose = async (label: string, value: string): Promise<void> => {
    await fireEvent.change(screen.getByLabelText(label), { target: { value } });
  };
  test('spots point to fluids in words; a finding is recorded only when it is confirmed', async () => {
    const walk = await openWalk('oil-drip-under-engine');
    const before = walk.log().length;
    await toHub();
    await fireEvent.click(await screen.findByRole('button', { name: /Arrival/ }));
    await screen.findByRole('heading', { level: 1, name: 'The coach has arrived' });
    await fireEvent.click(screen.getByRole('button', { name: 'Note the spot' }));
    expect((await screen.findByRole('alert')).textContent).toMatch(/Not noted: say first where the spot lay/);
    expect(screen.queryByRole('list', { name: 'Spots on the sheet' })).toBeNull();
    await choose('Where', 'engine-crank-end');
    await choose('Colour on white', 'black-brown');
    await choose('Feel and smell', 'slippery');
    await choose('Size', 'coin');
    await fireEvent.click(screen.getByRole('button', { name: 'Note the spot' }));
    const spots = await screen.findByRole('list', { name: 'Spots on the sheet' });
    expect(spots.textContent).toMatch(/1\. Under the damper or fan end.*common practice.*Engine oil/s);
    expect(screen.getByRole('img', { name: /Spot 1: under the damper/ })).toBeTruthy();
    const offers = screen.getByRole('list', { name: 'Offered findings' });
    expect(within(offers).getAllByRole('listitem')).toHaveLength(2);
    // Nothing has become a finding by itself.
    expect(
      walk
        .log()
        .slice(before)
        .map(({ kind }) => kind),
    ).toEqual(['drip.spot-seen']);
    await fireEvent.click(within(offers).getByRole('button', { name: /black or brown, slippery, engine oil/ }));
    await waitFor(() => expect(walk.last()?.kind).toBe('finding.recorded'));
    expect(walk.last()).toMatchObject({
      check: 'fluid-id',
      value: { kind: 'result', result: 'black-oil' },
      note: expect.stringContaining('Drip sheet, spot 1') as unknown,
      minutes: 0,
    });
    await waitFor(() =>
      expect(within(screen.getByRole('list', { name: 'Offered findings' })).getAllByRole('listitem')).toHaveLength(1),
    );
  });

  test('work and trip are noted, wrong ones refused, and taken back one by one', async () => {
    const walk = await openWalk('oil-drip-under-engine');
    await toHub();
    await fireEvent.click(await screen.findByRole('button', { name: /Arrival/ }));
    await screen.findByRole('heading', { level: 1, name: 'The coach has arrived' });
    await fireEvent.click(screen.getByRole('button', { name: 'Note the work' }));
    expect((await screen.findByRole('alert')).textContent).toContain('Say what was done');
    await choose('Part of the coach', 'oil-or-filter');
    await fireEvent.input(screen.getByLabelText('What was done'), { target: { value: 'oil change' } });
    await fireEvent.click(screen.getByRole('button', { name: 'Note the work' }));
    await screen.findByText(/Oil or oil-filter change: oil change/);
    await fireEvent.input(screen.getByLabelText('How far'), { target: { value: 'far' } });
    await fireEvent.click(screen.getByRole('button', { name: 'Note the trip' }));
    expect((await screen.findByRole('alert')).textContent).toContain('“far” is not a distance');
    await fireEvent.input(screen.getByLabelText('How far'), { target: { value: '1,200' } });
    await fireEvent.click(screen.getByRole('button', { name: 'Note the trip' }));
    await waitFor(() => expect(walk.last()).toMatchObject({ kind: 'arrival.trip-told', distance: { value: 1200 } }));
    await fireEvent.click(screen.getByRole('button', { name: 'Take back: oil change' }));
    await waitFor(() => expect(screen.queryByText(/Oil or oil-filter change: oil change/)).toBeNull());
  });
});

describe('history', () => {
  let host: FakeHost;
  beforeEach(async () => {
    const reading = (value: number, unit: string): VisitEventBody => ({
      kind: 'finding.recorded',
      complaint: 'c-1',
      finding: 'f-1',
      check: 'applied-rate',
      value: { kind: 'reading', reading: { value, unit } },
    });
    ({ host } = await layOut('air-leaks-when-brake-held'));
    const [first, person, complaint, ...answers] = host.logs.get('v-1')!;
    const visits: readonly (readonly [string, string, VisitEventBody])[] = [
      ['v-1', '2024-05-13', reading(2, 'psi/min')],
      ['v-2', '2025-05-13', reading(2.5, 'psi/min')],
      ['v-3', '2026-05-13', reading(24.1, 'kPa/min')],
    ];
    for (const [id, day, body] of visits)
      host.logs.set(
        id,
        [
          { ...first!, coachId: COACH },
          person!,
          complaint!,
          ...answers,
          { ...body, by: '', id: newEventId(9000, 0, 'zz'), v: EVENT_VERSION, at },
        ].map((event) => ({ ...event, at: `${day}T08:00:00.000Z` })),
      );
    putCoach(host);
  });

  test('earlier visits are listed, and readings drawn and tabled in one unit with where the next result begins', async () => {
    await openProfile(host);
    const before = heading();
    await press('l');
    await changedFrom(before);
    const list = await screen.findByRole('list', { name: 'Visits of this coach, newest first' });
    await waitFor(() => expect(within(list).getAllByRole('button')).toHaveLength(3));
    expect(within(list).getAllByRole('button')[0]?.textContent).toMatch(
      /2026-05-13.*Air escapes.*not closed.*1 reading/s,
    );
    expect(await screen.findByRole('img', { name: /3 readings from 2024-05-13 to 2026-05-13/ })).toBeTruthy();
    const table = screen.getByRole('table', { name: /every reading/ });
    // 24.1 kPa a minute are 3.495 psi a minute (1 psi = 6.894757 kPa, NIST SP 811).
    expect(
      within(table)
        .getAllByRole('row')
        .map((row) => row.textContent),
    ).toEqual([
      expect.stringContaining('Day'),
      expect.stringContaining('2 psi/min'),
      expect.stringContaining('2.5 psi/min'),
      expect.stringMatching(/3\.5 psi\/min.*24\.1 kPa\/min/),
    ]);
    expect(await screen.findByText(/Dashed line, from 3 psi\/min: over the limit/)).toBeTruthy();
    expect(screen.getByRole('button', { name: /Proven cures, case by case/ })).toBeTruthy();
  });
});
