import { join } from 'node:path';
import { configure, fireEvent, screen, waitFor, within } from '@testing-library/svelte';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { hashOfFiles, readTreeFolder } from '../../electron/host/tree-files.ts';
import { tryTree, type Trial } from '../../shared/planning/evaluation/trial.ts';
import type { TrialAsked, TrialTold } from '../../renderer/workers/trial-messages.ts';
import { DRAWING, goodPack, SMALLEST_TREE } from '../packs.ts';
import { fakeHost, type FakeHost } from './fake-host.ts';
import { openWindow, press } from './window.ts';

// The whole window is in the document, and a busy machine takes its time to find a role in it.
configure({ asyncUtilTimeout: 15_000 });

const CARD = { name: 'yard-notes', version: 3, trees: ['horn-stays-silent'], drawings: 2 };

async function onTrees(host?: FakeHost): Promise<FakeHost> {
  const over = await openWindow(host);
  await fireEvent.click(screen.getByRole('button', { name: /trees/i }));
  await screen.findByRole('heading', { level: 1, name: 'Trees' });
  return over;
}

async function choose(name = 'notes.zip'): Promise<void> {
  // This document's files cannot be read; a browser's can.
  const file = Object.assign(new File([], name), { arrayBuffer: () => Promise.resolve(new ArrayBuffer(2)) });
  await fireEvent.change(screen.getByLabelText('Pack as a zip'), { target: { files: [file] } });
}

describe('the page of the trees', () => {
  test('a refused pack keeps the choice, and names each fault with file and line', async () => {
    const host = await onTrees();
    const message = '"hazard" is "harmful", wanted is one of none, nuisance, damage, danger.';
    host.install = () => ({
      installed: null,
      problems: [{ level: 'error', code: 'not-allowed-value', file: 'horn/tree.yaml', line: 25, message }],
    });
    await choose();
    await screen.findByRole('heading', { name: '“notes.zip” was not added' });
    const wrong = within(screen.getByRole('list', { name: 'What is wrong' })).getAllByRole('listitem');
    expect(wrong.map(({ textContent }) => textContent)).toEqual([expect.stringContaining('horn/tree.yaml:25')]);
    expect(wrong[0]?.textContent).toContain(message);
    host.install = () => ({ installed: CARD, problems: [] });
    await fireEvent.click(screen.getByRole('button', { name: 'Try it again' }));
    expect((await screen.findByText(/“yard-notes”, version 3, is here with 1 tree/)).getAttribute('role')).toBe(
      'status',
    );
    expect(screen.queryByText(/was not added/)).toBeNull();
  });

  test('a pack that is here already is replaced only when told to', async () => {
    const host = await onTrees();
    const asked: boolean[] = [];
    host.install = (replace) => {
      asked.push(replace);
      return replace
        ? { installed: CARD, problems: [] }
        : {
            installed: null,
            problems: [{ level: 'error', code: 'pack-exists', file: 'pack.yaml', line: null, message: 'It is here.' }],
          };
    };
    await choose();
    await fireEvent.click(await screen.findByRole('button', { name: 'Replace it' }));
    await screen.findByText(/is here with 1 tree/);
    expect(asked).toEqual([false, true]);
  });

  test('a pack is listed with name, version and trees, and removed after one question', async () => {
    const host = fakeHost();
    host.packs = [CARD];
    await onTrees(host);
    const pack = await screen.findByRole('region', { name: 'Pack yard-notes' });
    expect(pack.textContent).toMatch(/Version 3, 1 tree, 2 drawings/);
    await fireEvent.click(within(pack).getByRole('button', { name: 'Remove the pack yard-notes' }));
    await fireEvent.click(within(pack).getByRole('button', { name: 'Keep it' }));
    expect(host.packs).toHaveLength(1);
    await fireEvent.click(within(pack).getByRole('button', { name: 'Remove the pack yard-notes' }));
    await fireEvent.click(within(pack).getByRole('button', { name: 'Remove yard-notes' }));
    await screen.findByText(/“yard-notes” is removed. Visits that began with it keep their trees./);
    expect(host.packs).toHaveLength(0);
    await press('Escape');
    await screen.findByRole('heading', { level: 1, name: /yard is empty/i });
  });

  test('a refusal of the machine side is said, and the choice stays', async () => {
    const host = await onTrees();
    host.refusal = 'The disk is full.';
    await choose();
    expect((await screen.findByRole('alert')).textContent).toContain('The disk is full.');
    host.refusal = null;
    host.install = () => ({ installed: CARD, problems: [] });
    await fireEvent.click(await screen.findByRole('button', { name: 'Try it again' }));
    await screen.findByText(/is here with 1 tree/);
    expect(screen.queryByRole('alert')).toBeNull();
  });
});

/** A worker that works when it is told to go on, in this thread. */
class SlowWorker extends EventTarget {
  static last: SlowWorker | null = null;
  stopped = false;
  asked: TrialAsked | null = null;
  constructor() {
    super();
    SlowWorker.last = this;
  }
  postMessage(asked: TrialAsked): void {
    this.asked = structuredClone(asked);
  }
  terminate(): void {
    this.stopped = true;
  }
  tell(data: TrialTold): void {
    this.dispatchEvent(new MessageEvent('message', { data }));
  }
}

