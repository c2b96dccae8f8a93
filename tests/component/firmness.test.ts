import { fireEvent, render, screen, within } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import FirmnessPanel from '../../renderer/parts/FirmnessPanel.svelte';
import SideBySideTable from '../../renderer/parts/SideBySideTable.svelte';
import { NO_NUMBER } from '../../shared/inference/index.ts';
import { COMPLAINT, found, openWalk } from './walk.ts';
import { press } from './window.ts';

/** At a probable cause: four findings, then the hub is off and the steer-axle bearing pitted; the halt has been read. */
async function atConclusion(): Promise<void> {
  await openWalk('growl-through-floor-at-speed', [
    found('how-it-came', 'growing'),
    found('speed-sweep', 'rises-evenly'),
    found('load-change', 'no-change'),
    found('sway', 'swells-one-way'),
    found('bearing-look', 'pitted-front'),
    { kind: 'halt.acknowledged', complaint: COMPLAINT },
  ]);
  await screen.findByRole('heading', { level: 1, name: /front wheel bearing/i });
}

describe('[INF-21] how sure it is, in words', () => {
  const TAKEN = { kind: 'conclusion.accepted', complaint: COMPLAINT, cause: 'front-bearing' } as const;
  const sure = (): string => document.querySelector('.share')?.textContent.replace(/\s+/g, ' ').trim() ?? '';

  test.each(['owner-basic-tools', 'mechanic'] as const)(
    'below even odds the %s reads that it is more likely something else',
    async (who) => {
      await openWalk(
        'growl-through-floor-at-speed',
        [found('speed-sweep', 'rises-evenly'), found('sway', 'swells-one-way'), TAKEN],
        { who },
      );
      await screen.findByRole('heading', { level: 1, name: /front wheel bearing/i });
      const [, share, words] = /^(\d+) in 100 ?(.+?) ?on judged odds, not statistics$/.exec(sure()) ?? [];
      expect(Number(share)).toBeLessThan(50);
      expect(words).toMatch(/^(unlikely|about as likely as not), so more likely something else than this$/);
    },
  );

  test('where it is likely the word stands alone', async () => {
    await atConclusion();
    expect(sure()).toMatch(
      /^\d+ in 100 ?(likely|very likely|extremely likely|almost certain) ?on judged odds, not statistics$/,
    );
  });
});

describe('how firm it is', () => {
  test('a conclusion names what would change it, and what it hangs on with the price of looking again', async () => {
    await atConclusion();
    const panel = screen.getByRole('region', { name: 'How firm it is' });
    const numbers = within(panel).queryAllByRole('listitem');
    if (numbers.length === 0) expect(within(panel).getByText(NO_NUMBER)).toBeTruthy();
    for (const number of numbers) expect(number.textContent).toMatch(/would need .+ its present value: from .+ to .+/);
    expect(numbers.length).toBeLessThanOrEqual(3);
    expect(panel.textContent).toMatch(/hangs most on “pitted, flaked/i);
    expect(panel.textContent).toMatch(/looking again costs 120 min/i);
  });

  test('where no single number changes it, that is said', () => {
    render(FirmnessPanel, { view: { numbers: [], none: NO_NUMBER, hangsOn: null }, found: '' });
    expect(screen.getByText(/no single number in this tree changes it/i)).toBeTruthy();
    expect(screen.queryByRole('list')).toBeNull();
    expect(screen.getByText('No finding speaks for it yet.')).toBeTruthy();
  });

  test('why this check says how much worse the second best is', async () => {
    await openWalk('growl-through-floor-at-speed', [found('how-it-came', 'growing')]);
    await screen.findByRole('button', { name: /why this one/i });
    await press('w');
    const panel = screen.getByRole('region', { name: 'Why this check' });
    expect(panel.textContent).toMatch(
      /the next best is “.+”, (which costs about \d+ minutes? more on average|which is about as good|practically as good)/i,
    );
  });
});

describe('why this and not that', () => {
  test('two causes stand side by side with words and decibans, and others can be chosen', async () => {
    await atConclusion();
    const section = screen.getByRole('region', { name: 'Why this and not that' });
    const head = (): string[] =>
      within(section)
        .getAllByRole('columnheader')
        .map(({ textContent }) => textContent);
    expect(head()[1]).toMatch(/front wheel bearing/i);
    const [, second] = within(section).getAllByRole('combobox');
    const other = within(second!)
      .getAllByRole<HTMLOptionElement>('option')
      .find(({ textContent }) => /cupped or scalloped/i.test(textContent));
    await fireEvent.change(second!, { target: { value: other?.value } });
    expect(head()[2]).toMatch(/cupped or scalloped/i);
    const rows = within(section).getAllByRole('row').slice(1, -2);
    expect(rows).toHaveLength(5);
    for (const row of rows)
      for (const cell of within(row).getAllByRole('cell'))
        expect(cell.textContent).toMatch(
          /(hardly matters|(slightly|clearly|strongly|decisively) (for|against))\s*-?\d+\.\d decibans/,
        );
  });

  test('the bar and the words of a row say the same', () => {
    const line = {
      id: 'f1',
      found: 'Gritty',
      check: 'Spin by hand',
      first: { decibans: 8, words: 'strongly for' },
      second: { decibans: -2, words: 'slightly against' },
      between: { decibans: 10, words: 'strongly for' },
      overlaps: true,
    };
    const { container } = render(SideBySideTable, {
      first: 'Bearing',
      second: 'Tyre',
      lines: [line],
      before: '2 to 1 for the second',
      after: '5 to 1 for the first',
    });
    const bars = [...container.querySelectorAll('tbody rect')];
    expect(bars.map((bar) => bar.getAttribute('class'))).toEqual(['for', 'against', 'for']);
    // Twenty decibans fill the half: 8 are 40 of 100.
    expect(bars[0]?.getAttribute('width')).toBe('40');
    expect(bars[1]?.getAttribute('x')).toBe('-10');
    expect(screen.getAllByText(/overlaps another/)).toHaveLength(3);
  });
});
