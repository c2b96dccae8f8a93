import { AxeBuilder } from '@axe-core/playwright';
import { changing, expect, Shell, test } from './shell.ts';

test('a visit goes to another machine as a file, is worked on there, comes back, and a damaged one is refused', async ({
  page,
  address,
}, { outputPath }) => {
  await page.goto(address);
  await page.getByRole('button', { name: /invented visit/ }).click();
  await expect(page.getByRole('heading', { level: 1 }).first()).not.toHaveText(/yard/i);
  await page.getByRole('button', { name: 'Settings' }).click();
  await changing(page, () => page.getByRole('button', { name: 'Exchange and backup' }).click());
  await page.keyboard.press('1');
  const made = page.getByRole('region', { name: 'The file is made' });
  await expect(made).toContainText('visit-invented-coach-demo');
  const downloading = page.waitForEvent('download');
  await made.getByRole('button', { name: 'Save a copy' }).click();
  const file = outputPath('visit.zip');
  await (await downloading).saveAs(file);

  const other = new Shell();
  try {
    await page.goto(await other.start());
    await expect(page.locator('main h1')).toHaveText('The yard is empty');
    await changing(page, () => page.keyboard.press('f'));
    await page.getByLabel(/Take in a visit/).setInputFiles(file);
    const came = page.getByRole('region', { name: 'Taken in' });
    await expect(came).toContainText('A visit that was not here');
    await page.getByLabel(/Take in a visit/).setInputFiles({
      name: 'half.zip',
      mimeType: 'application/zip',
      buffer: Buffer.from('half a file, and no zip any more'),
    });
    const refused = page.getByRole('region', { name: /“half.zip” was not taken in/ });
    await expect(refused).toContainText('The file is no zip, or its end is missing.');
    await page.setViewportSize({ width: 360, height: 800 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(360);
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.getByLabel(/Take in a visit/).setInputFiles(file);
    await expect(came).toContainText('Everything of it was here already.');
    await changing(page, () => page.keyboard.press('Escape'));
    await expect(page.locator('main h1')).toHaveText('One visit in the yard');
  } finally {
    await other.end();
  }
});
