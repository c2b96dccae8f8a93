import { configure, fireEvent, screen, waitFor, within } from '@testing-library/svelte';
import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from 'vitest';
import type { VisitEventBody } from '../../shared/visit/index.ts';
import { changedFrom, COMPLAINT, found, heading, openWalk, written, type Walk } from './walk.ts';
import { press } from './window.ts';
// Pages that come later are fetched before the clock of a test runs.
import '../../renderer/screens/plan/ExplainScreen.svelte';
import '../../renderer/screens/plan/PartsScreen.svelte';
import '../../renderer/screens/plan/PlanScreen.svelte';
import '../../renderer/screens/plan/ProofsScreen.svelte';

const GROWL = 'growl-through-floor-at-speed';
const LINE = `complaint:${COMPLAINT}:front-bearing`;
const TITLE = /Renew inner and outer bearing/;
const CONCLUDED: readonly VisitEventBody[] = [
  found('spin-feel', 'rough-front', { site: 'left front' }),
  { kind: 'halt.acknowledged', complaint: COMPLAINT },
  found('bearing-look', 'pitted-front', { site: 'left front' }),
  { kind: 'conclusion.accepted', complaint: COMPLAINT, cause: 'front-bearing' },
];
const CORRECTED: readonly VisitEventBody[] = [
  { kind: 'correction.started', complaint: COMPLAINT, cause: 'front-bearing' },
  {
    kind: 'correction.done',
    complaint: COMPLAINT,
    cause: 'front-bearing',
    partSeen: 'bad',
    parts: [],
    alsoRenewed: [],
  },
];

/** The plan of a visit that is laid out, opened by its key. */
async function openPlan(bodies: readonly VisitEventBody[] = CONCLUDED): Promise<Walk> {
  const walk = await openWalk(GROWL, bodies);
  const before = heading();
  await press('q');
  await changedFrom(before);
  await arrived(/in this order|Nothing is in the plan/);
  return walk;
}
async function go(key: string, name: RegExp): Promise<void> {
  await press(key);
  await arrived(name);
}
async function arrived(name: RegExp): Promise<void> {
  await waitFor(() => {
    expect(document.querySelector('main h1')?.textContent).toMatch(name);
  });
}
const type = (name: string | RegExp, value: string): Promise<boolean> =>
  fireEvent.change(screen.getByLabelText(name), { target: { value } });

/** What a file says; this document's files cannot tell it themselves. */
const textOf = (file: Blob): Promise<string> =>
  new Promise((resolve) => {
    const reader = new FileReader();
    reader.onload = () => resolve(typeof reader.result === 'string' ? reader.result : '');
    reader.readAsText(file);
  });

// Whether something is hidden is not asked here, and asking takes most of the time.
beforeAll(() => {
  configure({ defaultHidden: true });
});
afterAll(() => {
  configure({ defaultHidden: false });
});
afterEach(() => {
  vi.restoreAllMocks();
});

