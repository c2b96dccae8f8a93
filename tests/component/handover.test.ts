import { fireEvent, screen, waitFor, within } from '@testing-library/svelte';
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { PHOTO } from '../unit/handover/invented-visit.ts';
import { found, openWalk, type Walk } from './walk.ts';
import { press } from './window.ts';

const GONE = `${'9c'.repeat(32)}.png`;

/** The report of a visit with one finding, a photo that is there and one that is not. */
async function openReport(): Promise<Walk> {
  const photographed = { ...found('soap-chamber', 'clamp-ring'), photos: [PHOTO, GONE] };
  const walk = await openWalk('air-leaks-when-brake-held', [
    photographed,
    { kind: 'note.added', complaint: 'c-1', text: '<img src=x onerror=alert(1)>' },
  ]);
  walk.host.photos.set(PHOTO, { type: 'image/jpeg', data: 'AAAA' });
  await press('H');
  await screen.findByText('Hand-over: Invented coach 12', { selector: 'h1' });
  return walk;
}
const paper = (): HTMLElement => screen.getByLabelText('The report');

// The page is fetched when it is first opened; here that is done before anybody waits for it.
beforeAll(() => import('../../renderer/screens/HandOverScreen.svelte'));
beforeEach(() => {
  // What a browser has and this document lacks: pictures that can be drawn.
  vi.stubGlobal('createImageBitmap', () => Promise.resolve({ width: 4000, height: 3000, close: () => undefined }));
  vi.spyOn(HTMLCanvasElement.prototype, 'getContext').mockReturnValue({
    fillRect: () => undefined,
    drawImage: () => undefined,
  } as never);
  vi.spyOn(HTMLCanvasElement.prototype, 'toDataURL').mockImplementation(function (this: HTMLCanvasElement) {
    return `data:image/jpeg;base64,${btoa(`${this.width}x${this.height}`)}`;
  });
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

describe('[HAN-4] [HAN-12] the report on screen', () => {
  it('shows complaint, findings and who has the last word; what was typed stays text', async () => {
    await openReport();
    for (const name of ['Complaint: what you told us', 'What was found', 'Correction', 'Not looked at, or not settled'])
      expect(within(paper()).getByText(name, { selector: 'h3' })).toBeTruthy();
    expect(within(paper()).getByText('“as the owner said it”')).toBeTruthy();
    expect(within(paper()).getByText('“<img src=x onerror=alert(1)>”')).toBeTruthy();
    expect(within(paper()).getByText(/A licensed mechanic or inspector has the last word/)).toBeTruthy();
    expect(paper().querySelector('svg path')?.namespaceURI).toBe('http://www.w3.org/2000/svg');
  });

  it('[HAN-13] shows a small upright copy of a photo, and says which one is not here', async () => {
    await openReport();
    const photo = await within(paper()).findByAltText(/^Photo 1/);
    await waitFor(() => expect(screen.queryByText(/still being made smaller/)).toBeNull());
    expect(atob(photo.getAttribute('src')?.split(',')[1] ?? '')).toBe('1280x960');
    expect(within(paper()).getByText('This photo is not here, or cannot be drawn.')).toBeTruthy();
  });

  it('[HAN-10] changes with the reader', async () => {
    await openReport();
    expect(within(paper()).queryByText('Safety questions')).toBeNull();
    await fireEvent.change(screen.getByLabelText('For'), { target: { value: 'mechanic' } });
    expect(await within(paper()).findByText('Safety questions')).toBeTruthy();
  });

  it('[HAN-9] leaves out what is ticked off, and offers no tick for what must stay', async () => {
    await openReport();
    await press('i');
    const tick = screen.getByLabelText('What was found');
    await fireEvent.click(tick);
    await waitFor(() => expect(within(paper()).queryByText('What was found', { selector: 'h3' })).toBeNull());
    expect(screen.queryByLabelText('Not looked at, or not settled')).toBeNull();
    await fireEvent.click(tick);
    expect(await within(paper()).findByText('What was found', { selector: 'h3' })).toBeTruthy();
  });
});

describe('the report leaves the window', () => {
  it('[HAN-12] as one file under a name of its own', async () => {
    const saved: { name: string; blob: Blob }[] = [];
    let last: Blob | undefined;
    vi.stubGlobal(
      'URL',
      Object.assign(URL, {
        createObjectURL: (blob: Blob) => ((last = blob), 'blob:made'),
        revokeObjectURL: () => undefined,
      }),
    );
    vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (this: HTMLAnchorElement) {
      if (last) saved.push({ name: this.download, blob: last });
    });
    await openReport();
    await waitFor(() => expect(screen.queryByText(/still being made smaller/)).toBeNull());
    await press('l');
    await screen.findByText(/^Saved as hand-over-invented-coach-12/);
    expect(saved).toHaveLength(1);
    expect(saved[0]?.blob.type).toBe('text/html;charset=utf-8');
    expect(saved[0]?.blob.size).toBeGreaterThan(4000);
  });

  it('as a short text, copied or marked for copying', async () => {
    let copied = '';
    vi.stubGlobal('navigator', { clipboard: { writeText: (text: string) => ((copied = text), Promise.resolve()) } });
    await openReport();
    const button = screen.getByText('Copy the short version');
    await fireEvent.click(button);
    expect(await screen.findByText('The short version is copied.')).toBeTruthy();
    expect(copied).toContain('licensed mechanic');
    vi.stubGlobal('navigator', { clipboard: { writeText: () => Promise.reject(new Error('no')) } });
    await fireEvent.click(button);
    expect(await screen.findByText(/The text is marked/)).toBeTruthy();
  });

  it('is reached from a closed complaint too', async () => {
    await openWalk('air-leaks-when-brake-held', [{ kind: 'complaint.closed', complaint: 'c-1', how: 'left-open' }]);
    await fireEvent.click(screen.getByText(/Write the hand-over/));
    expect(await screen.findByText('Hand-over: Invented coach 12', { selector: 'h1' })).toBeTruthy();
  });
});
