import type { PartRow, PartsList } from './plan.ts';

/** How the state of a part is said on a list. */
export const PART_WORDS: Readonly<Record<PartRow['state'], string>> = {
  measure: 'measure before ordering',
  if: 'only if',
  order: 'order',
  ordered: 'ordered',
  here: 'here',
  'not-needed': 'not needed',
  fitted: 'fitted',
};

/** Writes a measured figure for the reader; the list itself knows no unit system. */
export type WriteFigure = (value: number, unit: string) => string;

/** How many a row stands for: one a place of a line. A set for an axle is one. */
export function partCount({ needs }: Pick<PartRow, 'needs'>): number {
  return needs.length;
}

/** Places of a row in words, each once. */
export function partPlaces({ needs }: Pick<PartRow, 'needs'>): string {
  return [...new Set(needs.map(({ place }) => place).filter(Boolean))].join(', ');
}

/** What was measured of a part, in one line. */
export function partMeasured({ identity }: Pick<PartRow, 'identity'>, write: WriteFigure): string {
  return identity
    .flatMap(({ ask, found }) =>
      found.map(({ place, value }) => {
        const figure = typeof value === 'string' ? value : write(value.value, value.unit);
        return `${ask}${place ? `, ${place}` : ''}: ${figure}`;
      }),
    )
    .join('; ');
}

const HEAD = ['Part', 'Number', 'Places', 'State', 'Measured', 'Measure before ordering', 'Price each'];

/**
 * The list as comma-separated values: RFC 4180 (fields in quotes, quotes doubled, lines end in CR LF), with the byte order
 * mark by which spreadsheets know UTF-8. A field that a spreadsheet would take for a formula begins with an apostrophe.
 */
export function partsCsv({ rows, warnings }: PartsList, write: WriteFigure): string {
  const lines = rows.map((row) => [
    row.name,
    String(partCount(row)),
    partPlaces(row),
    PART_WORDS[row.state],
    partMeasured(row, write),
    row.measureFirst.join('; '),
    row.price === null ? '' : String(row.price),
  ]);
  const notes = warnings.map((warning) => [warning, '', '', '', '', '', '']);
  return `\uFEFF${[HEAD, ...lines, ...notes].map((fields) => `${fields.map(csvField).join(',')}\r\n`).join('')}`;
}

/** A field in quotes; a leading sign that starts a formula (also after blanks, tabs and line ends) is made text. */
function csvField(field: string): string {
  const harmless = /^[\s\u00a0\ufeff]*[=+\-@\uff1d\uff0b\uff0d\uff20|%]|^[\t\r\n]/.test(field) ? `'${field}` : field;
  return `"${harmless.replaceAll('"', '""')}"`;
}

/** The list as plain text, for a message. */
export function partsText({ rows, warnings }: PartsList, write: WriteFigure): string {
  const lines = rows.map((row) => {
    const more = [
      partPlaces(row),
      partMeasured(row, write),
      row.measureFirst.length > 0 && row.state === 'measure'
        ? `measure before ordering: ${row.measureFirst.join('; ')}`
        : '',
    ].filter(Boolean);
    return `${partCount(row)} × ${row.name} [${PART_WORDS[row.state]}]${more.length > 0 ? `: ${more.join('. ')}` : ''}`;
  });
  return [...lines, ...warnings].join('\n');
}