describe('the author’s page', () => {
  beforeEach(() => vi.stubGlobal('Worker', SlowWorker));
  afterEach(() => {
    vi.unstubAllGlobals();
    vi.useRealTimers();
  });

  async function inside(title: RegExp): Promise<void> {
    await onTrees();
    await fireEvent.click(screen.getByRole('button', { name: title }));
    await screen.findByRole('heading', { name: 'Likelihoods' });
  }

  test('the table has every check, result and cause, in 100 or in words', async () => {
    await inside(/look inside “air escapes/i);
    const table = screen.getByRole('table', { name: /how often each result/i });
    expect(within(table).getAllByRole('columnheader').length).toBe(
      screen.getAllByRole('list').find(({ className }) => className === 'causes')!.children.length,
    );
    expect(within(table).getAllByRole('rowgroup').length).toBeGreaterThan(10);
    expect(within(table).queryByText('probable')).toBeNull();
    await fireEvent.click(screen.getByRole('radio', { name: 'In words' }));
    expect(within(table).getAllByText('probable').length).toBeGreaterThan(0);
    const limits = screen.getByRole('region', { name: /limits that the bands rest on/i });
    expect(limits.querySelectorAll('.src').length).toBeGreaterThan(0);
  });

  test('a trial shows how far it is, can be stopped, and says what an owner can rule out', async () => {
    await inside(/look inside “engine brake/i);
    await fireEvent.click(screen.getByRole('button', { name: 'Try this tree' }));
    const first = SlowWorker.last!;
    first.tell({ kind: 'progress', share: 0.4 });
    await waitFor(() => {
      expect(screen.getByRole('progressbar').getAttribute('value')).toBe('0.4');
    });
    await fireEvent.click(screen.getByRole('button', { name: 'Stop' }));
    expect(first.stopped).toBe(true);
    expect(screen.queryByRole('progressbar')).toBeNull();
    await fireEvent.click(screen.getByRole('button', { name: 'Try this tree' }));
    const { asked } = SlowWorker.last!;
    const trial: Trial = tryTree(asked!.tree, asked!.vocabulary, { coaches: 10, seed: asked!.seed });
    SlowWorker.last!.tell({ kind: 'done', trial });
    const found = await screen.findByRole('table', { name: /true cause, how often/i });
    expect(within(found).getAllByRole('row')).toHaveLength(trial.rows.length + 1);
    expect(screen.getByText(/An owner without tools can rule out danger in/).textContent).toContain(
      `${trial.owner.harmless} coaches whose fault hurts nobody`,
    );
  }, 60_000);

  test('the drawings of a draft are shown as its folder has them', async () => {
    const host = fakeHost();
    const { vocabulary } = await readTreeFolder(join(import.meta.dirname, '../../trees'));
    const all = { ...vocabulary, 'tree.yaml': goodPack()['horn-stays-silent/tree.yaml']! };
    host.drafts = [
      {
        snapshot: { id: 'horn-stays-silent', hash: hashOfFiles(all), files: all, drawings: { 'horn.svg': DRAWING } },
        problems: [],
      },
    ];
    await onTrees(host);
    await fireEvent.click(await screen.findByRole('button', { name: 'Open the draft horn-stays-silent' }));
    await screen.findByRole('heading', { name: 'Drawings' });
    expect(screen.getByRole<HTMLImageElement>('img', { name: 'A horn seen from the side' }).src).toBe(
      `data:image/svg+xml,${encodeURIComponent(DRAWING)}`,
    );
  });

  test('a draft follows its file: faults at the line, the last good version below', async () => {
    const host = fakeHost();
    const { vocabulary } = await readTreeFolder(join(import.meta.dirname, '../../trees'));
    const snapshot = (text: string) => {
      const all = { ...vocabulary, 'tree.yaml': text };
      return { id: 'horn-stays-silent', hash: hashOfFiles(all), files: all };
    };
    host.drafts = [{ snapshot: snapshot(SMALLEST_TREE), problems: [] }];
    await onTrees(host);
    await fireEvent.click(await screen.findByRole('button', { name: 'Open the draft horn-stays-silent' }));
    await screen.findByText(/Nothing to mend/);
    expect(screen.getByText(/told apart by one check alone/)).toBeTruthy();
    const excerpt = { text: '    hazard: harmful', width: 7 };
    const message = '"hazard" is "harmful".';
    const place = { file: 'horn-stays-silent/tree.yaml', line: 25, column: 13 };
    host.drafts = [
      {
        snapshot: snapshot(SMALLEST_TREE.replace('hazard: nuisance', 'hazard: harmful')),
        problems: [{ level: 'error', code: 'not-allowed-value', ...place, message, excerpt }],
      },
    ];
    const wrong = await screen.findByRole('list', { name: 'What is wrong' });
    expect(wrong.textContent).toContain('horn-stays-silent/tree.yaml:25');
    expect(wrong.querySelector('mark')?.textContent).toBe('harmful');
    expect(screen.getByText(/the last version that could be read/)).toBeTruthy();
    expect(screen.getByRole('heading', { name: 'Likelihoods' })).toBeTruthy();
    host.drafts = [];
    expect((await screen.findByRole('alert')).textContent).toContain('not in the folder any more');
  }, 60_000);
});
