import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { layOutJob } from './handover-visit.ts';
import { expect, test } from './shell.ts';

/** Sections that the report of the invented job has; the texts under them are held against whole documents in tests/unit/handover. */
const SECTIONS = [
  'Complaint: what you told us',
  'What was found',
  'Cause',
  'What speaks for it and against it',
  'Correction',
  'How we know',
  'Limits that it was held against',
  'Not looked at, or not settled',
  'What was agreed and what was not',
  'What to watch, and when',
];

/** A photo as a telephone takes it: larger than the report needs, lying on its side, with a place in it. */
async function takePhoto(page: Page): Promise<Buffer> {
  const drawn = await page.evaluate(() => {
    const canvas = document.createElement('canvas');
    canvas.width = 1600;
    canvas.height = 800;
    const pen = canvas.getContext('2d')!;
    pen.fillStyle = '#c33';
    pen.fillRect(0, 0, 800, 800);
    pen.fillStyle = '#33c';
    pen.fillRect(800, 0, 800, 800);
    return canvas.toDataURL('image/jpeg').split(',')[1]!;
  });
  const bytes = Buffer.from(drawn, 'base64');
  // Exif, big-endian: an artist whose name is a place, and "turn right to see it upright" (6).
  const place = Buffer.from('SECRET-PLACE', 'latin1');
  const tiff = Buffer.concat([
    Buffer.from('4d4d002a000000080002', 'hex'),
    Buffer.from('013b00020000000c00000026', 'hex'),
    Buffer.from('011200030000000100060000', 'hex'),
    Buffer.alloc(4),
    place,
  ]);
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff]);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([bytes.subarray(0, 2), head, body, bytes.subarray(2)]);
}

test('the report of a job: on screen, as PDF with every section, and as a file that opens without scripts', async ({
  page,
  shell,
  browser,
  address,
}, testInfo) => {
  const visit = await layOutJob(shell.home);
  await page.goto(address);
  // A photo goes the way that every photo goes: through the contract, cleaned on the machine side.
  const taken = await takePhoto(page);
  const stored = await page.evaluate(
    async ([id, data]) => {
      const answer = await fetch('/api/photos.write', {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify({ visit: id, type: 'image/jpeg', data }),
      });
      return (await answer.json()) as unknown;
    },
    [visit, taken.toString('base64')] as const,
  );
  const photo = JSON.stringify(stored).match(/[0-9a-f]{64}\.jpg/)?.[0] ?? '';
  expect(taken.includes('SECRET-PLACE')).toBe(true);
  expect(readFileSync(join(shell.home, 'visits', visit, 'photos', photo)).includes('SECRET-PLACE')).toBe(false);
  await layOutJob(shell.home, [photo]);

  await page.getByRole('button', { name: /Open/ }).first().click();
  await expect(page.locator('main h1').first()).toBeVisible();
  await expect(page.getByRole('button', { name: /^Hand-over/ })).toBeVisible();
  await page.keyboard.press('H');
  await expect(page.locator('main h1').first()).toHaveText('Hand-over: Invented coach 12');
  await expect(page.locator('main h1').first()).toBeFocused();
  const report = page.getByRole('region', { name: 'The report' });
  for (const name of SECTIONS) await expect(report.getByRole('heading', { level: 3, name }).first()).toBeVisible();
  // Upright and small: 1600 by 800 on its side is 640 by 1280.
  const size = await report
    .locator('.ho-photos img')
    .first()
    .evaluate((image: HTMLImageElement) => [image.naturalWidth, image.naturalHeight]);
  expect(size).toEqual([640, 1280]);
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`)).toEqual([]);
  await page.setViewportSize({ width: 360, height: 760 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
  await page.setViewportSize({ width: 1440, height: 1000 });

  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('.rooms')).toBeHidden();
  await expect(page.getByRole('button', { name: /Save as one file/ })).toBeHidden();
  for (const name of SECTIONS) await expect(report.getByRole('heading', { level: 3, name }).first()).toBeVisible();
  const pdf = await page.pdf({ preferCSSPageSize: true, tagged: true, outline: true });
  await page.emulateMedia({ media: 'screen' });
  const outline = titlesIn(pdf);
  for (const name of SECTIONS) expect(outline).toContain(name);
  // Letter, 8.5 by 11 inches of 72 points, as somebody who reads inches has it.
  expect(pdf.toString('latin1')).toMatch(/\/MediaBox\s*\[0 0 612 792\]/);

  const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('l')]);
  expect(download.suggestedFilename()).toBe('hand-over-invented-coach-12-2026-05-15.html');
  const saved = testInfo.outputPath('report.html');
  await download.saveAs(saved);
  const context = await browser.newContext({ javaScriptEnabled: false, offline: true });
  const fresh = await context.newPage();
  const said: string[] = [];
  fresh.on('console', (message) => said.push(message.text()));
  const asked: string[] = [];
  fresh.on('request', (request) => asked.push(request.url().slice(0, 40)));
  await fresh.goto(`file://${saved}`);
  await expect(fresh.locator('h1')).toHaveText('Hand-over: Invented coach 12');
  for (const name of SECTIONS) await expect(fresh.getByRole('heading', { level: 3, name }).first()).toBeVisible();
  await expect(fresh.getByText('“It hums louder the faster I go <b>and</b> growls in a right bend”')).toBeVisible();
  await expect(fresh.locator('.ho-photos img').first()).toBeVisible();
  expect(said, 'policy reports of the file').toEqual([]);
  expect(asked.filter((url) => !url.startsWith('file://') && !url.startsWith('data:image/jpeg'))).toEqual([]);
  // The style was let in by its hash: without it the box of the verdict has no frame.
  await expect(fresh.locator('.ho-verdict')).toHaveCSS('border-top-width', '3px');
  await context.close();
});

/** Titles of a PDF's outline: strings of bytes or of UTF-16, as the PDF standard (ISO 32000) writes them. */
function titlesIn(pdf: Buffer): string[] {
  const text = pdf.toString('latin1');
  return [...text.matchAll(/\/Title\s*(?:\(((?:\\.|[^\\)])*)\)|<([0-9A-Fa-f]*)>)/g)].map(([, plain, hex]) => {
    const bytes =
      hex === undefined ? Buffer.from((plain ?? '').replace(/\\(.)/g, '$1'), 'latin1') : Buffer.from(hex, 'hex');
    return bytes[0] === 0xfe && bytes[1] === 0xff
      ? Buffer.from(bytes.subarray(2)).swap16().toString('utf16le')
      : bytes.toString('latin1');
  });
}
