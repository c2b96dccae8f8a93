import { configure, fireEvent, screen, waitFor, within } from '@testing-library/svelte';
import { afterEach, expect, test, vi } from 'vitest';
import { readPracticeRecord, workedExercises } from '../../shared/practice/index.ts';
import { fakeHost, type FakeHost } from './fake-host.ts';
import { openWindow, press } from './window.ts';

// The whole window is in the document, and a busy machine takes its time to find a role in it.
configure({ asyncUtilTimeout: 15_000 });
// Two tests fetch the pages of practice for the first time.
vi.setConfig({ testTimeout: 60_000 });
afterEach(() => vi.unstubAllGlobals());

const LESSON = `format: droplight-exercise/1
title: The hiss
complaint: air-leaks-when-brake-held
words: It hisses when I stand on it
cause: service-diaphragm
passed: { wrongParts: 0 }
`;

async function practising(host: FakeHost = fakeHost()): Promise<FakeHost> {
  await openWindow(host);
  await press('x');
  await fireEvent.input(await screen.findByLabelText(/your name/i), { target: { value: 'Mina' } });
  await fireEvent.click(screen.getByRole('button', { name: /begin to practise/i }));
  await screen.findByRole('heading', { name: 'Work on a simulated coach' });
  return host;
}
const recordsOf = (host: FakeHost) =>
  [...host.learners.values()].flat().flatMap((event) => readPracticeRecord(event) ?? []);
const heading = (name: string | RegExp): Promise<HTMLElement> => screen.findByRole('heading', { level: 1, name });
/** Chooses a file as somebody would. */
async function give(label: string, name: string, text: string): Promise<void> {
  // This document's files cannot be read; a browser's can.
  const file = Object.assign(new File([], name), { text: () => Promise.resolve(text) });
  await fireEvent.change(screen.getByLabelText(label), { target: { files: [file] } });
}
/** Takes the line of a list that says this. */
async function pick(words: string): Promise<void> {
  const lines = [...document.querySelectorAll<HTMLElement>('button.answer:not(:disabled)')];
  const line = lines.find(({ textContent }) => textContent.includes(words));
  if (!line) throw new Error(`No line says “${words}”: ${lines.map(({ textContent }) => textContent).join(' | ')}`);
  await fireEvent.click(line);
}

test('[PRA-9] [PRA-20] by keyboard: an unsafe choice ends it, is in the learner’s log, and no visit knows of it', async () => {
  const host = await practising();
  await press('Enter');
  await heading('What do you do?');
  await screen.findByText(/results are drawn from the tree’s judged tables/i);
  await press('3');
  await heading('How far do you open it up?');
  await fireEvent.click(screen.getByRole('button', { name: /on the road/i }));
  await heading('Stopped: somebody could have been killed');
  screen.getByRole('heading', { name: 'What could have happened' });
  expect(document.querySelector('.score')?.textContent).toMatch(/^0 of 100/);
  const [worked] = workedExercises(recordsOf(host));
  expect(worked?.summary).toMatchObject({ how: 'stopped', score: 0 });
  expect(host.logs.size).toBe(0);
  await press('a');
  await heading('What do you do?');
  expect(workedExercises(recordsOf(host))[1]?.begun.source).toEqual(worked?.begun.source);
});

test('a short cut stands in the list beside the right way, below the cautions, and is not said how', async () => {
  const host = await practising();
  await fireEvent.change(screen.getByLabelText('Complaint', { selector: 'select' }), {
    target: { value: 'growl-through-floor-at-speed' },
  });
  await press('Enter');
  await heading('What do you do?');
  await press('3');
  await fireEvent.click(await screen.findByRole('button', { name: /^\d? ?under the coach/i }));
  await heading('How do you set about it?');
  const ways = screen.getAllByRole('button').filter((each) => each.classList.contains('answer'));
  expect(ways.map(({ textContent }) => textContent.replace(/^\d/, ''))).toEqual([
    expect.stringMatching(/^As its cautions ask/),
    expect.stringMatching(/^Quickly, as the coach stands/),
    expect.stringMatching(/^Without chocks/),
  ]);
  await press('2');
  await heading('Stopped: somebody could have been killed');
  expect(workedExercises(recordsOf(host))[0]?.choices).toEqual([
    { kind: 'access.changed', to: 'under-coach', way: 'no-stands' },
  ]);
});