describe('the plan', () => {
  test('is empty with a way on before anything is concluded', async () => {
    await openPlan([]);
    expect(heading()).toBe('Nothing is in the plan yet');
    expect(screen.getByText(/add a line by hand/)).toBeTruthy();
  });

  test('shows the line under its ladder with danger, hours, parts, and what may be driven; keys agree and decline', async () => {
    const walk = await openPlan();
    expect(screen.getByRole('heading', { name: 'Hub open, left front' })).toBeTruthy();
    expect(screen.getByText(/3–6 h, 2.5 h of it opening and closing/)).toBeTruthy();
    expect(screen.getByText('0.5–3.5 h')).toBeTruthy();
    expect(screen.getAllByText('Stay put').length).toBeGreaterThan(0);
    expect(screen.getByRole('row', { name: /^Hub seal.*1 measure before ordering/ })).toBeTruthy();
    const card = screen.getByRole('article', { name: TITLE });
    expect(within(card).getByText('danger')).toBeTruthy();

    await press('1');
    expect(within(card).getByText(/pitted, flaked or scored/)).toBeTruthy();
    expect(within(card).getByText(/Replace in complete sets/)).toBeTruthy();
    walk.host.refusal = 'The disk is full.';
    await press('a');
    expect((await screen.findByRole('alert')).textContent).toContain('The disk is full.');
    expect(
      within(card)
        .getByRole('button', { name: /^Agree/ })
        .getAttribute('aria-pressed'),
    ).toBe('false');
    walk.host.refusal = null;
    await press('a');
    expect(await written(walk, 'plan.decided')).toMatchObject({ line: LINE, decision: 'agreed' });

    await fireEvent.input(screen.getByLabelText('Who decides for the customer'), {
      target: { value: 'Invented owner' },
    });
    await fireEvent.input(screen.getByLabelText('What the customer says'), { target: { value: 'Not now.' } });
    await press('x');
    await screen.findByText(/You \(Invented owner\) decided against it\. Your words: “Not now\.”/);
    expect(walk.last()).toMatchObject({ decision: 'declined', who: 'Invented owner', words: 'Not now.' });
    // Declined lines leave the hours; the verdict stays.
    expect(screen.queryByText(/of it opening and closing/)).toBeNull();
    expect(screen.getAllByText('Stay put').length).toBeGreaterThan(0);
  });

  test('a line by hand says what is missing, keeps what was typed, and stands in the plan', async () => {
    const walk = await openPlan([]);
    await press('n');
    await fireEvent.click(screen.getByRole('button', { name: 'Add the line' }));
    expect(screen.getByText('Say what is done.')).toBeTruthy();
    await fireEvent.input(screen.getByLabelText('What is done'), { target: { value: 'Renew the wiper blades' } });
    await fireEvent.input(screen.getByLabelText(/Hours at best/), { target: { value: '2' } });
    await fireEvent.input(screen.getByLabelText('At worst'), { target: { value: '1' } });
    await fireEvent.click(screen.getByRole('button', { name: 'Add the line' }));
    expect(screen.getByText(/Hours are “2” to “1”/)).toBeTruthy();
    await fireEvent.input(screen.getByLabelText('At worst'), { target: { value: '2 1/2' } });
    await fireEvent.click(screen.getByRole('button', { name: 'Add the line' }));
    expect(await written(walk, 'plan.line-added')).toMatchObject({
      title: 'Renew the wiper blades',
      minutes: [120, 150],
    });
    expect(await screen.findByRole('article', { name: /Renew the wiper blades/ })).toBeTruthy();
  });

  test('a labour rate gives a band; what is no figure stays and is said', async () => {
    const walk = await openPlan();
    await type('Labour rate an hour', 'much');
    expect(screen.getByText(/“much” is no figure from 0 up/)).toBeTruthy();
    await type('Labour rate an hour', '100');
    expect(await written(walk, 'plan.basis-set')).toMatchObject({ basis: 'labour-rate', value: 100 });
    expect(await screen.findByText('50 to 350, without 5 parts not priced')).toBeTruthy();

    // A proposal is taken into the plan once.
    await press('1');
    await fireEvent.click(screen.getByRole('button', { name: /Take it into the plan: kingpin play check/ }));
    expect(await written(walk, 'plan.line-added')).toMatchObject({ title: 'kingpin play check', of: LINE });
    await waitFor(() => {
      expect(screen.queryByRole('button', { name: /Take it into the plan: kingpin/ })).toBeNull();
    });
  });
});

describe('the parts', () => {
  test('are measured before they are ordered, copied, and saved as a table', async () => {
    const walk = await openPlan();
    await go('l', /Parts, ordered once/);
    await fireEvent.click(screen.getByRole('button', { name: /Hub seal/ }));
    await type(/Shaft diameter/, 'thick');
    expect(screen.getByText(/“thick” is no length/)).toBeTruthy();
    await type(/Shaft diameter/, '4 1/2');
    expect(await written(walk, 'part.measured')).toMatchObject({
      part: 'hub-seal',
      what: 'shaft-diameter',
      place: 'left front',
      found: { value: 4.5, unit: 'in' },
    });
    await type(/^Bore/, '6');
    await waitFor(() => expect(screen.getByText(/Shaft diameter.*4.5 in/)).toBeTruthy());

    const copied = vi.fn(() => Promise.resolve());
    Object.defineProperty(navigator, 'clipboard', { value: { writeText: copied }, configurable: true });
    await press('y');
    expect(await screen.findByText(/^Copied/)).toBeTruthy();
    expect(copied).toHaveBeenCalledWith(expect.stringMatching(/1 × hub seal \[order\]: left front/));
    copied.mockRejectedValueOnce(new Error('not allowed'));
    await press('y');
    expect(await screen.findByText(/could not be copied \(not allowed\)/)).toBeTruthy();

    let saved: Blob | undefined;
    URL.createObjectURL = (blob) => {
      saved = blob instanceof Blob ? blob : undefined;
      return 'blob:parts';
    };
    URL.revokeObjectURL = () => undefined;
    const click = vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(() => undefined);
    await press('v');
    expect(click).toHaveBeenCalledOnce();
    expect(await textOf(saved!)).toMatch(/"hub seal","1","left front","order"/);
  });
});

