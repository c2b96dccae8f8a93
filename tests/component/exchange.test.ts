import { configure, fireEvent, screen, waitFor, within } from '@testing-library/svelte';
import { describe, expect, test, vi } from 'vitest';
import { SCREENS } from '../../renderer/state/screens.ts';
import { VISIT_ROOMS } from '../../renderer/presenters/visit-rooms.ts';
import { fakeHost, type FakeHost } from './fake-host.ts';
import { beginVisit, openWindow, press } from './window.ts';

// The whole window is in the document, and a busy machine takes its time to find a role in it.
configure({ asyncUtilTimeout: 15_000 });

const NOTHING = { visits: [], unchanged: 0, coaches: 0, packs: [], drafts: 0, practice: 0, settings: 'none' } as const;

async function onExchange(host?: FakeHost): Promise<FakeHost> {
  const over = await openWindow(host);
  await press('f');
  await screen.findByRole('heading', { level: 1, name: 'Exchange and backup' });
  return over;
}

/** A chosen file; this document's files cannot be read, a browser's can. */
async function choose(label: RegExp, size = 7_000_000): Promise<void> {
  const slice = (from: number, to: number): unknown => ({
    arrayBuffer: () => Promise.resolve(new ArrayBuffer(Math.min(to, size) - from)),
  });
  const file = Object.assign(new File([], 'visit.zip'), { slice });
  Object.defineProperty(file, 'size', { value: size });
  await fireEvent.change(screen.getByLabelText(label), { target: { files: [file] } });
}

describe('the page of exchange and backup', () => {
  test('a file goes over in pieces; a refusal names each fault, keeps the choice, and it can be tried again', async () => {
    const host = await onExchange();
    host.takeIn = () => ({
      taken: null,
      problems: [
        { level: 'error', code: 'wrong-hash', file: 'photos/x.png', line: null, message: 'It was changed on the way.' },
      ],
    });
    await choose(/Take in a visit/);
    await screen.findByRole('heading', { name: '“visit.zip” was not taken in' });
    expect([...host.uploads.values()].map((pieces) => pieces.map((piece) => atob(piece).length))).toEqual([
      [3_000_000, 3_000_000, 1_000_000],
    ]);
    expect(screen.getByRole('list', { name: 'What is wrong' }).textContent).toMatch(
      /photos\/x\.png.*wrong-hash.*changed/s,
    );
    host.takeIn = () => ({
      taken: { ...NOTHING, visits: [{ visit: 'v-9', coach: 'Invented coach 7', isNew: false, entries: 2, photos: 1 }] },
      problems: [],
    });
    await fireEvent.click(screen.getByRole('button', { name: 'Try it again' }));
    const came = await screen.findByRole('region', { name: 'Taken in' });
    expect(came.textContent).toContain(
      'Both sides have worked on it. 2 entries and 1 photo that this machine did not have were added; nothing was taken away.',
    );
    expect(within(came).getByRole('button', { name: 'Open the visit of Invented coach 7' })).toBeTruthy();
    expect(screen.queryByText(/was not taken in/)).toBeNull();
  });

  test('a backup that comes back says what came and what stayed', async () => {
    const host = await onExchange();
    const asked: string[] = [];
    host.takeIn = (method) => {
      asked.push(method);
      return { taken: { ...NOTHING, unchanged: 3, coaches: 2, packs: ['yard-notes'], settings: 'kept' }, problems: [] };
    };
    await choose(/Restore a backup/, 10);
    const came = await screen.findByRole('region', { name: 'Taken in' });
    expect(
      within(came)
        .getAllByText(/\.$/)
        .map(({ textContent }) => textContent),
    ).toEqual([
      'Everything of 3 visits was here already. Nothing was changed.',
      '2 coaches came along.',
      'Packs of trees that came back: yard-notes.',
      'The settings of this machine stay as they are.',
    ]);
    expect(asked).toEqual(['backup.restore']);
  });

  test('a backup is made by its key, says where it lies, and a copy is put together from its pieces', async () => {
    await onExchange();
    const blobs: Blob[] = [];
    URL.createObjectURL = vi.fn((blob: Blob) => {
      blobs.push(blob);
      return 'blob:made';
    });
    const clicked = vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(() => undefined);
    await press('3');
    const made = await screen.findByRole('region', { name: 'The file is made' });
    expect(made.textContent).toMatch(/backup\.zip.*1 kB.*the folder of exports/);
    await fireEvent.click(within(made).getByRole('button', { name: 'Save a copy' }));
    await waitFor(() => expect(clicked).toHaveBeenCalledOnce());
    expect(blobs.map(({ size, type }) => [size, type])).toEqual([[6, 'application/zip']]);
    clicked.mockRestore();
  });

  test('an open visit is exported from its own pages; a full disk is said and nothing is made', async () => {
    const host = await openWindow();
    await beginVisit('growl through the floor above 50', /growl through the floor/i);
    await fireEvent.click(screen.getByRole('button', { name: 'More' }));
    await fireEvent.click(await screen.findByRole('button', { name: /Exchange and backup/ }));
    host.refusal = 'The disk is full.';
    await fireEvent.click(await screen.findByRole('button', { name: /Export this visit: Invented coach 12/ }));
    expect((await screen.findByRole('alert')).textContent).toContain('Not done. The disk is full.');
    expect(screen.queryByRole('region', { name: 'The file is made' })).toBeNull();
    host.refusal = null;
    await press('1');
    expect((await screen.findByRole('region', { name: 'The file is made' })).textContent).toContain('visit-v-');
    await press('Escape');
    await screen.findByText(/question 1 of/i);
  });

  test('the rooms of a visit lead to pages that there are', () => {
    expect(VISIT_ROOMS.filter(({ screen: page }) => !SCREENS.includes(page))).toEqual([]);
    expect(VISIT_ROOMS.map(({ screen: page }) => page)).toContain('exchange');
  });
});