test('[PRA-20] what cannot be written is said, and nothing of what it would have shown', async () => {
  const host = await practising();
  await press('Enter');
  await heading('What do you do?');
  host.refusal = 'The disk is full.';
  await press('6');
  expect((await screen.findByRole('alert')).textContent).toContain('The disk is full.');
  expect(screen.queryByText(/Droplight would now do this/)).toBeNull();
  host.refusal = null;
  await press('6');
  await screen.findByText(/safety questions come first/i);
  expect(screen.queryByRole('alert')).toBeNull();
});

test('a wrong code is refused with a sentence, and what was typed stays', async () => {
  await practising();
  const field = screen.getByLabelText<HTMLInputElement>(/code of an exercise/i);
  await fireEvent.input(field, { target: { value: '7KQ2-9A1B' } });
  await fireEvent.click(screen.getByRole('button', { name: /take this one/i }));
  expect((await screen.findByRole('alert')).textContent).toMatch(/check character|too short/);
  expect(field.value).toBe('7KQ2-9A1B');
});

test('[PRA-17] [PRA-18] an instructor’s file in, worked and passed, the log out, and played again', async () => {
  let saved: Blob | null = null;
  vi.stubGlobal(
    'URL',
    Object.assign(URL, { createObjectURL: (blob: Blob) => ((saved = blob), '#'), revokeObjectURL: () => undefined }),
  );
  const host = await practising();
  await press('t');
  await heading('Teach');
  await give('Exercise file', 'lesson.yaml', LESSON.replace('service-diaphragm', 'service-diafragm'));
  const wrong = await screen.findByRole('list', { name: 'What is wrong' });
  expect(within(wrong).getByText(/Nearest: "service-diaphragm"/)).toBeTruthy();
  await give('Exercise file', 'lesson.yaml', LESSON);
  await fireEvent.click(await screen.findByRole('button', { name: /sheet for the yard/i }));
  const paper = await screen.findByRole('article', { name: 'Sheet for the yard' });
  const fold = within(paper).getByRole('region', { name: 'Under the fold' });
  expect(fold.textContent).toMatch(/It is .*diaphragm/i);
  expect(paper.textContent.replace(fold.textContent, '')).not.toMatch(/It is .*diaphragm/i);

  await fireEvent.click(screen.getByRole('button', { name: 'Work this exercise' }));
  await heading('What do you do?');
  screen.getByText('It hisses when I stand on it');
  const { trees } = await host.call('trees.list', {});
  const card = trees.find(({ card: { id } }) => id === 'air-leaks-when-brake-held')!.card;
  const { name } = card.causes.find(({ id }) => id === 'service-diaphragm')!;
  await press('4');
  await heading('What do you think it is?');
  await fireEvent.input(screen.getByLabelText('Find by name'), { target: { value: name.slice(0, 12) } });
  await pick(name);
  await heading(/How sure are you/);
  await press('4');
  await heading('What do you do?');
  await press('5');
  await heading('Which cause do you correct?');
  await pick(name);
  if (document.querySelector('main h1')?.textContent === 'How do you set about it?') await pick('As its cautions ask');
  await heading('What do you do?');
  screen.getByText('Corrected, not proven:');
  await pick('Prove that it is cured');
  await heading(/Found and proven/);
  screen.getByRole('heading', { name: 'Passed' });
  expect(screen.getByText(/On average you were 90 in 100 sure, and right 1 of 1 times/)).toBeTruthy();

  await press('Escape');
  await heading('Practice');
  await press('t');
  await fireEvent.click(await screen.findByRole('button', { name: /save the log of mina/i }));
  await waitFor(() => {
    expect(saved).not.toBeNull();
  });
  const text = await new Promise<string>((resolve) => {
    const reader = new FileReader();
    reader.onload = () => resolve(typeof reader.result === 'string' ? reader.result : '');
    reader.readAsText(saved!);
  });
  await give('Log of a learner', 'mina.jsonl', text);
  await screen.findByText(/choices, 100 of 100/);
  await pick('choices');
  const again = await screen.findByRole('region', { name: 'The exercise again' });
  const { length } = workedExercises(recordsOf(host))[0]!.choices;
  expect(again.textContent).toContain(`Mina, step 1 of ${length}`);
  for (let i = 0; i < length; i++) await press('ArrowRight');
  await waitFor(() => {
    expect(again.textContent).toMatch(/the end.*Found and proven.*The cure is proven/s);
  });
  await give('Log of a learner', 'visit.jsonl', '{"id":"e1","v":1,"kind":"visit.opened"}');
  expect((await screen.findByRole('alert')).textContent).toContain('Visits cannot be opened here');
});
