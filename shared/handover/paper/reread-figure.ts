import type { Reread } from '../document.ts';
import { formatNumber, unitOf } from '../../units/index.ts';
import { el, type Element } from './element.ts';

/** Drawing units: where the labels end, where the line begins and ends, where the figures begin. */
const LEFT = 132;
const RIGHT = 260;
const FIGURES = 290;
const WIDTH = 356;
const ROW = 28;

/** Readings of one quantity at one place on lines of one scale: hollow before the last, filled the last. */
export function rereadFigure({ name, points, edges, unit }: Reread): Element {
  const values = points.map(({ value }) => value);
  // A band that begins far beyond every reading would press them together.
  const reach = 1.5 * Math.max(...values.map(Math.abs));
  const near = edges.filter(({ value }) => Math.abs(value) <= reach);
  const least = Math.min(...values, ...near.map(({ value }) => value), 0);
  const most = Math.max(...values, ...near.map(({ value }) => value), 0);
  const span = most - least || 1;
  const x = (value: number): string => (LEFT + ((value - least) / span) * (RIGHT - LEFT)).toFixed(1);
  const axisY = points.length * ROW + 6;
  const sentence = `${name.text}: ${points.map(({ label, figure }) => `${label.text}, ${figure.text}`).join('; ')}`;
  return el(
    'figure',
    { class: 'ho-reread' },
    el('figcaption', {}, name.text),
    el(
      'svg',
      { viewBox: `0 0 ${WIDTH} ${axisY + 26}`, role: 'img', 'aria-label': sentence },
      ...near.map(({ value }) => el('path', { class: 'ho-edge', d: `M${x(value)} 2V${axisY}` })),
      ...points.flatMap(({ label, figure, value }, i) => {
        const y = i * ROW + 16;
        return [
          el('text', { x: '0', y: String(y + 5) }, label.text),
          el('path', { class: 'ho-grid', d: `M${LEFT} ${y}H${RIGHT}` }),
          el('circle', {
            class: i === points.length - 1 ? 'ho-last' : 'ho-first',
            cx: x(value),
            cy: String(y),
            r: '7',
          }),
          el('text', { class: 'ho-figure', x: String(FIGURES), y: String(y + 5) }, figure.text),
        ];
      }),
      el('path', { class: 'ho-axis', d: `M${LEFT} ${axisY}H${RIGHT}M${x(least)} ${axisY}v5M${x(most)} ${axisY}v5` }),
      el('text', { x: x(least), y: String(axisY + 20), 'text-anchor': 'middle' }, formatNumber(least, unit)),
      el('text', { x: x(most), y: String(axisY + 20), 'text-anchor': 'middle' }, formatNumber(most, unit)),
      el('text', { x: String(FIGURES), y: String(axisY + 20) }, unitOf(unit).symbol),
    ),
    ...(near.length > 0
      ? [el('p', { class: 'ho-fine' }, `Dashed: ${near.map(({ words }) => words.text).join('; ')}.`)]
      : []),
  );
}