describe('a press while another is being written', () => {
  test('is not taken: one entry, and the button keeps the focus', async () => {
    const host = await openWindow();
    await beginVisit('growl through the floor above 50', /growl through the floor/i);
    const log = [...host.logs.values()][0]!;
    const before = log.length;
    let go: () => void = () => undefined;
    host.slow = new Promise((resolve) => {
      go = resolve;
    });
    const no = screen.getByRole('button', { name: /No, I looked/ });
    no.focus();
    await fireEvent.click(no);
    await fireEvent.click(no);
    await press('2');
    expect(document.activeElement).toBe(no);
    expect(log.length).toBe(before);
    host.slow = null;
    go();
    await screen.findByText(/question 2 of/i);
    expect(log.slice(before).map(({ kind }) => kind)).toEqual(['stop.answered']);
    // The next press counts again.
    await fireEvent.click(screen.getByRole('button', { name: /No, I looked/ }));
    await screen.findByText(/question 3 of/i);
    expect(log.length).toBe(before + 2);
  });
});

describe('a refused write', () => {
  const FULL = 'The disk is full (ENOSPC). What you typed is still in the window; put the disk right and do it again.';

  test('on the page of the coach shows what holds, not what was pressed', async () => {
    const host = await openWindow();
    await beginVisit('growl through the floor above 50', /growl through the floor/i);
    await press('v');
    await screen.findByRole('heading', { level: 1, name: 'How is this coach built?' });
    const [group] = screen.getAllByRole('group');
    const radios = within(group!).getAllByRole<HTMLInputElement>('radio');
    const notKnown = radios.at(-1)!;
    expect(notKnown.checked).toBe(true);
    host.refusal = FULL;
    radios[0]!.focus();
    await fireEvent.click(radios[0]!);
    expect((await screen.findByRole('alert')).textContent).toContain(FULL);
    await waitFor(() => expect(radios.map(({ checked }) => checked)).toEqual(radios.map((each) => each === notKnown)));
    host.refusal = null;
    await fireEvent.click(radios[0]!);
    await waitFor(() => expect(radios.map(({ checked }) => checked)).toEqual(radios.map((_, i) => i === 0)));
    await waitFor(() => expect(screen.queryByRole('alert')).toBeNull());
  });

  test('of a note keeps what was typed, says why, and takes it when the disk is put right', async () => {
    const host = fakeHost();
    await openWindow(host);
    await press('e');
    await screen.findByRole('heading', { level: 1 });
    await waitFor(() => expect([...host.logs.values()][0]?.length).toBeGreaterThan(5));
    await press('t');
    await screen.findByRole('heading', { level: 1, name: /finding/i });
    await fireEvent.click((await screen.findAllByRole('button', { name: /Change this answer/ }))[0]!);
    const field = await screen.findByLabelText<HTMLTextAreaElement>('Add a note');
    await fireEvent.input(field, { target: { value: 'grease on the left hub' } });
    host.refusal = FULL;
    const add = screen.getByRole('button', { name: /note/i });
    await fireEvent.click(add);
    expect((await screen.findByRole('alert')).textContent).toContain(FULL);
    expect(screen.getByLabelText<HTMLTextAreaElement>('Add a note').value).toBe('grease on the left hub');
    host.refusal = null;
    await fireEvent.click(screen.getByRole('button', { name: /note/i }));
    await waitFor(() =>
      expect([...host.logs.values()].map((log) => log.at(-1))).toContainEqual(
        expect.objectContaining({ kind: 'note.added', text: 'grease on the left hub' }),
      ),
    );
    await waitFor(() => expect(screen.queryByRole('alert')).toBeNull());
  });
});
