import type { Verdict } from '../../knowledge/tree.ts';
import type { Report, VerdictBox } from '../document.ts';
import { blockMarkup, type PhotoAddresses } from './blocks.ts';
import { el, type Element } from './element.ts';

/** Signs of the three verdicts, the ones of the window, drawn in one ink. */
const SIGNS: Readonly<Record<Verdict, string>> = {
  'stay-put':
    'M6 10.5a6 6 0 1 0 12 0a6 6 0 1 0 -12 0M10.5 10.5a1.5 1.5 0 1 0 3 0a1.5 1.5 0 1 0 -3 0M2 20h20M2.5 17h5.6L7 14.2 2.5 17zM21.5 17h-5.6l1.1-2.8 4.5 2.8z',
  'creep-to-safe-place':
    'M2 10.5a6 6 0 1 0 12 0a6 6 0 1 0 -12 0M6.5 10.5a1.5 1.5 0 1 0 3 0a1.5 1.5 0 1 0 -3 0M2 20h20M17.5 20V6.5M17.5 6.5h4v3.5h-4M12.5 17.2h.01M15 17.2h.01',
  'drive-and-book':
    'M2 10.5a5.5 5.5 0 1 0 11 0a5.5 5.5 0 1 0 -11 0M6 10.5a1.5 1.5 0 1 0 3 0a1.5 1.5 0 1 0 -3 0M2 20h20M15.5 10.5h6M19 7.8l2.7 2.7L19 13.2M15.5 16.5h.01M18.5 16.5h.01M21.5 16.5h.01',
};

/**
 * A report as markup: the same on screen, on paper and in the file. Parts are headed at level 2; the page around it has
 * the heading of level 1.
 *
 * @param photos  addresses of the photos; one without is named and said not to be here.
 */
export function reportMarkup(report: Report, photos: PhotoAddresses): Element {
  const { coach, days, invented, verdict, cautions, parts, lastWord, signatures, foot } = report;
  return el(
    'article',
    { class: 'ho-report' },
    el('header', { class: 'ho-top' }, el('p', {}, coach.text), el('p', {}, days.text)),
    ...(invented ? [el('p', { class: 'ho-invented' }, invented.text)] : []),
    ...(verdict ? [verdictMarkup(verdict)] : []),
    ...(cautions.length > 0
      ? [
          el(
            'section',
            { class: 'ho-cautions' },
            el('h2', {}, 'Caution'),
            el('ul', { class: 'ho-dash' }, ...cautions.map(({ text }) => el('li', {}, text))),
          ),
        ]
      : []),
    ...parts.map(({ title, sections }) =>
      el(
        'section',
        { class: 'ho-part' },
        el('h2', {}, title.text),
        ...sections.map(({ id, heading, blocks }) =>
          el(
            'section',
            { class: `ho-section ho-of-${id}` },
            el('h3', {}, heading),
            ...blocks.flatMap((block) => blockMarkup(block, photos)),
          ),
        ),
      ),
    ),
    el('p', { class: 'ho-fine' }, lastWord.text),
    el('div', { class: 'ho-signs' }, ...signatures.map(({ text }) => el('p', {}, text))),
    el('footer', { class: 'ho-foot' }, el('p', {}, foot.text)),
  );
}

function verdictMarkup({ verdict, word, lines }: VerdictBox): Element {
  return el(
    'div',
    { class: `ho-verdict ho-${verdict}` },
    el('svg', { viewBox: '0 0 24 24', 'aria-hidden': 'true' }, el('path', { d: SIGNS[verdict] })),
    el('div', {}, el('p', { class: 'ho-word' }, word.text), ...lines.map(({ text }) => el('p', {}, text))),
  );
}