test('a line is explained: what was found, and why it is not the others', async () => {
  await openPlan();
  await press('1');
  await go('e', /The rollers that carry the front wheel have gone rough/);
  expect(screen.getByRole('img', { name: /^Six inner rings/ })).toBeTruthy();
  const rival = screen.getByRole('heading', { level: 3, name: 'Cupped or scalloped steer tyre' }).closest('li')!;
  expect(within(rival).getByText('Why it is not that:')).toBeTruthy();
  expect(within(rival).getByText(/gritty or growling at a front wheel, left front/)).toBeTruthy();
  expect(screen.getByText(/on judged odds, not statistics/)).toBeTruthy();
  await go('Escape', /in this order/);
});

describe('proof and reminders', () => {
  test('reminders are proposed, set and done; one without a time is not set', async () => {
    const walk = await openPlan();
    await go('r', /Proof and reminders/);
    await fireEvent.click(screen.getByRole('button', { name: /Set it: Torque the wheel nuts/ }));
    expect(await written(walk, 'reminder.set')).toMatchObject({ dueMiles: 50, line: LINE });
    await fireEvent.input(screen.getByLabelText('Another thing to look at'), { target: { value: 'The tag hub' } });
    await fireEvent.click(screen.getByRole('button', { name: 'Set the reminder' }));
    expect(screen.getByText('Give a date or a distance.')).toBeTruthy();
    await fireEvent.input(screen.getByLabelText('By this date'), { target: { value: '2026-06-01' } });
    await fireEvent.click(screen.getByRole('button', { name: 'Set the reminder' }));
    expect(await screen.findByText(/by 2026-06-01/)).toBeTruthy();
    await fireEvent.click(screen.getByRole('button', { name: 'Done: The tag hub' }));
    expect(await written(walk, 'reminder.done')).toBeTruthy();
  });

  test('the visit closes over an unproven correction only with the reason beside it', async () => {
    const walk = await openPlan([...CONCLUDED, ...CORRECTED]);
    await go('r', /Proof and reminders/);
    await fireEvent.click(screen.getByRole('button', { name: 'Close the visit' }));
    expect(await screen.findByText(/is not proven\. Prove it, or write why/)).toBeTruthy();
    expect(walk.last()?.kind).toBe('correction.done');
    await fireEvent.input(screen.getByLabelText(/Left unproven because/), {
      target: { value: 'he drives home first' },
    });
    await fireEvent.click(screen.getByRole('button', { name: 'Close the visit' }));
    expect(await written(walk, 'visit.closed-out')).toMatchObject({
      unproven: [{ line: LINE, because: 'he drives home first' }],
    });
    expect(await screen.findByText(/because: he drives home first/)).toBeTruthy();
  });

  test('a line by hand is done and proven here', async () => {
    const walk = await openPlan([
      { kind: 'plan.line-added', line: 'line:1', title: 'Renew the blades', why: '', danger: false, urgency: 'soon' },
    ]);
    await go('r', /Proof and reminders/);
    await fireEvent.input(screen.getByLabelText('What was done or seen'), { target: { value: 'wipes clean' } });
    await fireEvent.click(screen.getByRole('button', { name: 'It is done: Renew the blades' }));
    expect(await written(walk, 'plan.done')).toMatchObject({ words: 'wipes clean' });
    await fireEvent.click(await screen.findByRole('button', { name: 'It held: Renew the blades' }));
    await written(walk, 'plan.proven');
    expect(await screen.findByText(/^done and proven/)).toBeTruthy();
  });
});
