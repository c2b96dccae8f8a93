import type { Block, Line, ReportPhoto, WeightRow } from '../document.ts';
import { el, type Element, type Markup } from './element.ts';
import { rereadFigure } from './reread-figure.ts';

/** Addresses of photos by the name of the stored file. */
export type PhotoAddresses = ReadonlyMap<string, string>;

/** One block of a section as markup. */
export function blockMarkup(block: Block, photos: PhotoAddresses): readonly Element[] {
  switch (block.kind) {
    case 'words':
      return [el('p', { class: `ho-${block.look}` }, block.line.text)];
    case 'list':
      return [el('ul', { class: 'ho-dash' }, ...block.items.map(itemMarkup))];
    case 'caution':
      return [el('ul', { class: 'ho-caution' }, ...block.items.map(itemMarkup))];
    case 'stations':
      return [
        el(
          'ul',
          { class: 'ho-stations' },
          ...block.items.map(({ line, passed }) =>
            passed
              ? el('li', { class: 'ho-passed' }, el('span', { class: 'ho-box' }, '✓'), el('span', {}, line.text))
              : el(
                  'li',
                  {},
                  el('span', { class: 'ho-box' }),
                  el('span', {}, line.text, ' ', el('span', { class: 'ho-blank' })),
                ),
          ),
        ),
      ];
    case 'table':
      return [tableMarkup(block)];
    case 'weights':
      return [weightsMarkup(block.caption, block.rows)];
    case 'rereads':
      return block.figures.map(rereadFigure);
    case 'photos':
      return [el('div', { class: 'ho-photos' }, ...block.photos.map((photo) => photoMarkup(photo, photos)))];
  }
}

function itemMarkup({ text }: Line): Element {
  return el('li', {}, text);
}

function tableMarkup({ caption, head, rows }: Extract<Block, { kind: 'table' }>): Element {
  return el(
    'table',
    { class: `ho-table ho-${head.length}` },
    el('caption', { class: 'vh' }, caption),
    el('thead', {}, el('tr', {}, ...head.map((text) => el('th', { scope: 'col' }, text)))),
    el(
      'tbody',
      {},
      ...rows.map((row) =>
        el(
          'tr',
          {},
          ...row.map((cell, i) =>
            i === 0
              ? el('th', { scope: 'row' }, cell.text)
              : el('td', { 'data-head': head[i] ?? '', ...(isNothing(cell) ? { class: 'none' } : {}) }, cell.text),
          ),
        ),
      ),
    ),
  );
}

function isNothing({ text }: Line): boolean {
  return text === '–' || text === '';
}

/** Decibans at the end of the bar. */
const FULL = 20;

function weightsMarkup(caption: Line, rows: readonly WeightRow[]): Element {
  return el(
    'table',
    { class: 'ho-weights' },
    el('caption', { class: 'vh' }, caption.text),
    el(
      'thead',
      { class: 'vh' },
      el('tr', {}, ...['What was found', 'Bar', 'In words'].map((text) => el('th', { scope: 'col' }, text))),
    ),
    el(
      'tbody',
      {},
      ...rows.map(({ finding, words, decibans }) =>
        el('tr', {}, el('th', { scope: 'row' }, finding.text), el('td', {}, bar(decibans)), el('td', {}, words.text)),
      ),
    ),
  );
}

/** For to the right, filled; against to the left, hollow: the two differ on paper of one ink. */
function bar(decibans: number): Element {
  const size = Math.min(100, (Math.abs(decibans) / FULL) * 100).toFixed(1);
  return el(
    'svg',
    { class: 'ho-bar', viewBox: '-100 0 200 22', preserveAspectRatio: 'none', 'aria-hidden': 'true' },
    el('path', { class: 'ho-grid', d: 'M-65 0V22M-35 0V22M35 0V22M65 0V22', 'vector-effect': 'non-scaling-stroke' }),
    el('rect', {
      class: decibans >= 0 ? 'ho-for' : 'ho-against',
      x: decibans >= 0 ? '0' : `-${size}`,
      y: '7',
      width: size,
      height: '8',
      'vector-effect': 'non-scaling-stroke',
    }),
    el('path', { class: 'ho-axis', d: 'M0 0V22', 'vector-effect': 'non-scaling-stroke' }),
  );
}

function photoMarkup({ photo, caption }: ReportPhoto, photos: PhotoAddresses): Element {
  const src = photos.get(photo);
  const shown: Markup =
    src === undefined
      ? el('p', { class: 'ho-lost' }, 'This photo is not here, or cannot be drawn.')
      : el('img', { src, alt: caption.text });
  return el('figure', {}, shown, el('figcaption', {}, caption.text));
}
