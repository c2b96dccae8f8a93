import type { Report } from '../document.ts';
import type { PhotoAddresses } from './blocks.ts';
import { FILE_STYLE, FILE_STYLE_HASH } from './file-style.ts';
import { reportMarkup } from './report-markup.ts';
import { escaped, serialised } from './serialise.ts';

/** What the file allows itself: its one style and the pictures in it. No script, frame, form, link or fetch. */
const POLICY = [
  "default-src 'none'",
  `style-src 'sha256-${FILE_STYLE_HASH}'`,
  'img-src data:',
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/**
 * A report as one HTML text that opens anywhere: style and photos in it, nothing that runs.
 *
 * @param photos  addresses of the photos as data: URIs of JPEG, PNG or WebP; any other is left out.
 */
export function htmlFile(report: Report, photos: PhotoAddresses): string {
  const title = `Hand-over: ${report.coach.text}`;
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${POLICY}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="referrer" content="no-referrer">',
    `<title>${escaped(title)}</title>`,
    `<style>${FILE_STYLE}</style>`,
    '</head>',
    '<body>',
    `<h1>${escaped(title)}</h1>`,
    serialised(reportMarkup(report, photos)),
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

/** A name for the file: the coach and the last day, in letters that every file system takes. */
export function fileName({ coach, reader }: Report, day: string): string {
  const plain = coach.text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `hand-over-${plain || 'coach'}-${day}${reader === 'mechanic' ? '-for-the-mechanic' : ''}.html`;
}
