import type { Block, Line, Report } from '../../../shared/handover/index.ts';

/** A report as plain text, for comparing whole documents: one line a statement, indented by what it stands in. */
export function asText(report: Report): string {
  return [
    `${report.coach.text} | ${report.days.text} | for the ${report.reader}`,
    ...(report.invented ? [report.invented.text] : []),
    ...(report.verdict
      ? [`VERDICT ${report.verdict.word.text}`, ...report.verdict.lines.map(({ text }) => `  ${text}`)]
      : []),
    ...report.cautions.map(({ text }) => `CAUTION ${text}`),
    ...report.parts.flatMap(({ title, sections }) => [
      '',
      `# ${title.text}`,
      ...sections.flatMap(({ heading, blocks }) => [`## ${heading}`, ...blocks.flatMap(blockText)]),
    ]),
    '',
    report.lastWord.text,
    ...report.signatures.map(({ text }) => `SIGN ${text}`),
    report.foot.text,
    '',
    'SHORT',
    ...report.short.map(({ text }) => text),
    '',
  ].join('\n');
}

function blockText(block: Block): string[] {
  switch (block.kind) {
    case 'words':
      return [`${block.look === 'plain' ? '' : `(${block.look}) `}${block.line.text}`];
    case 'list':
      return block.items.map(({ text }) => `- ${text}`);
    case 'stations':
      return block.items.map(({ line, passed }) => `${passed ? '[x]' : '[ ]'} ${line.text}`);
    case 'caution':
      return block.items.map(({ text }) => `! ${text}`);
    case 'table':
      return [block.head.join(' | '), ...block.rows.map((row) => `  ${row.map(({ text }) => text).join(' | ')}`)];
    case 'weights':
      return [block.caption.text, ...block.rows.map(({ finding, words }) => `  ${finding.text} => ${words.text}`)];
    case 'rereads':
      return block.figures.flatMap(({ name, points, edges, unit }) => [
        `${name.text} (${unit})`,
        ...points.map(({ label, figure, value }) => `  ${label.text}: ${figure.text} at ${value}`),
        ...edges.map(({ value, words }) => `  | ${value}: ${words.text}`),
      ]);
    case 'photos':
      return block.photos.map(({ caption, photo }) => `[${photo.slice(0, 8)}] ${caption.text}`);
  }
}

/** Every statement of a report, wherever it stands. */
export function linesOf(report: Report): readonly Line[] {
  const found: Line[] = [];
  const walk = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    if ('text' in value && 'from' in value) found.push(value as Line);
    else Object.values(value).forEach(walk);
  };
  walk(report);
  return found;
}
