import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fileName, handOver, htmlFile, type Report } from '../../shared/handover/index.ts';
import { FILE_STYLE, FILE_STYLE_HASH } from '../../shared/handover/paper/file-style.ts';
import { linesOf } from '../unit/handover/as-text.ts';
import { inventedInput, PHOTO } from '../unit/handover/invented-visit.ts';

const PIXEL = 'data:image/png;base64,iVBORw0KGgo=';
const report = handOver(inventedInput('mechanic'));

/** The report with one text in place of every statement. */
function sayingOnly(text: string): Report {
  const swapped = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(swapped);
    if (typeof value !== 'object' || value === null) return value;
    if ('text' in value && 'from' in value) return { ...value, text };
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, swapped(each)]));
  };
  // Every field keeps its shape; only texts are others.
  return swapped(report) as Report;
}

function opened(file: string): Document {
  return new DOMParser().parseFromString(file, 'text/html');
}

/** What could run, load or lead somewhere; empty when nothing can. */
function dangers(page: Document): string[] {
  const bad = [
    ...page.querySelectorAll('script, iframe, object, embed, link, form, base, a, foreignObject, use, animate, set'),
  ];
  const odd = [...page.querySelectorAll('*')].flatMap((element) =>
    [...element.attributes].filter(
      ({ name, value }) =>
        /^on|^style$|href|srcdoc|formaction|xlink/i.test(name) ||
        (name === 'src' && !value.startsWith('data:image/')) ||
        (name !== 'content' &&
          /^\s*(javascript|vbscript|data:text)/i.test(value) &&
          name !== 'alt' &&
          name !== 'aria-label'),
    ),
  );
  return [...bad.map(({ outerHTML }) => outerHTML), ...odd.map(({ name, value }) => `${name}=${value}`)];
}

const HOSTILE = [
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  "' onload='alert(1)",
  'javascript:alert(1)',
  '[a link](javascript:alert(1))',
  '<svg><a xlink:href="javascript:alert(1)"><text>x</text></a></svg>',
  '<svg onload=alert(1)>',
  '</title></style><script>alert(1)</script>',
  '--><!--<script>',
  '<meta http-equiv="refresh" content="0;url=https://example.org">',
  '`${alert(1)}`',
  '&lt;script&gt; stays as typed & so does &amp;',
];

describe('[HAN-12] the file', () => {
  it.each(HOSTILE)('shows %j as text and nothing else', (text) => {
    const page = opened(htmlFile(sayingOnly(text), new Map([[PHOTO, PIXEL]])));
    expect(dangers(page)).toEqual([]);
    expect(page.querySelector('.ho-word')?.textContent).toBe(text);
    expect(page.querySelector('.ho-photos img')?.getAttribute('alt')).toBe(text);
    expect(page.title).toBe(`Hand-over: ${text}`);
  });

  it('shows any text as it is', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 40 }), (text) => {
        const page = opened(htmlFile(sayingOnly(text), new Map()));
        expect(dangers(page)).toEqual([]);
        // Control characters do not survive in HTML; the file has a space in their place.
        const shown = text.replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, ' ').replace(/\p{Surrogate}/gu, '\ufffd');
        expect(page.querySelector('.ho-word')?.textContent).toBe(shown);
      }),
      { numRuns: 25, seed: 5 },
    );
  });

  it.each([
    'https://example.org/a.png',
    'data:image/svg+xml;base64,PHN2Zy8+',
    'data:text/html;base64,AAAA',
    'javascript:alert(1)',
    `${PIXEL}" onerror="alert(1)`,
  ])('takes no picture from %s', (address) => {
    const page = opened(htmlFile(report, new Map([[PHOTO, address]])));
    expect(dangers(page)).toEqual([]);
    expect(page.querySelector('.ho-photos img')?.hasAttribute('src')).toBe(false);
  });

  it('holds every statement of the report, and says which photo is not there', () => {
    const page = opened(htmlFile(report, new Map()));
    const text = page.body.textContent.replace(/\s+/g, ' ');
    // The short version is another text, for a telephone; the file has the report itself.
    const shown: Report = { ...report, short: [] };
    const missing = linesOf(shown).filter((line) => !text.includes(line.text.replace(/\s+/g, ' ').trim()));
    expect(missing.filter(({ text: said }) => !/^\d/.test(said)).map(({ text: said }) => said)).toEqual([]);
    expect(text).toContain('This photo is not here, or cannot be drawn.');
  });

  it('has a policy of its own that lets in its style and its pictures, and nothing else', () => {
    const page = opened(htmlFile(report, new Map()));
    expect(page.querySelector('meta[http-equiv]')?.getAttribute('content')).toBe(
      `default-src 'none'; style-src 'sha256-${FILE_STYLE_HASH}'; img-src data:; base-uri 'none'; form-action 'none'`,
    );
    expect(page.querySelectorAll('style')).toHaveLength(1);
    expect(
      createHash('sha256')
        .update(page.querySelector('style')?.textContent ?? '')
        .digest('base64'),
    ).toBe(FILE_STYLE_HASH);
    expect(FILE_STYLE).not.toMatch(/url\(|@import|expression/);
  });

  it('has a name that every file system takes', () => {
    expect(fileName(report, '2026-05-16')).toBe('hand-over-invented-coach-12-2026-05-16-for-the-mechanic.html');
    expect(fileName(sayingOnly('../..\\con: „Bus“ *'), '2026-05-16')).toBe(
      'hand-over-con-bus-2026-05-16-for-the-mechanic.html',
    );
    expect(fileName(sayingOnly('🚌'), '2026-05-16')).toBe('hand-over-coach-2026-05-16-for-the-mechanic.html');
  });
});
